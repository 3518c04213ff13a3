"""What a calculation of a job card tells on its heading: what is set, what it found, and how it is judged."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from geometry.quantities import quantity
from geometry.role import HEEL
from geometry.sentences import Amount, Kind, Rounding
from geometry.surfaces import SURFACES
from library.calc.surfaces import title_of
from library.calc.throw_per import with_per
from library.cards.heels import at_each_heel, land_read
from library.cards.job import Job
from library.cards.read_order import steps_read, surface_read, title_read
from library.cards.rubbing_heel import makes_a_rubbing_heel
from library.cards.setting_line import SettingLine
from library.cards.shoulders import shoulder_counted, title_found
from library.cards.step import Step
from library.cards.throws_set import TITLES
from library.cards.turned import how_turned
from library.equipment.drawer_advice import keys_named
from library.equipment.model import Rating
from library.equipment.settings import in_divisions
from library.units.show import say, show, show_answer
from tui.view.card_row import WANTS_INPUT, Told
from tui.view.card_settings_shown import shown_above
from tui.view.card_sizes import OTHER_END, class_of
from tui.view.card_wants import for_want_of

STOPPED = "see the STOP"
"""How a height or a tilt stands that makes a relief whose heel rubs: it is well only once the heel is put right."""


JUDGED = "judged by its facets"
"""How a calculation of the heel stands that another one replaces, which knows the facets of the land."""


SET_ABOVE = "set above"
"""How a calculation stands whose setting an earlier one has, such as the rest under a helical tooth."""


GIVES = "gives "
"""Begins the note on what a cam gives where something else was wanted."""


def stands_set_above(job: Job, step: Step, lines: Sequence[SettingLine]) -> bool:
    """Whether what a calculation would tell first is a setting that an earlier one has, so that it would stand there twice."""
    first = next(iter(_answered(job, step)), "")
    return step.works and first in {one.key for one in lines} & set(step.sheet.role.sets)


def state_of(step: Step) -> str:
    """How a calculation stands, in a word."""
    if step.answer.result is not None:
        states = {check.state for check in step.checks}
        return "STOP" if "stop" in states else "WATCH" if "watch" in states else "ok"
    return WANTS_INPUT if all(one.missing for one in step.answer.issues) else "fix"


def told_below(job: Job, step: Step, lines: list[SettingLine]) -> list[str]:
    """The lines under the heading of a calculation: what is set, or what is still wanted for it."""
    setting = job.card.settings.get(step.sheet.name)
    typed = setting.typed if setting else {}
    if lines and step.answer.result is not None:
        # What was typed stands in its own line already.
        lines = [one for one in lines if one.graduation or one.key not in typed]
        said = [
            f"{one.title} {one.value}{': ' if one.graduation or one.counted else ''}{'; '.join(filter(None, (one.counted, one.graduation)))}"
            for one in lines
        ]
        turned = how_turned(job, step)
        return [
            *said,
            *([turned] if turned else []),
            *(_first_answer(job, step) if step.sheet.role.does == HEEL else []),
        ]
    if step.answer.result is not None:
        return _first_answer(job, step)
    return for_want_of(job, step)


def told_of(job: Job, step: Step, lines: list[SettingLine], *, is_set_above: bool = False) -> list[Told]:
    """What a calculation sets and answers; no number of what is stopped, so that nobody sets it, nor of what is set above."""
    if not step.skipped and job.in_place_of(step) is not None:
        return [Told(step.sheet.title, note=JUDGED)]
    state = "left out" if step.skipped else state_of(step)
    if step.skipped or step.answer.result is None:
        return [Told(step.sheet.title, note=state), *map(_set_told, lines)]
    if step.stopped and all(one.stopped for one in lines):
        return [Told(_title_stopped(job, step), "", "not to be set", state)]
    setting = job.card.settings.get(step.sheet.name)
    typed = setting.typed if setting else {}
    shown = shown_above(lines, typed)
    found = [_set_told(one) for one in shown]
    if is_set_above:
        found = [Told(step.sheet.title, "", SET_ABOVE)]
    elif not found or step.sheet.role.does == HEEL:
        outputs = _answered(job, step)
        key = _speed_of_the_wheel(job, step, outputs) or next(iter(outputs), "")
        both = [one for one in (key, OTHER_END.get(key, "")) if one in outputs]
        found += [_answer_told(job, step, one, outputs[one]) for one in both]
    bad = state if state != "ok" else ""
    if not found:
        return [Told(step.sheet.title, note=state)]
    if not bad:
        well = STOPPED if not found[0].note and makes_a_rubbing_heel(job, step) else ""
        return [replace(found[0], note=well or _noted("", found[0].note)), *found[1:]]
    return _with_verdict(job, step, bad, found, [one.key for one in shown])


def with_turning(job: Job, step: Step, lines: list[SettingLine], told: list[Told]) -> list[Told]:
    """What is told, and under the first of what is set from a place and to a side, from where and to which."""
    from_where: dict[str, list[SettingLine]] = {}
    for one in lines:
        if one.counted:
            from_where.setdefault(one.counted, []).append(one)
    if step.stopped or not from_where:
        return told
    how, found = how_turned(job, step), list(told)
    for said, own in from_where.items():
        # What is turned has its sentences, which tell of each; of heights the side of the axis is all there is to say.
        titles = [one.title for one in found]
        each = f"each {said}" if not how and len(own) > 1 else said
        if own[0].title not in titles:
            # What is typed stands in its own line further down, and so has its name here.
            each = f"{', '.join(one.title for one in own)}: {said}"
        text, how = f"{each[:1].upper()}{each[1:]}. {how}".rstrip(), ""
        under = titles.index(own[0].title) + 1 if own[0].title in titles else len(found)
        found.insert(under, Told(text, is_text=True))
    return found


def _title_stopped(job: Job, step: Step) -> str:
    """What a calculation is called, with its surface where that is not the one that is ground."""
    surface = step.answer.surface
    if surface not in SURFACES or surface == job.choice.surface:
        return step.sheet.title
    return f"{step.sheet.title}, {SURFACES[surface].title}"


def _with_verdict(job: Job, step: Step, bad: str, found: list[Told], keys: list[str]) -> list[Told]:
    """What a calculation sets and answers, with its verdict at that of the lines that it is about."""
    throw = _throw_judged(step, bad, keys)
    place = None if throw else _place_judged(step, bad, keys)
    judged = _judged(job, step, bad, "" if place else found[0].note, place)
    if judged is not None:
        return [*found, judged]
    if throw and throw not in keys:
        named = TITLES.get(throw) or title_of(throw, step.answer.surface)
        title = with_per(named, throw, step.answer.inputs)
        return [*found, Told(title, step.answer.inputs[throw].text, "typed", bad)]
    at = keys.index(throw) if throw else place or 0
    told = [
        # What the cam gives where it is read is another relief than the one on watch.
        replace(one, note=_noted(bad, "" if throw else one.note)) if number == at else one
        for number, one in enumerate(found)
    ]
    return told if at == 0 else [replace(told[0], note=_noted("", told[0].note)), *told[1:]]


def _throw_judged(step: Step, bad: str, keys: list[str]) -> str:
    """The throw that a verdict is about which advises nothing: it makes the relief that is found, and no setting before it does.

    Empty where the verdict is about anything else, or the throw is set first anyway.
    """
    check = next(one for one in step.checks if one.state == bad.lower())
    cam, parts = step.sheet.role.cam, check.sentence.parts.items()
    is_relief = any(
        name.startswith("found") and isinstance(one, Amount) and one.kind is Kind.ANGLE for name, one in parts
    )
    if cam is None or not keys or keys_named(check) or not is_relief or cam.throw not in step.answer.inputs:
        return ""
    return cam.throw if keys[0] != cam.throw else ""


def _place_judged(step: Step, bad: str, keys: list[str]) -> int | None:
    """Which of the settings a verdict is about: that which its advice would change, the first where it advises nothing.

    Nothing where its advice changes none of them, but what was typed.
    """
    named = next(keys_named(one) for one in step.checks if one.state == bad.lower())
    return next((keys.index(key) for key in named if key in keys), None if named and keys else 0)


def _judged(job: Job, step: Step, bad: str, note: str, place: int | None) -> Told | None:
    """The answer that is on watch, in a line of its own where no line of a setting has it."""
    result = step.answer.result
    if result is None or (place is not None and not note.startswith(GIVES)):
        return None
    check = next(one for one in step.checks if one.state == bad.lower())
    emptied = next((key for key, value in check.cure if value is None and key in step.answer.inputs), "")
    if emptied and place is None:
        return Told(title_of(emptied, step.answer.surface), step.answer.inputs[emptied].text, "typed", bad)
    found = check.sentence
    if note.startswith(GIVES) and note.removeprefix(GIVES) in say(found, job.display):
        return None
    amounts = {one.value for one in found.parts.values() if isinstance(one, Amount)}
    angles = (one for one in (*result.named, *result.outputs) if quantity(one).kind is Kind.ANGLE)
    key = next((one for one in angles if result.outputs[one] in amounts), "")
    if not key:
        return None
    named = result.named.get(key, "")
    title, *_, view = (
        named.split(", ") if ", " in named else (named or title_of(key, step.answer.surface), "")
    )
    return Told(title, show_answer(result.outputs[key], quantity(key), job.display), view, bad)


def _noted(bad: str, note: str) -> str:
    """How a calculation stands where that is not well, and what is noted; that it is well where nothing is."""
    if note.startswith("("):
        return f"{bad or 'ok'} {note}"
    return f"{bad} {note.removeprefix(GIVES)}".rstrip() if bad else note or "ok"


def _set_told(one: SettingLine) -> Told:
    """A setting; the move of the index with its turns where others have their number."""
    if one.key or " on the " not in one.divisions:
        value = one.divisions if not one.key and one.divisions else one.value
        note = "; ".join(part for part in (one.off, one.apart) if part)
        return Told(one.title, value, one.divisions if one.key else "", note, is_set=one.is_set)
    turns, _, circle = one.divisions.partition(" on the circle of ")
    turns, _, what = turns.rpartition(" ")
    return Told(one.title, turns, f"{what}, {circle} circle", one.off, is_set=True)


def _speed_of_the_wheel(job: Job, step: Step, outputs: Mapping[str, float]) -> str:
    """The answer that is held against the rating of the wheel; empty where nothing is."""
    rated = job.wheel.rated_speed if job.wheel is not None and step.sheet.role.rated else None
    if rated is None:
        return ""
    kind = quantity(rated.key).kind
    return next((key for key in outputs if quantity(key).kind is kind and key != rated.key), "")


def _answer_told(job: Job, step: Step, key: str, value: float) -> Told:
    rated = job.wheel.rated_speed if job.wheel is not None and step.sheet.role.rated else None
    divisions = in_divisions(job.machine, key, value) if job.machine is not None else None
    beside, behind = _of_rating(rated, quantity(key).kind, job) if rated is not None else ("", "")
    return Told(
        _drop_title(job, step) if key in {"heel_drop", "drop"} else title_found(step.answer, key),
        show_answer(value, quantity(key), job.display),
        f"{divisions:.1f} div" if divisions is not None else beside,
        land_read(job) if key == "heel_drop" and step is job.doing(HEEL) else class_of(step, key) or behind,
    )


def _drop_title(job: Job, step: Step) -> str:
    """The drop at the heel; of which surface it is, where several are read."""
    read = [one for one in steps_read(job) if one.answer.result and "heel_drop" in one.answer.result.outputs]
    several = len({surface_read(job, one) for one in read}) > 1 or shoulder_counted(job.steps, step.answer)
    return f"Drop at the heel, {title_read(job, step)}" if several else "Drop at the heel"


def _of_rating(rated: Rating, kind: Kind, job: Job) -> tuple[str, str]:
    """The rating of the wheel in the units of the card, to the safe side, and behind it as it stands on the wheel."""
    own = rated.measure.text
    said = show(rated.measure.number, kind, job.display, Rounding.DOWN)
    alike = said.rpartition(" ")[2] == own.rpartition(" ")[2]
    return (f"of {own}", "") if alike else (f"of {said}", f"(rated {own})")


def _answered(job: Job, step: Step) -> dict[str, float]:
    """What a calculation answers, without what another sets in its place by the method of the job, or tells better."""
    outputs = step.answer.result.outputs if step.answer.result is not None else {}
    role = step.sheet.role
    unset = role.sets if job.choice.method in role.otherwise_by else ()
    better = _told_better(job, step, outputs)
    found: dict[str, float] = {}
    for key, value in outputs.items():
        if key not in unset:
            found.setdefault(*better.get(key, (key, value)))
    return found


def _told_better(job: Job, step: Step, outputs: Mapping[str, float]) -> dict[str, tuple[str, float]]:
    """What is told in place of an answer, by its key: what this or another calculation of the job finds with more known."""
    of_all = [one.answer.result.outputs for one in job.steps if one.works and one.answer.result is not None]
    told: dict[str, tuple[str, float]] = {}
    for key, better in step.sheet.role.better:
        number = next((one[better] for one in (outputs, *of_all) if better in one), None)
        if key in outputs and number is not None:
            told.setdefault(key, (better, number))
    return told


def _first_answer(job: Job, step: Step) -> list[str]:
    """What a calculation answers first, which of the indicator drop is the reading at the heel."""
    outputs = _answered(job, step)
    each = at_each_heel(job, job.display) if step is job.doing(HEEL) else ""
    if each:
        return [f"{quantity('heel_drop').title} {each}, each by its own land"]
    return [
        f"{quantity(key).title} {show_answer(value, quantity(key), job.display)}"
        for place, (key, value) in enumerate(outputs.items())
        if not place or key in {OTHER_END.get(one) for one in [*outputs][:1]}
    ]
