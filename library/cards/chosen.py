"""What is chosen once for a whole job: the surface that is ground, how its relief is made, where the indicator points.

Until a person chooses on the card, each follows from what is known: the surface from the family and from what is
wanted, the method from the form of the relief, the machine and the wheel. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from geometry.calculation import Calculation
from geometry.edge.cam import TOWARD_THE_AXIS
from geometry.quantities import quantity
from geometry.surfaces import SURFACES, Surface, surface_of_relief
from geometry.wheel.types import FLARING_CUP, ON_THE_END, STRAIGHT, STRAIGHT_CUP
from library.book.model import Book, Entry
from library.cards.model import Card, Wanted
from library.equipment.model import Machine, Wheel
from library.guidance.setups import for_entry, is_named, setups_of

SURFACE, METHOD, POINTS = "surface", "relief_method", "indicator_points"

CHOSEN_ONCE = (SURFACE, METHOD, POINTS)
"""The lines of the step Wanted that are no quantities of the tool, but hold for the whole job."""

CAM, HEAD, REST, INCLINED = "cam", "wheel-head-height", "tooth-rest-height", "inclined-wheel"
WORK_HEAD = "work-head"
LIP, END = "lip", "end"

ROLL = "roll_angle"
"""What is set on a work head that rolls a drill for the facets of its point."""

FORMS: Mapping[str, str] = {
    CAM: "eccentric",
    HEAD: "flat",
    REST: "flat",
    WORK_HEAD: "flat",
    INCLINED: "eccentric",
}
"""The form of relief that a method makes; an inclined wheel that of a cam, as ``geometry.setting.tilt`` derives it."""

DEFAULT_SHAPES: Mapping[str, str] = {HEAD: STRAIGHT, REST: STRAIGHT_CUP}
"""The wheel that a height is meant for, where the wheel at hand is another or none was named."""

CUPS = frozenset({STRAIGHT_CUP, FLARING_CUP})
"""Wheels that grind on the face of their rim, under which the tooth rest is moved."""

POINTED_TO: Mapping[str, str] = {"body_diameter": "land"}
"""Surfaces that a measurement leaves no doubt about: a body that is to become smaller is ground on its lands."""


@dataclass(frozen=True)
class Chosen:
    """What holds for the whole job.

    Attributes:
        surface: the word of the surface that is ground; empty where nobody can tell.
        method: how its relief is made; empty where nobody can tell.
        points: where the indicator points, as a person said it; empty to take what is common for the surface.
        by_person: those of the three that a person chose.
        surfaces: those of the family, the one that is mostly ground first.
    """

    surface: str = ""
    method: str = ""
    points: str = ""
    by_person: frozenset[str] = frozenset()
    surfaces: tuple[str, ...] = ()

    @property
    def form(self) -> str:
        """The form of the relief that the method makes; empty where nobody can tell the method."""
        return FORMS.get(self.method, "")

    def takes(self, sheet: Calculation) -> bool:
        """Whether a calculation belongs to a job of this method."""
        if self.method in sheet.role.left_out_by:
            return False
        if sheet.role.by_method and self.method == CAM and self.surface in sheet.surfaces:
            return (
                False  # What a cam falls is set by the cam: a tilt of the head beside it would make a flat.
            )
        return not sheet.methods or self.method in sheet.methods

    def calls(self, sheet: Calculation) -> bool:
        """Whether the method of the job makes a calculation a matter of course for the surface that is ground."""
        return bool(sheet.role.by_method) and (
            self.method == sheet.role.by_method and self.surface in sheet.surfaces
        )

    def serves(self, sheet: Calculation) -> bool:
        """Whether a calculation is one of the surface that is ground; one that says nothing of surfaces serves any.

        A cam toward the axis gives a lip or an end no relief, and a tooth rest neither; margin and facets of a land are
        none of a bevel lead's.
        """
        if self.surface and sheet.role.ground and self.surface not in sheet.role.ground:
            return False
        if not sheet.methods or not self.surface:
            return True
        if (self.method, self.surface) in sheet.role.not_on:
            return False
        if sheet.role.cam is not None and self.surface not in TOWARD_THE_AXIS:
            return False
        return not sheet.surfaces or self.surface in sheet.surfaces

    def surface_for(self, sheet: Calculation) -> str:
        """The surface for a calculation that serves it; empty for one that takes its own.

        The size hangs on another surface than the one that cuts: on a tap on the thread land, whose relief is its own.
        """
        served = sheet.surfaces or tuple(SURFACES)
        if sheet.role.sizes:
            return next((one for one in served if one in self.surfaces), "")
        return self.surface if self.surface in served else ""


def chosen(card: Card, book: Book, machine: Machine | None, wheel: Wheel | None) -> Chosen:
    """What holds for a job: as a person chose it, on a closed card as it was then, else as it follows from what is known.

    Args:
        card: with its lines.
        book: says which surfaces the family has.
        machine: it is ground on.
        wheel: it is ground with.
    """
    words = {key: word for key in CHOSEN_ONCE if (word := _word(card, key))}
    then = card.chosen if card.done else {}
    surface = words.get(SURFACE) or then.get(SURFACE) or _surface(card, book)
    # A record of an older program does not say its method: it was never the head unless that was chosen.
    tilted = _is_tilted(card, surface, machine) and not card.done
    return Chosen(
        surface,
        words.get(METHOD)
        or then.get(METHOD)
        or (WORK_HEAD if tilted else _method(card, machine, wheel, surface)),
        words.get(POINTS, ""),
        frozenset(words),
        family.surfaces if (family := book.families.get(card.family)) is not None else (),
    )


def surfaces_of(card: Card, book: Book) -> tuple[str, ...]:
    """The surfaces that a person chooses from: those of the family and those whose relief the card wants too, else all."""
    family = book.families.get(card.family)
    if family is None or not family.surfaces:
        return tuple(SURFACES)
    wanted = (surface_of_relief(key) for key, one in card.wanted.items() if one.value.strip())
    return tuple(dict.fromkeys((*family.surfaces, *(one.key for one in wanted if one is not None))))


def _word(card: Card, key: str) -> str:
    """The word that a card has for a choice; empty where it has none that there is."""
    word = card.wanted.get(key, Wanted("")).value.strip()
    return word if word in quantity(key).choices else ""


def _surface(card: Card, book: Book) -> str:
    """What a measurement points to, or the set-up that names the tool; else the first of the family's, or any, whose relief is wanted; else the first."""
    family = book.families.get(card.family)
    ordered = family.surfaces if family is not None else ()
    for key, surface in POINTED_TO.items():
        if card.received.get(key) and surface in ordered:
            return surface
    entry = book.entries.get(card.entry)
    others = _of_others(book, card.family, entry)
    wanted = [found.key for key, one in card.wanted.items()
              if one.value.strip() and (found := surface_of_relief(key)) is not None
              and (found.key not in others or wants_relief(card, found))]  # fmt: skip
    own = for_entry(book, entry) if entry is not None else None
    if own is not None and own.when and own.surface in ordered:
        return own.surface
    return next((one for one in ordered if one in wanted), next(iter((*wanted, *ordered)), ""))


