"""Compose the setup sheet from a card that is worked out: what was found, what to set, what to read, what to mind."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.calculation import Check
from geometry.edge.views import PLANES
from geometry.figure import Figure
from geometry.quantities import QUANTITIES, quantity
from geometry.role import HEEL
from geometry.sentences import Kind
from geometry.surfaces import SURFACES, surface_of_relief
from library.calc.surfaces import RELIEF, SECOND_RELIEF, title_of
from library.cards.cams import show_angle
from library.cards.chosen import CHOSEN_ONCE
from library.cards.close import differs
from library.cards.issues import issues_of
from library.cards.job import Job, Step
from library.cards.provenance import joined
from library.cards.settings_lines import SettingLine, setting_lines
from library.pages.cautions import on_paper
from library.pages.page import Block, Checks, Drawing, Facts, Item, Items, Page, Said, Section, Sources
from library.setup_sheet import readings
from library.units.show import say, show
from library.units.system import Display

BAD = ("stop", "watch")
"""What stands above the numbers, the worst first."""

STOPPED = "STOP: do not grind this before what is marked STOP below is put right."
"""The head of a sheet on which a setting stops."""

STOPPED_AFTER = "STOP: this tool is not as it was wanted; see what is marked STOP below."
"""The head of a sheet on which only a reading after grinding stops."""


def compose(job: Job, display: Display) -> Page:
    """The setup sheet of a card.

    Args:
        job: the card worked out.
        display: the units of lengths.
    """
    card = job.card
    found = _checks(job, display)
    bad = tuple(one for one in found if one[0] in BAD)
    good = tuple(one for one in found if one[0] not in BAD)
    cautions, last_word = on_paper(job.cautions)
    parts = (
        ("", (_who(job), *_words("Wrong with it", card.wrong))),
        ("", (cautions,) if cautions.words else ()),
        ("Mind this first", (Checks(bad),) if bad else ()),
        ("As received", tuple(_received(job, display))),
        ("Wanted", tuple(_wanted(job, display))),
        ("Set, in this order", tuple(_settings(job, display))),
        ("Readings on the way from edge to heel", tuple(readings.on_the_way(job, display))),
        ("What it means", (Checks(good),) if good else ()),
        ("After grinding", (readings.boxes(job, display), *_by_cam(job, display))),
        ("", (*_words("Notes", card.notes), *_end(job))),
        ("", (last_word,)),
    )
    sections = tuple(Section(heading, tuple(block for block in blocks if block)) for heading, blocks in parts)
    title = f"Setup sheet {card.id}" if card.id else "Setup sheet"
    state = "" if card.done else " (draft)"
    head = f"{stop} {title}{state}" if (stop := _stop(job)) else title + state
    return Page(head, tuple(section for section in sections if section.blocks), dense=True)


def _stop(job: Job) -> str:
    """What stands at the head where anything stops; empty where nothing does."""
    ways = [one.way for one in issues_of(job) if one.state == "stop"]
    if any(not way.startswith("after.") for way in ways):
        return STOPPED
    return STOPPED_AFTER if ways else ""


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


def _wanted(job: Job, display: Display) -> Iterator[Block]:
    """What the tool shall have, as far as the job is worked out from it; the sources are told below, each once."""
    used = {
        key
        for step in job.steps
        if step.works
        for key, who in step.provenance.items()
        if who in {"wanted", "typed"}
    }
    used |= {key for step in job.steps if step.works for key in _reliefs_used(step)}
    sources: dict[str, str] = {}
    pairs = []
    for key, one in job.card.wanted.items():
        if (
            key in CHOSEN_ONCE
            or not one.value.strip()
            or (key not in used and key not in job.card.after and not one.changed and one.book)
        ):
            continue
        said = "; ".join(part for part in (_with_view(key, one.value), _reads(job, key, display)) if part)
        if one.changed or not one.book:
            was = f"the book has {one.book}" if one.book else ""
            why = "; ".join(part for part in (was, one.reason) if part) or "decided on this card"
            pairs.append((_title(key), f"{said} ({why})"))
        else:
            mark = sources.setdefault(one.source, _letter(len(sources))) if one.source else ""
            pairs.append((_title(key), f"{said} [{mark}]" if mark else said))
    if pairs:
        yield Facts((*pairs, *_chosen(job)))
    if sources:
        yield Sources({f"[{mark}]": source for source, mark in sources.items()})


def _reliefs_used(step: Step) -> Iterator[str]:
    """The reliefs of the book that fill a calculation under the name of its relief."""
    surface = SURFACES.get(step.answer.surface)
    for key, filled in step.answer.inputs.items():
        if filled.origin == "entry" and surface is not None and key in (RELIEF, SECOND_RELIEF):
            yield surface.relief_key if key == RELIEF else surface.second_key
        field = step.sheet.field(key)
        if filled.origin == "entry" and field is not None:
            yield from field.fill_from


def _with_view(key: str, text: str) -> str:
    """A relief with the view in which it is given; anything else as it is."""
    surface = surface_of_relief(key)
    return f"{text}, {PLANES[surface.view]}" if surface is not None else text


def _reads(job: Job, key: str, display: Display) -> str:
    """What the indicator reads at the heel for the wanted relief of the surface that is ground, and where it points."""
    surface, step = surface_of_relief(key), job.doing(HEEL)
    if surface is None or key != surface.relief_key or surface.key != job.choice.surface:
        return ""
    if step is None or not step.works or step.stopped or step.answer.result is None:
        return ""
    cam = job.by_cam
    heel = step.answer.result.outputs["heel_drop"] if cam is None else cam.wanted_heel
    if heel is None:
        return ""
    return f"indicator {readings.points(job)} reads {show(heel, Kind.LENGTH, display)} at the heel"


def _chosen(job: Job) -> tuple[tuple[str, str], ...]:
    """What was chosen once for the whole job."""
    surface = SURFACES.get(job.choice.surface)
    return (
        *((("Surface ground", surface.title),) if surface is not None else ()),
        *((("Made by", METHODS[job.choice.method]),) if job.choice.method else ()),
    )


METHODS = {
    "cam": "a cam",
    "wheel-head-height": "the height of the wheel head",
    "tooth-rest-height": "the height of the tooth rest",
    "inclined-wheel": "an inclined wheel",
}
"""How the relief is made, in words."""


def _by_cam(job: Job, display: Display) -> tuple[Block, ...]:
    """That the readings are held against the cam that was chosen, beside what was wanted."""
    cam, drop = job.by_cam, job.doing(HEEL)
    if cam is None or drop is None or not cam.differs:
        return ()
    reads = (
        f", which reads {show(cam.wanted_heel, Kind.LENGTH, display)}" if cam.wanted_heel is not None else ""
    )
    too = ", ".join(one.sheet.name for one in _count_too(job, drop))
    too = f" Counted with {show_angle(cam.given)} too: {too}." if too else ""
    return (Said((f"Judged by the cam of {cam.throw}: it gives {show_angle(cam.given)} and reads "
                  f"{show(cam.heel, Kind.LENGTH, display)}. {show_angle(cam.wanted)} was wanted{reads}.{too}",)),)  # fmt: skip


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
        yield Items(tuple(map(_item, lines)))
    yield from readings.tables(job, display)
    wants = [f"{step.sheet.name} ({_missing(step)})" for step in job.steps
             if step.in_use and step.answer.issues and all(one.missing for one in step.answer.issues)]  # fmt: skip
    if wants:
        yield Said((f"Not worked out, for want of: {', '.join(wants)}.",))
    figure = _figure(job)
    if figure is not None:
        yield Drawing(figure, f"One tooth of {job.card.title}", display)


def _item(line: SettingLine) -> Item:
    """One thing to set; no number of what is stopped, so that nobody sets it."""
    if line.stopped:
        return Item(line.title, "STOP", "not to be set: see above")
    return Item(line.title, line.value, "; ".join(part for part in (line.graduation, line.cost) if part))


def _figure(job: Job) -> Figure | None:
    """The drawing of the calculation that says most of the whole back of the tooth."""
    drawn = [
        (step.sheet.role.drawn, step.answer.result.figure)
        for step in job.steps
        if step.works and not step.stopped and step.answer.result and step.answer.result.figure
    ]
    return max(drawn, key=lambda one: one[0])[1] if drawn else None


def _missing(step: Step) -> str:
    surface = step.answer.surface
    return ", ".join(title_of(one.key, surface).lower() for one in step.answer.issues if one.key)


def _checks(job: Job, display: Display) -> list[tuple[str, str]]:
    """Every verdict and every fact, the worst first, each once."""
    found: list[tuple[str, str]] = []
    for step in job.steps:
        if step.in_use:
            found += [
                (one.state, say(one.sentence, display))
                for one in step.checks
                if _told(step, one) and not _told_by_cam(job, step, one)
            ]
    told = {text for _, text in found}
    for one in issues_of(job):
        if not any(text in one.text for text in told):
            found.append((one.state, one.text))
    for sheet, key, was, now in differs(job):
        found.append(("watch", f"{sheet}: the record of that day has {quantity(key).title.lower()} {was}; "
                      f"today it comes out as {now or 'nothing'}."))  # fmt: skip
    return sorted(dict.fromkeys(found), key=lambda one: ("stop", "watch", "pass", "note").index(one[0]))


def _told_by_cam(job: Job, step: Step, check: Check) -> bool:
    """Whether it is said by the sentence on the chosen cam: a cone's remark on its relief, or who else counts with it."""
    cam, drop = job.by_cam, job.doing(HEEL)
    if cam is None or not cam.differs or drop is None:
        return False
    if check.state == "note":
        return "throws" in check.sentence.parts and step in _count_too(job, drop)
    return step.sheet.role.repeats_cam and check.state == "watch" and drop.relief is None


def _count_too(job: Job, drop: Step) -> list[Step]:
    """The calculations that count with the relief of the cam by which the readings are judged."""
    return [
        one
        for one in job.steps
        if one.works and one.relief is not None and one.relief.source == drop.sheet.name
    ]


def _told(step: Step, check: Check) -> bool:
    """Whether a verdict or a fact stands on the sheet; a direction that the setting says itself is not said twice."""
    if check.state in BAD:
        return True
    # Where the indicator points stands under Wanted.
    if check.state == "note" and "points" in check.sentence.parts:
        return False
    if "height" in check.sentence.parts and any(line.way for line in step.lines):
        return False
    return check.state in step.sheet.role.tells


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
