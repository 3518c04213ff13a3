"""Checks on the drop of a heel, with the values that would fix it."""

from __future__ import annotations

import math
from collections.abc import Callable

from geometry.calculation import Check, passed, watch
from geometry.complaints import complaint
from geometry.cures import Way, way
from geometry.preconditions import refuse
from geometry.quantities import quantity
from geometry.sentences import Amount, Rounding, angle, length
from geometry.tooth import eccentric, flat
from geometry.tooth.land import land_width

READABLE = 0.01
"""The drop in mm under which a heel counts as nearly touching: one division of a common indicator, no source."""

HAIR = 1e-6
"""The share by which a width that would just touch is lessened, so that what is advised does clear."""


HARDLY = 0.001
"""The least in mm by which a heel is said to stand proud; less is no number on any indicator."""

SECOND_FACET = "grind a second facet behind it"
"""What helps against a heel that rubs, whatever the relief."""

SHOWN_ANGLE = math.radians(0.02)
"""Two steps of an angle as it is shown, so that what is named can be given and be exceeded."""


def _as_it_is(relief: float) -> float:
    return relief


def no_drop(turned: float, form: str = "eccentric", as_given: Callable[[float], float] = _as_it_is) -> Check:
    """Say why nothing falls away behind the edge: no land, or no relief.

    Args:
        turned: from edge to heel, in radians.
        form: ``eccentric`` or ``flat``; a flat without relief does not even run on the circle.
        as_given: turns a relief seen square to the axis (rad) into the view in which it was given.

    Example:
        >>> no_drop(0.0).state, no_drop(0.5).state
        ('watch', 'stop')
    """
    if turned == 0:
        return watch("The land has no width, so there is nothing to fall away. Measure the land.")
    if form == "flat":
        return _flat_without_relief(as_given(turned / 2))
    return complaint(
        "stop",
        "There is no relief: the whole land runs on the circle and rubs.",
        [way("choose a relief above {zero}", "relief_angle", "zero", angle(0.0))],
    )


def _flat_without_relief(enough: float) -> Check:
    return complaint(
        "stop",
        "There is no relief: a flat of {none} lies along the tangent, and all of it behind the edge stands proud.",
        _steeper(enough),
        [SECOND_FACET],
        none=angle(0.0),
    )


def _steeper(enough: float) -> list[Way]:
    """Over which relief (rad) a flat clears, where an edge bears it."""
    if enough > quantity("relief_angle").high - SHOWN_ANGLE:
        return []
    return [way("raise the relief above {enough}", "relief_angle", "enough", angle(enough, Rounding.UP))]


def clears(
    heel_drop: float,
    turned: float,
    diameter: float,
    form: str,
    as_given: Callable[[float], float] = _as_it_is,
) -> Check:
    """Say that the heel clears, or by how little and what would make it clear well.

    Args:
        heel_drop: of the heel, in mm, above zero.
        turned: from edge to heel, in radians, above zero.
        diameter: of the circle of the edges, in mm.
        form: ``eccentric`` or ``flat``.
        as_given: turns a relief seen square to the axis (rad) into the view in which it was given.

    Example:
        >>> str(clears(0.25, 0.3, 12.0, "flat").sentence)
        'The heel lies 0.25 mm inside the circle: it clears.'
    """
    if heel_drop >= READABLE * (1 - HAIR):
        return passed("The heel lies {drop} inside the circle: it clears.", drop=length(heel_drop))
    shape = eccentric if form == "eccentric" else flat
    enough = as_given(shape.relief_angle_from_drop(READABLE, turned, diameter))
    return complaint(
        "watch",
        "The heel lies only {drop} inside the circle, less than an indicator shows well.",
        [
            way(
                "raise the relief to {enough} for a drop that can be read",
                "relief_angle",
                "enough",
                angle(enough, Rounding.UP),
            )
        ],
        ["look at the heel under a glass"],
        drop=length(heel_drop),
    )


def rubs(
    heel_drop: float,
    turned: float,
    relief_angle: float,
    diameter: float,
    measured_as: str,
    as_given: Callable[[float], float] = _as_it_is,
    *,
    is_read: bool = False,
) -> Check:
    """The stop for the heel of a flat that touches or stands proud, with what would fix it.

    Worked out, the flat stands proud where it is carried on past the circle; the metal there ends at the body. Read, it is the
    heel itself.

    Args:
        heel_drop: of the heel, in mm, zero or below.
        turned: from edge to heel, in radians, above zero.
        relief_angle: of the flat, in radians.
        diameter: of the circle of the edges, in mm.
        measured_as: how the land was measured, ``arc`` or ``chord``.
        as_given: turns a relief seen square to the axis (rad) into the view in which it was given.
        is_read: whether the drop was read on the tool.

    Example:
        >>> str(rubs(-0.05485, 1 / 3, 0.1396263, 12.0, "arc").sentence)
        'The flat, carried on to the heel, stands 0.05485 mm proud of the circle: the heel will rub. Narrow the land to 1.676 mm, raise the relief above 9.549 deg, or grind a second facet behind it.'
    """
    says = "The heel just touches the circle: it will rub."
    proud: dict[str, Amount | str] = {}
    stands = "The heel stands" if is_read else "The flat, carried on to the heel, stands"
    rub = "proud of the circle: it will rub." if is_read else "proud of the circle: the heel will rub."
    if heel_drop < 0:
        says = stands + " {proud} " + rub
        proud["proud"] = length(-heel_drop)
    if -HARDLY < heel_drop < 0:
        says = stands + " less than {hardly} " + rub
        proud = {"hardly": length(HARDLY, Rounding.UP)}
    ways = _steeper(as_given(turned / 2))
    widest = land_width(flat.clear_angle(relief_angle), diameter, measured_as) * (1 - HAIR)
    if widest >= READABLE:
        ways.insert(
            0, way("narrow the land to {widest}", "land_width", "widest", length(widest, Rounding.DOWN))
        )
    return complaint("stop", says, ways, [SECOND_FACET], **proud)


def require_short_of_centre(
    turned: float, relief_angle: float, as_given: Callable[[float], float] = _as_it_is
) -> None:
    """Raise where an eccentric relief would reach the centre of the tool before the heel.

    Derived: ``k theta`` reaches ``R`` where ``theta tan(a) = 1``.

    Args:
        turned: from edge to heel, in radians, from zero.
        relief_angle: at the edge, in radians, from zero to under a right angle.
        as_given: turns a relief seen square to the axis (rad) into the view in which it was given.

    Raises:
        GeometryError: with the relief that would be the limit.

    Example:
        >>> require_short_of_centre(0.5, 0.2)
    """
    if turned * math.tan(relief_angle) >= 1:
        raise refuse(
            "relief_angle",
            "The relief is so steep that the heel would pass the centre of the tool. Choose a relief under {limit}.",
            {"limit": angle(as_given(math.atan(1 / turned)), Rounding.DOWN)},
        )
