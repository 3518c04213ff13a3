"""The unit system that a person works in, and the resolution of the indicators."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from geometry.sentences import Kind

Lengths = Literal["mm", "in"]

_METRIC = {Kind.LENGTH: "mm", Kind.AREA: "mm2", Kind.SPEED: "m/s"}
_INCH = {Kind.LENGTH: "in", Kind.AREA: "in2", Kind.SPEED: "ft/min"}
_BOTH = {
    Kind.ANGLE: "deg",
    Kind.ROTATION: "rpm",
    Kind.PER_LENGTH: "tpi",
    Kind.COUNT: "",
    Kind.RATIO: "",
    Kind.PERCENT: "%",
    Kind.CHOICE: "",
}


@dataclass(frozen=True)
class Display:
    """How numbers are shown, and which unit a number typed without one has.

    Attributes:
        lengths: millimetres or inches.
    """

    lengths: Lengths = "mm"

    def unit(self, kind: Kind) -> str:
        """The unit in which this kind is shown.

        Example:
            >>> Display("in").unit(Kind.SPEED)
            'ft/min'
        """
        return ((_METRIC if self.lengths == "mm" else _INCH) | _BOTH)[kind]

    def other(self) -> Display:
        """The same with the other unit of length."""
        return replace(self, lengths="in" if self.lengths == "mm" else "mm")


METRIC = Display("mm")
INCH = Display("in")
