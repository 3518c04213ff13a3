"""What the class of an internal thread means: its limits, and whether a tap of a mark can keep within them."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.calculation import Check, Field, Inputs, note, passed, stop, watch
from geometry.fit.hole import Limits
from geometry.preconditions import refuse
from geometry.sentences import length
from geometry.thread.form import ISO_TITLE, Thread
from geometry.thread.nut_limits import OF_2A, nut_limits
from geometry.thread.recommended_taps import recommended
from geometry.thread.tap_limits import ISO_SHARES, MARKS, MOST_H, marks_first, tap_limits

READ = 0.0005
"""What a micrometer does not tell apart, in mm: half a micrometre. Common practice, no source."""

PRINTED = 0.00005 * 25.4 + 1e-9
"""Half of the ten-thousandth of an inch to which limits of unified threads are rounded, in mm."""

CLASS = (
    Field("thread_class", optional=True),
    Field("engagement_length", optional=True, when=("thread_class", *OF_2A)),
)
"""The inputs for the class of a parallel thread of the 60 degree form."""

LIMITS_OF_CLASS = ("thread_lower_limit", "thread_upper_limit")
"""The outputs for it."""


def class_limits(given: Inputs, made: Thread) -> Limits | None:
    """The limits of the thread's pitch diameter by the class that was given; nothing where none was.

    Raises:
        GeometryError: for a class that is not of such threads.
    """
    if not given.has("thread_class"):
        return None
    word = given.choice("thread_class")
    if made.shape.title != ISO_TITLE:
        raise refuse(
            "thread_class",
            "These classes are of metric and unified threads, of the 60 degree form. Leave the class out.",
        )
    is_unified = word in OF_2A
    if is_unified and not given.has("threads_per_inch"):
        raise refuse(
            "thread_class",
            f"{word} is a class of unified threads. Give their threads per inch and no pitch, or a metric class such as 6H.",
        )
    if not is_unified and not given.has("pitch"):
        raise refuse(
            "thread_class",
            f"{word} is a class of metric threads. Give their pitch and no threads per inch, or a unified class such as 2B.",
        )
    held = given.number("engagement_length") if given.has("engagement_length") else None
    return nut_limits(made, word, held)


def told_of_class(given: Inputs, made: Thread, allowed: Limits) -> Iterator[Check]:
    """The limits of a class in words, and which tap a maker recommends for it."""
    word = given.choice("thread_class")
    says = "The pitch diameter of a {word} thread lies between {low} and {high}"
    if word in OF_2A and not given.has("engagement_length"):
        says += ", for an engagement of one diameter, as of UNC, UNF and 8-UN threads"
    mark = recommended(made.diameter, made.pitch, word)
    says += "; a tap maker's table recommends a tap marked {mark} for it." if mark else "."
    parts = {"mark": mark} if mark else {}
    yield note(says, word=word, low=length(allowed.low), high=length(allowed.high), **parts)


def mark_for(made: Thread, word: str, allowed: Limits) -> str:
    """A mark of which every new tap lies within the limits of a class, the best first; empty where there is none.

    Relation: of unified threads the mark that a tap maker recommends, else the greatest H number that stays within; of metric
    ones class ISO 1 for 4H and 5H, ISO 2 for 6H and ISO 3 for the others, as ISO 2857 has them, if it stays within.

    Example:
        >>> from geometry.thread.form import thread
        >>> made = thread(10.0, 1.5, "iso")
        >>> mark_for(made, "6G", nut_limits(made, "6G")), mark_for(made, "6H", nut_limits(made, "6H"))
        ('ISO3-6G', 'ISO2-6H')
    """
    if word in OF_2A:
        first = recommended(made.diameter, made.pitch, word)
        marks = [*([first] if first else []), *(f"H{number}" for number in range(MOST_H, 0, -1))]
    else:
        usual = "ISO1-4H" if word in {"4H", "5H"} else "ISO2-6H" if word == "6H" else "ISO3-6G"
        marks = [usual, *(one for one in ISO_SHARES if one != usual)]
    return next((mark for mark in marks if _within(tap_limits(made, mark), allowed)), "")


def _within(tap: Limits, allowed: Limits) -> bool:
    return allowed.low - PRINTED <= tap.low and tap.high <= allowed.high + PRINTED


def foreign_mark(given: Inputs, made: Thread, allowed: Limits | None) -> Iterator[Check]:
    """What is to be said of a mark of metric taps for a thread that is counted in threads per inch, or the other way round."""
    mark, by_inch = given.choice("tap_limit"), given.has("threads_per_inch")
    if mark in marks_first(by_inch=by_inch) or mark not in MARKS:
        return
    own = mark_for(made, given.choice("thread_class"), allowed) if allowed is not None else ""
    says = (
        "{mark} is a mark of metric taps, and this thread is counted in threads per inch"
        if by_inch
        else "{mark} is a mark of taps whose threads are counted per inch, and this thread has its pitch in millimetres"
    )
    says += ": look at the shank of the tap again, and at the size."
    says += " A tap marked {own} keeps within the class." if own else ""
    yield watch(says, cure=(("tap_limit", own),) if own else (), mark=mark, **({"own": own} if own else {}))


def measured_in_class(given: Inputs, made: Thread, allowed: Limits) -> Iterator[Check]:
    """Whether the tap that was measured keeps within a class, and where no mark is known, how far it is worn."""
    if not given.has("tap_pitch_diameter"):
        return
    measured, word = given.number("tap_pitch_diameter"), given.choice("thread_class")
    if measured > allowed.high + READ:
        yield stop(
            "The tap measures {over} over the largest pitch diameter of a {word} thread: the NOT GO end of the gauge will go in. "
            "Set it aside for a wider class.",
            over=length(measured - allowed.high),
            word=word,
        )
    elif not given.has("tap_limit"):
        if measured < allowed.low - READ:
            yield watch(
                "The tap measures {under} under the least pitch diameter of a {word} thread. Try its thread with a gauge before "
                "and after sharpening.",
                under=length(allowed.low - measured),
                word=word,
            )
        else:
            yield passed("The tap lies within the limits of a {word} thread.", word=word)


def tap_in_class(given: Inputs, made: Thread, tap: Limits, allowed: Limits) -> Iterator[Check]:
    """Whether new taps with such limits keep within a class."""
    word = given.choice("thread_class")
    if _within(tap, allowed):
        return
    over = tap.high > allowed.high + PRINTED
    says = (
        "A tap with these limits may be {off} over the largest pitch diameter of a {word} thread"
        if over
        else "A tap with these limits may be {off} under the least pitch diameter of a {word} thread"
    )
    mark = mark_for(made, word, allowed)
    says += ". Take one marked {mark}." if mark else ": see the table of the tap's maker."
    yield watch(
        says,
        cure=(("tap_limit", mark),) if mark else (),
        off=length(tap.high - allowed.high if over else allowed.low - tap.low),
        word=word,
        **({"mark": mark} if mark else {}),
    )
