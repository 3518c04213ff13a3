"""Every word of the vocabulary, with what it is and how it is measured."""

from __future__ import annotations

from typing import TYPE_CHECKING

from geometry.quantities.terms import terms_with
from library.pages.glossary import glossary_page, quantities_with, sought
from tui.figure.quantity_figures import FIGURES
from tui.screens.printing import printed_page
from tui.screens.reading import Reading
from tui.view.help_page import explained, explained_term
from tui.view.lines import Line, wrap
from tui.view.text_line import TextLine

if TYPE_CHECKING:
    from tui.screens.base_screen import Needs
    from tui.services.export import Printed
    from tui.session import Session


class GlossaryScreen(Reading):
    """Terms and quantities; typing shows only those that have what is typed."""

    WHERE = "glossary"

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self.find = TextLine()

    def title_text(self) -> str:
        """What this is, and what is sought."""
        return "Glossary" + (f", with {self.find.text!r} in them" if self.find.text else "; type to find one")

    def text(self, width: int) -> list[Line]:
        """The words that have what was typed in them."""
        words = sought(self.find.text)
        lines = [one for term in terms_with(words) for one in explained_term(term, width)]
        lines += [one for row in quantities_with(words) for one in explained(row, width)]
        return lines or wrap(
            f"No word has that in it. {self.key_of('empty')} shows all of them again.", width
        )

    def printed(self) -> Printed:
        """The words that are shown."""
        return printed_page(glossary_page(self.find.text, FIGURES if self.find.text else {}), "glossary")

    def needs(self) -> Needs:
        """Nothing is emptied where nothing is sought."""
        return {**super().needs(), "empty": lambda: self.find.text}

    def room(self) -> int:
        """Characters that the find line still takes."""
        return self.find.room

    def typed(self, text: str) -> None:
        """Find as it is typed."""
        self._take(self.find.insert(text))

    def edited(self, key: str) -> None:
        """Edit what is sought."""
        self._take(self.find.edited(key))

    def do_empty(self) -> None:
        """Show all words again."""
        self._take(TextLine())

    def _take(self, find: TextLine) -> None:
        if find.text != self.find.text:
            self.view.top = 0
        self.find = find
