"""What the stock for a worn edge means at the machine: infeed, size, land, and which side is cheaper."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.calculation import Check, Inputs, note, passed, stop, watch
from geometry.complaints import complaint
from geometry.cures import way
from geometry.edge.surface_input import Edge
from geometry.plausible import rake_plausible, relief_plausible
from geometry.sentences import Rounding, angle, count, length
from geometry.tooth.land import land_angle
from geometry.upkeep.wear import passes_for

DEEPEST = 0.05
"""The deepest pass in mm on hardened steel that does not burn as a rule; common practice, no source."""


def doubts(given: Inputs, edge: Edge, rake: float) -> Iterator[Check]:
    """What is odd about relief and rake."""
    relief = given.number("relief_angle")
    if relief == 0:
        yield complaint(
            "stop",
            "There is no relief behind the edge: it rubs, and no wear can be told from it.",
            [way("give a relief above {zero}", "relief_angle", "zero", angle(0.0))],
        )
    yield from relief_plausible(relief, edge.surface.key, key="relief_angle")
    yield from rake_plausible(rake, key="rake_angle")


def of_the_land(given: Inputs, on: str, along: float | None) -> Iterator[Check]:
    """Whether any land is left behind the wear."""
    if along is None or not given.has("land_width"):
        return
    diameter = given.number("diameter")
    turned = land_angle(given.number("land_width"), diameter, given.choice("land_measured_as"))
    if 2 * along / diameter < turned:
        return
    if given.has("wear_land") and given.number("wear_land") >= turned * diameter / 2:
        yield stop(
            "The wear reaches over the whole land of {land}. Measure both again; if it is so, the tool is used up.",
            land=length(given.number("land_width")),
        )
    elif on == "face":
        yield stop(
            "Ground on its face the tooth loses the whole land of {land}. Grind the flank instead.",
            land=length(given.number("land_width")),
        )


def of_a_flat(
    on: str, form: str, radial: float | None, along: float | None, diameter: float
) -> Iterator[Check]:
    """Whether a flat keeps any relief as its face goes back."""
    if on != "face" or form != "flat" or not radial or along is None:
        return
    left = radial - 2 * along / diameter
    if left <= 0:
        yield stop(
            "One flat loses relief as its face goes back, and so much stock uses it up: the edge would rub. Grind the flank."
        )
    else:
        yield note("The flat keeps a relief of {left} square to the axis.", left=angle(left))


def of_the_margin(given: Inputs, *, within: bool) -> Check:
    """What a margin on the circle makes of the size: nothing is lost while the face goes back over it alone."""
    margin = length(given.number("margin_width"))
    if within:
        return note(
            "The wear lies within the margin of {margin}, which is on the circle: off the face it costs no size.",
            margin=margin,
        )
    return note("The margin of {margin} is not counted: the relief is taken from the edge on.", margin=margin)


def of_the_infeed(infeed: float, stock: float) -> Iterator[Check]:
    """Whether a pass is deeper than one that leaves the edge cool."""
    if min(infeed, stock) > DEEPEST * (1 + 1e-9):
        yield complaint(
            "watch",
            "A pass of {infeed} burns an edge easily.",
            [way("take {most} or less at a time", "infeed", "most", length(DEEPEST, Rounding.DOWN))],
            infeed=length(infeed),
        )


def of_the_size(given: Inputs, lost: float | None) -> Iterator[Check]:
    """Whether the tool stays in size."""
    if lost is None:
        return
    after = given.number("diameter") - lost
    if not given.has("least_diameter"):
        yield note("It becomes {lost} smaller and has {after} then.", lost=length(lost), after=length(after))
        return
    least = given.number("least_diameter")
    if after < least - 1e-9:
        yield complaint(
            "stop",
            "The tool would come down to {after}, under the {least} that it needs.",
            [way("allow a diameter of {limit}", "least_diameter", "limit", length(after, Rounding.DOWN))],
            ["use it for a smaller size"],
            after=length(after),
            least=length(least),
        )
    else:
        yield passed(
            "It becomes {lost} smaller and stays in size: {after} is left, and {least} is needed.",
            lost=length(lost),
            after=length(after),
            least=length(least),
        )


def told(given: Inputs, on: str, stock: float) -> Check:
    """The passes in one sentence."""
    infeed = given.number("infeed")
    passes, last = passes_for(stock, infeed)
    spark_out = count(given.number("spark_out_passes"))
    if passes == 0:
        return watch("Nothing has to come off. Measure the wear again.")
    if passes == 1:
        return note(
            f"Take {{last}} off the {on} of every tooth in one pass, then spark out: {{spark}} without infeed.",
            last=length(last),
            spark=spark_out,
        )
    return note(
        f"Take {{stock}} off the {on} of every tooth in {{passes}} passes of {{infeed}}, the last of {{last}}, then spark out: "
        "{spark} without infeed.",
        stock=length(stock),
        passes=count(passes),
        infeed=length(infeed),
        last=length(last),
        spark=spark_out,
    )


def other_way(on: str, face: float | None, flank: float) -> Iterator[Check]:
    """What the other side would take."""
    if face is None:
        return
    here, there, other = (face, flank, "flank") if on == "face" else (flank, face, "face")
    if there > 0 and here > 0:
        yield note(
            f"Off the {other} it would be {{there}}. The face leaves the relief as it is, the flank leaves land and rake.",
            there=length(there),
        )


def where_the_size_is_missing(lost: float | None, on: str, key: str | None) -> Iterator[Check]:
    """What to give so that the size is told."""
    if lost is not None:
        return
    if on == "face" and key:
        yield note(f"With the {key.replace('_', ' ')} the size that is left can be told.")
    elif on == "flank":
        yield note("With the back taper the size that is left can be told.")
    else:
        yield note(
            "The size of the tool hangs on another surface; the calculation of the size lost in sharpening tells what that one loses."
        )
