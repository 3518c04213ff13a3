"""Taking what is in front away: copied, or written into a new file as text, as Markdown, or as a web page."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from library.errors import no_room
from tui.screens.chooser import Choice, Chooser
from tui.services.export import ENDINGS, write_new_file

if TYPE_CHECKING:
    from tui.screens.base_screen import BaseScreen
    from tui.services.export import Printed
    from tui.session import Session

LOOK = Choice(
    "look",
    "Look at it",
    "Shows it here and writes nothing; the way back leads to where it was asked for.",
)
WAYS = (
    Choice("copy", "Copy", "Copies it as plain text to the clipboard of your terminal, where that allows it."),
    Choice("text", "Text file", "Writes it into a new file in the folder that you started in, in signs that any printer has: letters without accents, a half as 1/2."),
    Choice("markdown", "Markdown", "Writes it as Markdown into a new file in the folder that you started in."),
    Choice("html", "Web page", "Writes it as a web page, to be printed, into a new file in the folder that you started in."),
)  # fmt: skip


class PrintScreen(Chooser):
    """The ways to take something away, and a look at it beforehand; Enter does one.

    Args:
        session: what the program knows.
        printed: what is in front.
        below: the screen that it is in front of.
    """

    WHERE = "print"

    def __init__(self, session: Session, printed: Printed, below: BaseScreen) -> None:
        super().__init__(session)
        self._printed = printed
        self._below = below

    def title_text(self) -> str:
        """What is taken away."""
        return f"Print: {self._printed.title}"

    def choices(self) -> list[Choice]:
        """To look at it where that is another screen, to copy it, and the files."""
        return [*([LOOK] if self._printed.look is not None else []), *WAYS]

    def take(self, choice: Choice) -> None:
        """Go back to where it was asked for, and do it there: show it, or say what came of it."""
        printed = self._printed
        self.app.pop_screen()
        if choice.id == "look" and printed.look is not None:
            printed.look()
            return
        if choice.id == "copy":
            self.app.copy_to_clipboard(printed.form("text"))
            self._below.say(
                "Sent to the clipboard of your terminal; if it is not there, "
                f"{self.key_of('print')} also writes a file."
            )
        else:
            self._write(choice.id)

    def _write(self, form: str) -> None:
        printed = self._printed
        try:
            path = write_new_file(printed.form(form), Path.cwd(), printed.name, ENDINGS[form])
        except OSError as error:
            cure = f"Start in a folder in which you may write, or take the copy of {self.key_of('print')}."
            told = no_room(error, Path.cwd()) or f"{error.strerror}. {cure}"
            self._below.say(f"The file could not be written: {told}")
        else:
            self._below.say(f"Written to {path}.")
