"""A range or a limit that a quantity shall keep after grinding: ``5 to 8 deg``, ``at most 8 deg``."""

from __future__ import annotations

from dataclasses import dataclass, replace

from geometry.sentences import Kind, Rounding
from library.book.model import Measure
from library.calc.ranges import read_range
from library.units.show import show_end
from library.units.system import Display


@dataclass(frozen=True)
class Limits:
    """From where to where a quantity may be.

    Attributes:
        low: in mm or radians; nothing where it may be as small as it likes.
        high: in mm or radians; nothing where it may be as great as it likes.
        worn: down to where a worn tool still serves, under the low end; nothing where that is the end.
        whose: whose limits they are, in words; empty for those that were written.
        fine: whether they are told as finely as those of a fit.
    """

    low: float | None
    high: float | None
    worn: float | None = None
    whose: str = ""
    fine: bool = False

    @property
    def served(self) -> Limits:
        """From where to where a tool serves, a worn one too.

        Example:
            >>> Limits(10.01, 10.018, 10.0, "of the reamer").served
            Limits(low=10.0, high=10.018, worn=None, whose='', fine=False)
        """
        return replace(self, low=self.low if self.worn is None else self.worn, worn=None, whose="")

    def widened(self, minus: float, plus: float) -> Limits:
        """The same with a tolerance beyond each end.

        Example:
            >>> Limits(None, 8.0).widened(0.5, 0.25)
            Limits(low=None, high=8.25, worn=None, whose='', fine=False)
        """
        return Limits(
            None if self.low is None else self.low - minus,
            None if self.high is None else self.high + plus,
            fine=self.fine,
        )

    def said(self, kind: Kind, display: Display) -> str:
        """In words, in the units of a display.

        Example:
            >>> Limits(None, 8.0).said(Kind.LENGTH, Display())
            'at most 8.000 mm'
        """
        return self.said_in(kind, display.unit(kind))

    def said_in(self, kind: Kind, unit: str) -> str:
        """In words, in one unit, each end rounded so that it still passes.

        Example:
            >>> Limits(9.531, 9.537).said_in(Kind.LENGTH, "in")
            '0.3753 in to 0.3754 in'
        """
        fine = self.fine
        low = show_end(self.low, kind, unit, Rounding.UP, fine=fine) if self.low is not None else ""
        high = show_end(self.high, kind, unit, Rounding.DOWN, fine=fine) if self.high is not None else ""
        if low and high:
            return f"{low} to {high}"
        return f"at least {low}" if low else f"at most {high}" if high else ""


def limits_of(key: str, text: str, diameter: float | None) -> Limits | None:
    """What a range in words means; nothing where the text is none.

    Args:
        key: the quantity.
        text: as it is wanted.
        diameter: of the tool in mm, for a share of it; an end that wants one and has none counts as open.

    Example:
        >>> limits_of("land_width", "at most 0.25 D", 12.0)
        Limits(low=None, high=3.0, worn=None, whose='', fine=False)
    """
    found = read_range(key, text)
    if found is None:
        return None
    low, high = _number(found.low, diameter), _number(found.high, diameter)
    return Limits(low, high) if low is not None or high is not None else None


def _number(end: Measure | None, diameter: float | None) -> float | None:
    if end is None or not end.per_diameter:
        return None if end is None else end.number
    return None if diameter is None else end.number * diameter
