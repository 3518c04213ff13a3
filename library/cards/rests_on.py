"""On what a number for the heel rests while a calculation of its cam has a fault: it falls back on less, and nobody sees it."""

from __future__ import annotations

from geometry.role import HEEL
from library.cards.found_relief import throws_of
from library.cards.job import Job
from library.cards.shall_be import DROPS
from library.cards.step import Step
from library.once import once


@once
def rests_on(job: Job) -> str:
    """On what the reading at the heel rests while a calculation that would give its relief cannot answer, in sentences.

    Args:
        job: the card worked out.

    Returns:
        Empty where no such calculation has a fault, where no reading is told, or a person said what it shall be.
    """
    heel = job.doing(HEEL)
    is_said = any(one.wanted.strip() for key, one in job.card.after.items() if key in DROPS)
    if heel is None or not heel.works or job.card.done or is_said:
        return ""
    stopped = next(
        (one for one in job.steps if one is not heel and _would_give(one, job.choice.surface)), None
    )
    if stopped is None:
        return ""
    throws = throws_of(heel.answer)
    rests = f"the cam of {throws} in '{heel.sheet.title}'" if throws else "the wanted relief"
    return (
        f"On Set, '{stopped.sheet.title}' has a fault and gives no answer: until it does, what the heel shall read rests "
        f"on {rests} alone."
    )


def _would_give(step: Step, surface: str) -> bool:
    """Whether a calculation finds the relief of a surface for its cam, and cannot answer for something wrong in it."""
    cam = step.sheet.role.cam
    if cam is None or not step.in_use or step.answer.result is not None:
        return False
    is_for_it = any(one in {"", surface} for one, _ in cam.gives)
    return is_for_it and any(not one.missing for one in step.answer.issues)
