"""The diff of a change that is planned and not yet saved: the lines that go and the lines that come."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

from library.sanitize import sanitize
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, Role, cut, line, wrap

if TYPE_CHECKING:
    from library.editing.plan import Plan
    from tui.session import Session


class ReviewChangeScreen(Reading):
    """The lines that go and the lines that come."""

    WHERE = "review-change"

    def __init__(self, session: Session, plan: Plan, save: Callable[[Plan], None]) -> None:
        super().__init__(session)
        self.plan = plan
        self._save = save

    def title_text(self) -> str:
        """That nothing is saved yet."""
        return f"Before saving: nothing is written yet. {self.key_of('go-on')} saves it"

    def text(self, width: int) -> list[Line]:
        """The plan in a sentence, its file, and the lines."""
        plan = self.plan
        what = "will be removed, for nothing is left in it" if plan.after is None else ""
        lines = wrap(plan.sentence, width, "strong")
        lines += [EMPTY, *wrap(f"{plan.path} {what}".strip() + ":", width, "quiet"), EMPTY]
        _, _, *changed = plan.diff()
        lines += [one for text in changed for one in diff_lines(text, width)]
        saves, leaves = self.key_of("go-on"), self.key_of("back")
        return [
            *lines,
            EMPTY,
            *wrap(f"{saves} saves this; {leaves} leaves everything as it is.", width, "strong"),
        ]

    def do_go_on(self) -> None:
        """Save it."""
        self.do_save()

    def do_save(self) -> None:
        """Save it."""
        self._save(self.plan)


def diff_lines(text: str, width: int) -> Iterator[Line]:
    """One line of a diff, its sign before it; one that is longer than the screen goes on below, whole."""
    if text.startswith("@@"):
        yield line(Piece("...", "quiet"))
        return
    sign, rest = text[:1], sanitize(text[1:])
    role: Role = "strong" if sign in "+-" else "plain"
    for place, part in enumerate(cut(rest, max(width - 2, 8))):
        yield line(Piece(f"{sign if place == 0 else ' '} {part}", role))
