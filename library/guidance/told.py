"""A line of text that says where it came from: ``{ text = "...", source = "...", place = "..." }``.

A line may name quantities in braces, ``the chamfer angle {chamfer_angle}``: where a job knows the number it stands there in
brackets, and everywhere else nothing does. A length in braces, ``{0.02 mm}``, is shown in the unit that is worked in.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from geometry.quantities import QUANTITIES
from geometry.sentences import Kind
from library.book.diagnostics import Location, shown
from library.book.fields import one_line
from library.book.model import Citation
from library.book.values import citation
from library.units.read import UnitError, read

KEYS = ("text", "source", "place")
"""What the table of a line may hold."""

_NAMED = re.compile(r"( ?)\{([^{}]*)\}")
_FIRST = re.compile(r".*?[.!?](?=\s|$)")

Convert = Callable[[float, Kind], str]
"""Writes a length in the unit that is worked in."""


NO_SOURCE = Citation("missing")


@dataclass(frozen=True)
class Told:
    """One line with its source.

    Attributes:
        text: as it stands in the file.
        citation: where it came from.
    """

    text: str
    citation: Citation = NO_SOURCE

    def said(self, number: Callable[[str], str] = lambda key: "", convert: Convert | None = None) -> str:
        """The line as it is read.

        Args:
            number: gives the number of a quantity with its unit, or nothing.
            convert: writes the lengths that stand in it; without it they stand as typed.

        Example:
            >>> told = Told("Swivel to the point angle {point_angle}, then take {0.02 mm}.")
            >>> told.said(), told.said({"point_angle": "118 deg"}.get)
            ('Swivel to the point angle, then take 0.02 mm.', 'Swivel to the point angle (118 deg), then take 0.02 mm.')
        """

        def filled(found: re.Match[str]) -> str:
            blank, named = found.groups()
            if named[:1].isdigit():
                return blank + (named if convert is None else _converted(named, convert))
            known = number(named)
            return f" ({known})" if known else ""

        return _NAMED.sub(filled, self.text)

    def in_short(self, number: Callable[[str], str] = lambda key: "", convert: Convert | None = None) -> str:
        """Its first sentence, which says what to do; what follows says how and why.

        Example:
            >>> Told("Dress the wheel. It cuts cool then.").in_short()
            'Dress the wheel.'
        """
        said = self.said(number, convert)
        found = _FIRST.match(said)
        return found[0] if found else said


def told(raw: object, location: Location) -> Told | None:
    """Read a line: a table with its source, or the text alone, which is then without one."""
    if isinstance(raw, Mapping):
        return _from_table(raw, location)
    text = one_line(raw, location)
    if text is None:
        return None
    location.complain("This line has no source.", 'Write it as { text = "...", source = "shop" }, or name '
                      '"common practice", "from memory" or the id of a [[source]].', "warning")  # fmt: skip
    return Told(_with_known_names(text, location))


def _from_table(table: Mapping[str, object], location: Location) -> Told | None:
    for key in table:
        if key not in KEYS and not key.startswith("x-"):
            near = location.near(key, KEYS)
            fix = f"Did you mean {near}?" if near else f"A line takes {', '.join(KEYS)}."
            location.at(key).complain(f"A line has no key {shown(key)}.", fix, "warning")
    if "text" not in table:
        location.complain("This line has no text.", 'Add text = "...".')
        return None
    text = one_line(table["text"], location.at("text"))
    if text is None:
        return None
    return Told(_with_known_names(text, location.at("text")), citation(table, location))


def _converted(text: str, convert: Convert) -> str:
    """A length in the unit that is worked in; as typed where it has that unit already."""
    try:
        written = convert(read(text, Kind.LENGTH, unit_wanted=True).number, Kind.LENGTH)
    except UnitError:
        return text
    return text if text.split()[-1:] == written.split()[-1:] else written


def _with_known_names(text: str, location: Location) -> str:
    """The text, after complaining of each name in braces that no quantity has, and of each length that is none."""
    for _, name in _NAMED.findall(text):
        if name[:1].isdigit():
            try:
                read(name, Kind.LENGTH, unit_wanted=True)
            except UnitError as error:
                wrong, _, fix = str(error).partition("; ")
                location.complain(wrong.rstrip(".") + ".", f"{fix[:1].upper()}{fix[1:]}")
        elif name not in QUANTITIES:
            near = location.near(name, QUANTITIES)
            fix = f"Did you mean {{{near}}}?" if near else "'heelclear glossary' lists the quantities."
            location.complain(f"There is no quantity {shown(name)}.", fix, "warning")
    return text
