"""How far to raise or lower the wheel head or the tooth rest for a relief angle."""

from __future__ import annotations

import math

from geometry.calculation import AT_THE_WHEEL, Calculation, Check, Field, Inputs, Result, passed, watch
from geometry.sentences import angle, length
from geometry.setting.height import relief_of_height, rule_height, setting_height

RULE_GOOD_TO = math.radians(15)
"""Up to here the shop rule stays within about one part in a hundred of the exact height; derived."""


def _compute(given: Inputs) -> Result:
    shape = given.choice("wheel_shape")
    diameter = given.number("wheel_diameter" if shape == "straight" else "diameter")
    if given.has("relief_angle"):
        relief = given.number("relief_angle")
        exact = setting_height(relief, diameter)
    else:
        exact = given.number("wheel_head_height")
        relief = relief_of_height(exact, diameter)
    rule = rule_height(relief, diameter)
    return Result(
        outputs={
            "wheel_head_height": exact,
            "rule_height": rule,
            "rule_difference": rule - exact,
            "relief_angle": relief,
        },
        checks=(_how(shape, exact, diameter), *_rule(relief, exact, rule)),
    )


def _how(shape: str, exact: float, diameter: float) -> Check:
    if exact == 0:
        return watch("No height gives no relief: the whole land will rub. Choose a relief angle above {zero}.",
                     zero=angle(0.0))  # fmt: skip
    if shape == "straight":
        return passed(
            "Straight wheel: set the wheel axis {height} above the tool axis (below it, where the land lies under the "
            "edge), tooth rest level with the tool axis. The figure uses the WHEEL's diameter of {diameter}; take it "
            "again when the wheel has been dressed.",
            height=length(exact),
            diameter=length(diameter),
        )
    return passed(
        "Cup wheel: set the tooth rest {height} below the tool axis (above it, where the land lies under the edge). The "
        "figure uses the TOOL's diameter of {diameter}.",
        height=length(exact),
        diameter=length(diameter),
    )


def _rule(relief: float, exact: float, rule: float) -> tuple[Check, ...]:
    if relief <= RULE_GOOD_TO:
        return ()
    return (
        watch(
            "Above {limit} the shop rule drifts: it asks for {difference} more than the exact height. Use the exact one, {exact}.",
            limit=angle(RULE_GOOD_TO),
            difference=length(rule - exact),
            exact=length(exact),
        ),
    )


CALCULATION = Calculation(
    name="setting-height",
    title="Height for a relief angle",
    question="How far apart in height are the centres, or the tooth rest, to grind this relief angle, or which angle does a height give?",
    wants="For a straight wheel it wants the diameter of the WHEEL as it is now; "
    "for a cup wheel with the tooth rest moved it wants the diameter of the TOOL.",
    neglects="It takes the tooth rest level with the axis to begin with and the wheel trued; "
    "it grinds one flat (cup) or very slightly hollow (straight) facet and says nothing of whether the heel clears.",
    families=(
        "tap",
        "countersink",
        "step-drill",
        "twist-drill",
        "reamer",
        "counterbore",
        "centre-drill",
        "subland-drill",
    ),
    inputs=(
        Field("relief_angle", one_of="relief"),
        Field("wheel_head_height", one_of="relief"),
        Field("wheel_shape", default="type-1-straight"),
        Field("wheel_diameter", when=("wheel_shape", "type-1-straight")),
        Field("diameter", when=("wheel_shape", "type-6-straight-cup")),
    ),
    outputs=("wheel_head_height", "relief_angle", "rule_height", "rule_difference"),
    cautions=(*AT_THE_WHEEL, "side-grinding"),
    compute=_compute,
)
