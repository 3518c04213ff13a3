"""What would change in the file, before it is saved."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, Role, line, wrap

if TYPE_CHECKING:
    from library.editing.plan import Plan
    from tui.session import Session


class BeforeSavingScreen(Reading):
    """The lines that go and the lines that come."""

    WHERE = "before-saving"

    def __init__(self, session: Session, plan: Plan, save: Callable[[Plan], None]) -> None:
        super().__init__(session)
        self.plan = plan
        self._save = save

    def title_text(self) -> str:
        """That nothing is saved yet."""
        return "Before saving: nothing is written yet"

    def text(self, width: int) -> list[Line]:
        """The plan in a sentence, its file, and the lines."""
        lines = wrap(self.plan.sentence, width, "strong")
        lines += [EMPTY, *wrap(f"In {self.plan.path}:", width, "quiet"), EMPTY]
        for text in self.plan.diff():
            role: Role = "strong" if text[:1] in "+-" else "plain"
            lines.append(line(Piece(text, role)))
        return [one for long in lines for one in _cut(long, width)]

    def do_save(self) -> None:
        """Save it."""
        self._save(self.plan)


def _cut(one: Line, width: int) -> list[Line]:
    """A line as several where it is longer than the screen; nothing of what is saved is out of sight."""
    if len(one) != 1 or len(one[0].text) <= width:
        return [one]
    piece = one[0]
    parts = [piece.text[at : at + width - 2] for at in range(0, len(piece.text), width - 2)]
    return [line(Piece(part if place == 0 else f"  {part}", piece.role)) for place, part in enumerate(parts)]
