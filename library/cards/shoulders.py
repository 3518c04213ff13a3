"""The shoulders of a tool with steps: each has its own angle, and what is counted at one place goes by that of its shoulder.

A calculation that asks for one diameter and one included angle looks at one shoulder alone: that which ends on its diameter.
Where the cones are not alike no one angle is that of the tool, so that each shoulder is swivelled for by itself. Derived.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from geometry.calculation import Calculation, Check, stop
from geometry.cone.steps import Shoulder, shoulders
from geometry.edge.surface_input import HALF
from geometry.preconditions import GeometryError
from geometry.sentences import Kind, Sentence, angle, count, length
from library.calc.answer import Answer
from library.calc.surfaces import FIELD, LARGEST_FEED, title_of
from library.cards.first_step import DIAMETER, SHOULDER
from library.cards.model import Card, Setting
from library.cards.of_that_day import is_dated
from library.cards.provenance import Provenance
from library.cards.step import Step
from library.units.read import UnitError, read
from library.units.system import Display

ANGLE = "included_angle"

ALIKE = 1e-6
"""Two angles (rad) this near to each other are one: far finer than any graduation; no source."""


def shoulders_of(steps: Iterable[Step]) -> tuple[Shoulder, ...]:
    """The shoulders between the steps of a tool, from the point up; none where no calculation in use was given their angles.

    Args:
        steps: of a job, those that come before where it is asked for later ones.
    """
    for step in steps:
        field = step.sheet.field(ANGLE)
        if not step.in_use or field is None or not field.many or step.sheet.role.only_several != DIAMETER:
            continue
        across, angles = (_numbers(step.answer, key) for key in (DIAMETER, ANGLE))
        if len(across) > 1 and angles:
            try:
                return shoulders(across, angles)
            except GeometryError:
                return ()
    return ()


def several_angles(steps: Iterable[Step]) -> tuple[Shoulder, ...]:
    """The shoulders of a tool whose cones are not alike; none where one angle is that of all."""
    found = shoulders_of(steps)
    return found if any(not _is_angle(one, found[0].included_angle) for one in found) else ()


def at_its_shoulder(
    sheet: Calculation,
    texts: Mapping[str, str],
    provenance: Mapping[str, Provenance],
    card: Card,
    before: Sequence[Step],
    display: Display,
) -> tuple[dict[str, str], dict[str, Provenance]]:
    """What fills a calculation, with the angle of the shoulder that ends on its diameter, where the cones are not alike.

    A record that was closed without an answer of it keeps what it has.

    Args:
        sheet: the calculation.
        texts: that fill it, by quantity.
        provenance: of each.
        card: with what was typed into it.
        before: the calculations before it that are in use.
        display: the units of numbers typed without one.
    """
    field, setting = sheet.field(ANGLE), card.settings.get(sheet.name, Setting())
    is_of_one = field is not None and not field.many and texts.get(FIELD) == SHOULDER
    if not is_of_one or ANGLE in setting.typed or (is_dated(card) and not setting.recorded):
        return dict(texts), dict(provenance)
    across = sheet.field(DIAMETER)
    found = several_angles(before)
    if not found or (across is not None and across.many):
        return dict(texts), dict(provenance)
    here = _ending_on(found, _length(texts.get(DIAMETER, ""), display))
    said = f"{math.degrees(here.included_angle):.6f}".rstrip("0").rstrip(".") + " deg"
    return {**texts, ANGLE: said}, {**provenance, ANGLE: "worked"}


def shoulder_counted(steps: Iterable[Step], found: Answer) -> str:
    """The one shoulder that a calculation counts at, such as `shoulder 2`, where the cones are not alike; else empty.

    Args:
        steps: of the job, or those before it.
        found: the calculation, answered; of one that looks at all shoulders, or at none, nothing is told.
    """
    lies, across = found.inputs.get(ANGLE), found.inputs.get(DIAMETER)
    if found.surface != SHOULDER or lies is None or not isinstance(lies.value, float):
        return ""
    several = several_angles(steps)
    if not several:
        return ""
    here = _ending_on(several, across.value if across is not None else None)
    return f"{SHOULDER} {here.number}" if _is_angle(here, lies.value) else ""


def told_at(found: Answer, where: str) -> Answer:
    """An answer whose titles and checks say at which shoulder it was counted.

    Args:
        found: the calculation, answered.
        where: the shoulder; empty where it is not counted at one of several.
    """
    if found.result is None or not where:
        return found
    titles = {key: title_of(key, found.surface) for key in found.result.outputs}
    named = {
        key: title.replace(f"the {SHOULDER}", where).replace(f": {SHOULDER}", f": {where}")
        for key, title in titles.items()
        if SHOULDER in title
    }
    if HALF in titles:
        named[HALF] = f"{titles[HALF]}, {where}"
    checks = tuple(_check_at(one, where) for one in found.result.checks)
    return replace(found, result=replace(found.result, named={**named, **found.result.named}, checks=checks))


def title_found(found: Answer, key: str) -> str:
    """What an answer is called; the largest feed with the shoulders that it holds for, where there are several."""
    named = found.result.named if found.result is not None else {}
    return named[key] if key == LARGEST_FEED and key in named else title_of(key, found.surface)


def _check_at(check: Check, where: str) -> Check:
    """A check whose sentence names the shoulder that it is about."""
    says, place = check.sentence, "the {surface}"
    if place not in says.template or says.parts.get(FIELD) != SHOULDER:
        return check
    said = Sentence(says.template.replace(place, "{surface}"), {**says.parts, FIELD: where})
    return replace(check, sentence=said)


def beside_the_shoulders(found: Answer, card: Card, before: Sequence[Step]) -> Iterator[Check]:
    """A stop where another angle was typed into a calculation than that of the shoulder which it looks at; none of a record.

    Args:
        found: the calculation, answered.
        card: with what was typed into it.
        before: the calculations before it that are in use.
    """
    typed = ANGLE in card.settings.get(found.sheet.name, Setting()).typed
    lies, across = found.inputs.get(ANGLE), found.inputs.get(DIAMETER)
    all_of_them = shoulders_of(before)
    if card.done or not typed or not all_of_them or found.surface != SHOULDER or lies is None:
        return
    if not isinstance(lies.value, float) or any(
        _is_angle(one, lies.value) for one in _looked_at(all_of_them, across.value if across else None)
    ):
        return
    here = _looked_at(all_of_them, across.value if across else None)[-1]
    yield stop(
        "The included angle of {typed} typed here is not that of shoulder {number}, which ends on {place} and has {own}. "
        "Empty the line, and this is counted with {own}.",
        cure=((ANGLE, None),),
        typed=angle(lies.value),
        number=count(here.number),
        place=length(here.outer),
        own=angle(here.included_angle),
    )


def _looked_at(found: tuple[Shoulder, ...], across: object) -> tuple[Shoulder, ...]:
    """The shoulders that a calculation looks at: of one diameter one, of several all."""
    return found if isinstance(across, tuple) else (_ending_on(found, across),)


def _ending_on(found: tuple[Shoulder, ...], across: object) -> Shoulder:
    """The shoulder that ends on a diameter (mm), the outermost where nobody knows it."""
    if not isinstance(across, float):
        return found[-1]
    return min(found, key=lambda one: abs(one.outer - across))


def _is_angle(one: Shoulder, found: float) -> bool:
    return abs(one.included_angle - found) <= ALIKE


def _length(text: str, display: Display) -> float | None:
    try:
        return read(text, Kind.LENGTH, display).number if text.strip() else None
    except UnitError:
        return None


def _numbers(found: Answer, key: str) -> tuple[float, ...]:
    """The numbers of a list that a calculation was given; none where it has none."""
    value = found.inputs[key].value if key in found.inputs else None
    several = value if isinstance(value, tuple) else (value,)
    return tuple(one for one in several if isinstance(one, float))
