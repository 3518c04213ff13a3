"""From where a setting counts and which way it goes: told beside the number, for the wrong way gives a relief that rubs."""

from __future__ import annotations

from geometry.setting.height import FROM_THE_AXIS
from library.calc.left_hand import LEFT_HAND
from library.cards.hand import is_left
from library.cards.job import Job
from library.cards.step import Step

CLOCKWISE, ANTICLOCKWISE = "clockwise", "anticlockwise"
"""Which way a right-hand tool turns as it cuts, and a left-hand one, seen from the shank."""

ACROSS = {"above": "below", "below": "above"}
"""The other side of the axis."""


def counted(job: Job, step: Step, key: str) -> str:
    """From where a setting counts and which way it goes; empty where its calculation says nothing of it.

    A left-hand tool that is held as a right-hand one is has its edges on the other side, and so its heights.
    """
    said = dict(step.sheet.role.counted).get(key, "")
    if not said or key not in dict(FROM_THE_AXIS):
        return said
    side, _, axis = said.partition(" ")
    found = step.answer.result.outputs if step.answer.result is not None else {}
    if minus := found.get(key, 0.0) < 0:
        side = ACROSS[side]  # A rest far beside the wheel holds the edge on the other side of the axis.
    told = f"{LEFT_HAND} {ACROSS[side]} {axis}, right-hand {side} it" if is_left(job) else f"{side} {axis}"
    return f"minus: {told}" if minus else told


def how_turned(job: Job, step: Step) -> str:
    """How the tool is turned for what a calculation sets, in whole sentences; empty where it sets nothing of the kind.

    Args:
        job: the card worked out.
        step: one of its calculations.
    """
    if not step.works or step.stopped or step.answer.result is None:
        return ""
    found = step.answer.result.outputs
    cuts = ANTICLOCKWISE if is_left(job) else CLOCKWISE
    return " ".join(said.replace("{cuts}", cuts) for key, said in step.sheet.role.turned if key in found)
