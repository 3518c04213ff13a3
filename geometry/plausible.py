"""Plausibility of a quantity for the tool it is given for: ranges that all calculations share.

Each function answers with the complaints it has, none where all is well. A bound is a standard's where one is
named, else common practice without a source; outside it a tool is rare, and a slip in reading or typing likely.
"""

from __future__ import annotations

import math

from geometry.calculation import Check, Cure, stop, watch
from geometry.quantities import quantity
from geometry.sentences import Amount, Kind, Rounding, angle, count, length, ratio
from geometry.surfaces import SURFACES

LEAST_RELIEF, MOST_RELIEF = math.radians(0.5), math.radians(45)
"""Reliefs in use lie well inside; a feed or a drop typed for an angle does not. Common practice, no source."""

LEAST_RAKE, MOST_RAKE = math.radians(-30), math.radians(40)
"""Rakes from hard carbide to soft aluminium lie inside. Common practice, no source."""

COARSEST = 0.3
"""The pitch as a share of the diameter: BS 84 reaches 0.267 (1/16-60), ISO 261 reaches 0.25 (M1)."""

ODD_READING, WRONG_READING = 0.10, 0.50
"""How far a measured diameter may lie from the nominal one, as a share of it. Common practice, no source."""

ODD_BACK = 0.03
"""How far a diameter at the back may lie from that at the front, as a share of it; back tapers of the book, of hundredths to
a tenth of a millimetre in 100 mm, stay well inside on any body. Common practice, no source."""

CHISEL = (math.radians(45), math.radians(60))
"""Usual chisel edge angles counted the sharp way; 120 to 135 degrees the other. Common practice, no source."""

SHARPEST_CHISEL = math.radians(30)
"""Flat flanks that meet at less than this lie over 45 degrees deep behind the lips of a common point. Derived."""

SLACK = 1e-9
"""A limit counts as passed beyond this many radians, or this share; less is the rounding of arithmetic."""


SHOWN = 0.0254 / 10
"""As coarsely as a length that is no limit is shown, in mm: a tenth of a thou."""

_AGAIN = " the diameter again, or "


def _cure(key: str, *values: float) -> Cure:
    return tuple((key, value) for value in values) if key else ()


def relief_plausible(
    relief: float, surface: str = "", *, factor: float = 1.0, key: str = ""
) -> tuple[Check, ...]:
    """Whether an angle can be a relief at all; one of zero is left to the calculation, which knows what rubs.

    Args:
        relief: in radians, in the view in which the relief of that surface is given.
        surface: a word of ``SURFACES``, or nothing where the surface is not known.
        factor: how many times the tangent of the relief in that view the tangent of this one is, where it was
            given in another view.
        key: the input that holds it, for the cure.

    Returns:
        A watch outside 0.5 to 45 degrees, else nothing.

    Example:
        >>> [check.state for check in relief_plausible(math.radians(0.008), "lip")]
        ['watch']
        >>> relief_plausible(math.radians(8), "land")
        ()
    """
    where = f" of the {SURFACES[surface].title}" if surface in SURFACES else ""
    least, most = (math.atan(factor * math.tan(bound)) for bound in (LEAST_RELIEF, MOST_RELIEF))
    if 0 < relief < least * (1 - SLACK):
        return (
            watch(
                "A relief"
                + where
                + " of {relief} is hardly one: was it a feed or a length? A relief is an angle, "
                "{least} or more.",
                relief=angle(relief),
                least=angle(least, Rounding.UP),
                cure=_cure(key, least),
            ),
        )
    if relief > most * (1 + SLACK):
        return (
            watch(
                "A relief"
                + where
                + " of {relief} leaves hardly any tooth: measure it again. A relief is {most} or "
                "less.",
                relief=angle(relief),
                most=angle(most, Rounding.DOWN),
                cure=_cure(key, most),
            ),
        )
    return ()


