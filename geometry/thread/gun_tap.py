"""A gun tap with its gash before and after grinding, and what is wrong with it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.calculation import Inputs
from geometry.thread.pitch_input import pitch_of
from geometry.thread.spiral_point import Gash, gash_of_length, require_gash
from geometry.tooth.land import land_angle, land_width

LEAST_BEYOND, MOST_BEYOND = 1.0, 3.0
"""Threads that a gash goes past the chamfer: one in a service manual (T.O. 1-1A-9, 3-197), about two by a tool supplier;
more than three is common practice for too far, no source."""

THIN = 0.5
"""The share of the land that shall be left at the front; common practice, no source."""

SLACK = 1e-9

GONE, SHORT, LONG, THROUGH, NARROW = "gone", "short", "long", "through", "narrow"
"""What may be wrong: no gash is left, it ends too early or runs too far, it takes the whole land or more than its share."""


@dataclass(frozen=True)
class GunTap:
    """A tap with its gash before and after.

    Attributes:
        pitch: in mm.
        chamfer: length of the chamfer, in mm.
        before: as it is, or as it shall be.
        after: when the end was cut back and the gash ground.
        land: straight across, in mm; nothing where it was not measured.
    """

    pitch: float
    chamfer: float
    before: Gash
    after: Gash
    land: float | None

    @property
    def beyond(self) -> float:
        """How many threads the gash goes past the chamfer, at the end of it all."""
        return (self.after.length - self.chamfer) / self.pitch

    @property
    def deepest(self) -> float:
        """How deep a gash may be at the front, in mm, so that enough of the land is left; without end where no land is known."""
        return math.inf if self.land is None else (1 - THIN) * self.land

    @property
    def faults(self) -> frozenset[str]:
        """What is wrong with the gash at the end of it all; of one that is gone nothing else is told."""
        if self.after.depth <= 0:
            return frozenset({GONE})
        found = set()
        if self.beyond < LEAST_BEYOND - SLACK:
            found.add(SHORT)
        elif self.beyond > MOST_BEYOND + SLACK:
            found.add(LONG)
        if self.after.depth > self.deepest + SLACK:
            found.add(THROUGH if self.land is not None and self.after.depth >= self.land else NARROW)
        return frozenset(found)


def gun_tap(given: Inputs) -> GunTap:
    """The tap that the inputs of the calculation speak of.

    Example:
        >>> tap = gun_tap(Inputs({"diameter": 10.0, "pitch": 1.5, "spiral_point_angle": math.radians(10),
        ...                       "chamfer_threads": 4.0, "threads_beyond": 2.0}))
        >>> round(tap.after.length, 9), sorted(tap.faults)
        (9.0, [])
    """
    pitch, slope = pitch_of(given), require_gash(given.number("spiral_point_angle"))
    chamfer = (
        given.number("chamfer_length")
        if given.has("chamfer_length")
        else given.number("chamfer_threads") * pitch
    )
    before = (
        Gash(slope, given.number("spiral_point_depth"))
        if given.has("spiral_point_depth")
        else gash_of_length(slope, chamfer + given.number("threads_beyond") * pitch)
    )
    after = before.cut_back(given.number_or("cut_back", 0.0))
    after = after.ground(given.number_or("stock_per_sharpening", 0.0))
    land = None
    if given.has("land_width"):
        diameter = given.number("diameter")
        turned = land_angle(given.number("land_width"), diameter, given.choice("land_measured_as"))
        land = land_width(min(turned, math.pi), diameter, "chord")
    return GunTap(pitch, chamfer, before, after, land)
