"""The throws that are set in a job: what each is called, which are none to set, and which cam of the drawer each is."""

from __future__ import annotations

from collections.abc import Mapping

from geometry.quantities import quantity
from geometry.role import HEEL
from library.calc.past_the_range import within
from library.calc.throw_per import per_said
from library.cards.cams import show_angle
from library.cards.job import Job
from library.cards.read_order import step_read
from library.cards.shall_be import relief_key
from library.cards.step import Step

CAMS = frozenset({"radial_throw", "axial_throw", "needed_radial_throw"})
"""Settings of a cam that serves a cone or steps."""

TITLES = {"chosen_throw": "Throw of the cam"}
"""What is set, where a shorter word than the title of the quantity does."""

THROWS = frozenset({*CAMS, "chosen_throw", "throw_per_turn", "throw_per_tooth"})
"""All settings of a cam."""


def title_set(step: Step, key: str, graduation: str) -> str:
    """What is set; a throw with per what it counts, where that of the drawer does not say it, and the way its cam moves."""
    title, per = TITLES.get(key) or quantity(key).title, per_said(key, step.answer.inputs)
    if per and not graduation.endswith(per):
        title = f"{title} {per}"
    if key not in THROWS - CAMS or step.answer.result is None:
        return title
    own = quantity("throw_per_turn").title
    way = step.answer.result.named.get("throw_per_turn", "").removeprefix(own)
    return f"{title}{way}" if way.startswith(", ") else title


def not_set(step: Step, numbers: Mapping[str, float]) -> frozenset[str]:
    """Throws that are not set: what would be needed, where a cam is chosen; each only as its cam is counted."""
    if "chosen_throw" in numbers or "radial_throw" in numbers:
        return THROWS - {"chosen_throw", "radial_throw", "axial_throw"}
    per = step.answer.inputs.get("throw_per")
    by_tooth = per is not None and per.value == "tooth" and "throw_per_tooth" in numbers
    return frozenset({"throw_per_turn" if by_tooth else "throw_per_tooth"})


def of_cam(job: Job, step: Step, key: str) -> tuple[str, str]:
    """Which cam of the drawer a throw is, and what it gives where that is another relief than the wanted one."""
    filled = step.answer.inputs.get(key)
    if filled is None or key not in {"chosen_throw", "radial_throw", "axial_throw"} or job.machine is None:
        return "", ""
    cam = next((one for one in job.machine.cam_throws if one.number == filled.value), None)
    if cam is None:
        return "", ""
    found = job.by_cam
    gives = ""
    if found and found.differs:
        of_book = within(job.entry.values.get(relief_key(job)), found.given)
        heel = job.doing(HEEL)
        place = step_read(job, heel, job.display) if heel is not None else ""
        given = f"gives {show_angle(found.given)}{f' at {place}' if place else ''}, "
        gives = f"{given}{f'{of_book}; ' if of_book else ''}{show_angle(found.wanted)} was wanted"
    return (
        f"the cam of {cam.text} out of the drawer, per {job.machine.throw_per}",
        gives if key != "axial_throw" or "radial_throw" not in step.answer.inputs else "",
    )


def cam_in_short(job: Job, graduation: str) -> str:
    """That a cam is one of the drawer, in as few words as do; empty where it is none."""
    return f"drawer, per {job.machine.throw_per}" if graduation and job.machine is not None else ""
