"""What was learned on a job, on its way back to the book."""

from __future__ import annotations

from typing import TYPE_CHECKING

from geometry.quantities import QUANTITIES
from library.cards.lessons import change_for, lessons
from tui import screens
from tui.screens.change_flow import ChangeRequest, preview
from tui.screens.chooser import Choice

if TYPE_CHECKING:
    from library.cards.lessons import Lesson
    from library.cards.model import Card
    from tui.screens.cards.card import CardScreen


def learn(screen: CardScreen, card: Card) -> None:
    """Show what one lesson would write in the book; of several, ask first for which."""
    found = lessons(card)
    if not card.entry:
        screen.say("This card was begun without an entry of the book, so there is no entry to learn from it.")
    elif not found:
        screen.say("The card wants what the book has; there is nothing to learn from it.")
    elif len(found) == 1:
        _look(screen, found[0])
    else:
        choices = [Choice(one.key, _title(one), f"{one.value} ({one.note})") for one in found]
        by_key = {one.key: one for one in found}
        title = f"What shall {card.entry} learn?"
        screen.app.push_screen(
            screens.PickScreen(screen.session, title, choices, lambda key: _look(screen, by_key[key]))
        )


def _title(lesson: Lesson) -> str:
    return QUANTITIES[lesson.key].title if lesson.key in QUANTITIES else lesson.key


def _look(screen: CardScreen, lesson: Lesson) -> None:
    preview(screen.heelclear, ChangeRequest(change_for(lesson, screen.form.book)))