def rake_plausible(rake: float, *, key: str = "") -> tuple[Check, ...]:
    """Whether an angle can be a rake.

    Args:
        rake: in radians, negative where the face leans back.
        key: the input that holds it, for the cure.

    Returns:
        A watch outside -30 to +40 degrees, else nothing.

    Example:
        >>> [check.state for check in rake_plausible(math.radians(40.32))]
        ['watch']
    """
    if LEAST_RAKE * (1 + SLACK) <= rake <= MOST_RAKE * (1 + SLACK):
        return ()
    return (
        watch(
            "A rake of {rake} is more than edges are given; between {least} and {most} is usual. Measure it again.",
            rake=angle(rake),
            least=angle(LEAST_RAKE),
            most=angle(MOST_RAKE),
            cure=_cure(key, LEAST_RAKE, MOST_RAKE),
        ),
    )


def pitch_plausible(pitch: float, diameter: float, *, key: str = "") -> tuple[Check, ...]:
    """Whether a pitch can belong to a thread of this diameter.

    Args:
        pitch: in mm, above zero.
        diameter: over the crests, in mm, above zero.
        key: the input that holds it, ``pitch`` or ``threads_per_inch``, for the words and the cure.

    Returns:
        A stop over 0.3 of the diameter that asks whether the other of the two was meant, else nothing.

    Example:
        >>> [check.state for check in pitch_plausible(13.0, 12.7)], pitch_plausible(25.4 / 13, 12.7)
        (['stop'], ())
    """
    most = COARSEST * diameter
    if pitch <= most * (1 + SLACK):
        return ()
    says = "No thread of {diameter} has a pitch of {pitch}: the coarsest standard ones stay under {share} of the diameter. "
    parts: dict[str, Amount | str] = {
        "diameter": length(diameter),
        "pitch": length(pitch),
        "share": ratio(COARSEST),
    }
    if most < quantity("pitch").low:
        return (stop(says + "Measure the diameter again.", **parts),)
    meant = 25.4 / pitch
    is_meant = meant + SHOWN <= most
    if is_meant:
        parts["meant"] = length(meant)
    if key == "threads_per_inch":
        says += ("Was a pitch of {meant} meant? Else measure" if is_meant else "Measure") + _AGAIN
        fewest = Amount(1 / most, Kind.PER_LENGTH, Rounding.UP)
        return (stop(says + "give {fewest} or more.", fewest=fewest, cure=_cure(key, 1 / most), **parts),)
    if is_meant:
        parts["number"] = ratio(pitch)
    says += (
        "Were threads per inch meant? {number} of them to the inch are a pitch of {meant}. Else measure"
        if is_meant
        else "Measure"
    ) + _AGAIN
    return (
        stop(
            says + "give a pitch of {most} or less.",
            most=length(most, Rounding.DOWN),
            cure=_cure(key, *((meant, most) if is_meant else (most,))),
            **parts,
        ),
    )


def diameter_plausible(measured: float, nominal: float) -> tuple[Check, ...]:
    """Whether a diameter that was read can be that of a tool of this nominal size.

    Args:
        measured: in mm, from zero.
        nominal: in mm, above zero: what the tool is called by, or the thread it cuts.

    Returns:
        A watch beyond a tenth of the nominal size, a stop beyond half of it, else nothing.

    Example:
        >>> [check.state for check in diameter_plausible(0.023 * 25.4, 12.7)], diameter_plausible(12.6, 12.7)
        (['stop'], ())
    """
    off = abs(measured - nominal) / nominal
    if off <= ODD_READING + SLACK:
        return ()
    amounts = {
        "measured": length(measured),
        "nominal": length(nominal),
        "low": length(nominal * (1 - ODD_READING), Rounding.UP),
        "high": length(nominal * (1 + ODD_READING), Rounding.DOWN),
    }
    if off > WRONG_READING + SLACK:
        return (
            stop(
                "A diameter of {measured} cannot be that of a tool of {nominal}. See the unit and the decimal point; a "
                "reading from {low} to {high} would be believed.",
                **amounts,
            ),
        )
    return (
        watch(
            "A diameter of {measured} is far from the {nominal} of this tool. Measure it again; a reading from {low} to "
            "{high} would be believed.",
            **amounts,
        ),
    )


