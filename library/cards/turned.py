"""From where a setting counts and which way it goes: told beside the number, for the wrong way gives a relief that rubs."""

from __future__ import annotations

from library.cards.hand import is_left
from library.cards.job import Job
from library.cards.step import Step

CLOCKWISE, ANTICLOCKWISE = "clockwise", "anticlockwise"
"""Which way a right-hand tool turns as it cuts, and a left-hand one, seen from the shank."""


def counted(step: Step, key: str) -> str:
    """From where a setting counts and which way it goes; empty where its calculation says nothing of it."""
    return dict(step.sheet.role.counted).get(key, "")


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
