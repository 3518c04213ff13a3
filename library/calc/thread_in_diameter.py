"""A thread typed where a diameter is asked for: ``M16`` or ``5/8-11 UNC`` fills diameter, pitch and starts.

Where a measured diameter stands in its place, the thread is named by the nominal size, and gives all else.

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

NOMINAL = "nominal_diameter"
"""Where the name of a thread stays while the diameter of its tap is measured and typed."""

PLACES = ("diameter", NOMINAL)
"""The fields in which a thread may be named; the first that a calculation asks for comes first."""


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
    name, called = (typed.get(key, "").strip() for key in (place, NOMINAL))
    if not place or place == NOMINAL or not is_named(called, book):
        return _filled(sheet, typed, place, book, threaded=threaded) if is_named(name, book) else (typed, [])
    others = {key: text for key, text in typed.items() if key != NOMINAL}
    if not is_named(name, book):
        filled, wrong = _filled(sheet, typed, NOMINAL, book, threaded=threaded)
        return (filled, wrong) if sheet.field(NOMINAL) is not None or not wrong else (others, [])
    filled, wrong = _filled(sheet, others, place, book, threaded=threaded)
    if name.casefold() != called.casefold():
        other = (
            f"{NOMINAL}: {called} is another thread than the {name} of the diameter. Name the thread once."
        )
        wrong = [*wrong, Issue(sheet.name, NOMINAL, "error", other)]
    return filled, wrong


def _filled(
    sheet: Calculation, typed: Mapping[str, str], place: str, book: Book | None, *, threaded: bool
) -> tuple[Mapping[str, str], list[Issue]]:
    """The texts with what the thread that is named in a place gives, and an issue where it is none or several."""
    from library.shop_threads.laying import own_threads
    from library.threads import NotChosen, choose, texts_for

    name = typed[place].strip()
    rest = {key: text for key, text in typed.items() if key != place and text.strip()}
    try:
        thread = choose(name, own_threads(book))
    except NotChosen as error:
        return rest, [Issue(sheet.name, place, "error", f"{place}: {error}")]
    if not threaded and sheet.field("pitch") is None:
        return rest, [Issue(sheet.name, place, "error", f"{place}: {not_its_diameter(name)}")]
    return texts_for(sheet, thread, rest) | rest, []


def is_named(text: str, book: Book | None = None) -> bool:
    """Whether a text is meant as the name of a thread, right or wrong, and cannot be read as a length.

    Example:
        >>> is_named("Tr 16x4"), is_named("16.5 mm"), is_named("wide")
        (True, False, False)
    """
    if not text or not _may_be_a_thread(text):
        return False
    if text[0].isalpha() or text[0] == "#" or _SERIES.search(text):
        return True
    from library.shop_threads.laying import own_threads
    from library.threads import find_threads

    return bool(find_threads(text, own_threads(book)))


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
