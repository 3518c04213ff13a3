"""What a job still wants: at the head of its sheet where a setting hangs on it, else in a line below the settings."""

from __future__ import annotations

from geometry.role import HEEL, MOVES
from library.calc.surfaces import title_of
from library.cards.job import Job
from library.cards.step import Step


def still_missing(job: Job) -> tuple[tuple[str, str], ...]:
    """The watch of a draft whose relief, wheel or index cannot be set yet, as nobody would see from what is not there.

    Args:
        job: the card worked out; a record is told nothing.
    """
    found = [] if job.card.done else [_said(step) for step in _unanswered(job) if _is_for_setting(step)]
    return (("watch", f"Not finished, for want of: {'; '.join(found)}."),) if found else ()


def of_no_setting(job: Job) -> str:
    """What else is not worked out, and for want of what, in one line; of a record all of it."""
    return "; ".join(_said(step) for step in _unanswered(job) if job.card.done or not _is_for_setting(step))


def _unanswered(job: Job) -> list[Step]:
    return [
        step
        for step in job.steps
        if step.in_use and step.answer.issues and all(one.missing for one in step.answer.issues)
    ]


def _is_for_setting(step: Step) -> bool:
    """Whether the relief, the edge, the wheel or the index is set or judged by a calculation; all else may be left open."""
    role = step.sheet.role
    by_method = bool(step.sheet.methods) or role.does == HEEL
    return by_method or role.rated or role.rows == MOVES or bool(role.hands_on)


def _said(step: Step) -> str:
    surface = step.answer.surface
    wants = ", ".join(title_of(one.key, surface).lower() for one in step.answer.issues if one.key)
    return f"{step.sheet.title} ({wants})"
