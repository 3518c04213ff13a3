"""A back-tapered tool sharpened on its end: how much can come off before a limit is passed."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.upkeep.on_face import SLACK
from geometry.upkeep.sharpening import size_lost_on_end


@dataclass(frozen=True)
class End:
    """A tool and the limits to which its end may be ground back.

    Attributes:
        diameter: at the end now, in mm, above zero.
        stock: what one sharpening takes off along the axis, in mm, above zero.
        taper: how much the diameter falls for each unit of length, from zero.
        usable_length: what may be ground off in all, in mm, from zero.
        least_diameter: the smallest diameter allowed, in mm; zero for none.

    Example:
        >>> End(10.0, 2.0, 0.001, 7.0, 0.0).limits_passed(4)
        ('length',)
    """

    diameter: float
    stock: float
    taper: float
    usable_length: float
    least_diameter: float

    @property
    def lost(self) -> float:
        """What one sharpening takes off the diameter, in mm."""
        return size_lost_on_end(self.stock, self.taper)

    def diameter_after(self, times: int) -> float:
        """The diameter after so many sharpenings, in mm."""
        return self.diameter - times * self.lost

    def length_after(self, times: int) -> float:
        """What may still be ground off after so many sharpenings, in mm."""
        return max(self.usable_length - times * self.stock, 0.0)

    def limits_passed(self, times: int) -> tuple[str, ...]:
        """Which limits so many sharpenings pass: ``length``, ``size``."""
        passed = {
            "length": times * self.stock > self.usable_length + SLACK,
            "size": self.diameter_after(times) < max(self.least_diameter - SLACK, SLACK),
        }
        return tuple(limit for limit, so in passed.items() if so)
