"""The rows of facts that stand in ``facts/``, and the small arithmetic that lays them beside the book.

A row holds what a document prints, in its own unit and counted as it counts: a half angle stays a half angle, a taper
stays three quarters of an inch to the foot. Nothing here goes through the library: a number of the book and a number of
a document meet as plain floats that were reached in this file.
"""

from __future__ import annotations

import math
import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

SHIPPED = Path(__file__).parents[2] / "library" / "shipped"
FACTS = Path(__file__).parent / "facts"
MEASURES = ("low", "usual", "high")
UNPUBLISHED = {"common practice", "from memory", "shop"}

NOT_AGAIN = "not found again"
"""How the ``read`` of a row begins that was taken over from the book and compared with nothing."""

UNITS: Mapping[str, tuple[str, float]] = {
    "": ("a count or a ratio", 1.0),
    "in to the foot": ("a count or a ratio", 1 / 12),
    "in 16": ("a count or a ratio", 1 / 16),
    "deg": ("an angle", math.pi / 180),
    "deg each side": ("an angle", 2 * math.pi / 180),
    "mm": ("a length", 1.0),
    "um": ("a length", 0.001),
    "in": ("a length", 25.4),
    "mm per 100 mm": ("a length", 1.0),
    "in 1000": ("a length", 0.1),  # back taper: the book gives what the diameter loses over 100 mm
    "D": ("a share of the diameter", 1.0),
    "% of D": ("a share of the diameter", 0.01),
    "mm to the mm": ("a share of the diameter", 1.0),
}
"""What a unit measures, and the factor to mm, radians or one."""

Amount = tuple[str, float] | str
"""What is measured and how much; or a word, for what is chosen."""

_NUMBER = re.compile(
    r"(?:(?P<whole>\d+)[ -])?(?P<part>\d+/\d+|-?\d*\.?\d+)(?: deg (?P<minutes>\d+) min)?\s*(?P<unit>.*)"
)
_FIGURE = re.compile(r"\d+(?:[./]\d+)*")


@dataclass(frozen=True)
class Fact:
    """What a document prints at one place.

    Attributes:
        source: the id of the document.
        place: where in it, as the book names the place.
        quantity: the key of the value that it is about; empty for a line of text.
        of: the tool, size and material that the document speaks of there.
        measures: low, usual and high, in the document's own unit.
        caution: the caution whose text rests on it; empty for any other.
        says: for a line of text, what the document says, with its numbers.
        read: how it was read.
    """

    source: str
    place: str
    quantity: str
    of: str
    measures: tuple[str, ...]
    caution: str
    says: str
    read: str

    @property
    def amounts(self) -> tuple[Amount, ...]:
        return tuple(amount(one) for one in self.measures)


@dataclass(frozen=True)
class Cited:
    """A value, a line of text or a caution of the book that rests on a document."""

    where: str
    source: str
    place: str
    quantity: str = ""
    speaks_of: str = ""
    measures: tuple[str, ...] = ()
    text: str = ""

    @property
    def amounts(self) -> tuple[Amount, ...]:
        return tuple(amount(one) for one in self.measures)


@cache
def amount(text: str) -> Amount:
    """How much a text is, in mm, radians or as a count; a word stays as it is."""
    found = _NUMBER.fullmatch(text.strip())
    if found is None:
        return text.strip()
    number = Fraction(found["part"]) + Fraction(found["whole"] or 0)
    unit = found["unit"]
    if found["minutes"]:
        number += Fraction(int(found["minutes"]), 60)
        unit = f"deg {unit}".strip()
    kind, factor = UNITS[unit]
    return kind, float(number) * factor


def are_alike(ones: tuple[Amount, ...], others: tuple[Amount, ...]) -> bool:
    """Whether low, usual and high are the same on both sides."""
    return all(
        one == other
        or (
            isinstance(one, tuple)
            and isinstance(other, tuple)
            and one[0] == other[0]
            and math.isclose(one[1], other[1], rel_tol=1e-9)
        )
        for one, other in zip(ones, others, strict=True)
    )


def figures(text: str) -> set[str]:
    """The numbers in a text, as they are written.

    The name of a wheel's shape is no number of a document, and neither are round millimetres in brackets behind inches.
    """
    named = re.sub(r"\b[Tt]ypes? \d+(?:(?: or | and )\d+)*", "", text)
    plain = re.sub(r"([\d./]+) in \(([\d.]+) mm\)", _without_the_same_in_mm, named)
    return {one if "/" in one or one.count(".") > 1 else f"{float(one):g}" for one in _FIGURE.findall(plain)}


def figures_said(text: str) -> set[str]:
    """The numbers that a document says, metres a minute also as the whole metres a second nearest to them."""
    said = figures(text)
    return said | ({f"{float(one) / 60:.0f}" for one in said} if "m/min" in text else set())


def _without_the_same_in_mm(found: re.Match[str]) -> str:
    inches, millimetres = float(Fraction(found[1])) * 25.4, float(found[2])
    return f"{found[1]} in" if math.isclose(inches, millimetres, rel_tol=0.06) else found[0]


@cache
def documents() -> tuple[Mapping[str, Any], ...]:
    """The documents of every file, those too of which the book has no number."""
    return tuple(
        source
        for path in sorted(FACTS.glob("*.toml"))
        for source in tomllib.loads(path.read_text("utf-8")).get("source", [])
    )


@cache
def facts() -> tuple[Fact, ...]:
    """Every row of every file."""
    return tuple(
        Fact(
            source=source["id"],
            place=row["place"],
            quantity=row.get("quantity", ""),
            of=row["of"],
            measures=tuple(row.get(one, "") for one in MEASURES),
            caution=row.get("caution", ""),
            says=row.get("says", ""),
            read=row.get("read", source.get("read", "")),
        )
        for source in documents()
        for row in source["rows"]
    )


@cache
def shipped() -> Mapping[str, list[dict[str, Any]]]:
    """The tables of the shipped files, by their name."""
    tables: dict[str, list[dict[str, Any]]] = {}
    for path in sorted(SHIPPED.glob("*.toml")):
        for name, found in tomllib.loads(path.read_text("utf-8")).items():
            if isinstance(found, list):
                tables.setdefault(name, []).extend(found)
    return tables


@cache
def cited() -> tuple[Cited, ...]:
    """Everything in the shipped files that rests on a document, cautions apart."""
    return tuple(
        one
        for name, tables in shipped().items()
        if name not in {"caution", "source"}
        for table in tables
        for one in _cited_in(table, f"{name} {table['id']}", "")
    )


def _cited_in(node: object, where: str, key: str) -> Iterator[Cited]:
    """What of a table rests on a document, whatever the table is called and however deep it stands."""
    if isinstance(node, list):
        for one in node:
            yield from _cited_in(one, where, key)
    if not isinstance(node, dict):
        return
    source = node.get("source")
    if isinstance(source, str) and source not in UNPUBLISHED:
        measures = tuple(str(node.get(one, "")) for one in MEASURES)
        quantity = key if any(measures) else ""
        place, of = node.get("place", ""), node.get("speaks_of", "")
        text = node.get("text", "")
        yield Cited(f"{where}.{key}", source, place, quantity, of, measures, text)
    for name, one in node.items():
        yield from _cited_in(one, where, key if name in {"also", "bands"} else name)
