"""What a person types to find a tool: words, and conditions such as ``rake>8`` or ``land<=2mm``."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from operator import ge, gt, le, lt

from geometry.quantities import QUANTITIES, Quantity
from geometry.sentences import Kind
from library.book.model import Entry, Value
from library.units.read import UnitError, read
from library.units.system import METRIC, Display

_CONDITION = re.compile(
    r"(?<![A-Za-z_-])[_-]*+(?P<name>[A-Za-z][A-Za-z_-]*+)\s*+(?P<sign><=|>=|=|<|>)\s*(?P<value>[^\s<>=]+(?:\s(?:deg|min|mm|in|inch|thou|tpi|rpm|m/s|ft/min))?)"
)
_UNFINISHED = re.compile(r"(?<![A-Za-z_-])[_-]*+[A-Za-z][A-Za-z_-]*+\s*+(?:<=|>=|=|<|>)\s*$")
_SAME = 1e-9

_SIGNS: Mapping[str, Callable[[float, float], bool]] = {
    "<": lt,
    ">": gt,
    "<=": le,
    ">=": ge,
    "=": lambda a, b: abs(a - b) <= _SAME * max(1.0, abs(a), abs(b)),
}


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

    def fits(self, entry: Entry) -> bool:
        """Whether some recommended value of the entry, its own or another source's, fits."""
        return any(key in entry.values and self._value_fits(entry.values[key]) for key in self.keys)

    def _value_fits(self, value: Value) -> bool:
        kind = QUANTITIES[value.key].kind
        for measure in (value.low, value.usual, value.high):
            if measure is None or measure.per_diameter:
                continue
            if kind is Kind.CHOICE:
                if self.sign == "=" and self.word and measure.word.startswith(self.word):
                    return True
            elif kind in self.bounds and _SIGNS[self.sign](measure.number, self.bounds[kind]):
                return True
        return any(self._value_fits(other) for other in value.also)


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

    def fits(self, text: str, entry: Entry) -> bool:
        """Whether an entry with this casefolded text is what is sought."""
        return all(word in text for word in self.words) and all(one.fits(entry) for one in self.conditions)


def parse(text: str, display: Display = METRIC) -> Query:
    """Take apart what was typed; nothing is raised, for a half-typed condition is no mistake.

    Args:
        text: words and conditions, in any order.
        display: the unit of a length typed without one.

    Example:
        >>> found = parse("gun tap rake>8")
        >>> found.words, "rake_angle" in found.conditions[0].keys
        (('gun', 'tap'), True)
    """
    conditions: list[Condition] = []
    troubles: list[str] = []

    def take(match: re.Match[str]) -> str:
        try:
            conditions.append(_condition(match, display))
        except UnitError as error:
            troubles.append(str(error))
        return " "

    rest = _CONDITION.sub(take, text)
    begun = _UNFINISHED.search(rest)
    if begun is not None:
        rest = rest[: begun.start()]
    words = tuple(rest.casefold().split())
    return Query(words, tuple(conditions), tuple(troubles), begun[0].strip() if begun else "")


def _condition(match: re.Match[str], display: Display) -> Condition:
    rows = quantities_named(match["name"])
    if not rows:
        raise UnitError(f"No quantity is called {match['name']!r}; 'heelclear glossary' lists them.")
    keys = tuple(row.key for row in rows)
    words = {choice for row in rows for choice in row.choices}
    word = match["value"].casefold()
    if any(choice.startswith(word) for choice in words):
        return Condition(match[0], keys, match["sign"], word=word)
    bounds, wrong = _bounds(match["value"], {row.kind for row in rows} - {Kind.CHOICE}, display)
    if not bounds:
        raise UnitError(f"{match[0]!r}: {wrong}")
    return Condition(match[0], keys, match["sign"], bounds)


def _bounds(text: str, kinds: set[Kind], display: Display) -> tuple[dict[Kind, float], str]:
    bounds: dict[Kind, float] = {}
    wrong = "there is nothing of that name to compare with."
    for kind in kinds:
        try:
            bounds[kind] = read(text, kind, display).number
        except UnitError as error:
            wrong = str(error)
    return bounds, wrong


def quantities_named(name: str) -> tuple[Quantity, ...]:
    """The quantities that a short name may mean: the whole key or title, else those that begin with it, else hold it.

    Example:
        >>> [row.key for row in quantities_named("lead")]
        ['lead']
        >>> [row.key for row in quantities_named("no such thing")]
        []
    """
    sought = name.casefold().replace("-", " ").replace("_", " ").strip()

    def names(row: Quantity) -> tuple[str, str]:
        return row.key.replace("_", " "), row.title.casefold()

    tests: tuple[Callable[[str], bool], ...] = (
        lambda one: one == sought,
        lambda one: one.startswith(f"{sought} "),
        lambda one: f" {sought} " in f" {one} ",
        lambda one: one.startswith(sought),
    )
    for test in tests:
        if found := tuple(row for row in QUANTITIES.values() if any(test(one) for one in names(row))):
            return found
    return ()
