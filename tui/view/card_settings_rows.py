"""The settings of a job card: its calculations in the order of the set-up, each with what it still wants."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import replace

from geometry.calculation import Field
from geometry.quantities import quantity
from geometry.sentences import Kind
from library.calc.surfaces import row_of, title_of
from library.calc.throw_per import per_said, with_per
from library.calc.words_first import words_first
from library.cards.edge_set import sets_edge
from library.cards.edge_wanted import edges_of, hint_of, titled
from library.cards.job import Job
from library.cards.move_said import assumed_head
from library.cards.provenance import TYPED_ONCE, Provenance
from library.cards.setting_line import SettingLine
from library.cards.settings_lines import setting_lines
from library.cards.step import Step
from library.cards.throws_set import TITLES
from library.cards.typed_above import typed_above
from library.equipment.drawer_advice import keys_named
from library.equipment.offers import of_machine
from library.units.show import say
from tui.view.card_row import Opened, Row, Told, to_turn
from tui.view.card_settings_told import JUDGED, stands_set_above, state_of, told_below, told_of, with_turning
from tui.view.card_sizes import told_of_the_size
from tui.view.card_wants import asked_above, is_asked_elsewhere, missing, stands_elsewhere

REST = "rest"
"""The way of the last line, which stands for the calculations that rest."""


PROVENANCE_WORDS: dict[Provenance, str] = {
    "typed": "typed",
    "measured": "measured",
    "to be": "as it is to be",
    "tool": "tool",
    "machine": "machine",
    "wheel": "wheel",
    "wanted": "wanted",
    "cam": "cam",
    "worked": "worked out",
    "default": "default",
}

ASKED_TOO = frozenset({"least_diameter", "feed"})
"""Lines that a calculation can do without, but that decide something at the bench: they are always shown."""

_SKIP = {"": "", "skip": "left out"}


def settings_rows(job: Job, opened: Opened) -> list[Row]:
    """A heading for each calculation, under it its settings, then its lines to fill in."""
    lines = setting_lines(job, job.display)
    aside = aside_steps(job, opened)
    rows: list[Row] = []
    asked: set[str] = set()
    for step in job.steps:
        if step not in aside:
            found = _of_step(job, step, opened, lines, frozenset(asked))
            asked |= {row.quantity for row in found if step.in_use} & ASKED_TOO & {*TYPED_ONCE}
            rows += found
    if aside:
        many = f"{len(aside)} more calculation{'s' if len(aside) > 1 else ''}"
        hint = "Nothing calls for them on this tool, or they were left out. {change} lists them."
        rows.append(Row(REST, f"{many} for such a tool", hint=hint, heading=True))
    return rows


def aside_steps(job: Job, opened: Opened) -> list[Step]:
    """The calculations of the family that are not shown: those that rest, and those that were left out before."""
    return [
        one for one in job.steps if not one.in_use and one.sheet.name not in opened.seen | opened.calculations
    ]


def _of_step(
    job: Job, step: Step, opened: Opened, of_all: Sequence[SettingLine], asked: frozenset[str]
) -> list[Row]:
    """The lines of a calculation; of what was asked for above, and what is typed there, there is no second one."""
    name = step.sheet.name
    lines = [one for one in of_all if one.sheet == name]
    is_set_above = not lines and stands_set_above(job, step, of_all)
    heading = Row(
        f"settings.{name}",
        step.sheet.title,
        "skip" if step.skipped else "",
        "" if step.skipped else JUDGED if job.in_place_of(step) else state_of(step),
        hint=f"{step.sheet.question} {{calculate}} shows all of its lines; {'Right takes it into the job again' if step.skipped else 'Right leaves it out of the job'}.",
        choices=tuple(_SKIP),
        said=_SKIP,
        below=tuple(told_below(job, step, lines)) if not step.skipped and not is_set_above else (),
        told=tuple(with_turning(job, step, lines, told_of(job, step, lines, is_set_above=is_set_above))),
        heading=True,
    )
    if step.skipped:
        return [heading]
    heading = replace(heading, told=(*heading.told, *_assumed(step, lines)))
    return [heading, *(_field(job, step, field) for field in _shown(job, step, opened, asked))]


def _assumed(step: Step, lines: Sequence[SettingLine]) -> list[Told]:
    """For which head the moves are, under them, where that is only assumed: who turns the crank of another goes wrong."""
    outputs = step.answer.result.outputs if step.answer.result is not None else {}
    said = assumed_head(outputs).removeprefix(", ")
    if not said or step.stopped or all(one.key for one in lines):
        return []
    return [Told(f"{said[0].upper()}{said[1:]}.", is_text=True)]


def _shown(job: Job, step: Step, opened: Opened, asked: frozenset[str]) -> list[Field]:
    """Every field of a calculation that was opened; of another those typed, wanted, or wrong that have no line above."""
    if step.sheet.name in opened.calculations:
        return list(step.answer.fields)
    setting = job.card.settings.get(step.sheet.name)
    keys = {
        *(setting.typed if setting else ()),
        *(one.key for one in step.answer.issues if not one.missing),
    }
    if step.in_use:
        above = asked_above(job, step) - {*(setting.typed if setting else ())}
        told = told_of_the_size(job, step)
        keys |= (
            told
            | {key for key in missing(step) if not is_asked_elsewhere(job, step, key)} - above
            | ASKED_TOO
            | {one.key for one in step.answer.fields if one.key in step.sheet.role.asks}
            | {key for key in _advised(job, step) if not stands_elsewhere(job, step, key)}
        )
    keys -= {key for key in keys & {*TYPED_ONCE} if typed_above(job, step, key) is not None} | {
        key for key in keys & asked if key not in step.answer.inputs
    }
    return [field for field in step.sheet.inputs if field.key in keys]


def _advised(job: Job, step: Step) -> set[str]:
    """What the advice of what is not well with a calculation names, so that each has its line; none of a record.

    A choice has one where the words name its line.

    The throw has its line where the cam is chosen: a later calculation of the same cam has none.
    """
    bad = [one for one in step.checks if one.state in {"watch", "stop"} and not job.card.done]
    keys = {key for one in bad for key in keys_named(one) if quantity(key).kind is not Kind.CHOICE}
    keys |= {
        field.key
        for field in step.answer.fields
        for one in bad
        if f"in the line '{quantity(field.key).title}'" in one.sentence.template
    }
    before = itertools.takewhile(lambda one: one is not step, job.steps)
    is_chosen = any(one.works and one.sheet.role.cam is not None for one in before)
    return keys - ({step.sheet.role.cam.throw} if is_chosen and step.sheet.role.cam is not None else set())


def _field(job: Job, step: Step, field: Field) -> Row:
    row = row_of(field.key, step.answer.surface)
    setting = job.card.settings.get(step.sheet.name)
    typed = setting.typed.get(field.key, "") if setting else ""
    filled = step.answer.inputs.get(field.key)
    known = filled.text if filled is not None and not typed else ""
    giver = PROVENANCE_WORDS[step.provenance[field.key]] if known and field.key in step.provenance else ""
    way = f"settings.{step.sheet.name}.{field.key}"
    title = f"  {_title(job, step, field.key)}"
    wants = not typed and not known and field.key in {*missing(step), *ASKED_TOO, *step.sheet.role.asks}
    if row.choices:
        words = words_first(field.key, row.choices, step.answer.inputs)
        hint = f"{row.measured} {to_turn(words)}"
        return Row(way, title, typed, known, giver, hint, choices=("", *words), wants=wants)
    edges = edges_of(step, field.key)
    if edges is not None:
        hint = f"{hint_of(step, edges)} {row.definition}"
        return Row(way, f"  {titled(edges)}", typed, known, giver, hint, wants=wants)
    known_edge = _of_the_set_edge(job, step, field.key)
    offers = _offers(job, field.key)
    brings, measured = ("Left and Right bring what the machine has. " if offers else ""), row.measured
    if field.key == "rotational_speed":
        allowed = _speeds_allowed(job, step)
        brings = f"{allowed}{brings}"
        # There is room for three lines: what may not be run comes before how it is measured.
        measured = "" if allowed else measured
    return Row(
        way,
        title,
        typed,
        known,
        giver,
        f"{known_edge}{brings}{row.definition} {measured}".rstrip(),
        offers=offers,
        wants=wants,
    )


def _title(job: Job, step: Step, key: str) -> str:
    """What the line is called in which a quantity of a calculation is typed: a throw as where it is set, with per what it counts."""
    title = title_of(key, step.answer.surface)
    if not per_said(key, step.answer.inputs):
        return title
    lines = setting_lines(job, job.display)
    set_as = next((one for one in lines if (one.sheet, one.key) == (step.sheet.name, key)), None)
    if set_as is not None and set_as.graduation:
        return title
    return with_per(TITLES.get(key, title), key, step.answer.inputs)


def _of_the_set_edge(job: Job, step: Step, key: str) -> str:
    """Which angle a calculation counts with while its line stays empty, where an earlier one finds and sets it."""
    before = itertools.takewhile(lambda one: one is not step, job.steps)
    setter = sets_edge([*before], key)
    return f"Left empty, it is the angle that '{setter.sheet.title}' sets. " if setter is not None else ""


def _speeds_allowed(job: Job, step: Step) -> str:
    """At which speeds the wheel may run, where it may not at every one of the machine."""
    found = next((one.sentence for one in step.checks if "fastest" in one.sentence.parts), None)
    return f"{say(found, job.display)} " if found is not None and step.sheet.role.rated else ""


def _offers(job: Job, key: str) -> tuple[str, ...]:
    """What the machine has for a quantity."""
    return tuple(one.texts[key] for one in of_machine(job.machine, key))
