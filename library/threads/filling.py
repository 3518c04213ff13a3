"""The inputs of a calculation that a standard thread fills."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from fractions import Fraction

from geometry.calculation import Calculation
from library.threads.designation import taken_apart
from library.threads.finding import find_threads, nearest_threads
from library.threads.model import Thread

_PITCH = ("pitch", "threads_per_inch")


class NotChosen(LookupError):
    """A name that is no thread, or that several threads share; the message is a sentence."""


def choose(asked: str, own: Sequence[Thread] = ()) -> Thread:
    """The one thread of a name.

    Args:
        asked: a designation as typed.
        own: the threads of the shop's book, which go before the standard ones.

    Returns:
        The thread.

    Raises:
        NotChosen: when there is none, or more than one, or the shop's own cannot be read.
    """
    found = find_threads(asked, own)
    if len(found) == 1 and found[0].unread:
        raise NotChosen(
            f"What the book says of the thread {found[0].title} cannot be used as it stands. 'heelclear check' says why."
        )
    if len(found) == 1:
        return found[0]
    if found:
        names = " or ".join(thread.title for thread in found)
        raise NotChosen(f"{asked.strip()!r} may be {names}. Write which.")
    if wrong := taken_apart(asked).wrong:
        raise NotChosen(wrong)
    near = nearest_threads(asked, own)
    hint = f" Did you mean {' or '.join(near)}?" if near else " Write it such as M16, 5/8-11 UNC or G 1/2."
    raise NotChosen(f"There is no thread {asked.strip()!r} in the tables.{hint}")


def texts_for(sheet: Calculation, thread: Thread, typed: Collection[str] = ()) -> dict[str, str]:
    """The fields of a calculation that a thread fills, as text to be read like typing.

    Args:
        sheet: the calculation.
        thread: the thread that was chosen.
        typed: fields that the person has filled; these are left alone.

    Returns:
        Text by field; empty for a calculation that asks for nothing of a thread.
    """
    fills = dict(thread.fills())
    fills["nominal_diameter"] = fills["diameter"]
    if any(key in typed for key in _PITCH):
        fills = {key: text for key, text in fills.items() if key not in _PITCH}
    elif "threads_per_inch" in fills and sheet.field("threads_per_inch") is None:
        fills["pitch"] = _one_over(fills["threads_per_inch"])
    return {key: text for key, text in fills.items() if sheet.field(key) is not None and key not in typed}


def _one_over(threads_per_inch: str) -> str:
    """The pitch in inches as a fraction, which loses nothing: ``11.5 tpi`` is ``2/23 in``."""
    pitch = 1 / Fraction(threads_per_inch.removesuffix(" tpi"))
    return f"{pitch.numerator}/{pitch.denominator} in"
