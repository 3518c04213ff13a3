"""Serialize a card as plain data, for ``--json`` and scripts: what was typed, and what follows from it."""

from __future__ import annotations

from typing import Any

from geometry.quantities import quantity
from library.calc import report
from library.cards.history import History
from library.cards.inspecting import Relief, Verdict, received_reliefs, reliefs_after, verdicts
from library.cards.issues import issues_of
from library.cards.job import Job
from library.cards.planning import Plan
from library.cards.setting_line import SettingLine
from library.cards.settings_lines import setting_lines
from library.cards.step import Step
from library.cards.writing import as_table
from library.units.convert import from_geometry
from library.units.system import Display

Json = dict[str, Any]


def card_data(job: Job, display: Display) -> Json:
    """A card and everything that is worked out from it.

    Args:
        job: the card worked out.
        display: lengths in millimetres or inches; angles are degrees.

    Returns:
        ``card`` as it stands in its file, days as texts; then the settings, the calculations, what the readings
        say, and every problem.
    """
    return {
        "card": _texts(as_table(job.card)),
        "settings": [_line(line) for line in setting_lines(job, display)],
        "calculations": [_step(step, job, display) for step in job.steps],
        "relief_received": [_relief(one) for one in received_reliefs(job)],
        "relief_after": [_relief(one) for one in reliefs_after(job)],
        "inspection": [_verdict(one, display) for one in verdicts(job)],
        "problems": [
            {"place": one.way, "flute": one.flute, "state": one.state, "text": one.text}
            for one in issues_of(job)
        ],
        "cautions": [report.caution_data(job.book, caution) for caution in job.cautions],
    }


def _texts(value: object) -> Any:
    """Plain data of what TOML holds; days and times become texts."""
    if isinstance(value, dict):
        return {key: _texts(one) for key, one in value.items()}
    if isinstance(value, list | tuple):
        return [_texts(one) for one in value]
    if isinstance(value, float) and value - value != 0:
        return str(value)
    return value if isinstance(value, str | bool | int | float) else str(value)


def _line(line: SettingLine) -> Json:
    return {
        "calculation": line.sheet,
        "key": line.key,
        "title": line.title,
        "value": line.value,
        "graduation": line.graduation,
        "cost": line.cost,
        "stopped": line.stopped,
    }


def _step(step: Step, job: Job, display: Display) -> Json:
    data = report.as_data(step.answer, job.book, display)
    del data["cautions"]
    for key, given in data["inputs"].items():
        given["from"] = step.provenance.get(key, given["from"])
    data["checks"] = report.check_data(step.checks, display)
    data["notes"] = report.notes_of(step.checks, display)
    return data | {"in_use": step.in_use, "skipped": step.skipped, "recorded": dict(step.recorded or {})}


def _relief(one: Relief) -> Json:
    angles = {
        form: from_geometry(angle, quantity("relief_angle").kind, "deg") for form, angle in one.angles.items()
    }
    return {"flute": one.flute, "reading": one.text, "degrees": angles, "trouble": one.trouble}


def _verdict(one: Verdict, display: Display) -> Json:
    def number(value: float | None) -> float | None:
        return None if value is None else report.number(one.key, value, display)

    return {
        "key": one.key,
        "unit": report.unit(one.key, display),
        "wanted": number(one.wanted),
        "low": number(one.limits.low if one.limits else None),
        "high": number(one.limits.high if one.limits else None),
        "minus": number(one.allowed.minus if one.allowed else None),
        "plus": number(one.allowed.plus if one.allowed else None),
        "state": one.state,
        "spread": number(one.spread),
        "place": one.place,
        "flutes": [
            {
                "flute": mark.flute,
                "reading": mark.text,
                "value": number(mark.value),
                "wanted": number(one.wanted_of(mark.flute)),
                "state": mark.state,
                "off": mark.text_off,
            }
            for mark in one.marks
        ],
    }


def history_data(found: History, display: Display) -> Json:
    """The life of a tool as plain data."""

    def size(value: float | None) -> float | None:
        return None if value is None else report.number("diameter", value, display)

    return {
        "tool": found.name,
        "size": size(found.size),
        "unit": report.unit("diameter", display),
        "sharpenings_left": found.left,
        "as_of": found.left_as_of,
        "cards": [
            {"id": visit.card.id, "before": size(visit.before), "after": size(visit.after),
             "status": visit.card.status, "result": visit.card.result, "minutes": visit.card.minutes}
            for visit in found.visits
        ],
    }  # fmt: skip


def plan_data(found: Plan) -> Json:
    """A batch as plain data."""
    return {
        "stays": [_line(line) for line in found.stays],
        "cards": [
            {"id": turn.card.id, "title": turn.card.title, "flutes": turn.flutes, "sharpenings_left": turn.left,
             "changes": [_line(line) for line in turn.changes], "exactly": [_line(line) for line in turn.exactly]}
            for turn in found.turns
        ],
        "changes": found.changes,
        "changes_as_given": found.changes_as_given,
    }  # fmt: skip
