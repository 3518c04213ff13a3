"""What each input of a job's calculations is filled with, and its provenance.

Of several texts for one quantity the first in this order is taken: what was typed into the calculation itself; a value
that a person decided on; what was measured; what is written of the tool, the machine and the wheel; what the book
recommends.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from geometry.calculation import Calculation, Field
from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from geometry.surfaces import GROUND_BACK, surface_of_relief
from library.book.model import Book
from library.book.retired import OF_NO_SURFACE
from library.cards.chosen import POINTS, SURFACE, Chosen, shape_for
from library.cards.editing import readings_of
from library.cards.measured_again import MEASURED_AGAIN, measured_after
from library.cards.model import Card, Readings
from library.cards.sizes import each_size, sizes_of, with_the_marked
from library.cards.thread_names import by_its_name
from library.equipment.filling import texts_of
from library.equipment.model import Machine, Wheel
from library.equipment.offers import read_off
from library.units.read import UnitError, read
from library.units.several import with_the_last_unit
from library.units.slashes import fraction_of_mm
from library.units.system import Display

Provenance = Literal[
    "typed", "measured", "to be", "tool", "machine", "wheel", "wanted", "cam", "worked", "default"
]
"""Where a value comes from: typed into this calculation, measured, what a tool is ground down to, from the cams that were chosen, from an earlier one, and
so on."""

NOT_FROM_MEASURING = frozenset({"drop", "second_drop"})
"""Readings that only say what was there; a setting is never filled with them."""

SET_RIGHT = frozenset({"lip_height_difference"})
"""Faults that grinding sets right: what was measured of them before is measured again after it, and counts from then on."""

NOTHING_CHOSEN = Chosen()
"""Of a card on which nothing can be told yet."""


@dataclass(frozen=True)
class KnownText:
    """One text for one quantity, and where it comes from."""

    key: str
    text: str
    provenance: Provenance


def known_texts(
    card: Card,
    machine: Machine | None,
    wheel: Wheel | None,
    choice: Chosen = NOTHING_CHOSEN,
    book: Book | None = None,
) -> tuple[KnownText, ...]:
    """Everything that is known of the job, the strongest first."""
    found = [*_measured(card), *_of_tool(card, book), *_of_machine(machine), *_of_wheel(wheel)]
    found += _typed_once(card)
    decided = {key for key, one in card.wanted.items() if one.changed or not one.book}
    return (*_of_choice(choice), *(one for one in found if one.key not in decided))


TYPED_ONCE = (
    "feed",
    "wheel_diameter",
    "point_angle",
    "included_angle",
    "bevel_angle",
    "web_thickness",
    "helix_angle",
    "margin_width",
    "primary_land",
)
"""What is one number for the whole job: typed into one calculation, it serves the others."""


def _typed_once(card: Card) -> Iterator[KnownText]:
    """The first text that stands in a calculation for what is one number for the whole job."""
    for key in TYPED_ONCE:
        typed = (one.typed.get(key, "") for one in card.settings.values() if not one.skipped)
        # Several, such as an angle for each shoulder, are no one number.
        text = next((one for one in typed if one.strip() and len(readings_of(one)) == 1), "")
        if text:
            yield KnownText(key, text, "typed")


def _of_choice(choice: Chosen) -> Iterator[KnownText]:
    """What was chosen once for the job; a form that nobody wrote down follows from the method."""
    if choice.surface:
        yield KnownText(SURFACE, choice.surface, "wanted" if SURFACE in choice.by_person else "default")
    if choice.points:
        yield KnownText(POINTS, choice.points, "wanted")
    if choice.form:
        yield KnownText("relief_form", choice.form, "wanted")
    if choice.surface in GROUND_BACK:
        yield KnownText("ground_on", "end", "default")


def _measured(card: Card) -> Iterator[KnownText]:
    relief_wanted = any(surface_of_relief(key) for key in card.wanted)
    for key, readings in card.received.items():
        row = QUANTITIES.get(key)
        if row is None or key in NOT_FROM_MEASURING or not any(one.strip() for one in readings):
            continue
        # The angle that is worn is not the one to grind; the width that is there is the one to grind behind.
        if row.kind is Kind.ANGLE and (key in card.wanted or (key in OF_NO_SURFACE and relief_wanted)):
            continue
        if key in MEASURED_AGAIN and (now := measured_after(card, key)):
            yield KnownText(MEASURED_AGAIN[key], now, "measured")
        again = card.after.get(key) if key in SET_RIGHT else None
        if again is not None and joined(again.readings) and (again.wanted.strip() or again.tolerance.strip()):
            # It is judged by its own limit.
            continue
        if key == "diameter" and (all_steps := of_all_steps(card, readings)):
            # Some are only marked on the tool, so that a record keeps with what it counted.
            yield KnownText(key, joined(all_steps), "tool")
        else:
            found = joined(again.readings if again is not None else ()) or joined(readings)
            yield KnownText(key, found, "measured")
        if key == "diameter":
            yield KnownText("measured_diameter", joined(readings), "measured")


def of_all_steps(card: Card, readings: Readings) -> Readings:
    """The diameters of all steps where only some were measured, the others as marked; nothing else, nor of a record that counted without them."""
    if card.done and not any("diameter" in one.filled for one in card.settings.values()):
        return ()
    return with_the_marked(readings, each_size(card.tool.size), Display("in" if card.units == "in" else "mm"))


def _of_tool(card: Card, book: Book | None) -> Iterator[KnownText]:
    """What the words on the tool mean; those that mean no number are only words."""
    if is_number(card.tool.flutes, Kind.COUNT):
        yield KnownText("flutes", card.tool.flutes, "tool")
    for named in by_its_name(card, book):
        for key, found in named.items():
            yield KnownText(key, found, "tool")
            if key == "diameter":
                yield KnownText("nominal_diameter", found, "tool")
    sizes = sizes_of(card.tool.size)
    own = each_size(card.tool.size)
    if sizes and all(is_number(size, Kind.LENGTH) and not fraction_of_mm(size) for size in own):
        yield KnownText("diameter", joined(sizes), "tool")
        yield KnownText("nominal_diameter", joined(sizes), "tool")


def is_number(text: str, kind: Kind) -> bool:
    """Whether a text says a number of a kind."""
    try:
        read(text, kind, whole=kind is Kind.COUNT)
    except UnitError:
        return False
    return True


def _of_machine(machine: Machine | None) -> Iterator[KnownText]:
    for key, text in (texts_of(machine) if machine is not None else {}).items():
        yield KnownText(key, text, "machine")


def _of_wheel(wheel: Wheel | None) -> Iterator[KnownText]:
    if wheel is None:
        return
    if wheel.shape:
        yield KnownText("wheel_shape", wheel.shape, "wheel")
    for key, text in read_off(wheel).items():
        yield KnownText(key, text, "wheel")


def joined(readings: Readings) -> str:
    """Readings in one line, as they are typed."""
    return ", ".join(one.strip() for one in readings if one.strip())


def texts_for(
    sheet: Calculation,
    card: Card,
    known: tuple[KnownText, ...],
    display: Display,
    choice: Chosen = NOTHING_CHOSEN,
    wheel: Wheel | None = None,
) -> tuple[dict[str, str], dict[str, Provenance]]:
    """What a calculation is given as if it had been typed, and the provenance of each.

    Args:
        sheet: the calculation.
        card: whose own typing into this calculation comes first.
        known: what is known of the job, the strongest first.
        display: the units of numbers typed without one.
        choice: what was chosen once for the job.
        wheel: at hand, whose shape the method may overrule.

    Returns:
        Texts and their provenance, both by quantity.
    """
    setting = card.settings.get(sheet.name)
    texts = {key: text for key, text in (setting.typed if setting else {}).items() if text.strip()}
    provenance: dict[str, Provenance] = dict.fromkeys(texts, "typed")
    taken = {field.one_of for field in sheet.inputs if field.key in texts} - {""}
    for one in known:
        field = sheet.field(one.key)
        if field is None or one.key in texts or field.one_of in taken or not _serves(one, sheet, choice):
            continue
        texts[one.key] = one.text if field.many else greatest(one.text, field, display)
        provenance[one.key] = one.provenance
        taken |= {field.one_of} - {""}
    if (
        choice.method in sheet.methods
        and sheet.field("wheel_shape") is not None
        and provenance.get("wheel_shape") != "typed"
        and (shape := shape_for(choice.method, wheel))
    ):
        texts["wheel_shape"], provenance["wheel_shape"] = (
            shape,
            "wheel" if wheel and wheel.shape == shape else "wanted",
        )
    if sheet.field(SURFACE) is not None and SURFACE not in texts and (own := choice.surface_for(sheet)):
        texts[SURFACE], provenance[SURFACE] = own, "default"
    return texts, provenance


def _serves(one: KnownText, sheet: Calculation, choice: Chosen) -> bool:
    """Whether a calculation takes a text: a surface only where it serves that one."""
    return one.key != SURFACE or choice.surface_for(sheet) == one.text


def greatest(text: str, field: Field, display: Display) -> str:
    """Of several readings the greatest: the edges run on the largest circle, and the widest land rubs first.

    Example:
        >>> greatest("11.97 mm, 11.99 mm", Field("diameter"), Display())
        '11.99 mm'
        >>> greatest("1/4, 3/8 in", Field("diameter"), Display())
        '3/8 in'
    """
    readings = readings_of(text)
    if len(readings) < 2:
        return text
    kind = quantity(field.key).kind
    # A unit behind the last holds for all, whichever unit a bare number has on the card.
    readings = with_the_last_unit(kind, readings) or readings
    try:
        return max(readings, key=lambda one: read(one, kind, display).number)
    except UnitError:
        return readings[0]