def _of_others(book: Book, family: str, entry: Entry | None) -> set[str]:
    """Surfaces that the set-ups of a family grind on other tools alone, which they name: on this one they stay as made."""
    found = setups_of(book, family)
    own = {one.surface for one in found if not one.when or is_named(entry, one.when)}
    return {one.surface for one in found} - own


def _is_tilted(card: Card, surface: str, machine: Machine | None) -> bool:
    """Whether a surface is usually ground by a tilt of the work head: an end always, a lip where the head can be rolled."""
    if surface == LIP and machine is not None:
        form = _word(card, "relief_form") or next(iter(card.received.get("relief_form", ())), "").strip()
        return form != "eccentric" and machine.setting_graduation(ROLL) is not None
    return surface == END


def _method(card: Card, machine: Machine | None, wheel: Wheel | None, surface: str) -> str:
    has_cams = machine is not None and machine.has_cams
    form = _word(card, "relief_form") or next(iter(card.received.get("relief_form", ())), "").strip()
    helical = any(one.strip() for one in card.received.get("helix_angle", ()))
    lowered = any(one.strip() for one in card.received.get("body_diameter", ()))
    if helical and form != "flat" and machine is not None and not has_cams:
        # The wide back of a tool that is ground down is brought inside by facets, which stand behind no such wheel.
        if not lowered:
            return INCLINED
        form = form or "flat"
    if form == "eccentric" or (not form and has_cams):
        return CAM
    if form == "flat" or wheel is not None:
        under_cup = wheel is not None and wheel.shape in CUPS
        # A tooth rest tips a lip out of the face of a cup: there the lip is rolled and swivelled.
        return (WORK_HEAD if surface == LIP else REST) if under_cup else HEAD
    return ""


def wants_relief(card: Card, surface: Surface) -> bool:
    """Whether a person wants a relief of a surface, which the book alone does not make one that is ground."""
    wanted = card.wanted.get(surface.relief_key)
    return wanted is not None and bool(wanted.value.strip()) and (wanted.changed or not wanted.book)


def shape_for(method: str, wheel: Wheel | None) -> str:
    """The shape of wheel that a height is set for: that of the wheel at hand where it suits, else the usual one.

    Example:
        >>> shape_for("tooth-rest-height", Wheel("a", "A", "type-11-flaring-cup"))
        'type-11-flaring-cup'
        >>> shape_for("tooth-rest-height", None), shape_for("cam", None)
        ('type-6-straight-cup', '')
    """
    at_hand = wheel.shape if wheel is not None else ""
    if method == REST and at_hand in ON_THE_END:
        return at_hand
    return DEFAULT_SHAPES.get(method, "")
