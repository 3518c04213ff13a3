"""A thread typed where a diameter is asked for: ``M16`` or ``5/8-11 UNC`` fills diameter, pitch and starts.

A numbered or lettered drill, ``#7`` or ``letter F``, may be typed for any length.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from geometry.calculation import Calculation
from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from library.book.model import Book
from library.issue import Issue
from library.units.grammar import UnitError, parse

PLACES = ("diameter", "nominal_diameter")
"""The fields in which a thread may be named; a calculation asks for one of them at most."""


_BEGIN_A_DRILL = frozenset("#abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ")
"""How the name of a numbered or lettered drill begins; no number does."""
_SERIES = re.compile(r"(?<![a-z])(?:un[cfs]?|unef|bs[wf]|bsp[pt]?|nptf?|acme|ba|lh)$", re.IGNORECASE)
"""How the name of a thread ends that begins with a number; no unit does."""


def place_of_thread(sheet: Calculation) -> str:
    """The field of a calculation in which a thread may be named; empty where it asks for no such size.

    Example:
        >>> from geometry.calculations import calculation
        >>> place_of_thread(calculation("lead-over-land")), place_of_thread(calculation("wheel-speed"))
        ('diameter', '')
    """
    return next((place for place in PLACES if sheet.field(place) is not None), "")


def with_thread(
    sheet: Calculation, typed: Mapping[str, str], book: Book | None = None, *, threaded: bool = True
) -> tuple[Mapping[str, str], list[Issue]]:
    """Put what a thread gives in the place of its name; what else was typed stays.

    Args:
        sheet: the calculation.
        typed: what was typed, by field.
        book: whose own threads go before the standard ones.
        threaded: whether the tool is called by its thread; the diameter of any other is not that of its screw, but in a
            calculation of the thread itself, which asks for the pitch.

    Returns:
        The texts to read, and an issue where the name is no thread or several.

    Example:
        >>> from geometry.calculations import calculation
        >>> with_thread(calculation("lead-over-land"), {"diameter": "M12"})[0]["pitch"]
        '1.75 mm'
    """
    typed = _with_drills(sheet, typed)
    place = place_of_thread(sheet)
    name = typed.get(place, "").strip()
    if not name or not _may_be_a_thread(name):
        return typed, []
    from library.shop_threads.laying import own_threads
    from library.threads import NotChosen, choose, find_threads, texts_for

    own = own_threads(book)
    if not (name[0].isalpha() or name[0] == "#" or _SERIES.search(name) or find_threads(name, own)):
        return typed, []
    rest = {key: text for key, text in typed.items() if key != place and text.strip()}
    try:
        thread = choose(name, own)
    except NotChosen as error:
        return rest, [Issue(sheet.name, place, "error", f"{place}: {error}")]
    if not threaded and sheet.field("pitch") is None:
        return rest, [Issue(sheet.name, place, "error", f"{place}: {not_its_diameter(name)}")]
    return texts_for(sheet, thread, rest) | rest, []


def not_its_diameter(name: str) -> str:
    """What is said of a thread's name that stands for the diameter of a tool that has none.

    Example:
        >>> not_its_diameter("M8").partition(";")[0]
        'M8 is the screw or its thread, and not the diameter of this tool'
    """
    return (
        f"{name} is the screw or its thread, and not the diameter of this tool; that is another one, as for the "
        "head of the screw or the hole under its thread. Measure the tool, and give its diameter."
    )


def _with_drills(sheet: Calculation, typed: Mapping[str, str]) -> Mapping[str, str]:
    """The same with the diameter of each numbered or lettered drill that was typed for a length."""
    named = {
        key: text
        for key, text in typed.items()
        if text[:1] in _BEGIN_A_DRILL and key in QUANTITIES and quantity(key).kind is Kind.LENGTH
    }
    if not named or not any(sheet.field(key) is not None for key in named):
        return typed
    from library.drills import drill_size

    return {key: (drill_size(text) or text) if key in named else text for key, text in typed.items()}


def _may_be_a_thread(name: str) -> bool:
    """Whether it cannot be read as a length, so that nobody's number is ever taken for a thread."""
    try:
        parse(name, Kind.LENGTH)
    except UnitError:
        return any(sign.isdigit() for sign in name)
    return False
