"""What a closed card counted with on its day: what tool, machine, wheel and drawer filled in, and what it was judged by.

None of it is typed on the card, so that it is written down when the card is closed: a record says and judges ever after
what it did on that day, whatever machine and book have become. Cards of an older program have the answers alone; of
those the heel is judged by its recorded answer, and the cam is the one out of the drawer that gives what was recorded.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING

from geometry.calculation import Calculation
from geometry.quantities import quantity
from geometry.role import HEEL
from geometry.sentences import Kind
from library.book.model import Measure
from library.calc.answer import Answer
from library.cards.chosen import METHOD, SURFACE
from library.cards.model import Card, Setting
from library.cards.provenance import Provenance
from library.cards.wanted_limits import Limits
from library.units.read import with_units
from library.units.show import show_answer
from library.units.system import METRIC, Display

if TYPE_CHECKING:
    from library.cards.job import Job
    from library.cards.step import Step

THROW_PER = "throw_per"
"""Whether a throw is counted for one turn or from tooth to tooth: without it a throw says nothing."""

OUTSIDE: frozenset[Provenance] = frozenset({"tool", "machine", "wheel", "to be"})
"""Where an input comes from that can be another one tomorrow, though nobody has touched the card."""


def is_dated(card: Card) -> bool:
    """Whether a card is closed and has written down what it counted with."""
    return card.done and bool(card.chosen)


def chosen_then(job: Job) -> dict[str, str]:
    """The surface and the method of a job, by quantity."""
    words = {SURFACE: job.choice.surface, METHOD: job.choice.method}
    return {key: word for key, word in words.items() if word}


def filled_in(step: Step, typed: Mapping[str, str], display: Display) -> dict[str, str]:
    """What a calculation of a job counts with that stands nowhere on the card, by quantity, each number with its unit.

    With the throw of an earlier calculation goes what it was counted with there, for a throw that stands written is not
    carried on a second time.

    Args:
        step: of the calculation.
        typed: into it, by quantity.
        display: the units of numbers typed without one.
    """
    cam = step.sheet.role.cam
    throw = cam.throw if cam is not None else ""
    carried = {THROW_PER, "flutes"} if throw in step.answer.inputs and throw not in typed else set()
    return {
        key: with_units(one.text, quantity(key).kind, display)
        for key, one in step.answer.inputs.items()
        if key not in typed
        and (
            (where := step.provenance.get(key)) in OUTSIDE
            or key in {throw, "wheel_shape"}
            or (where == "typed" and key in carried)
        )
        and one.text
    }


def laid_over(
    sheet: Calculation, card: Card, texts: Mapping[str, str], provenance: Mapping[str, Provenance]
) -> tuple[dict[str, str], dict[str, Provenance]]:
    """The texts for a calculation of a closed card, with those of its day in the place of today's.

    Args:
        sheet: the calculation.
        card: as it was closed.
        texts: as they would be today, by quantity.
        provenance: of each.
    """
    if not is_dated(card):
        return dict(texts), dict(provenance)
    setting = card.settings.get(sheet.name, Setting())
    then = {key: text for key, text in setting.filled.items()
            if sheet.field(key) is not None and key not in setting.typed}  # fmt: skip
    then = _counted_as_before(sheet, card, then, setting.typed)
    kept = {
        key: text for key, text in texts.items() if key in setting.typed or provenance[key] not in OUTSIDE
    }
    cam = sheet.role.cam
    where: dict[str, Provenance] = {
        key: provenance.get(key, "machine" if cam is not None and key == cam.throw else "tool")
        for key in then
    }
    return kept | then, {key: provenance[key] for key in kept} | where


def _counted_as_before(
    sheet: Calculation, card: Card, then: dict[str, str], typed: Mapping[str, str]
) -> dict[str, str]:
    """What was filled in, with how the throw was counted where an older program wrote only the throw down.

    It was carried on from another calculation of the card, which has both.
    """
    cam = sheet.role.cam
    if cam is None or cam.throw not in then or THROW_PER in {*then, *typed} or sheet.field(THROW_PER) is None:
        return then
    others = ({**one.filled, **one.typed} for name, one in card.settings.items() if name != sheet.name)
    per = next((one[THROW_PER] for one in others if then[cam.throw] in one.values() and THROW_PER in one), "")
    return then | ({THROW_PER: per} if per else {})


def cam_that_gave(
    recorded: Mapping[str, str], cams: Sequence[Measure], ask: Callable[[str], Answer], display: Display
) -> Measure | None:
    """The cam of a drawer that gives what an older record has; nothing where none of them does.

    Args:
        recorded: the answers of that day, by quantity.
        cams: of the drawer.
        ask: answers the calculation with the throw of a cam.
        display: the units of the record.
    """
    return next((cam for cam in cams if _gives(ask(cam.text), recorded, display)), None)


def _gives(found: Answer, recorded: Mapping[str, str], display: Display) -> bool:
    outputs = found.result.outputs if found.result is not None else {}
    return bool(recorded) and all(
        key in outputs and show_answer(outputs[key], quantity(key), display) == was
        for key, was in recorded.items()
    )


def heel_then(job: Job) -> str:
    """What the readings at the heel of a closed card were held against; empty where nothing is recorded."""
    step = job.doing(HEEL) if job.card.done else None
    return (step.recorded or {}).get("heel_drop", "") if step is not None else ""


def written(number: float | None, limits: Limits | None, kind: Kind) -> str:
    """What a quantity is held against, so exactly that it reads back as the same; empty where it is nothing.

    Args:
        number: in mm or radians.
        limits: the same, where a range is wanted and no number.
        kind: of the quantity.

    Example:
        >>> written(8.69, None, Kind.LENGTH), written(None, Limits(10.01, 10.018), Kind.LENGTH)
        ('8.69 mm', '10.01 mm to 10.018 mm')
    """
    if number is not None:
        return _exact(number, kind)
    if limits is None:
        return ""
    if limits.low is None:
        return "" if limits.high is None else f"at most {_exact(limits.high, kind)}"
    low = _exact(limits.low, kind)
    return f"at least {low}" if limits.high is None else f"{low} to {_exact(limits.high, kind)}"


def _exact(number: float, kind: Kind) -> str:
    from library.units.convert import from_geometry

    unit = METRIC.unit(kind)
    return f"{from_geometry(number, kind, unit):.12g} {unit}".strip()
