"""The chamfer of a tap is one cone: of its threads and its angle one is set, and the other follows.

Where an entry wants both, the count of threads is set: a tap is called by it, and the angle that goes with it depends
on the form of the thread. Common practice, no source. A person who changes the angle alone means the angle.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass

from geometry.quantities import quantity
from geometry.sentences import Kind
from library.calc.answer import Answer
from library.cards.model import Wanted
from library.cards.wanted_limits import Limits, limits_of
from library.units.read import UnitError, read
from library.units.show import show

THREADS, ANGLE, LENGTH = "chamfer_threads", "chamfer_angle", "chamfer_length"

_PLAIN = re.compile(r"-?\d*(?:\.(?P<places>\d*))?\s*(?:deg|\u00b0)?")
"""A number with at most its degrees behind it, whose last place says how exactly it is meant."""

_MASTERS = {
    THREADS: ("{} threads of chamfer make", "threads are", "other threads"),
    ANGLE: ("an angle of {} makes", "angle is", "another angle"),
    LENGTH: ("a chamfer of {} makes", "length is", "another length"),
}
"""What is set, what it does to the other, and what to write for it instead."""

_CALLED = {THREADS: "threads", ANGLE: "angle", LENGTH: "length"}
"""What is emptied, so that the other is set."""

FINEST = 0.005
"""Half of the last place (degrees, threads) of any other text, as numbers are shown here."""


@dataclass(frozen=True)
class Follower:
    """A wanted value of the chamfer that the one that is set does not give.

    Attributes:
        key: the quantity that follows.
        text: what was wanted of it.
        found: what it comes to, in radians or as a count.
        master: the quantity that is set.
        master_text: what is set of it.
        empties: whether the one that follows is set as soon as the other is emptied; what the book has comes back.
    """

    key: str
    text: str
    found: float
    master: str
    master_text: str
    empties: bool = False

    def said(self) -> str:
        """Both numbers, which of them is set, and what to do; a sentence."""
        found = show(self.found, quantity(self.key).kind)
        comes = found if self.key == ANGLE else f"{found} threads"
        makes, which, other = (part.format(self.master_text) for part in _MASTERS[self.master])
        name, follows = ("angle", "angle follows") if self.key == ANGLE else ("threads", "threads follow")
        ways = f", or {other}, or empty the {_CALLED[self.master]}" if self.empties else f", or {other}"
        return (
            f"{self.text} wanted, but {makes} {comes} on this tap. The {which} set and the {follows}: write {found} "
            f"for the {name}{ways}."
        )


def follower(found: Answer, wanted: Mapping[str, Wanted]) -> Follower | None:
    """The wanted value of the chamfer that does not agree with the one that is set; nothing where all agree.

    Args:
        found: the calculation ``tap-chamfer``, answered.
        wanted: of the card.

    Returns:
        Nothing within half of the last place that was written.
    """
    master = next((key for key in (THREADS, ANGLE, LENGTH) if key in found.inputs), "")
    if found.result is None or not master:
        return None
    for key in (ANGLE, THREADS):
        text = wanted.get(key, Wanted("")).value.strip()
        if key != master and text and not _agrees(key, text, found.result.outputs[key]):
            empties = _follows_no_more(master, key, wanted)
            return Follower(key, text, found.result.outputs[key], master, found.inputs[master].text, empties)
    return None


def _follows_no_more(master: str, key: str, wanted: Mapping[str, Wanted]) -> bool:
    """Whether what follows is set where the line of the other is emptied: nothing of the book may come back that is set before it."""
    other = wanted.get(master)
    if other is None:
        return False
    # The angle alone is set where it was changed and the threads of the book come back.
    is_alone = master == THREADS and key == ANGLE and other.changed and wanted[ANGLE].changed
    return not other.book or is_alone


def _agrees(key: str, text: str, number: float) -> bool:
    """Whether a number is what a text wants, or in its range, to half of the last place written."""
    kind = quantity(key).kind
    limits = limits_of(key, text, None)
    if limits is None:
        try:
            value = read(text, kind, unit_wanted=True).number
        except UnitError:
            return True
        limits = Limits(value, value)
    slack = half_a_place(text) * (math.radians(1) if kind is Kind.ANGLE else 1) + 1e-9
    may_be = limits.widened(slack, slack)
    return (may_be.low is None or number >= may_be.low) and (may_be.high is None or number <= may_be.high)


def half_a_place(text: str) -> float:
    """Half of the last place of a number as it was written, in degrees or as a count.

    Example:
        >>> half_a_place("8 deg"), half_a_place("8.5 deg"), half_a_place("7 deg 30 min")
        (0.5, 0.05, 0.008333333333333333)
    """
    if text.rstrip(" .").endswith(("min", "'")):
        return 0.5 / 60
    found = _PLAIN.fullmatch(text.strip())
    return FINEST if found is None else 0.5 * 10.0 ** -len(found["places"] or "")


def angle_alone_was_changed(wanted: Mapping[str, Wanted]) -> bool:
    """Whether a person changed the wanted angle of the chamfer and left its threads as the book has them."""
    threads, angle = wanted.get(THREADS), wanted.get(ANGLE)
    return angle is not None and angle.changed and (threads is None or not threads.changed)
