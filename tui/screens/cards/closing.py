"""The end of a job: the card is closed as a record, or opened again, and the book takes what was learned."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from geometry.quantities import QUANTITIES, quantity
from library.cards.close import NotFinished, finished, reopened
from library.cards.learn import Lesson, not_in_book
from library.cards.read_elsewhere import read_elsewhere
from library.cards.still_to_measure import still_to_measure
from tui.screens.confirming import ask
from tui.screens.lessons import choose_lesson

if TYPE_CHECKING:
    from library.cards.model import Card
    from tui.screens.cards.card import CardScreen


def close_or_open(screen: CardScreen) -> None:
    """Close the card of a screen, or open it again where it is closed; either is asked about first."""
    card = screen.form.card
    name = f"card {card.id}, {card.title}" if card.id else f"this card, {card.title}"
    if card.done:
        said = (
            "It is no record any more then; what was recorded is worked out afresh when you close it again."
        )
        ask(screen, f"Open {name}, again?", "Open it again", said, lambda: _reopen(screen))
    elif _finished(screen) is not None:
        said = "It becomes a record: nothing more is typed on it."
        if still_to_measure(card):
            said = f"Nothing was measured after grinding. {said}"
        if any(read_elsewhere(screen.form.job)):
            # As a record the card says nothing of it any more.
            said = f"On Received stands a reading that was typed for another surface. {said}"
        if not card.result.strip():
            said = f"It has no result. {said}"
        ask(screen, f"Close {name}?", "Close the card", said, lambda: _close(screen))


def _reopen(screen: CardScreen) -> None:
    form = screen.form
    form.take(form.book, reopened(form.card))
    screen.say("The card is open again; what was recorded is worked out afresh when you close it.")


def _finished(screen: CardScreen) -> Card | None:
    """The card as a record; where something does not add up yet, that is said and gone to, and there is none."""
    form = screen.form
    try:
        return finished(form.job, screen.cards.today())
    except NotFinished as why:
        first, *others = why.issues
        form.go_to(first.way)
        more = f" {len(others)} more after it." if others else ""
        screen.say(f"It stays a draft, for this does not add up: {first.text}{more}")
        return None


def _close(screen: CardScreen) -> None:
    form, before = screen.form, screen.form.card
    closed = _finished(screen)
    if closed is None:
        return
    form.take(form.book, closed)
    if not screen.save():
        form.take(form.book, before)
        return
    if not form.card.done:
        # Somebody else wrote on it meanwhile; what came of both is to be looked at first.
        screen.say(f"{screen.said} Look at it, then close it.")
        return
    learned = taught(not_in_book(form.card, form.book), screen.key_of("learn"))
    screen.say(
        f"Card {form.card.id} is done, a record now. {screen.key_of('print')}, then {screen.key_of('go-on')}, "
        f"shows its setup sheet.{learned}"
    )


def taught(found: Sequence[Lesson], key: str) -> str:
    """What would write the values of a card that the book has otherwise into it; empty where there are none.

    Example:
        >>> taught([Lesson("a-tap", "rake_angle", "7 deg", "", "")], "F8")
        " F8 writes its rake angle of 7 deg into the shop's book, once you have seen what would change."
    """
    if not found:
        return ""
    one = found[0]
    title = quantity(one.key).title.lower() if one.key in QUANTITIES else one.key
    what = (
        f"its {title} of {one.value}"
        if len(found) == 1
        else f"the {len(found)} values that the book has otherwise"
    )
    return f" {key} writes {what} into the shop's book, once you have seen what would change."


def learn(screen: CardScreen, card: Card) -> None:
    """Show what one lesson would write in the book; of several, ask first for which."""
    found = not_in_book(card, screen.form.book)
    if not card.entry:
        screen.say("This card was begun without an entry of the book, so there is no entry to learn from it.")
    elif not found:
        screen.say("The card wants what the book has; there is nothing to learn from it.")
    else:
        choose_lesson(screen, found, screen.form.book)
