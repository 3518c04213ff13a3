"""The cautions of a job on its page: the first sentence of each, and in full the one that comes before all."""

from __future__ import annotations

import re

from library.book.model import Caution
from library.calc.answer import LAST_WORD
from library.cards.job import Job
from library.setup_sheet.page import Cautions, Warned

_END = re.compile(r"(?<=[a-z)0-9][.!?])\s+(?=[A-Z])")

DEFERS = (
    "The wheel maker's rating, the machine's manual, the rules of the place and a trained person come before "
    "anything on this page."
)
"""Said where the book has no caution of that name, for no page is without it."""


def cautions(job: Job) -> Cautions:
    """The cautions of everything that is done for a card."""
    last = next((one.text for one in job.cautions if one.id == LAST_WORD), DEFERS)
    told = tuple(_warned(one) for one in job.cautions if one.id != LAST_WORD)
    return Cautions(told, " ".join(last.split()))


def _warned(caution: Caution) -> Warned:
    sentence = first_sentence(caution.text)
    return Warned(caution.title, sentence, first_clause(sentence))


def first_sentence(text: str) -> str:
    """What a caution asks for, without why and by whom it was written.

    Example:
        >>> first_sentence("Keep the rest 1/8 in (3 mm) from the wheel. Federal law asks for it.")
        'Keep the rest 1/8 in (3 mm) from the wheel.'
    """
    return _END.split(" ".join(text.split()), maxsplit=1)[0]


def first_clause(sentence: str) -> str:
    """A sentence up to its first colon or semicolon; what follows only explains.

    Example:
        >>> first_clause("No gloves near the wheel: what is caught pulls the hand in.")
        'No gloves near the wheel.'
    """
    return f"{re.split('[:;] ', sentence.rstrip('.'), maxsplit=1)[0]}."
