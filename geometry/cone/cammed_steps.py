"""The steps and shoulders of a drill under one cam, and the throws that would help them."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from geometry.calculation import Inputs
from geometry.cone import relief as cone
from geometry.cone.shoulder_range import OwnThrow, alone_within
from geometry.cone.steps import RelievedShoulder, relieved, shoulders
from geometry.cures import Step, Way, way
from geometry.quantities import quantity
from geometry.sentences import Rounding, length


@dataclass(frozen=True)
class CammedSteps:
    """A step drill under its cam. Derived.

    Attributes:
        steps: the diameters from the point up, in mm.
        shoulders: between them.
        turn: the angle that the tool turns while the cam makes its travel, in radians.
        per: "per turn" or "per tooth".
        radial: inward travel, in mm.
        feed: in mm for one turn; 0 when it was not given.
    """

    steps: tuple[float, ...]
    shoulders: tuple[RelievedShoulder, ...]
    turn: float
    per: str
    radial: float
    feed: float

    def step_relief(self, diameter: float) -> float:
        """The relief (rad) of a step of a diameter (mm) on its circle, square to the axis.

        Example:
            >>> drill = CammedSteps((6.0, 12.0), (), 2 * math.pi, "per turn", 3.0, 0.0)
            >>> round(math.degrees(drill.step_relief(12.0)), 2)  # atan(3 / (12 pi))
            4.55
        """
        return cone.relief_angle(self.radial / self.turn, diameter)

    @cached_property
    def weakest(self) -> tuple[RelievedShoulder, float]:
        """The shoulder, and the diameter at an end of it, with the least relief square to its cone."""
        ends = [(cut, end) for cut in self.shoulders for end in (cut.shoulder.inner, cut.shoulder.outer)]
        return min(ends, key=lambda place: place[0].relief(place[1]))

    @cached_property
    def weakest_in_feed(self) -> tuple[RelievedShoulder, float]:
        """The shoulder, and the diameter on it, where the feed leaves least."""
        places = [(cut, cut.weakest_diameter(self.feed)) for cut in self.shoulders]
        return min(places, key=lambda place: place[0].left(self.feed, place[1]))

    @cached_property
    def feed_limit(self) -> float:
        """The feed for one turn at which the first shoulder has no relief left, in mm."""
        return min(cut.fall_per_turn for cut in self.shoulders)

    def axial_needed(self) -> float:
        """The axial throw above which every shoulder keeps relief against the feed.

        The radial throw stays, or is brought to 0 where it moves outward.
        """
        radial, feed = max(self.radial, 0.0), self.feed * self.turn / (2 * math.pi)
        by_radial = [relieved(cut.shoulder, radial, 0.0, 2 * math.pi).fall_per_turn for cut in self.shoulders]
        return feed - min(by_radial)

    def ways_to_clear(self) -> list[Way]:
        """What lifts every shoulder clear of the cut: the axial throw, alone where the radial one may stay."""
        needed = self.axial_needed()
        if self.radial < 0:
            steps = (
                Step("radial_throw", "radial", length(0.0, Rounding.UP)),
                Step("axial_throw", "axial", length(needed, Rounding.UP)),
            )
            says = f"bring the radial throw above {{radial}} and the axial throw above {{axial}} {self.per}"
            return [Way(says, steps)]
        alone = self.bring_axial("above", needed)
        return [alone] if alone else []

    def bring_axial(self, verb: str, throw: float) -> Way | None:
        """The axial throw alone, where a machine could do it."""
        return bring("axial", verb, throw, self.per) if throw <= quantity("axial_throw").high else None

    def axial_within(self, low: float | None, high: float | None) -> float | None:
        """The axial throw in the middle of those that keep both ends of every shoulder within limits; nothing where none from 0 on does."""
        if low is None or high is None:
            return None
        least = self.axial_for(low)
        most = min(
            cone.axial_throw_for(
                self.turn * cone.square_throw_for(high, cut.shoulder.inner),
                self.radial,
                cut.shoulder.included_angle,
            )
            or 0.0
            for cut in self.shoulders
        )
        middle = (least + most) / 2
        # One that moves the other way undoes what the radial throw does too much, and no drawer has it.
        return middle if least <= most and 0 <= middle <= quantity("axial_throw").high else None

    def own_throws(self, low: float | None, high: float | None, axial: float) -> list[OwnThrow]:
        """For each shoulder that some throw of its own keeps within limits, the radial throws that do, beside an axial one.

        Example:
            >>> from geometry.cone.steps import Shoulder
            >>> cut = relieved(Shoulder(1, math.pi / 2, 6.0, 8.0), 4.0, 0.0, math.pi)
            >>> (one,) = CammedSteps((6.0, 8.0), (cut,), math.pi, "per tooth", 4.0, 0.0).own_throws(0.1, 0.2, 0.0)
            >>> round(one.least, 3), round(one.most, 3)  # pi sqrt(2) times 4 tan 0.1 and 3 tan 0.2
            (1.783, 2.702)
        """
        found = []
        for shoulder in [cut.shoulder for cut in self.shoulders]:
            if low is None or high is None or not alone_within(shoulder, low, high):
                continue
            ends = [
                cone.radial_throw_for(
                    self.turn * cone.square_throw_for(relief, place), axial, shoulder.included_angle
                )
                for relief, place in ((low, shoulder.outer), (high, shoulder.inner))
            ]
            least, most = ends
            if (
                least is not None
                and most is not None
                and least >= 0
                and most <= quantity("radial_throw").high
            ):
                found.append(OwnThrow(shoulder, least, max(least, most), self.per))
        return found

    def axial_for(self, wanted: float) -> float:
        """The axial throw that gives every shoulder a relief square to its cone, the radial throw left as it is."""
        shoulders = [cut.shoulder for cut in self.shoulders]
        needed = [
            cone.axial_throw_for(
                self.turn * cone.square_throw_for(wanted, s.outer), self.radial, s.included_angle
            )
            for s in shoulders
        ]
        return max(cam for cam in needed if cam is not None)


def bring(name: str, verb: str, throw: float, per: str) -> Way:
    """One throw that is brought to, or above, a length (mm)."""
    return way(
        f"bring the {name} throw {verb} {{{name}}} {per}",
        f"{name}_throw",
        name,
        length(throw, Rounding.UP),
    )


def bring_both(verb: str, throw: float, per: str) -> Way:
    """Both throws brought to the same length (mm)."""
    amount = length(throw, Rounding.UP)
    says = f"bring both throws {verb} {{cam}} {per}"
    return Way(says, (Step("radial_throw", "cam", amount), Step("axial_throw", "cam", amount)))


def under_cam(given: Inputs) -> CammedSteps:
    """The drill that the inputs of a calculation tell, its steps in their order from the point up.

    Args:
        given: diameters in mm, included angles in radians, throws in mm and as what they are counted, and a feed in mm.
    """
    steps, radial, axial = (
        given.numbers("diameter"),
        given.number("radial_throw"),
        given.number("axial_throw"),
    )
    turn = cone.radians_of_throw(given.choice("throw_per"), given.number_or("flutes", 1))
    between = shoulders(steps, given.numbers("included_angle"))
    return CammedSteps(
        tuple(sorted(steps)),
        tuple(relieved(shoulder, radial, axial, turn) for shoulder in between),
        turn,
        f"per {given.choice('throw_per')}",
        radial,
        given.number_or("feed", 0.0),
    )
