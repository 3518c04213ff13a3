"""What stands in the name of a thread besides its size: left hand, several starts, and a tolerance class."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from geometry.thread.nut_limits import CLASSES
from library.threads.model import Thread

_NUMBER = r"\d+(?:\.\d+)?|\.\d+"
_LEFT = re.compile(r"[\s,-]*(?<![a-z])(?:lh|l\.h\.|left(?:[\s-]*hand(?:ed)?)?)$", re.IGNORECASE)
_CLASS = re.compile(r"[\s-]*(?<![\d.])(?P<pitch>[1-9][a-h])(?:[1-9][a-h])?$", re.IGNORECASE)
_STARTS = re.compile(
    r"[\s,-]*(?<![a-z\d.])\(?(?P<many>\d{1,2}|two|three|four|five|six)[\s-]*starts?\)?$", re.IGNORECASE
)
_COUNTED = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
_METRIC = re.compile(
    rf"(?P<size>.*\S)\s*x\s*(?:ph\s*)?(?P<lead>{_NUMBER})\s*\(?\s*p\s*(?P<pitch>{_NUMBER})\s*\)?$",
    re.IGNORECASE,
)
_ACME = re.compile(
    rf"(?P<size>.*\d)\s*-\s*(?P<pitch>{_NUMBER})\s*p\s*-\s*(?P<lead>{_NUMBER})\s*l\s*-?\s*(?P<form>[a-z]+)$",
    re.IGNORECASE,
)
_SIGNS = str.maketrans({"\u00d7": "x", "*": "x", "\u2013": "-", "\u2212": "-"})
_COMMA = re.compile(r"(?<=\d),(?=\d)")


@dataclass(frozen=True)
class Designation:
    """The name of a thread, taken apart.

    Attributes:
        size: the name of the same thread with one start and right hand, as the tables have it.
        with_lead: the same with its lead and its pitch, where the name has both; else empty.
        starts: how many threads run side by side; 0 where the name does not say.
        hand: ``left``, or empty where the name does not say.
        thread_class: of the nut's pitch diameter, such as ``6H`` or ``2B``; empty where the name does not say.
        wrong: a sentence where lead and pitch do not go together.
    """

    size: str
    with_lead: str = ""
    starts: int = 0
    hand: str = ""
    thread_class: str = ""
    wrong: str = ""

    def of(self, thread: Thread) -> Thread:
        """The thread of the tables as this name wants it, with a title by which it is found again."""
        starts, title = self.starts or thread.starts, thread.title
        if starts != thread.starts:
            title = _with_starts(thread, starts)
        if self.hand == "left" != thread.hand:
            title += " LH"
        hand = self.hand or thread.hand
        is_unified_or_metric = thread.series.thread_form == "iso" and not thread.series.taper
        of = self.thread_class if is_unified_or_metric else ""
        return replace(thread, title=title, starts=starts, hand=hand, thread_class=of)


def taken_apart(name: str) -> Designation:
    """Take a thread's name apart, from its end on.

    Relation: ISO 2903 and ISO 965-1 write the lead, then the pitch behind P, and LH for a left-hand thread; ASME B1.5
    writes pitch and lead with P and L behind them. The starts are the lead divided by the pitch.

    Args:
        name: as typed or as marked on a tool.

    Example:
        >>> found = taken_apart("Tr 40 x 14 (P7) LH-7H")
        >>> found.size, found.starts, found.hand, found.thread_class
        ('Tr 40x7', 2, 'left', '7H')
        >>> taken_apart("1-0.2P-0.4L-ACME").size, taken_apart("M16").size
        ('1-5 ACME', 'M16')
    """
    text = _COMMA.sub(".", " ".join(name.translate(_SIGNS).split()))
    found, is_classed = Designation(text), False
    while True:
        if not found.hand and (left := _LEFT.search(text)):
            text, found = text[: left.start()], replace(found, hand="left")
        elif not is_classed and (of := _CLASS.search(text)):
            text, is_classed = text[: of.start()], True
            found = replace(found, thread_class=_of_a_nut(of["pitch"], text))
        elif not found.starts and (many := _STARTS.search(text)):
            number = _COUNTED.get(many["many"].casefold()) or int(many["many"])
            text, found = text[: many.start()], replace(found, starts=number)
        else:
            return _with_lead(replace(found, size=text))


def _of_a_nut(word: str, before: str) -> str:
    """A tolerance class as it is written of a nut; empty where it is one of a screw, as 6g and 2A are."""
    is_screw = word[1] in "Aa" or (word[1].islower() and before[:1].isupper())
    return word.upper() if word.upper() in CLASSES and not is_screw else ""


def _with_lead(found: Designation) -> Designation:
    """The same with the starts that follow from a lead and a pitch in it."""
    if parts := _METRIC.match(found.size):
        size = f"{parts['size']}x{parts['pitch']}"
    elif (parts := _ACME.match(found.size)) and Fraction(parts["pitch"]):
        size = f"{parts['size']}-{float(1 / Fraction(parts['pitch'])):g} {parts['form']}"
    else:
        return found
    lead, pitch = Fraction(parts["lead"]), Fraction(parts["pitch"])
    starts = lead / pitch if pitch else Fraction(0)
    found = replace(found, size=size, with_lead=f"{parts['size']}x{parts['lead']}p{parts['pitch']}")
    if starts < 1 or starts.denominator != 1 or found.starts not in {0, starts}:
        times = f"{found.starts} times" if found.starts else "a whole number of times"
        says = (
            f"A lead of {parts['lead']} is not {times} a pitch of {parts['pitch']}. Look at the mark on the tool again: the "
            "lead stands before the pitch."
        )
        return replace(found, wrong=says)
    return replace(found, starts=int(starts))


def _with_starts(thread: Thread, starts: int) -> str:
    """The title of a thread with several starts: lead and pitch where it is metric, else how many."""
    head, sign, pitch = thread.title.rpartition(" x ")
    if not sign or thread.starts != 1:
        return f"{thread.title}, {starts} starts"
    lead, ph = float(Fraction(pitch) * starts), "" if thread.series.thread_form == "trapezoidal" else "Ph"
    return f"{head} x {ph}{lead:g} P{pitch}"