def back_plausible(back: float, front: float) -> tuple[Check, ...]:
    """Whether a diameter that was read at the back can be that of a body whose front is so large, and that cuts no taper.

    Args:
        back: in mm, from zero.
        front: in mm, above zero.

    Returns:
        A watch beyond three hundredths of the front, else nothing.

    Example:
        >>> [check.state for check in back_plausible(0.15, 16.0)], back_plausible(15.97, 16.0)
        (['watch'], ())
    """
    if abs(back - front) <= ODD_BACK * front * (1 + SLACK):
        return ()
    return (
        watch(
            "Is {back} the diameter at the back, or how much smaller it is there? It is more than 3 percent off the {front} at the "
            "front, and a back taper is a tenth of a millimetre in 100 mm or less. A diameter within 3 percent of it would be believed.",
            back=length(back),
            front=length(front),
        ),
    )


def land_plausible(land_angle: float, flutes: float | None = None) -> tuple[Check, ...]:
    """Whether a land can go so far round its tool.

    Args:
        land_angle: from edge to heel, in radians.
        flutes: how many edges share the circle, from one; nothing where it is not known.

    Returns:
        A stop where land and flute have no room between two edges, a watch where one land of an unknown number
        goes more than half round, else nothing.

    Example:
        >>> [check.state for check in land_plausible(2.0, 4)], [check.state for check in land_plausible(3.5)]
        (['stop'], ['watch'])
    """
    if flutes is None:
        if land_angle <= math.pi * (1 + SLACK):
            return ()
        return (
            watch(
                "This one land goes {turned} round the tool, more than half of it. Measure the land again.",
                turned=angle(land_angle),
            ),
        )
    room = 2 * math.pi / flutes
    if land_angle < room * (1 - SLACK):
        return ()
    return (
        stop(
            "This land goes {turned} round the tool, but with {flutes} flutes the next edge stands {room} behind. Measure "
            "the land again, and count the flutes.",
            turned=angle(land_angle),
            flutes=count(flutes),
            room=angle(room),
        ),
    )


def chisel_plausible(chisel_edge_angle: float) -> tuple[Check, ...]:
    """Whether the chisel edge of a two-lipped drill lies as it should.

    Where flat flanks of relief ``t`` meet over a web the sharp angle is ``atan(cot(point / 2) / t)``: the more
    relief near the centre, the sharper it lies. Derived; the usual range is common practice, no source.

    Args:
        chisel_edge_angle: to a lip, counted either way, in radians, above zero and under half a turn.

    Returns:
        A watch outside 45 to 60 (120 to 135) degrees, a stop under 30 (over 150), else nothing.

    Example:
        >>> [check.state for check in chisel_plausible(math.radians(10))]
        ['stop']
        >>> chisel_plausible(math.radians(125)), chisel_plausible(math.radians(55))
        ((), ())
    """
    sharp = min(chisel_edge_angle, math.pi - chisel_edge_angle)
    low, high = CHISEL
    if low * (1 - SLACK) <= sharp <= high * (1 + SLACK):
        return ()
    usual = (
        "usual are {low} to {high} counted from the near side of the lip, which is {wide_low} to {wide_high} from the "
        "far side"
    )
    lies = "The chisel edge lies at {sharp} to a lip, {wide} counted the other way; " + usual + ". "
    amounts = {
        "sharp": angle(sharp),
        "wide": angle(math.pi - sharp),
        "low": angle(low),
        "high": angle(high),
        "wide_low": angle(math.pi - high),
        "wide_high": angle(math.pi - low),
    }
    if sharp < SHARPEST_CHISEL * (1 - SLACK):
        return (stop(lies + "No flank makes so sharp a one. Measure it again.", **amounts),)
    cure = (
        "There is much relief near the centre: grind less of it there."
        if sharp < low
        else "There is little relief near the centre: grind more of it there."
    )
    return (watch(lies + cure, **amounts),)
