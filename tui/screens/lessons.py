"""What the book learns: from a card that was ground, or from a new tool that was measured."""

from __future__ import annotations

from typing import TYPE_CHECKING

from geometry.quantities import QUANTITIES
from library.cards.learn import change_for
from tui import screens
from tui.screens.change_flow import ChangeRequest, preview
from tui.screens.chooser import Choice

if TYPE_CHECKING:
    from collections.abc import Sequence

    from library.book.model import Book
    from library.cards.learn import Lesson
    from tui.screens.base_screen import BaseScreen


def choose_lesson(screen: BaseScreen, found: Sequence[Lesson], book: Book) -> None:
    """Show what one lesson would write in the book; of several, ask first for which.

    Whoever leaves what would be written comes back to the list; once it is saved, that is closed.

    Args:
        screen: asks.
        found: one lesson at least.
        book: as it is now.
    """

    def show(lesson: Lesson) -> None:
        heelclear = screen.heelclear
        preview(heelclear, ChangeRequest(change_for(lesson, book), saved=lambda: heelclear.back_from("pick")))

    if len(found) == 1:
        show(found[0])
        return
    by_key = {one.key: one for one in found}
    choices = [Choice(one.key, _title(one), f"{one.value} ({one.note})") for one in found]
    title = f"What shall {found[0].entry} learn?"
    listed = screens.PickScreen(screen.session, title, choices, lambda key: show(by_key[key]), is_kept=True)
    screen.app.push_screen(listed)


def _title(lesson: Lesson) -> str:
    return QUANTITIES[lesson.key].title if lesson.key in QUANTITIES else lesson.key
