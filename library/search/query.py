"""Parse a search: words, and conditions such as ``rake>8`` or ``land<=2mm``."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches

from geometry.quantities import QUANTITIES, Quantity
from geometry.quantities.terms import names_of
from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.book.value_ranges import ValueRange
from library.units.read import UnitError, read
from library.units.system import METRIC, Display

_CONDITION = re.compile(
    r"(?<![A-Za-z_-])[_-]*+(?P<name>[A-Za-z][A-Za-z_-]*+)\s*+(?P<sign><=|>=|=|<|>)\s*(?P<value>[^\s<>=]+(?:\s(?:deg|min|mm|in|inch|thou|tpi|rpm|m/s|ft/min))?)"
)
_UNFINISHED = re.compile(r"(?<![A-Za-z_-])[_-]*+[A-Za-z][A-Za-z_-]*+\s*+(?:<=|>=|=|<|>)\s*$")
FACE_ANGLES = ("rake_angle", "hook_angle")
"""How a face leans: at its edge, and along its chord. A book of taps gives either."""

_SAME = 1e-9
"""How far apart two numbers may be, in their own measure, that were written differently and mean the same."""

_UNITS = ["deg", "min", "mm", "in", "inch", "thou", "tpi", "rpm", "m/s", "ft/min"]


@dataclass(frozen=True)
class Condition:
    """One comparison.

    Attributes:
        text: as typed.
        keys: the quantities that the name may mean; one that fits is enough.
        sign: the comparison.
        bounds: what to compare with, by kind, in geometry's units.
        word: what to compare with where the quantity is a choice.
    """

    text: str
    keys: tuple[str, ...]
    sign: str
    bounds: Mapping[Kind, float] = field(default_factory=dict)
    word: str = ""

    def fits(self, key: str, ranges: Iterable[ValueRange]) -> bool:
        """Whether some recommended value of an entry fits; for ``=`` it may lie anywhere in the range.

        Args:
            key: the quantity, one of ``keys``.
            ranges: what the entry says of it, each source by itself.
        """
        bound = self.bounds.get(QUANTITIES[key].kind)
        return any(
            self.sign == "=" and self.word != "" and span.startswith(self.word)
            if isinstance(span, str)
            else bound is not None and _fits(self.sign, *span, bound)
            for span in ranges
        )


def _fits(sign: str, low: float, high: float, bound: float) -> bool:
    near = _SAME * max(abs(bound), abs(low), abs(high))
    match sign:
        case "<":
            return low < bound - near
        case "<=":
            return low <= bound + near
        case ">":
            return high > bound + near
        case ">=":
            return high >= bound - near
        case _:
            return low - near <= bound <= high + near


@dataclass(frozen=True)
class Query:
    """A text to search for, taken apart.

    Attributes:
        words: casefolded words that must all be found in an entry's text.
        conditions: comparisons that must all fit.
        troubles: sentences about what could not be understood; such a part is left out.
        unfinished: a condition at the end that has no value yet, such as ``rake>``; it is left out too.
    """

    words: tuple[str, ...]
    conditions: tuple[Condition, ...] = ()
    troubles: tuple[str, ...] = ()
    unfinished: str = ""

    @property
    def told(self) -> tuple[str, ...]:
        """What has to be said of what counts for nothing, in sentences; of a number that is still being typed nothing yet.

        Example:
            >>> parse("gun tap rake>").told
            ("'rake>' has nothing to compare with; write it such as 'rake>8'.",)
        """
        begun = f"{self.unfinished!r} has nothing to compare with; write it such as 'rake>8'."
        is_number_begun = any(sign.isdecimal() for sign in self.unfinished)
        return (*self.troubles, begun) if self.unfinished and not is_number_begun else self.troubles


def has_condition(text: str) -> bool:
    """Whether a text may hold a condition, so that it has to be taken apart.

    Example:
        >>> has_condition("gun tap"), has_condition("gun tap rake>")
        (False, True)
    """
    return not set("<>=").isdisjoint(text)


def parse(text: str, display: Display = METRIC, *, is_typing: bool = False) -> Query:
    """Take apart what was typed; nothing is raised, for a half-typed condition is no mistake.

    Args:
        text: words and conditions, in any order.
        display: the unit of a length typed without one.
        is_typing: whether more may be typed behind it; a condition at the very end that means nothing yet, and
            a unit of which only the beginning is there, then are unfinished.

    Example:
        >>> found = parse("gun tap rake>8")
        >>> found.words, "rake_angle" in found.conditions[0].keys
        (('gun', 'tap'), True)
        >>> parse("rake>8 d", is_typing=True).words
        ()
    """
    conditions: list[Condition] = []
    troubles: list[str] = []
    unfinished: list[str] = []

    def take(match: re.Match[str]) -> str:
        rows = quantities_named(match["name"])
        if not rows:
            troubles.append(_nobody_called(match["name"]))
            return " "
        try:
            conditions.append(_condition(match, rows, display))
        except UnitError as error:
            is_last = is_typing and match.end() == len(text)
            (unfinished if is_last else troubles).append(match[0] if is_last else str(error))
        return " "

    rest = _CONDITION.sub(take, _without_half_a_unit(text) if is_typing else text)
    begun = _UNFINISHED.search(rest)
    if begun is not None:
        unfinished.append(begun[0].strip())
        rest = rest[: begun.start()]
    words = tuple(rest.casefold().split())
    return Query(words, tuple(conditions), tuple(troubles), " ".join(unfinished))


def _without_half_a_unit(text: str) -> str:
    """The text without the beginning of a unit behind a condition's number at its end."""
    before, blank, last = text.rpartition(" ")
    is_half = last and any(unit.startswith(last) and unit != last for unit in _UNITS)
    ends_in_a_condition = any(match.end() == len(before) for match in _CONDITION.finditer(before))
    return before if blank and is_half and ends_in_a_condition else text


