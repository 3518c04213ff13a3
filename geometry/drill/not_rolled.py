"""What is said beside half the point angle: a drill that is rolled for flat facets is set otherwise, for the roll tips its lip."""

from __future__ import annotations

from geometry.calculation import Inputs
from geometry.drill.facet_point import facet_point
from geometry.preconditions import GeometryError
from geometry.sentences import Amount, angle, length

WHERE = "'Facet point of a drill on a work head'"
"""The calculation that has both settings."""


def rolled(given: Inputs) -> dict[str, Amount]:
    """What a work head is set to that rolls the drill for flat facets, as they follow from its point.

    Args:
        given: diameter and point, with the lip relief and the web where they are known; lengths in mm, angles in radians.

    Returns:
        The axis to the wheel face, the roll and the web that was counted with; nothing without a lip relief, and where no
        flat facet has it.

    Example:
        >>> sorted(rolled(Inputs({"diameter": 8.0, "point_angle": 2.059489, "lip_relief_angle": 0.20944})))
        ['axis', 'roll', 'web']
    """
    if not given.has("lip_relief_angle") or given.number("lip_relief_angle") == 0:
        return {}
    try:
        found = facet_point(given)
    except GeometryError:
        return {}
    if found.web is None:
        return {}
    return {
        "axis": angle(found.first.axis_to_wheel),
        "roll": angle(found.first.roll),
        "web": length(found.web),
    }


def said_of_rolled(given: Inputs) -> str:
    """The end of the sentence on half the point angle, with the places for what ``rolled`` finds.

    Example:
        >>> said_of_rolled(Inputs({"diameter": 8.0, "point_angle": 2.059489}))
        "; for flat facets on a work head take 'Facet point of a drill on a work head'."
    """
    if not rolled(given):
        return f"; for flat facets on a work head take {WHERE}."
    web = "its web of {web}" if given.has("web_thickness") else "a web of {web}, the usual one"
    return (
        ". That is a drill that is not rolled: one rolled {roll} on a work head for flat facets takes {axis} with "
        f"{web}, as {WHERE} has it."
    )
