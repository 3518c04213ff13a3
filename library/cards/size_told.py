"""What the size of a tool tells: its diameter, one that no tool has, or words that tell none, such as MT2."""

from __future__ import annotations

import re
from collections.abc import Iterator

from geometry.evaluate import unfit
from geometry.quantities import quantity
from geometry.sentences import Kind
from library.calc.wording import by_title
from library.cards.job import Job
from library.cards.provenance import is_number
from library.cards.sizes import each_size
from library.cards.thread_names import by_its_name
from library.units.read import read
from library.units.show import say
from library.units.slashes import bare_fraction, fraction_of_mm

_FRACTION = re.compile(r"(?:\d+[ -]?)?(?:[1-9]\d*\s*[/\u2044]\s*[1-9]\d*|[\u00bc-\u00be\u215b-\u215e])")
"""A fraction that nothing stands behind, which may be one of an inch or two steps."""


def no_diameter(job: Job) -> str:
    """What is said of a size that tells no diameter, a sentence; empty where it tells one, or nothing is written.

    It may stay: a tool may be called by words.
    """
    text = job.card.tool.size.strip()
    named = any("diameter" in one for one in by_its_name(job.card, job.book))
    if not text or named or all(is_number(one, Kind.LENGTH) for one in each_size(text)):
        return ""
    if _FRACTION.fullmatch(text):
        return (
            bare_fraction(text, many=True) or f"{text!r} tells no diameter without its unit: write {text} in."
        )
    return f"{text!r} tells no diameter; as words, such as MT2, it may stay."


def fractions_of_mm(job: Job) -> Iterator[str]:
    """What is said of each fraction of a millimetre in the size, which may be meant as two steps."""
    return filter(None, map(fraction_of_mm, each_size(job.card.tool.size)))


def odd_diameters(job: Job) -> Iterator[str]:
    """What is said of each diameter in the size that no tool has, a sentence."""
    row = quantity("diameter")
    for text in each_size(job.card.tool.size):
        if is_number(text, Kind.LENGTH) and not fraction_of_mm(text):
            bad = unfit(row, read(text, Kind.LENGTH, job.display).number)
            if bad is not None:
                yield by_title(say(bad, job.display), {"diameter": "it"})
