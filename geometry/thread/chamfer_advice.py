"""Checks on the chamfer of a tap, with what fixes it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from geometry.calculation import Check, note, passed, stop, watch
from geometry.plausible import LEAST_RELIEF, ODD_READING, relief_plausible
from geometry.sentences import Rounding, angle, length, ratio
from geometry.thread.chamfer import RELIEF_FACTORS, SLACK, Chamfer, moved_back, stock_for
from geometry.thread.hole_advice import LIMITS_SHOWN


def starts(chamfer: Chamfer) -> Check:
    """Whether the point enters a hole of the common size."""
    point, hole = chamfer.thread.diameter - 2 * chamfer.height, chamfer.hole
    if point > hole + SLACK:
        return stop(
            "The point of {point} does not enter a hole of {hole}, diameter less pitch: the tap cannot start. Grind the "
            "chamfer until its point measures {hole} or less.",
            cure=(("point_diameter", hole),),
            point=length(point),
            hole=length(hole, Rounding.DOWN),
        )
    return passed(
        "{threads} threads, {long} long at {angle} a side, lift the chamfer from {point} at the point, which enters a "
        "hole of {hole}.",
        threads=ratio(chamfer.threads),
        long=length(chamfer.length),
        angle=angle(chamfer.angle),
        point=length(point),
        hole=length(hole, Rounding.DOWN),
    )


def far_from_its_thread(crests: float, nominal: float) -> Iterator[Check]:
    """A doubt where a tap measures (mm) otherwise than any tap of its thread does, by a tenth of its nominal size (mm)."""
    if abs(crests - nominal) > ODD_READING * nominal:
        yield watch(
            "A tap of {crests} over its crests is hardly one for a thread of {nominal}. Measure it again, and see which thread it is.",
            crests=length(crests),
            nominal=length(nominal),
        )


def chip_checks(chips: Mapping[str, float]) -> Iterator[Check]:
    """What each tooth cuts, where the number of flutes was given."""
    if chips:
        yield note(
            "Each tooth of the chamfer cuts {deeper} deeper than the one before it; square to the chamfer its chip is "
            "{thick} thick.",
            deeper=length(chips["chip_per_tooth"]),
            thick=length(chips["square_chip_per_tooth"]),
        )


def relief_checks(found: Mapping[str, float], given_as: str, slope: float) -> Iterator[Check]:
    """Whether the chamfer has a relief that a chamfer can have, in all three senses, where one was given.

    Args:
        found: the relief in the three senses; empty where none was given.
        given_as: the sense in which it was given.
        slope: the angle of the chamfer, in radians.
    """
    if not found:
        return
    if found[given_as] == 0:
        yield stop(
            "The chamfer has no relief: it rubs and will not cut. Give it {least} or more.",
            cure=((given_as, least := _least(given_as, slope)),),
            least=angle(least, Rounding.UP),
        )
        return
    complaints = relief_plausible(
        found[given_as], "chamfer", factor=RELIEF_FACTORS[given_as](slope), key=given_as
    )
    yield from complaints
    says = note if complaints else passed
    yield says(
        "The chamfer cuts with {square} of relief, square to it: {radial} seen along the radius, {axial} along the axis.",
        square=angle(found["square_chamfer_relief"]),
        radial=angle(found["radial_chamfer_relief"]),
        axial=angle(found["axial_chamfer_relief"]),
    )


def _least(given_as: str, slope: float) -> float:
    """The least relief that is one, seen in the sense in which it is given."""
    return math.atan(RELIEF_FACTORS[given_as](slope) * math.tan(LEAST_RELIEF))


def back_checks(chamfer: Chamfer, cut_back: float, found: Mapping[str, float]) -> Iterator[Check]:
    """What is left after grinding, and the stock that makes the tap start again."""
    if not found:
        return
    hole, point = chamfer.hole, found["point_diameter_after"]
    wanted = max(chamfer.length, (chamfer.thread.diameter - hole) / 2 / math.tan(chamfer.angle))
    again = stock_for(wanted - chamfer.length + cut_back, chamfer.angle)
    left = {
        "left": ratio(found["threads_left"]),
        "point": length(point),
        "hole": length(hole, Rounding.DOWN),
    }
    if point <= hole + SLACK:
        yield passed(
            "After grinding the chamfer has {left} threads and a point of {point}, which enters a hole of {hole}.",
            **left,
        )
        return
    says = (
        "{left} threads of the chamfer are left and its point, now {point}, does not enter a hole of {hole}. "
    )
    if chamfer.point_diameter(wanted + moved_back(LIMITS_SHOWN, chamfer.angle)) < 0:
        anew = (
            "No stock off the chamfer alone gets it in without a sharp point: grind it anew at another angle."
        )
        yield watch(says + anew, **left)
        return
    yield watch(
        says + "Take {again} off the chamfer to have {threads} threads again.",
        cure=(("chamfer_stock", again),),
        again=length(again, Rounding.UP),
        threads=ratio(wanted / chamfer.thread.pitch),
        **left,
    )
