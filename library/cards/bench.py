"""One calculation of a job worked out: with a cam out of the drawer, or with the relief that was found before it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from geometry.calculation import Calculation, Check, Inputs
from geometry.calculations import calculation, calculation_names
from geometry.complaints import untried
from geometry.figure import undrawn
from geometry.role import MOVES, Cam
from geometry.slips import slips
from geometry.surfaces import SURFACES
from library.book.model import Measure
from library.calc.answer import Answer
from library.calc.surfaces import FIELD, book_key
from library.cards.answers import Answers
from library.cards.bare_numbers import display_of
from library.cards.cams import Asked, carried_on, show_angle, taken_from_drawer
from library.cards.chosen import CAM, INCLINED, Chosen, wants_relief
from library.cards.edge_set import beside_the_set_one
from library.cards.found_relief import FoundRelief, found_relief, told
from library.cards.model import Card, Setting
from library.cards.of_that_day import cam_that_gave, is_dated
from library.cards.provenance import Provenance
from library.cards.setup_order import meant, rests
from library.cards.shoulders import beside_the_shoulders, shoulder_counted, told_at
from library.cards.step import Step
from library.equipment.model import Machine

NEEDED_THROWS = frozenset({"throw_per_turn", "throw_per_tooth"})
"""What a cam would have to move for a relief."""


@dataclass(frozen=True)
class Bench:
    """The context that a calculation of a job is worked out in.

    Attributes:
        card: the card.
        answers: answers a calculation.
        machine: it is ground on.
        choice: what was chosen once for the job.
        before: the calculations before it that are in use.
        kind: of the tool.
    """

    card: Card
    answers: Answers
    machine: Machine | None
    choice: Chosen
    before: list[Step]
    kind: str = ""


def step_of(
    sheet: Calculation, texts: dict[str, str], provenance: dict[str, Provenance], bench: Bench
) -> Step:
    """The step of one calculation, with the cam that is used for it and the relief that was found before it.

    Args:
        sheet: the calculation.
        texts: that fill it.
        provenance: of those texts.
        bench: the context.
    """

    def ask(more: Mapping[str, str]) -> Answer:
        return bench.answers.ask(sheet, {**texts, **more})

    cam: dict[str, str] = {}
    if bench.choice.method == CAM and sheet.role.cam is not None:
        # Until the cam is known, nobody reads what the calculation advises.
        with untried(), undrawn():
            cam = _cam(ask({}), ask, bench)
        provenance = provenance | _provenances_of_cam(bench, cam, sheet.role.cam.throw)
    found = ask(cam)
    if found.result is None and any(one.key in cam and not one.missing for one in found.issues):
        # The cam of an earlier calculation gives this surface nothing, as on a shoulder that is a face.
        cam, found = {}, ask({})
    if bench.choice.method == INCLINED:
        found = _without_throws(found)
    relief = _found_relief(found, bench)
    recommended = found.inputs["relief_angle"].recommended if "relief_angle" in found.inputs else None
    if relief is not None:
        found, provenance = _counted_with(relief, ask), provenance | {"relief_angle": "cam"}
    where = shoulder_counted(bench.before, found)
    found = told_at(found, where)
    relief = replace(relief, where=where) if relief is not None else None
    provenances: dict[str, Provenance] = {
        key: provenance.get(
            key, "wanted" if filled.origin == "entry" else "typed" if filled.origin == "given" else "default"
        )
        for key, filled in found.inputs.items()
    }
    setting = bench.card.settings.get(sheet.name, Setting())
    checks = tuple(found.result.checks) if found.result else tuple(_doubted_early(found, setting))
    if relief is not None and found.result is not None:
        checks = (*checks, told(relief, recommended))
    checks = (*checks, *beside_the_set_one(found, provenances, bench.card, bench.before, ask))
    checks = (*checks, *beside_the_shoulders(found, bench.card, bench.before))
    return Step(
        sheet, found, provenances, (), checks, setting.skipped, _is_quiet(sheet, found, setting, bench),
        setting.recorded or None, relief, {**texts, **cam},
    )  # fmt: skip


def _is_quiet(sheet: Calculation, found: Answer, setting: Setting, bench: Bench) -> bool:
    """Whether a calculation rests, because nothing on the card calls for it."""
    if sheet.role.rows == MOVES and any(one.works and one.sheet.role.rows == MOVES for one in bench.before):
        # The tool is indexed once: whatever plans the moves first, such as unequal spaces, plans them for the job.
        return True
    if setting.typed:
        return False
    wanted = () if _asks_for_nothing_more(sheet, setting, bench) else bench.card.wanted
    return (
        (not bench.choice.calls(sheet) and rests(sheet, bench.kind, bench.card.received, wanted))
        or not meant(sheet, found)
        or (not setting.recorded and (_is_of_another_surface(found, bench) or _is_beside(sheet, bench)))
    )


def _doubted_early(found: Answer, setting: Setting) -> Iterator[Check]:
    """The doubts about what was typed into a calculation that still wants something, so that it cannot doubt it itself."""
    typed = {
        key: one.value
        for key, one in found.inputs.items()
        if setting.typed.get(key, "").strip() or (key == "diameter" and setting.typed)
    }
    if typed.keys() - {"diameter"}:
        yield from slips(Inputs(typed), {})


def asked_again(step: Step, more: Mapping[str, str], answers: Answers) -> Answer:
    """A step answered once more with some texts others than they are.

    Args:
        step: of a job.
        more: those texts, by quantity.
        answers: of that job.
    """

    def ask(also: Mapping[str, str]) -> Answer:
        return answers.ask(step.sheet, {**step.asked, **more, **also})

    return ask({}) if step.relief is None else _counted_with(step.relief, ask)


def _asks_for_nothing_more(sheet: Calculation, setting: Setting, bench: Bench) -> bool:
    """Whether nothing that is wanted brings a calculation in: on a record, or where another judges the same heel.

    What was in use on the day of a record has written something down.
    """
    judged = {name for one in bench.before for name in one.sheet.role.replaces}
    is_new = is_dated(bench.card) and setting == Setting()
    return is_new or not judged.isdisjoint(sheet.role.replaces)


def _is_of_another_surface(found: Answer, bench: Bench) -> bool:
    """Whether a calculation makes a relief that this job does not grind, or wants one that it neither grinds nor names."""
    if not bench.choice.serves(found.sheet):
        return True
    own = book_key("relief_angle", found.surface)
    return (
        found.sheet.role.sizes
        and found.surface != bench.choice.surface
        and own not in bench.card.wanted
        and any(one.missing and one.key == "relief_angle" for one in found.issues)
    )


def _is_beside(sheet: Calculation, bench: Bench) -> bool:
    """Whether it is about another surface than the ground one, of which no person wants a relief and nothing was measured.

    A land serves more than the surface on which it was measured.
    """
    card, own = bench.card, SURFACES.get(sheet.belongs_on[0]) if len(sheet.belongs_on) == 1 else None
    if own is None or not sheet.role.ground or bench.choice.surface in {"", own.key}:
        return False
    measured = {field.key for field in sheet.inputs if field.optional} - {"land_width"}
    return not wants_relief(card, own) and measured.isdisjoint(card.received)


def _found_relief(found: Answer, bench: Bench) -> FoundRelief | None:
    """The relief by chosen cams that a calculation counts with; nothing where no cam makes the relief of this job."""
    if bench.choice.method != CAM:
        return None
    return found_relief(found, [one.answer for one in bench.before if one.works])


def _without_throws(found: Answer) -> Answer:
    """The answer without the throw of a cam that would make the same relief: an inclined wheel makes it without one."""
    if found.result is None or found.result.outputs.keys().isdisjoint(NEEDED_THROWS):
        return found
    outputs = {key: one for key, one in found.result.outputs.items() if key not in NEEDED_THROWS}
    return replace(found, result=replace(found.result, outputs=outputs))


def _counted_with(relief: FoundRelief, ask: Asked) -> Answer:
    """The calculation answered with a relief found before it, which stands there as an angle is shown."""
    key, number = "relief_angle", max(relief.relief, 0.0)
    found = ask({key: f"{math.degrees(number):.12f} deg"})
    return replace(found, inputs={**found.inputs, key: replace(found.inputs[key], text=show_angle(number))})


def _cam(found: Answer, ask: Asked, bench: Bench) -> dict[str, str]:
    """The texts that say which cam is used: that of an earlier calculation, else one out of the drawer."""
    role = found.sheet.role.cam
    if role is None:
        return {}
    key = role.throw
    if key in found.inputs and found.inputs[key].origin == "given":
        return {}
    then = _recorded_cam(found, ask, bench)
    if then is not None:
        return {key: then.text}
    earlier = next((one for one in bench.before if one.works and one.sheet.role.cam is not None), None)
    if earlier is not None:
        return carried_on(earlier.answer, found)
    later = _typed_later(bench, role)
    return {key: later} if later else _out_of_drawer(found, ask, bench, role)


def _out_of_drawer(found: Answer, ask: Asked, bench: Bench, role: Cam) -> dict[str, str]:
    """The throw of the cam that is taken when nobody typed one; empty where none is."""
    if bench.card.done and role.wanted not in found.inputs:
        return {}  # On the day of the record nothing was asked that would have called for a cam.
    cam = taken_from_drawer(found, ask, bench.machine) if bench.machine is not None else None
    return {role.throw: cam.text} if cam is not None else {}


def _typed_later(bench: Bench, role: Cam) -> str:
    """The throw that was typed into a later calculation, of a tool with steps: one cam serves all of it; empty where none was.

    A record counts with what it was closed with.
    """
    if not role.else_wanted or bench.card.done:
        return ""
    for name, setting in bench.card.settings.items():
        cam = calculation(name).role.cam if name in calculation_names() else None
        is_another = cam is None or cam == role or setting.skipped or FIELD in setting.typed
        if cam is not None and not is_another and setting.typed.get(cam.throw, "").strip():
            return setting.typed[cam.throw]
    return ""


def _recorded_cam(found: Answer, ask: Asked, bench: Bench) -> Measure | None:
    """The cam by which a card was closed that has its answers and not what it counted with; nothing on any other."""
    role, card = found.sheet.role.cam, bench.card
    setting = card.settings.get(found.sheet.name, Setting())
    if role is None or bench.machine is None or not card.done or is_dated(card):
        return None
    cams, throw = bench.machine.cam_throws, role.throw
    display = display_of(card)
    return cam_that_gave(setting.recorded, cams, lambda text: ask({throw: text}), display)


def _provenances_of_cam(bench: Bench, cam: Mapping[str, str], throw: str) -> dict[str, Provenance]:
    """Where a throw comes from, the machine where it is one of its drawer; and from where what it is counted with."""
    cams = bench.machine.cam_throws if bench.machine is not None else ()
    earlier = next((one for one in bench.before if one.works and one.sheet.role.cam is not None), None)
    counted = earlier.provenance if earlier is not None else {}
    found: dict[str, Provenance] = {key: counted.get(key, "typed") for key in cam}
    return found | (
        {throw: "machine" if any(one.text == cam[throw] for one in cams) else "typed"} if cam else {}
    )
