"""Parse and validate the keys of a machine and of a wheel."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, datetime

from geometry.evaluate import unfit
from geometry.quantities import QUANTITIES, Quantity
from geometry.sentences import Kind
from library.book.diagnostics import Location, nearest, shown
from library.book.fields import Reader, one_line
from library.book.model import Measure
from library.book.retired import fix_for
from library.calc.wording import by_title
from library.equipment.model import Rating, Reach
from library.units.read import Reading, UnitError, read
from library.units.show import say
from library.units.system import METRIC

MOST = 200
"""Speeds, throws or circles that one machine may list."""


def measured(key: str) -> Reader:
    """A reader for one measure of a quantity, its unit written with it."""

    def take(raw: object, location: Location) -> Measure | None:
        return _measure(raw, location, QUANTITIES[key])

    return take


def several(key: str) -> Reader:
    """A reader for a list of measures of one quantity, put in order, the smallest first."""

    def take(raw: object, location: Location) -> tuple[Measure, ...] | None:
        found = [
            _measure(one, location.at(number), QUANTITIES[key]) for number, one in _listed(raw, location)
        ]
        return tuple(sorted((one for one in found if one), key=lambda one: one.number))

    return take


def counted(key: str) -> Reader:
    """A reader for one whole number."""

    def take(raw: object, location: Location) -> int | None:
        found = _measure(raw, location, QUANTITIES[key])
        return None if found is None else int(found.number)

    return take


def counts(key: str) -> Reader:
    """A reader for a list of whole numbers, each kept once."""

    def take(raw: object, location: Location) -> tuple[int, ...] | None:
        found = [
            _measure(one, location.at(number), QUANTITIES[key]) for number, one in _listed(raw, location)
        ]
        return tuple(sorted({int(one.number) for one in found if one}))

    return take


def chosen(key: str) -> Reader:
    """A reader for one word out of a quantity's choices."""

    def take(raw: object, location: Location) -> str | None:
        if isinstance(raw, str) and raw in QUANTITIES[key].choices:
            return raw
        choices = f"It can be {' or '.join(QUANTITIES[key].choices)}."
        location.complain(
            f"This is {shown(raw)}.", fix_for(raw, "", choices) if isinstance(raw, str) else choices
        )
        return None

    return take


def reach(key: str) -> Reader:
    """A reader for a table with ``low`` and ``high``."""

    def take(raw: object, location: Location) -> Reach | None:
        if not isinstance(raw, Mapping):
            location.complain(f"This is {shown(raw)}; a range is wanted.",
                          'Write it as { low = "...", high = "..." }.')  # fmt: skip
            return None
        want_keys(raw, ("low", "high"), location, "range")
        return ends(raw, location, QUANTITIES[key].kind)

    return take


def rating(raw: object, location: Location) -> Rating | None:
    """Read the rating of a wheel, which its maker gives as a surface speed or as turns."""
    found = reading(raw, location, Kind.SPEED, Kind.ROTATION)
    if found is None:
        return None
    key = "rated_speed" if found.kind is Kind.SPEED else "rated_rotational_speed"
    measure = _sensible(found, location, QUANTITIES[key])
    return Rating(measure, key) if measure else None


def day(raw: object, location: Location) -> date | None:
    """Read a day, written as TOML writes it or as the same in quotes."""
    found = as_day(raw)
    if found is None:
        location.complain(
            f"This is {shown(raw)}; a day is wanted.", "Write it as year-month-day: 2026-11-25."
        )
    return found


def as_day(raw: object) -> date | None:
    """A day from what TOML gives for it, or nothing.

    Example:
        >>> as_day("2026-02-30") is None, as_day("2026-02-28").day
        (True, 28)
    """
    if isinstance(raw, datetime):
        return raw.date()
    if isinstance(raw, date):
        return raw
    try:
        return date.fromisoformat(raw) if isinstance(raw, str) and len(raw) == 10 else None
    except ValueError:
        return None


def reading(
    raw: object, location: Location, kind: Kind, *others: Kind, whole: bool = False
) -> Reading | None:
    """Read a number with its unit, complaining where it has none or one of another kind; of what is counted, a whole one."""
    text = one_line(raw, location)
    if text is None:
        return None
    try:
        return read(text, kind, other_kinds=others, unit_wanted=True, whole=whole)
    except UnitError as error:
        complain_of(str(error), location)
        return None


def ends(raw: Mapping[str, object], location: Location, kind: Kind) -> Reach:
    """Read ``low`` and ``high`` of a table, and see that they stand in this order."""
    low, high = end(raw, "low", location, kind), end(raw, "high", location, kind)
    if low is None or high is None or low.number <= high.number:
        return Reach(low, high)
    location.at("low").complain(
        f"low is {shown(low.text)}, more than high, which is {shown(high.text)}.",
        "Put the smaller one first.",
    )
    return Reach(high, low)


def end(raw: Mapping[str, object], key: str, location: Location, kind: Kind) -> Measure | None:
    """Read one measure of a table, where it has that key."""
    found = reading(raw[key], location.at(key), kind) if key in raw else None
    return Measure(found.text, found.number) if found else None


def want_keys(raw: Mapping[str, object], keys: tuple[str, ...], location: Location, what: str) -> None:
    """Complain of every key that such a table does not take."""
    for key in raw:
        if key not in keys and not key.startswith("x-"):
            near = nearest(key, list(keys))
            fix = f"Did you mean {near}?" if near else f"A {what} takes {', '.join(keys)}."
            location.at(key).complain(f"A {what} has no key {shown(key)}.", fix, "warning")


def complain_of(sentence: str, location: Location) -> None:
    """Pass on a sentence whose second half, after a semicolon, says what to do."""
    location.complain(*in_two(sentence))


def in_two(sentence: str) -> tuple[str, str]:
    """What is wrong and what to do, each a sentence, out of one in which a semicolon parts them.

    Example:
        >>> in_two("'1; 2' is a list; one value is wanted.")
        ("'1; 2' is a list.", 'One value is wanted.')
    """
    # What was typed is quoted first, and may have a semicolon itself.
    quoted = sentence.rfind("'") + 1
    wrong, _, fix = sentence[quoted:].partition("; ")
    wrong = sentence[:quoted] + wrong
    return wrong if wrong.endswith(".") else wrong + ".", fix[:1].upper() + fix[1:]


def _measure(raw: object, location: Location, row: Quantity) -> Measure | None:
    text = repr(raw) if isinstance(raw, int | float) and not isinstance(raw, bool) else raw
    found = reading(text, location, row.kind, whole=row.whole)
    return _sensible(found, location, row) if found else None


def _sensible(found: Reading, location: Location, row: Quantity) -> Measure | None:
    wrong = unfit(row, found.number)
    if wrong:
        complain_of(by_title(say(wrong, METRIC)), location)
        return None
    return Measure(found.text, found.number)


def _listed(raw: object, location: Location) -> list[tuple[int, object]]:
    if not isinstance(raw, list):
        location.complain(f"This is {shown(raw)}; a list is wanted.", "Write it in brackets.")
        return []
    if len(raw) > MOST:
        location.complain(f"There are {len(raw)} of them; {MOST} are the most.", "Shorten the list.")
    return list(enumerate(raw[:MOST]))
