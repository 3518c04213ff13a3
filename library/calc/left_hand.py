"""What is said of a left-hand tool wherever something is set for it: the numbers stay, the sides change."""

from __future__ import annotations

from geometry.calculation import Calculation, Check, Result, note
from library.book.model import Entry

HAND, LEFT = "hand", "left"

LEFT_HAND = "LEFT-HAND"
"""The word for it, where there is room for no more."""

TO_A_SIDE = frozenset(
    {
        "roll_angle",
        "second_roll_angle",
        "workhead_tilt",
        "second_workhead_tilt",
        "compound_tilt_angle",
        "face_offset",
        "wheel_centre_below",
        "wheel_head_height",
        "tooth_rest_height",
        "chosen_throw",
        "radial_throw",
        "half_point_angle",
    }
)
"""What is set so that the tool falls from edge to heel, each with the side on which the heel lies; the flank of a drill is
swung to that side behind the half point angle."""

OTHER_SIDE = (
    "LEFT-HAND: it cuts turning anticlockwise, seen from the shank. Held as a right-hand tool is, all that goes to one "
    "side goes to the other by the same amount: roll, tilt, offset, height, cam and tooth rest. With the wheel stopped, the "
    "indicator must fall from edge to heel."
)
"""Derived: a left-hand tool is the mirror image of a right-hand one, and so is all that is set for it."""


def is_left_hand(entry: Entry | None) -> bool:
    """Whether the book has a tool as one that turns left as it cuts.

    Example:
        >>> is_left_hand(Entry("a", "tap", "Tap")), is_left_hand(None)
        (False, False)
    """
    value = entry.values.get(HAND) if entry is not None else None
    return value is not None and value.usual is not None and value.usual.word == LEFT


def sides_changed(sheet: Calculation, entry: Entry | None) -> tuple[Check, ...]:
    """That the sides change, for a calculation that sets something to a side and does not ask for the hand itself.

    Args:
        sheet: the calculation.
        entry: of the tool.
    """
    tells = sheet.field(HAND) is not None or TO_A_SIDE.isdisjoint(sheet.role.sets)
    return () if tells or not is_left_hand(entry) else (note(OTHER_SIDE),)


def says_left_hand(result: Result) -> bool:
    """Whether an answer is told as one of a left-hand tool, whose sides change."""
    return any(one.sentence.template == OTHER_SIDE for one in result.checks)
