"""What somebody else left in the place of a card that is open here: what is typed here may not be laid on all of it."""

from __future__ import annotations

from collections.abc import Mapping

from library.cards.forms import as_fields, changed_fields
from library.cards.model import Card
from library.cards.store import Opened
from library.errors import SaveError

_BEGUN_FROM = ("family", "entry", "tool.name")
_IN_PERSON = (
    "received.",
    "settings.",
    "after.",
    "wrong",
    "notes",
    "tool.marks",
    "tool.belongs_to",
    "minutes",
)
"""What a person wrote of the one tool on the bench; two cards have the same of that only where they are one card."""


class ClosedMeanwhile(SaveError):
    """The card is a record now; it is opened again before anything is laid on it, and only where that is said."""


class AnotherCard(SaveError):
    """Under the id of the card stands another card now."""


def is_another(before: Mapping[str, str], now: Mapping[str, str]) -> bool:
    """Whether two states of one id are two cards: of another tool, family or entry, or begun otherwise.

    A name that somebody put right makes no other card of it: what was written of the tool itself still stands there
    then.

    Args:
        before: the texts of the card that was opened, by way.
        now: the texts of what stands under its id.

    Example:
        >>> is_another({"tool.name": "R-4"}, {"tool.name": "T-9"})
        True
        >>> is_another({"tool.name": "R-4", "notes": "chipped"}, {"tool.name": "R-14", "notes": "chipped"})
        False
    """
    if before.get("again", "") != now.get("again", ""):
        return True
    if not any(before.get(way) and _plain(before, way) != _plain(now, way) for way in _BEGUN_FROM):
        return False
    written = {way: text for way, text in before.items() if way.startswith(_IN_PERSON)}
    return not written or any(now.get(way) != text for way, text in written.items())


def _plain(texts: Mapping[str, str], way: str) -> str:
    return " ".join(texts.get(way, "").split()).casefold()


def look_at(opened: Opened, card: Card, theirs: Opened) -> None:
    """Look at what somebody else saved before a card is merged with it.

    Args:
        opened: as it was read here.
        card: as it shall be.
        theirs: what stands under its id now.

    Raises:
        AnotherCard: where that is another card.
        ClosedMeanwhile: where it is a record, which the card would change.
    """
    if is_another(as_fields(opened.card), as_fields(theirs.card)):
        raise AnotherCard(
            f"{theirs.card.id} is another card meanwhile, {theirs.card.title}. Nothing was saved.",
            theirs.path,
        )
    if theirs.card.done and (changed_fields(opened.card, card) or not card.done):
        raise ClosedMeanwhile(
            f"Card {theirs.card.id} was closed as a record meanwhile by somebody else. Nothing was saved.",
            theirs.path,
        )
