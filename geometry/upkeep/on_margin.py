"""A tooth with a margin on the circle, sharpened on its face: while the margin lasts, the tool keeps its size."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.calculation import Check, passed
from geometry.complaints import complaint
from geometry.cures import way
from geometry.sentences import Rounding, count, length
from geometry.tooth.land import land_width
from geometry.upkeep.on_face import SLACK


@dataclass(frozen=True)
class Margined:
    """A tooth whose edge goes back along its margin, and the limits to which its face may be ground.

    Derived: the margin lies on the circle about the axis, so that the edge stays on that circle wherever on the margin it
    is. The relief behind the margin stays as it is, and so does the drop of the heel.

    Attributes:
        diameter: of the circle of the edges, in mm, above zero.
        margin: how far the margin goes round, in radians, above zero.
        stock: how far one sharpening takes the edge back along that circle, in mm, above zero.
        turned: from the edge to the heel, in radians.
        measured_as: how lands are measured, ``"arc"`` or ``"chord"``.
        least_land: the narrowest land allowed, in mm.
        least_diameter: the smallest diameter allowed, in mm; zero for none.

    Example:
        >>> tooth = Margined(16.0, 0.025, 0.03, 0.225, "arc", 0.0, 0.0)
        >>> tooth.limits_passed(6), tooth.limits_passed(7)
        ((), ('margin',))
    """

    diameter: float
    margin: float
    stock: float
    turned: float
    measured_as: str
    least_land: float
    least_diameter: float

    @property
    def step(self) -> float:
        """How far round the tool one sharpening goes, in radians."""
        return 2 * self.stock / self.diameter

    def margin_after(self, times: int) -> float:
        """The width of the margin that is left, round the circle, in mm."""
        return (self.margin - times * self.step) * self.diameter / 2

    def land_after(self, times: int) -> float:
        """The width of the land that is left, in mm."""
        return land_width(self.turned - times * self.step, self.diameter, self.measured_as)

    def limits_passed(self, times: int) -> tuple[str, ...]:
        """Which limits so many sharpenings pass: ``margin``, ``land`` or ``size``."""
        if times * self.step >= min(self.margin, self.turned) - SLACK:
            return ("margin",)
        passed_by = {
            "land": self.land_after(times) < self.least_land - SLACK,
            "size": self.diameter < self.least_diameter - SLACK,
        }
        return tuple(limit for limit, so in passed_by.items() if so)


def told(tooth: Margined, left: int) -> Iterator[Check]:
    """How many sharpenings are left while the margin holds the size, or why none is.

    Args:
        tooth: with its limits.
        left: how many sharpenings pass none of them.
    """
    margin = length(tooth.margin_after(0))
    if not left:
        yield from _none_left(tooth)
        return
    first = tooth.limits_passed(left + 1)[0]
    why = {
        "margin": "the margin of {margin} would be gone, and the size would fall",
        "land": "the land would fall under {limit}",
    }[first]
    yield passed(
        "The margin lies on the circle, so that stock off the face costs no size while it lasts; each sharpening of the faces takes {stock} "
        f"off its width. Sharpenings left: {{left}}; with one more {why}.",
        stock=length(tooth.stock),
        left=count(left),
        **({"margin": margin} if first == "margin" else {"limit": length(tooth.least_land)}),
    )


def _none_left(tooth: Margined) -> Iterator[Check]:
    for limit in tooth.limits_passed(1):
        if limit == "margin":
            half = length(tooth.margin_after(0) / 2, Rounding.DOWN)
            yield complaint(
                "stop",
                "One sharpening would take {stock} off the margin of {margin}: with the margin gone, the tool loses size.",
                [way("take {half} at a time, or less", "stock_per_sharpening", "half", half)],
                stock=length(tooth.stock),
                margin=length(tooth.margin_after(0)),
            )
        elif limit == "land":
            after = length(tooth.land_after(1), Rounding.DOWN)
            yield complaint(
                "stop",
                "No sharpening is left: the land would fall under {least}.",
                [way("allow a land of {after}", "least_land", "after", after)],
                ["replace the tool"],
                least=length(tooth.least_land),
            )
        else:
            now = length(tooth.diameter, Rounding.DOWN)
            yield complaint(
                "stop",
                "No sharpening is left: the tool is under {least} as it is.",
                [way("allow a diameter of {now}", "least_diameter", "now", now)],
                ["use the tool for a smaller size"],
                least=length(tooth.least_diameter),
            )
