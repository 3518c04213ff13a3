"""The data model of the shop's machines and wheels, as frozen objects."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Literal, cast

from geometry.sentences import Kind
from library.book.model import Book, Layer, Measure
from library.issue import NOWHERE, Place


@dataclass(frozen=True)
class Reach:
    """How far something goes either way; an end that is not written is not known."""

    low: Measure | None = None
    high: Measure | None = None


ANY_WAY = Reach()
"""A reach of which neither end is known."""


@dataclass(frozen=True)
class Graduation:
    """One graduated movement of a machine, or an indicator that is read.

    Attributes:
        id: its name in the file.
        title: as the shop calls it, such as ``wheel head``.
        division: what one division is worth.
        kind: whether it moves a length or an angle.
        sets: the quantities that are set on it.
        reads: the quantities that are read on it.
        more: the word for the direction in which the quantity grows.
        less: the word for the other direction.
        per_turn: what one whole turn of the handle is worth, where it has one.
        reach: how far it goes.
    """

    id: str
    title: str
    division: Measure
    kind: Kind
    sets: tuple[str, ...] = ()
    reads: tuple[str, ...] = ()
    more: str = ""
    less: str = ""
    per_turn: Measure | None = None
    reach: Reach = ANY_WAY


SAME_SWIVEL: Mapping[str, tuple[str, ...]] = {
    "axis_to_wheel_angle": ("half_included_angle", "bevel_angle", "chamfer_angle")
}
"""What is set on the same swivel as another quantity: a shop that wrote down its swivel for the angle of an edge sets on it what
grinds that edge on a tooth rest too."""


@dataclass(frozen=True)
class Machine:
    """One grinder with its work head.

    Attributes:
        id: its name in cards.
        title: as the shop calls it.
        index_ratio: turns of the crank for one of the work spindle.
        plate_holes: the circles on the plates that are in the shop.
        spindle_speeds: of the wheel spindle, slowest first.
        cam_throws: the throw of each fixed cam in the drawer, the smallest first.
        cam_throw_range: from what throw to what throw an adjustable cam is set; unknown ends where there is none.
        throw_per: whether a throw is counted for one turn of the tool or from one tooth to the next.
        head_tilt: how far the wheel head tilts.
        graduations: its graduated movements, by id.
        note: free text.
        extra: the shop's own keys beginning with ``x-``, untouched.
        layer: the highest layer that has a part of it.
        place: where it begins in that layer's file.
    """

    id: str
    title: str
    index_ratio: int | None = None
    plate_holes: tuple[int, ...] = ()
    spindle_speeds: tuple[Measure, ...] = ()
    cam_throws: tuple[Measure, ...] = ()
    cam_throw_range: Reach = ANY_WAY
    throw_per: Literal["turn", "tooth"] = "tooth"
    head_tilt: Reach = ANY_WAY
    graduations: Mapping[str, Graduation] = field(default_factory=dict)
    note: str = ""
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shop"
    place: Place = NOWHERE

    @property
    def has_cams(self) -> bool:
        """Whether an eccentric relief can be ground on it with a cam."""
        return bool(self.cam_throws) or self.cam_throw_range != ANY_WAY

    def setting_graduation(self, key: str) -> Graduation | None:
        """The graduation on which a quantity is set, or nothing; of a swivel that none names, that of the edge it is for."""
        for one in (key, *SAME_SWIVEL.get(key, ())):
            for graduation in self.graduations.values():
                if one in graduation.sets:
                    return graduation
        return None

    def reading_graduation(self, key: str) -> Graduation | None:
        """The graduation on which a quantity is read, or nothing."""
        return next((graduation for graduation in self.graduations.values() if key in graduation.reads), None)


@dataclass(frozen=True)
class Rating:
    """The greatest speed that the maker of a wheel allows, as a surface speed or as turns.

    Attributes:
        measure: as typed, with the number in mm/s or rad/s.
        key: ``rated_speed`` or ``rated_rotational_speed``.
    """

    measure: Measure
    key: str


@dataclass(frozen=True)
class Wheel:
    """One grinding wheel.

    Attributes:
        id: its name in cards.
        title: as the shop calls it.
        shape: its type by ISO 525, such as ``type-6-straight-cup``; empty when not written.
        diameter: as it is now.
        new_diameter: as it was when new; nothing when it was not written down.
        abrasive: a word of ``library.equipment.abrasives``; empty when not written.
        grit: as marked.
        grade: the letter of how hard it is bonded, as marked.
        bond: as marked.
        rated_speed: the marking on the wheel; nothing when it was not written down.
        dressed: the day it was last dressed.
        note: free text.
        extra: the shop's own keys beginning with ``x-``, untouched.
        layer: the highest layer that has a part of it.
        place: where it begins in that layer's file.
    """

    id: str
    title: str
    shape: str = ""
    diameter: Measure | None = None
    new_diameter: Measure | None = None
    abrasive: str = ""
    grit: str = ""
    grade: str = ""
    bond: str = ""
    rated_speed: Rating | None = None
    dressed: date | None = None
    note: str = ""
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shop"
    place: Place = NOWHERE


def machines(book: Book) -> Mapping[str, Machine]:
    """The machines of the book by id."""
    return cast(Mapping[str, Machine], book.more.get("machine", {}))


def wheels(book: Book) -> Mapping[str, Wheel]:
    """The wheels of the book by id."""
    return cast(Mapping[str, Wheel], book.more.get("wheel", {}))


def the_only_one(found: Mapping[str, Machine] | Mapping[str, Wheel]) -> str:
    """The id of the only machine or wheel there is; empty when there are several or none.

    Example:
        >>> the_only_one({"a": Wheel("a", "A")}), the_only_one({})
        ('a', '')
    """
    return next(iter(found)) if len(found) == 1 else ""
