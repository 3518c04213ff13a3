"""What the limits of a tooth that is sharpened on its face mean at the machine, with what would fix them."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.calculation import Check, passed, watch
from geometry.complaints import complaint
from geometry.cures import way
from geometry.edge.surface_input import Edge as SurfaceEdge
from geometry.sentences import Rounding, angle, count, length
from geometry.tooth import flat
from geometry.tooth.heel_advice import SECOND_FACET, rubs
from geometry.tooth.land import land_width
from geometry.upkeep.on_face import Face

EVEN = 0.0005
"""Sharpenings (mm) that differ by less take the same off the land, as it is shown: half a thousandth of a millimetre."""

NO_PRIMARY = {
    "primary": "One sharpening would take away the whole primary land.",
    "primary heel": "Grinding the face takes relief off the primary land with it, and after one sharpening its back rubs.",
    "behind": "After one sharpening the heel behind the primary land comes up to the circle and rubs.",
}
"""Why a tooth with facets cannot be sharpened on its face, by the limit that is passed."""


def left_told(face: Face, left: int) -> Check:
    """How many sharpenings are left, at least one, what each takes, and which limit ends the count."""
    first = face.limits_passed(left + 1)[0]
    limit = {"land": face.least_land, "size": face.least_diameter}.get(first, 0.0)
    why = {
        "land": "the land would fall under {limit}" if limit else "the land would be gone",
        "size": "the diameter would fall under {limit}",
        "heel": "the heel of the flat would come up to the circle and rub",
        "primary": "the primary land would be gone",
        "primary heel": "the back of the primary land would come up to the circle and rub",
        "behind": "the heel behind the primary land would come up to the circle and rub",
    }[first]
    one, last = (face.land(face.edge(at)) - face.land(face.edge(at + 1)) for at in (0, left - 1))
    takes = "makes the tool {lost} smaller and takes {stock} off the land"
    if face.form != "eccentric":
        taken = f"The first sharpening of the faces {takes}"
    elif one - last < EVEN:
        taken = f"Each sharpening of the faces {takes}"
    else:
        taken = "Each sharpening of the faces makes the tool {lost} smaller; the first takes {stock} off the land, each later one less"
    says = f"{taken}. Sharpenings left: {{left}}; with one more {why}."
    lost = length(face.diameter - face.edge(1).diameter)
    parts = {
        "lost": lost,
        "stock": length(one),
        "left": count(left),
    }
    return passed(says, **parts, **({"limit": length(limit)} if limit else {}))


def none_left(face: Face, edge: SurfaceEdge, along: float) -> Iterator[Check]:
    """What stands in the way of a single sharpening, with what would fix it.

    Args:
        face: the tooth.
        edge: of its surface, in whose view advice is given.
        along: how much of the land goes with each mm off the face.
    """
    if face.primary is not None:
        yield from _no_primary(face)
        return
    if face.form == "flat" and face.turned > 2 * face.relief_angle:
        yield _rubs_now(face, edge)
        return
    for limit in face.limits_passed(1):
        if limit == "land":
            yield _no_land(face, along)
        elif limit == "size":
            yield no_size(face.edge(1).diameter, face.least_diameter)
        else:
            yield _no_heel(face, edge)


def _no_primary(face: Face) -> Iterator[Check]:
    """The stop of a tooth with facets, of which those behind the primary land are judged by what lays them."""
    for limit in face.limits_passed(1):
        if limit == "size":
            yield no_size(face.edge(1).diameter, face.least_diameter)
        elif limit == "land":
            yield complaint(
                "stop",
                "No sharpening is left: the land would fall under {least}.",
                [],
                ["replace the tool"],
                least=length(face.least_land),
            )
        else:
            yield complaint("stop", NO_PRIMARY[limit], [], ["grind the primary land again first"])


def _rubs_now(face: Face, edge: SurfaceEdge) -> Check:
    """The stop for a flat whose heel rubs before anything is ground."""
    return rubs(
        flat.drop(face.turned, face.relief_angle, face.diameter),
        face.turned,
        face.relief_angle,
        face.diameter,
        face.measured_as,
        lambda relief: edge.given(relief, "radial"),
    )


def _no_land(face: Face, along: float) -> Check:
    now = land_width(face.turned, face.diameter, face.measured_as)
    if now == 0:
        return watch("The land has no width, so nothing can come off its face. Measure the land.")
    if face.step >= face.turned:
        half = face.turned * face.diameter / 4 / along
        return complaint(
            "stop",
            "One sharpening of {stock} would take away the whole land.",
            [
                way(
                    "take {half} at a time, or less",
                    "stock_per_sharpening",
                    "half",
                    length(half, Rounding.DOWN),
                )
            ],
            stock=length(face.stock / along),
        )
    after = length(face.land(face.edge(1)), Rounding.DOWN)
    return complaint(
        "stop",
        "No sharpening is left: the land would fall under {least}.",
        [way("allow a land of {after}", "least_land", "after", after)],
        ["replace the tool"],
        least=length(face.least_land),
    )


def no_size(diameter: float, least: float) -> Check:
    """The stop of a tool that one more sharpening makes too small."""
    return complaint(
        "stop",
        "No sharpening is left: the diameter would fall under {least}.",
        [way("allow a diameter of {after}", "least_diameter", "after", length(diameter, Rounding.DOWN))],
        ["use the tool for a smaller size"],
        least=length(least),
    )


def _no_heel(face: Face, edge: SurfaceEdge) -> Check:
    enough = edge.given((face.turned + face.step) / 2, "radial")
    widest = 2 * face.relief_angle - face.step
    ways = [
        way("before that, raise the relief to {enough}", "relief_angle", "enough", angle(enough, Rounding.UP))
    ]
    if widest > face.step:
        narrow = length(land_width(widest, face.diameter, face.measured_as), Rounding.DOWN)
        ways.append(way("narrow the land to {widest}", "land_width", "widest", narrow))
    return complaint(
        "stop",
        "Grinding the face of a flat takes relief away with it, and after one sharpening its heel rubs.",
        ways,
        [SECOND_FACET],
    )
