"""Whether a throw is that of a whole turn or of one tooth, told in its name: taken for the other it is a factor of the flutes."""

from __future__ import annotations

from collections.abc import Mapping

from library.calc.inputs import Input

COUNTED = frozenset(
    {
        "radial_throw",
        "axial_throw",
        "chosen_throw",
        "cam_throws",
        "needed_radial_throw",
        "needed_axial_throw",
        "square_throw",
    }
)
"""Throws whose own title leaves open per what they are counted."""


def per_said(key: str, inputs: Mapping[str, Input]) -> str:
    """Per what a throw of a calculation is counted, such as ``per tooth``; empty for what is no such throw, or asks for none.

    Args:
        key: of an input or an output.
        inputs: what the calculation counts with.
    """
    per = inputs.get("throw_per")
    return f"per {per.value}" if key in COUNTED and per is not None else ""


def with_per(title: str, key: str, inputs: Mapping[str, Input]) -> str:
    """The title of a quantity, of a throw with per what it is counted, as ``Radial throw per tooth``."""
    return f"{title} {per_said(key, inputs)}".rstrip()
