"""From a card that is worked out to the page: what was found, what to set, what to read, what to mind."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.figure import Figure
from geometry.quantities import QUANTITIES, quantity
from library.cards.finishing import differs
from library.cards.job import Job, Step
from library.cards.known import joined
from library.cards.problems import problems
from library.cards.settings_lines import setting_lines
from library.setup_sheet import readings, warnings
from library.setup_sheet.page import Block, Checks, Drawing, Facts, Item, Items, Page, Said, Section
from library.units.show import say
from library.units.system import Display

PASSES_TOLD = frozenset({"wheel-speed", "setting-height", "cone-relief", "step-relief", "relief-drop",
                         "relief-facets", "feed-clearance", "reamer-land", "size-loss"})  # fmt: skip
"""Calculations whose good news is told; that of the others only repeats the setting that stands above it."""

DRAWN_FIRST = ("relief-facets", "relief-drop")
"""Calculations whose drawing is taken before any other."""


def compose(job: Job, display: Display) -> Page:
    """The setup sheet of a card.

    Args:
        job: the card worked out.
        display: the units of lengths.
    """
    card = job.card
    parts = (
        ("", (_who(job), *_words("Wrong with it", card.wrong))),
        ("As received", tuple(_received(job, display))),
        ("Wanted", tuple(_wanted(job))),
        ("Set, in this order", tuple(_settings(job, display))),
        ("Readings on the way from edge to heel", tuple(readings.on_the_way(job, display))),
        ("What it means", tuple(_checks(job, display))),
        ("After grinding", (readings.boxes(job, display),)),
        ("", (*_words("Notes", card.notes), *_end(job))),
        ("Before you grind", (warnings.cautions(job),)),
    )
    sections = tuple(Section(heading, tuple(block for block in blocks if block)) for heading, blocks in parts)
    title = f"Setup sheet {card.id}" if card.id else "Setup sheet"
    state = "" if card.done else " (draft)"
    return Page(title + state, tuple(section for section in sections if section.blocks))


def _who(job: Job) -> Facts:
    card, tool = job.card, job.card.tool
    family = job.book.families.get(card.family)
    wheel = job.wheel
    rated = f", rated {wheel.rated_speed.measure.text}" if wheel and wheel.rated_speed else ""
    pairs = (
        ("Tool", tool.name),
        ("Family", family.title if family else card.family),
        ("Thread", tool.thread),
        ("Size", tool.size),
        ("Flutes", tool.flutes),
        ("For", _material(job)),
        ("Marks", tool.marks),
        ("Belongs to", tool.belongs_to),
        ("Entry", card.entry),
        ("Machine", job.machine.title if job.machine else card.machine),
        ("Wheel", f"{wheel.title}{rated}" if wheel else card.wheel),
        ("Begun", card.started.isoformat() if card.started else ""),
        ("Done", card.finished.isoformat() if card.finished else ""),
        ("Again from", card.again),
    )
    return Facts(tuple(pair for pair in pairs if pair[1]))


def _material(job: Job) -> str:
    material = job.book.materials.get(job.card.tool.work_material)
    return material.title if material else job.card.tool.work_material


def _words(title: str, text: str) -> tuple[Block, ...]:
    return (Said((f"{title}: {' '.join(text.split())}",)),) if text.strip() else ()


def _received(job: Job, display: Display) -> Iterator[Block]:
    pairs = [(_title(key), joined(found)) for key, found in job.card.received.items() if joined(found)]
    pairs += readings.received_angles(job, display)
    if pairs:
        yield Facts(tuple(pairs))


def _wanted(job: Job) -> Iterator[Block]:
    """What the tool shall have, as far as the job is worked out from it; the sources are told below, each once."""
    used = {
        key for step in job.steps if step.works for key, who in step.who.items() if who in {"wanted", "typed"}
    }
    sources: dict[str, str] = {}
    pairs = []
    for key, one in job.card.wanted.items():
        if not one.value.strip() or (
            key not in used and key not in job.card.after and not one.changed and one.book
        ):
            continue
        if one.changed or not one.book:
            was = f"the book has {one.book}" if one.book else ""
            said = "; ".join(part for part in (was, one.reason) if part) or "decided on this card"
            pairs.append((_title(key), f"{one.value} ({said})"))
        else:
            mark = sources.setdefault(one.source, _letter(len(sources))) if one.source else ""
            pairs.append((_title(key), f"{one.value} [{mark}]" if mark else one.value))
    if pairs:
        yield Facts(tuple(pairs))
    if sources:
        yield Said(("; ".join(f"[{mark}] {source}" for source, mark in sources.items()),))


def _letter(number: int) -> str:
    """A mark for a source: a, b, c, and after z aa, ab.

    Example:
        >>> _letter(0), _letter(26)
        ('a', 'aa')
    """
    return _letter(number // 26 - 1) + _letter(number % 26) if number > 25 else chr(ord("a") + number)


def _settings(job: Job, display: Display) -> Iterator[Block]:
    lines = setting_lines(job, display)
    if lines:
        yield Items(
            tuple(
                Item(line.title, line.value, "; ".join(part for part in (line.graduation, line.cost) if part))
                for line in lines
            )
        )
    yield from readings.tables(job, display)
    wants = [f"{step.sheet.name} ({_missing(step)})" for step in job.steps
             if step.in_use and step.answer.troubles and all(one.missing for one in step.answer.troubles)]  # fmt: skip
    if wants:
        yield Said((f"Not worked out, for want of: {', '.join(wants)}.",))
    figure = _figure(job)
    if figure is not None:
        yield Drawing(figure, f"One tooth of {job.card.title}")


def _figure(job: Job) -> Figure | None:
    """The drawing of the calculation that says most of the whole back of the tooth."""
    drawn = {
        step.sheet.name: step.answer.result.figure for step in job.steps if step.works and step.answer.result
    }
    found = [figure for name in DRAWN_FIRST if (figure := drawn.pop(name, None))]
    return next((figure for figure in (*found, *drawn.values()) if figure), None)


def _missing(step: Step) -> str:
    return ", ".join(_title(one.key).lower() for one in step.answer.troubles if one.key)


def _checks(job: Job, display: Display) -> Iterator[Block]:
    found: list[tuple[str, str]] = []
    for step in job.steps:
        if not step.in_use:
            continue
        for check in step.checks:
            if check.state not in {"pass", "note"} or step.sheet.name in PASSES_TOLD:
                found.append((check.state, say(check.sentence, display)))
    told = {text for _, text in found}
    for one in problems(job):
        if not any(text in one.text for text in told):
            found.append((one.state, one.text))
    for sheet, key, was, now in differs(job):
        found.append(("watch", f"{sheet}: the record of that day has {quantity(key).title.lower()} {was}; "
                      f"today it comes out as {now or 'nothing'}."))  # fmt: skip
    if found:
        yield Checks(
            tuple(
                sorted(dict.fromkeys(found), key=lambda one: ("stop", "watch", "pass", "note").index(one[0]))
            )
        )


def _end(job: Job) -> tuple[Block, ...]:
    card = job.card
    pairs = (
        ("Time spent", f"{card.minutes} min" if card.minutes.isdecimal() else card.minutes),
        ("Result", card.result),
    )
    known = tuple(pair for pair in pairs if pair[1])
    return (Facts(known),) if known else ()


def _title(key: str) -> str:
    row = QUANTITIES.get(key)
    return row.title if row else key
