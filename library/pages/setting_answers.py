"""What follows from the calculation in hand of a job card: what stops, what is set, what is read on the way."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.calculation import Result
from geometry.quantities import quantity
from geometry.role import HEEL
from library.calc.wording import by_title
from library.cards.cams import show_angle
from library.cards.close import differs, differs_said
from library.cards.found_relief import throws_of, told
from library.cards.heels import at_each_heel, land_read
from library.cards.history import lasting_now
from library.cards.job import Job
from library.cards.settings_lines import is_set_by_facets, setting_lines
from library.cards.step import Step
from library.pages.answer import checks, column_title, outputs, wanted
from library.pages.page import Block, Named, Said, Values
from library.pages.station_table import read_points, read_where, stations
from library.units.show import say, show

AT_THE_HEEL = frozenset({"heel_drop", "drop", "radial_drop", "square_drop", "axial_drop"})
"""What the indicator reads at the heel, by where it points."""

FOR_THE_WANTED = frozenset({"throw_per_turn", "throw_per_tooth", "needed_radial_throw", "needed_axial_throw"})
"""Throws that the wanted relief asks for, whichever cam is taken."""

OF_THE_LAND = frozenset({"land_angle"})
"""What hangs on no cam."""

Parts = Iterator[tuple[Block | None, ...]]
"""Parts of a page, each the blocks that stand close together; nothing is where there is nothing to tell."""


def setting_answers(job: Job, name: str) -> Parts:
    """The calculation in hand: the verdict, the heel, what is set, what is read on the way, what else comes out.

    Verdict and heel come first, so that they are in sight on a small screen without turning a page.
    """
    step = job.step(name) if name else None
    if step is None or step.skipped:
        return
    step = lasting_now(job, step)
    better = job.in_place_of(step)
    if better is not None:
        yield (Said((f"This is at rest: the heel is judged by '{better.sheet.title}' alone.",)),)
        return
    counted = told(step.relief) if step.relief is not None else None
    by_facets = is_set_by_facets(job, step)
    found = [one for one in step.checks
             if one != counted and not (by_facets and one.state == "note" and "height" in one.sentence.parts)]  # fmt: skip
    bad = checks(found, job.display, ("stop", "watch"))
    good = checks(found, job.display, ("pass",))
    result = step.answer.result
    if result is None:
        yield bad, *_troubles(step)
        return
    lines = [line for line in setting_lines(job, job.display) if line.sheet == step.sheet.name]
    heel = [key for key in result.outputs if key in AT_THE_HEEL]
    shown = {*heel, *(line.key for line in lines)}
    set_to = tuple(
        Named(line.title, line.value, below=tuple(text for text in (line.graduation, line.cost) if text))
        for line in lines
    )
    yield bad or good, Said((say(counted.sentence, job.display),)) if counted is not None else None
    at_heel = outputs(step.answer, heel, job.display)
    yield at_heel, Said(tuple(_own_heels(job, step)), indent=2)
    yield (Values(set_to, at_edge=True),)
    yield (
        stations(
            result.stations, job.display, job.machine, read_where(step.answer), read_points(step.answer)
        ),
    )
    yield from _others(job, step, [key for key in result.outputs if key not in shown])
    yield good if bad else None, checks(found, job.display, ("note",))
    yield tuple(_rows(job, result))
    yield (_recorded(job, step),)


def _others(job: Job, step: Step, keys: list[str]) -> Parts:
    """What else comes out: of the land, by the chosen cam, and what the wanted relief asks for, each under its own words."""
    cam = step.sheet.role.cam
    wanted_relief = step.answer.inputs.get(cam.wanted) if cam is not None else None
    throws = throws_of(step.answer) if cam is not None else ""
    for_wanted = [key for key in keys if key in FOR_THE_WANTED]
    if not throws or not for_wanted or wanted_relief is None or not isinstance(wanted_relief.value, float):
        yield (outputs(step.answer, keys, job.display),)
        return
    by_cam = [key for key in keys if key not in OF_THE_LAND | FOR_THE_WANTED]
    yield (outputs(step.answer, [key for key in keys if key in OF_THE_LAND], job.display),)
    for said, own in (
        (f"By the cam of {throws}:", by_cam),
        (f"For the {show_angle(wanted_relief.value)} wanted:", for_wanted),
    ):
        found = outputs(step.answer, own, job.display)
        if found is not None:
            yield Said((said,)), found


def _own_heels(job: Job, step: Step) -> Iterator[str]:
    """Of which land the heel is, and what is read at that of the others, where lands are not alike."""
    if step is not job.doing(HEEL) or not (land := land_read(job)):
        return
    yield f"{land[:1].upper()}{land[1:]}; each flute by its own land: {at_each_heel(job, job.display)}"


def _troubles(step: Step) -> Iterator[Block | None]:
    """What is wrong, then what is still wanted."""
    yield Said(tuple(by_title(one.text) for one in step.answer.issues if not one.missing), "warn")
    yield wanted(step.answer)


def _rows(job: Job, result: Result) -> Iterator[Block]:
    """The table of an answer, one number below the other, for a table is wider than what stands beside a card."""
    for row in result.rows:
        yield Said((row.label,), "strong")
        yield Values(
            tuple(
                Named(f"  {column_title(result, key)}", show(value, quantity(key).kind, job.display))
                for key, value in row.values.items()
            ),
            at_edge=True,
        )


def _recorded(job: Job, step: Step) -> Said:
    """In one quiet line, where today's program, book or machine answers otherwise than on the day of the record."""
    said = differs_said([one for one in differs(job) if one[0] == step.sheet.name])
    return Said((said,) if said else (), "quiet")
