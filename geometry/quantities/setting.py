"""Words for setting the machine: offsets, rests and tilts."""

from __future__ import annotations

from geometry.quantities.quantity import choice, length

ROWS = (
    choice(
        "wheel_shape",
        "Wheel shape",
        "Whether the tool is ground on the rim of a straight wheel or on the flat face of a cup wheel.",
        "Look at the wheel: which of its faces touches the tool.",
        ("straight", "cup"),
    ),
    length(
        "offset",
        "Offset",
        "The height between the centres that gives the relief angle: wheel head for a straight wheel, tooth rest for a cup.",
        "Vertically, from the setting where wheel, work and tooth rest are level.",
        0.0,
        500.0,
    ),
    length(
        "shop_rule_offset",
        "Offset by the shop rule",
        "The same height by the handbook rule 0.0087 x degrees x diameter, which needs no sine.",
        "Vertically, as the offset.",
        0.0,
        500.0,
    ),
    length(
        "rule_difference",
        "Rule less exact",
        "How much the shop rule differs from the exact offset; above zero the rule asks for more.",
        "Subtract the exact offset from the rule's.",
        -100.0,
        100.0,
    ),
)
