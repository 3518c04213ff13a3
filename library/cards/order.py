"""Which calculations a job goes through, in the order in which the machine is set up."""

from __future__ import annotations

from collections.abc import Collection

from geometry.calculation import Calculation
from geometry.calculations import calculation
from library.book.model import Family
from library.calc.serving import sheets_for

SETUP = (
    "wheel-speed",
    "index-moves",
    "face-offset",
    "tap-chamfer",
    "drill-point",
    "setting-height",
    "wheel-tilt",
    "cone-relief",
    "step-relief",
    "relief-drop",
    "relief-facets",
    "lead-over-land",
    "reamer-land",
    "feed-clearance",
    "back-taper",
    "size-loss",
)
"""First what is mounted, then the tool and its index, face, angles, heights and cams, then what the indicator shows
on the way, and last whether it will work and how often it can be done again; common practice, no source."""

NO_SETTINGS = frozenset({"relief-from-reading", "relief-forms", "screw-thread"})
"""Calculations that tell something of a tool but set nothing: the card uses them elsewhere or not at all."""


ALWAYS = ("wheel-speed", "index-moves")
"""Calculations of every job: whatever is ground, a wheel turns, and the tool is turned from edge to edge."""


OF_COURSE = {
    "reamer-land": frozenset({"reamer"}),
    "back-taper": frozenset({"reamer"}),
    "cone-relief": frozenset({"countersink", "centre-drill"}),
    "feed-clearance": frozenset({"twist-drill", "step-drill", "subland-drill", "centre-drill"}),
    "relief-facets": frozenset[str](),
    "wheel-tilt": frozenset[str](),
}
"""Calculations that only some of the kinds they serve go through as a matter of course. On others they rest until
somebody types into them or measures what they are about; common practice, no source."""

ABOUT = {
    "reamer-land": "margin_width",
    "back-taper": "back_diameter",
    "cone-relief": "included_angle",
    "feed-clearance": "feed",
    "relief-facets": "body_diameter",
    "wheel-tilt": "helix_angle",
}
"""What each of them is about: once that was measured, it belongs to the job."""


def rests(name: str, kind: str, measured: Collection[str]) -> bool:
    """Whether a calculation rests on a job into which nobody has typed anything for it.

    Args:
        name: of the calculation.
        kind: of the tool; empty where none is known.
        measured: the quantities that were measured.

    Example:
        >>> rests("wheel-tilt", "reamer", ["diameter"]), rests("wheel-tilt", "reamer", ["helix_angle"])
        (True, False)
    """
    return name in OF_COURSE and kind not in OF_COURSE[name] and ABOUT[name] not in measured


def calculations_of(family: Family | None) -> tuple[Calculation, ...]:
    """The calculations that a job on this family of tools goes through, in the order of the set-up.

    One that the order does not name comes last, so that a new calculation is found by itself.

    Example:
        >>> [sheet.name for sheet in calculations_of(Family("hob", "Hobs", surfaces=("end",)))][:2]
        ['wheel-speed', 'index-moves']
    """
    served = {sheet.name: sheet for sheet in (*map(calculation, ALWAYS), *sheets_for(family))}
    sheets = [sheet for name, sheet in served.items() if name not in NO_SETTINGS]
    return tuple(sorted(sheets, key=lambda one: SETUP.index(one.name) if one.name in SETUP else len(SETUP)))
