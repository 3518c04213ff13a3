"""What the numbers of a job mean at the machine, on the setup sheet: verdicts and facts, each told once."""

from __future__ import annotations

import math
from itertools import takewhile

from geometry.calculation import Check
from geometry.role import HEEL
from geometry.sentences import Kind
from library.calc.past_the_range import past, within
from library.cards.at_machine import worked_of
from library.cards.cams import show_angle
from library.cards.close import differs, differs_said
from library.cards.found_relief import FoundRelief
from library.cards.heels import at_each_heel
from library.cards.history import lasting_now
from library.cards.issues import issues_of
from library.cards.job import Job
from library.cards.read_elsewhere import read_elsewhere
from library.cards.settings_lines import is_set_by_facets
from library.cards.shall_be import relief_key
from library.cards.step import Step
from library.pages.page import Block, Said
from library.units.show import say, show
from library.units.system import Display

WORST_FIRST = ("stop", "watch", "pass", "note")


def checks(job: Job, display: Display) -> list[tuple[str, str]]:
    """Every verdict and every fact, the worst first, each once."""
    found: list[tuple[str, str]] = []
    for step in job.steps:
        if step.in_use:
            found += [
                (one.state, say(one.sentence, display))
                for one in lasting_now(job, step).checks
                if _told(step, one)
                and not _told_by_cam(job, step, one)
                and not (
                    one.state == "note"
                    and "height" in one.sentence.parts
                    and (_set_before(job, step) or is_set_by_facets(job, step))
                )
            ]
    told = {text for _, text in found}
    at_their_lines = {one.text for one in read_elsewhere(job)}
    for one in issues_of(job):
        # What the card says line by line of readings of another surface, it says here once for all of them.
        if one.text not in at_their_lines and not any(text in one.text for text in told):
            found.append((one.state, one.text))
    if record := differs_said(differs(job)):
        found.append(("note", record))
    return sorted(dict.fromkeys(found), key=lambda one: WORST_FIRST.index(one[0]))


def _told_by_cam(job: Job, step: Step, check: Check) -> bool:
    """Whether it is said by the sentence on the chosen cam: a cone's remark on its relief, or who else counts with it."""
    cam, drop = job.by_cam, job.doing(HEEL)
    if cam is None or not cam.differs or drop is None:
        return False
    if "throws" in check.sentence.parts:
        return step is drop or step in _count_too(job, drop)
    if check.state == "note":
        return False
    on_relief = check.state == "watch" or (check.state == "pass" and "range" in check.sentence.parts)
    return step.sheet.role.repeats_cam and on_relief and drop.relief is None


def _count_too(job: Job, drop: Step) -> list[Step]:
    """The calculations that count with the relief of the cam by which the readings are judged."""
    return [
        one
        for one in job.steps
        if one.works and one is not drop and one.relief is not None and _same_cam(one.relief, drop)
    ]


def _same_cam(relief: FoundRelief, drop: Step) -> bool:
    """Whether a relief comes from the readings themselves, or from where theirs comes from and is the same."""
    theirs = drop.relief
    same = theirs is not None and theirs.source == relief.source
    return relief.source == drop.sheet.name or (
        same and theirs is not None and math.isclose(theirs.relief, relief.relief, abs_tol=1e-9)
    )


def tells_of_setting(step: Step, check: Check) -> bool:
    """Whether a note says how a setting goes and is proved, so that it stands with the settings and not among the verdicts."""
    return check.state == "note" and step.sheet.role.said_of_setting in check.sentence.parts


def _told(step: Step, check: Check) -> bool:
    """Whether a verdict or a fact stands on the sheet; a direction that the setting says itself is not said twice."""
    if check.state in {"stop", "watch"}:
        return True
    if tells_of_setting(step, check):
        return False
    # Where the indicator points stands under Wanted.
    if check.state == "note" and "points" in check.sentence.parts:
        return False
    if "height" in check.sentence.parts and any(line.way for line in step.lines):
        return False
    return check.state in step.sheet.role.tells


def _set_before(job: Job, step: Step) -> bool:
    """Whether an earlier step has set what this one answers too, such as the rest under a helical tooth."""
    own = {key for key in step.sheet.role.sets if step.answer.result and key in step.answer.result.outputs}
    return any(
        one.works and own & set(one.sheet.role.sets) & set(worked_of(one.answer).outputs)
        for one in takewhile(lambda one: one is not step, job.steps)
    )


def by_cam(job: Job, display: Display) -> tuple[Block, ...]:
    """That the readings are held against the cam that was chosen, beside what was wanted."""
    cam, drop = job.by_cam, job.doing(HEEL)
    if cam is None or drop is None or not cam.differs:
        return ()
    each = at_each_heel(job, display)
    wanted = show(cam.wanted_heel, Kind.LENGTH, display) if cam.wanted_heel is not None else ""
    # What each land would have read then stands with the relief under Wanted; the paper is short.
    reads = f", which reads {wanted}" if wanted and not each else ""
    too = ", ".join(one.sheet.title for one in _count_too(job, drop))
    too = f" Counted with {show_angle(cam.given)} too: {too}." if too else ""
    value = job.entry.values.get(relief_key(job))
    said_of_it = within(value, cam.given) or past(value, cam.given)
    gives = f"{show_angle(cam.given)}, {said_of_it}," if said_of_it else show_angle(cam.given)
    return (Said((f"Judged by the cam of {cam.throw}: it gives {gives} and reads "
                  f"{each or show(cam.heel, Kind.LENGTH, display)}. {show_angle(cam.wanted)} was wanted{reads}.{too}",)),)  # fmt: skip
