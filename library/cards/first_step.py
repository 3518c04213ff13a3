"""Where a tool has several diameters, its point stands on the first of them: lip, chisel edge and web have that diameter.

Everything else of such a tool goes by its largest diameter, or takes all of them. Derived from how such tools are made:
a step drill and a subland drill drill with their first step, a centre drill with its pilot.
"""

from __future__ import annotations

from collections.abc import Sequence

from geometry.calculation import Calculation
from geometry.sentences import Kind
from library.book.model import Book, Entry
from library.calc.of_several import AT_THE_POINT, is_at_point
from library.calc.surfaces import FIELD, first
from library.cards.model import Card, Setting
from library.cards.of_that_day import is_dated
from library.cards.provenance import Provenance
from library.cards.sizes import each_size, sizes_of
from library.units.read import UnitError, read
from library.units.system import Display

DIAMETER, PILOT, LAND = "diameter", "pilot_diameter", "land_width"

SHOULDER, INNER = "shoulder", "inner_diameter"
"""The surface between two steps, and the diameter on which its edge begins."""

ALIKE = 0.95
"""Readings of one diameter lie nearer together than this share: a tooth that stands in so far does not cut; no source."""


def at_its_place(
    sheet: Calculation,
    texts: dict[str, str],
    provenance: dict[str, Provenance],
    card: Card,
    entry: Entry,
    book: Book,
    display: Display,
    ground: str = "",
) -> tuple[dict[str, str], dict[str, Provenance]]:
    """What fills a calculation, with the diameter of the first step where it is about the point of a tool with steps.

    A land that was measured elsewhere on the tool counts there with the turn that it has, so that all readings of
    the job stand at the same places of the tooth.

    Args:
        sheet: the calculation.
        texts: that fill it, by quantity.
        provenance: of each.
        card: with the sizes of the tool and what was measured on it.
        entry: what the tool shall have.
        book: with the family of the tool.
        display: the units of numbers typed without one.
        ground: the surface of the job, on which its land was measured.
    """
    field = sheet.field(DIAMETER)
    if field is None or field.many or provenance.get(DIAMETER) == "typed":
        return texts, provenance
    surface = texts.get(FIELD) or first(sheet, entry, book)
    if surface == SHOULDER and sheet.field(INNER) is not None and not is_dated(card):
        begins = _step_below(texts.get(DIAMETER, ""), card, display) if INNER not in texts else ""
        if begins:
            return {**texts, INNER: begins}, {**provenance, INNER: _origin(begins, card)}
    if not is_at_point(sheet, surface):
        return texts, provenance
    then = card.settings.get(sheet.name, Setting()).filled if is_dated(card) else {}
    found = then.get(DIAMETER) or diameter_at_point(card, entry, display)
    if not found:
        return texts, provenance
    land = {} if AT_THE_POINT in (ground, texts.get(FIELD)) else _land_at(texts, provenance, found, display)
    where: dict[str, Provenance] = {DIAMETER: _origin(found, card), **dict.fromkeys(land, "worked")}
    return {**texts, DIAMETER: found, **land}, {**provenance, **where}


def _origin(text: str, card: Card) -> Provenance:
    """Where a diameter comes from: what was measured, what is marked on the tool, or what is wanted."""
    if text in {*card.received.get(DIAMETER, ()), *card.received.get(PILOT, ())}:
        return "measured"
    return "tool" if len(sizes_of(card.tool.size)) > 1 else "wanted"


def diameter_at_point(card: Card, entry: Entry, display: Display) -> str:
    """The diameter at the point of a tool with several; empty where it has one only, or nobody says.

    Args:
        card: with the sizes of the tool and what was measured on it.
        entry: what the tool shall have, such as a pilot.
        display: the units of numbers typed without one.

    Example:
        >>> from library.cards.model import Tool
        >>> stepped = Card(tool=Tool(size="6, 8, 10 mm"))
        >>> diameter_at_point(stepped, Entry("", "step-drill", ""), Display())
        '6 mm'
    """
    steps = _steps(card, display)
    if not steps:
        return _pilot(card, entry)
    smallest = min(steps, key=lambda text: steps[text])
    found = _numbers(card.received.get(DIAMETER, ()), display)
    there = [text for text, size in found.items() if _nearest(size, steps) == smallest]
    # The corners run on the largest circle that was measured there.
    text = max(there, key=lambda one: found[one]) if there else smallest
    return text if not _is_bare(text) else f"{text} {display.lengths}"


def _steps(card: Card, display: Display) -> dict[str, float]:
    """The diameters of the steps of a tool, in mm by their text, as marked or else as measured; none of a tool that has no steps."""
    sizes, measured = each_size(card.tool.size), card.received.get(DIAMETER, ())
    steps = _numbers(sizes, display) if len(sizes) > 1 else {}
    if steps or len(measured) < 2:
        return steps
    steps = _numbers(measured, display)
    return {} if steps and min(steps.values()) >= ALIKE * max(steps.values()) else steps


def _step_below(outer: str, card: Card, display: Display) -> str:
    """The step on which the shoulder begins that ends on a diameter; empty where the tool has no steps or none is smaller."""
    steps, ends = _steps(card, display), _numbers((outer,), display)
    if not steps or not ends:
        return ""
    above = _nearest(ends[outer], steps)
    text = max((one for one in steps if steps[one] < steps[above]), key=lambda one: steps[one], default="")
    return f"{text} {display.lengths}" if text and _is_bare(text) else text


def _pilot(card: Card, entry: Entry) -> str:
    """The pilot of a tool that drills with it: as it was measured, else as it is wanted."""
    measured = next((one for one in card.received.get(PILOT, ()) if one.strip()), "")
    wanted = entry.values.get(PILOT)
    return measured or (wanted.usual.text if wanted is not None and wanted.usual is not None else "")


def _numbers(texts: Sequence[str], display: Display) -> dict[str, float]:
    """The lengths among some texts, in mm; none where one of them cannot be read."""
    try:
        return {text: read(text, Kind.LENGTH, display).number for text in texts if text.strip()}
    except UnitError:
        return {}


def _nearest(size: float, steps: dict[str, float]) -> str:
    return min(steps, key=lambda text: abs(steps[text] - size))


def _is_bare(text: str) -> bool:
    return text.strip()[-1:].isdigit()


def _land_at(
    texts: dict[str, str], provenance: dict[str, Provenance], point: str, display: Display
) -> dict[str, str]:
    """The land as it is at the point, where it was measured on another diameter than that."""
    land, measured_on = texts.get(LAND, ""), texts.get(DIAMETER, "")
    if not land or not measured_on or provenance.get(LAND) == "typed":
        return {}
    try:
        width = read(land, Kind.LENGTH, display).number
        share = read(point, Kind.LENGTH, display).number / read(measured_on, Kind.LENGTH, display).number
    except (UnitError, ZeroDivisionError):
        return {}
    return {LAND: f"{width * share:.12g} mm"} if share != 1 else {}
