"""Advice on the throw of a cam, kept to the cams that lie in the drawer of a machine.

A calculation advises the throw that would be just right. Where the cams are fixed ones nobody can set that, so that the
advice names a cam that there is and that puts it right, or says what the cams on both sides of the need give.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache

from geometry.calculation import Check, Cure, Given
from geometry.complaints import Complaint, known_by, untried
from geometry.cures import Step, Way, advise, either
from geometry.edge.cam import CLOSE
from geometry.evaluate import Refusal, run
from geometry.figure import undrawn
from geometry.sentences import Amount, Sentence, angle, length
from library.book.model import Measure
from library.equipment.cam_limits import TYPED, counted_per
from library.equipment.driving import Worked
from library.equipment.model import Machine


def keys_named(check: Check) -> tuple[str, ...]:
    """The inputs that the advice of a check is about, the first advised first; also where no advice was left.

    Example:
        >>> from geometry.complaints import complaint
        >>> from geometry.cures import way
        >>> keys_named(complaint("watch", "It rubs.", [way("narrow it to {most}", "land_width", "most", length(2.0))]))
        ('land_width',)
    """
    steps = [step.key for way in check.ways for step in way.steps] if isinstance(check, Complaint) else []
    return tuple(dict.fromkeys((*(key for key, _ in check.cure), *steps)))


def kept_to_the_drawer(
    check: Check, machine: Machine, worked: Worked, flutes: int | None, taken: str = ""
) -> Check:
    """A check whose advice names only throws that the machine has.

    Args:
        check: of a calculation on that machine.
        machine: with its drawer, or with a cam that is set.
        worked: the calculation.
        flutes: of the tool, where they are known; a drawer may be counted otherwise than the calculation.
        taken: the throw that came out of the drawer because nobody typed one: beside another that is typed none comes,
            so that no other is advised alone.

    Returns:
        The check as it is where it advises no throw, or one that the machine can make.
    """
    cams = _cams(machine, worked, flutes)
    if not isinstance(check, Complaint) or not cams.fixed:
        return check
    if all(cams.has(step) and not _instead(way, taken) for way in check.ways for step in way.steps):
        return check
    head = check.sentence.template.removesuffix(_advised(check)).rstrip()
    if head == check.sentence.template:
        return check
    kept = [one for one in check.ways if not _instead(one, taken)]
    # For every way and every cam that is tried the same, and dear.
    before = cache(lambda: _wrong_with(worked, worked.values))
    ways = tuple(way for one in kept if (way := _with_a_cam(one, check, worked, cams, before)))
    told, parts = _on_both_sides(check, worked, cams) if not ways else ("", {})
    advice = advise(ways) if ways else None
    words = (*(advice.words if advice else ()), *check.always)
    template = " ".join(part for part in (head, told, either(words) if words else "") if part)
    amounts = {**check.sentence.parts, **parts, **(advice.parts if advice else {})}
    cure: Cure = advice.cure if advice else ()
    return replace(check, sentence=Sentence(template, amounts), cure=cure, ways=ways or check.ways[:1])


def _instead(way: Way, taken: str) -> bool:
    """Whether a way changes another throw than the one taken out of the drawer, and not that too."""
    throws = {step.key for step in way.steps if step.key in TYPED}
    return bool(taken and throws) and taken not in throws


def _advised(check: Complaint) -> str:
    words = (*(one.says for one in check.ways), *check.always)
    return either(words) if words else ""


ALONG, SHOULDER = "axial_throw", "shoulder_relief_angle"

_BOUND = re.compile(r"(?:above|to at least) \{")
"""What stands before an amount that may be exceeded."""


@dataclass(frozen=True)
class _Cams:
    """The cams of a machine as a calculation counts them, in mm: the fixed ones, the smallest first, and one that is set.

    What stands on them is known by their throw, where they are counted as the calculation counts.
    """

    fixed: tuple[float, ...]
    marks: Mapping[float, str]
    low: float
    high: float | None

    def has(self, step: Step) -> bool:
        """Whether an input can be given what is advised."""
        if not _is_throw(step):
            return True
        throw = step.amount.value if step.amount is not None else 0.0
        if self.high is not None and self.low - CLOSE <= throw <= self.high + CLOSE:
            return True
        return any(abs(cam - throw) <= CLOSE for cam in self.fixed)

    def amount(self, cam: float) -> Amount:
        """The throw of a fixed cam as part of a sentence."""
        return length(cam, mark=self.marks.get(cam, ""))


def _is_throw(step: Step) -> bool:
    """Whether a throw is advised for which a cam is needed."""
    return step.key in TYPED and step.amount is not None and step.amount.value != 0


def _cams(machine: Machine, worked: Worked, flutes: int | None) -> _Cams:
    per, reach = worked.values.get("throw_per"), machine.cam_throw_range

    def counted(one: Measure | None) -> float | None:
        if one is None or not isinstance(per, str):
            return None
        return counted_per(one.number, machine.throw_per, per, flutes)

    fixed = sorted(throw for one in machine.cam_throws if (throw := counted(one)) is not None)
    marks = {one.number: one.text for one in machine.cam_throws} if per == machine.throw_per else {}
    return _Cams(tuple(fixed), marks, counted(reach.low) or 0.0, counted(reach.high))


def _with_a_cam(
    way: Way, check: Complaint, worked: Worked, cams: _Cams, before: Callable[[], set[str]]
) -> Way | None:
    """The way with throws out of the drawer, the next larger ones or else the next smaller; nothing where neither helps."""
    if all(cams.has(step) for step in way.steps):
        return way
    for larger in (True, False):
        steps = tuple(_next_to(step, cams, larger=larger) for step in way.steps)
        found = tuple(step for step in steps if step is not None)
        if len(found) == len(steps) and _mends(found, check, worked, before):
            # A cam is met, not exceeded.
            return Way(_BOUND.sub("to {", way.says), found)
    return None


def _next_to(step: Step, cams: _Cams, *, larger: bool) -> Step | None:
    if not _is_throw(step) or step.amount is None:
        return step
    need = step.amount.value
    beside = (
        [one for one in cams.fixed if one > need]
        if larger
        else [one for one in cams.fixed[::-1] if one <= need]
    )
    return replace(step, amount=cams.amount(beside[0])) if beside else None


def _mends(steps: tuple[Step, ...], check: Complaint, worked: Worked, before: Callable[[], set[str]]) -> bool:
    """Whether the calculation is free of the complaint with such inputs, and has no other that it had not."""
    changed = {step.key: step.amount.value for step in steps if step.amount is not None}
    left_out = {step.key for step in steps if step.amount is None}
    values = {key: value for key, value in worked.values.items() if key not in left_out} | changed
    try:
        with untried():
            wrong = _wrong_with(worked, values)
        # Tried advice, which is dear, adds nothing wrong; it leaves a watch out where a way out of another helps with both.
        if not _is_better(wrong, before(), check) and len(wrong) > 1:
            wrong = _wrong_with(worked, values)
    except Refusal:
        return False
    return _is_better(wrong, before(), check)


def _is_better(wrong: set[str], before: set[str], check: Complaint) -> bool:
    """Whether the complaint is gone and nothing else came for it."""
    return wrong < before and _own_words(check) not in wrong


def _wrong_with(worked: Worked, values: Mapping[str, Given]) -> set[str]:
    """What the calculation finds wrong with such inputs, each in the words by which it is known."""
    with undrawn():
        checks = run(worked.sheet, values).checks
    return {known_by(one) for one in checks if one.state in {"watch", "stop"}}


def _own_words(check: Complaint) -> str:
    """What a complaint finds wrong in the words of its calculation, whatever the book added to them."""
    return check.says.split(". ")[0].rstrip(".")


def _on_both_sides(check: Complaint, worked: Worked, cams: _Cams) -> tuple[str, dict[str, Amount | str]]:
    """What the cams next to the one that is needed give, without the one in hand; sentences with their amounts."""
    alone = [way.steps[0] for way in check.ways if len(way.steps) == 1 and _is_throw(way.steps[0])]
    if not alone or alone[0].amount is None or "relief_angle" not in worked.outputs:
        return f"The drawer has none for it: {check.ways[0].says}.", {}
    key, need = alone[0].key, alone[0].amount
    now = worked.values.get(key)
    smaller = [one for one in cams.fixed if one <= need.value][-1:]
    larger = [one for one in cams.fixed if one > need.value][:1]
    others = [one for one in (*smaller, *larger) if not isinstance(now, float) or abs(one - now) > CLOSE]
    parts: dict[str, Amount | str] = {}
    said = []
    for place, (cam, given) in enumerate(_given_by(others, key, worked)):
        parts |= {f"cam_{place}": cams.amount(cam), f"gives_{place}": angle(given)}
        said.append(f"{{cam_{place}}} gives {{gives_{place}}}")
    told = f"Of the drawer, {' and '.join(said)}." if said else "The drawer has none that comes nearer."
    if check.always:
        return told, parts
    return f"{told} Else get one of {{need}} per {worked.values['throw_per']}.", parts | {"need": need}


def _given_by(cams: list[float], key: str, worked: Worked) -> Iterator[tuple[float, float]]:
    """The throws that give a relief at all, each with that relief in radians."""
    for cam in cams:
        try:
            with untried(), undrawn():
                relief = run(worked.sheet, worked.values | {key: cam}).outputs.get(_found_as(key, worked))
        except Refusal:
            continue
        if relief is not None:
            yield cam, relief


def _found_as(key: str, worked: Worked) -> str:
    """The output that a throw changes: one along the axis gives nothing to the circles of steps, only to their shoulders."""
    return SHOULDER if key == ALONG and SHOULDER in worked.outputs else "relief_angle"
