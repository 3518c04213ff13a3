"""Which worksheets a job goes through, in the order in which the machine is set up."""

from __future__ import annotations

from geometry.worksheet import Worksheet
from geometry.worksheets import worksheet, worksheets_for

SETUP = (
    "wheel-speed",
    "index-moves",
    "face-offset",
    "tap-chamfer",
    "drill-point",
    "clearance-offset",
    "wheel-tilt",
    "cone-relief",
    "step-relief",
    "relief-drop",
    "relief-facets",
    "tap-axial-relief",
    "feed-clearance",
    "back-taper",
    "size-loss",
)
"""First what is mounted, then the tool and its index, face, angles, heights and cams, then what the dial shows
on the way, and last whether it will work and how often it can be done again; common practice, no source."""

NO_SETTINGS = frozenset({"relief-from-reading", "relief-styles", "screw-thread"})
"""Worksheets that tell something of a tool but set nothing: the card uses them elsewhere or not at all."""


ALWAYS = ("wheel-speed", "index-moves")
"""Worksheets of every job: whatever is ground, a wheel turns, and the tool is turned from edge to edge."""


def worksheets_of(family: str) -> tuple[Worksheet, ...]:
    """The worksheets that a job on this family of tools goes through, in the order of the set-up.

    One that the order does not name comes last, so that a new worksheet is found by itself.

    Example:
        >>> [sheet.name for sheet in worksheets_of("tap")][:2]
        ['wheel-speed', 'index-moves']
    """
    served = {sheet.name: sheet for sheet in (*map(worksheet, ALWAYS), *worksheets_for(family))}
    sheets = [sheet for name, sheet in served.items() if name not in NO_SETTINGS]
    return tuple(sorted(sheets, key=lambda one: SETUP.index(one.name) if one.name in SETUP else len(SETUP)))
