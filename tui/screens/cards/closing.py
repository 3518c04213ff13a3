"""Closing a job card, so that it is a record, and opening a closed one again."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.cards.finishing import NotFinished, finished, reopened
from library.cards.lessons import lessons

if TYPE_CHECKING:
    from tui.screens.cards.card import CardScreen


def close_or_open(screen: CardScreen) -> None:
    """Close the card of a screen; or open it again where it is closed."""
    form = screen.form
    if form.card.done:
        form.take(form.book, reopened(form.card))
        screen.say("The card is open again; what was recorded is worked out afresh when you close it.")
    else:
        _close(screen)


def _close(screen: CardScreen) -> None:
    form, before = screen.form, screen.form.card
    try:
        closed = finished(form.job, screen.cards.today())
    except NotFinished as why:
        first, *others = why.problems
        form.go_to(first.way)
        more = f" {len(others)} more after it." if others else ""
        screen.say(f"It stays a draft, for this does not add up: {first.text}{more}")
        return
    form.take(form.book, closed)
    if not screen.save():
        form.take(form.book, before)
        return
    if not form.card.done:
        # Somebody else wrote on it meanwhile; what came of both is to be looked at first.
        screen.say(f"{screen.said} Look at it, then close it.")
        return
    learned = (
        f" {screen.key_of('learn')} brings into the book what was learned." if lessons(form.card) else ""
    )
    screen.say(
        f"Card {form.card.id} is done, a record now. {screen.key_of('sheet')} shows its setup sheet.{learned}"
    )
