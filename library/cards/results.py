"""The results of a job that a shop knows: the usual ones, and those that its own cards have."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from library.cards.job import Job
    from library.cards.rows import CardRow
    from library.issue import Severity

USUAL = {
    "good": "It is as it was wanted; its readings must pass.",
    "ground to another size": "It serves as another tool now; say in the remarks which.",
    "not finished": "It is put aside as it is.",
    "sent out": "Somebody else grinds it.",
    "scrapped": "It is no tool any more.",
}
"""How a job may have ended, and what each says."""

ENDED_BADLY = ("scrap", "other size", "another size", "not finished", "sent out")
"""Results that say that the tool is not as it was wanted, so that its readings no longer keep the card open."""

MOST_OF_THE_SHOP = 12
"""Results of the shop's own cards that are offered, those used most first."""


def is_result(text: str) -> bool:
    """Whether a text can say how a job ended: it has a letter in it.

    Example:
        >>> is_result("60"), is_result("good")
        (False, True)
    """
    return any(sign.isalpha() for sign in text)


def severity_after(job: Job) -> Severity:
    """How heavy a fault after grinding weighs: of a tool that ended as another one it keeps nothing open.

    Args:
        job: the card worked out.
    """
    bad_end = any(word in job.card.result.casefold() for word in ENDED_BADLY)
    return "warning" if bad_end else "error"


def known_results(rows: Iterable[CardRow]) -> tuple[str, ...]:
    """The usual results, then those that the shop wrote on its own cards.

    Args:
        rows: of the shop's cards.
    """
    own = Counter(row.result for row in rows if row.result not in USUAL and is_result(row.result))
    return (*USUAL, *(text for text, _ in own.most_common(MOST_OF_THE_SHOP)))