def _nobody_called(name: str) -> str:
    words = {word for row in QUANTITIES.values() for word in (row.key, *row.key.split("_"))}
    near = get_close_matches(name.casefold(), sorted(words), n=1)
    return f"No quantity is called {name!r}{f'; did you mean {near[0]}?' if near else '.'}"


def _condition(match: re.Match[str], rows: tuple[Quantity, ...], display: Display) -> Condition:
    keys = tuple(row.key for row in rows)
    words = [choice for row in rows for choice in row.choices]
    word = match["value"].casefold()
    if any(choice.startswith(word) for choice in words):
        return Condition(match[0], keys, match["sign"], word=word)
    bounds, wrong = _bounds(match["value"], {row.kind for row in rows} - {Kind.CHOICE}, display)
    if not bounds:
        choices = f"it can be {' or '.join(words)}."
        raise UnitError(f"{match[0]!r}: {wrong or choices}")
    return Condition(match[0], keys, match["sign"], bounds)


def _bounds(text: str, kinds: set[Kind], display: Display) -> tuple[dict[Kind, float], str]:
    bounds: dict[Kind, float] = {}
    wrong = ""
    for kind in kinds:
        try:
            bounds[kind] = read(text, kind, display).number
        except UnitError as error:
            wrong = str(error)
    return bounds, wrong


def quantities_named(name: str) -> tuple[Quantity, ...]:
    """The quantities that a short name may mean: the whole key or title, else those that begin with it, else hold it.

    Another name that the trade has for a quantity counts as its title does. Rake and hook are sought together, because books give
    either of a tap.

    Example:
        >>> [row.key for row in quantities_named("lead")]
        ['lead']
        >>> "cone_relief_angle" in [row.key for row in quantities_named("relief")]
        True
        >>> [row.key for row in quantities_named("hook")]
        ['rake_angle', 'hook_angle']
        >>> [row.key for row in quantities_named("no such thing")]
        []
    """
    sought = name.casefold().replace("-", " ").replace("_", " ").strip()

    def names(row: Quantity) -> tuple[str, ...]:
        return row.key.replace("_", " "), row.title.casefold(), *names_of(row.key)

    tests: tuple[Callable[[str], bool], ...] = (
        lambda one: one == sought,
        lambda one: one.startswith(f"{sought} "),
        lambda one: f" {sought} " in f" {one} ",
        lambda one: one.startswith(sought),
    )
    for test in tests:
        if found := tuple(row for row in QUANTITIES.values() if any(test(one) for one in names(row))):
            return _rake_or_hook(_of_any_surface(found))
    return ()


def _rake_or_hook(found: tuple[Quantity, ...]) -> tuple[Quantity, ...]:
    """The same, and where one angle of a tap's face is meant the other beside it."""
    if found and all(row.key not in FACE_ANGLES for row in found):
        return found
    both = tuple(QUANTITIES[key] for key in FACE_ANGLES)
    return (*both, *(row for row in found if row not in both))


def _of_any_surface(found: tuple[Quantity, ...]) -> tuple[Quantity, ...]:
    """The same, and where a relief is meant without its surface, that of each surface."""
    if all(row.key != "relief_angle" for row in found):
        return found
    own = (QUANTITIES[one.relief_key] for one in SURFACES.values() if one.relief_key in QUANTITIES)
    return tuple(dict.fromkeys((*found, *own)))
