"""Compose the setup sheet from a card that is worked out, in the order in which it is used at the machine.

What stops, the tool, the cautions, what to set, what to read on the way and after grinding; then what is looked up.
"""

from __future__ import annotations

from collections.abc import Iterator

from geometry.figure import Figure
from library.calc.cautions import of_what_is_done
from library.calc.left_hand import OTHER_SIDE
from library.cards.hand import is_left
from library.cards.how_ground import Numbers, setup_of
from library.cards.job import Job
from library.cards.provenance import joined
from library.cards.read_elsewhere import counted_as
from library.cards.setting_line import SettingLine
from library.cards.settings_lines import setting_lines
from library.cards.turned import how_turned
from library.guidance.model import ON_FULL_PAPER, ON_PAPER
from library.guidance.never import never_ground
from library.pages.as_text import as_text
from library.pages.cautions import on_paper, with_all_cautions
from library.pages.page import Block, Checks, Drawing, Facts, Item, Items, Page, Said, Section, Table, ToWrite
from library.pages.setup import on_paper as setup_on_paper
from library.setup_sheet import head, readings, verdicts
from library.setup_sheet.across import BESIDE, PAPER, stand_below, width
from library.setup_sheet.lead_beside import lead_said
from library.setup_sheet.left_out import LEFT_OUT, with_what_is_left_out
from library.setup_sheet.still_missing import of_no_setting, still_missing
from library.setup_sheet.verdicts import tells_of_setting
from library.setup_sheet.wanted import title, wanted
from library.setup_sheet.where_read import heading
from library.units.show import say
from library.units.system import Display

DRAWING = 52.0
"""Millimetres that the drawing is wide."""

ONE_PAGE = 70
"""Lines as text that still are one page of either paper: those of 70 were measured to be, those of 71 not."""

USUAL_ROWS, TALLER = 4, 3
"""Places on the way from the edge to the heel; a row for another heel takes that many lines more on paper than as text: measured."""

SHORTER, SHORTEST = 4, 5
"""How often a sheet can be made shorter: no facts, no more of the way it is ground than what is set, none of it, no passes; at last not what it came with."""

FRAMED = 2
"""Lines more that what stops wants on paper, where its frame and its first line are larger than as text: measured."""

SPARE = 1
"""Lines that are left free below a sheet with all cautions in words: they are a line more on paper, and no row less."""

NEVER = "Never: "
"""Begins the line on what is never ground."""

BESET = 2
"""Lines more that it wants on paper, where those round it are narrower than as text: measured."""

SHORTENED = 1
"""Lines more that the sentence on what is left out wants on paper, where it stands apart: measured."""

TURNED = 2
"""Lines more that the sentences on how the tool is turned want on paper, where they are larger than as text: measured."""

NO_NEVER = 3
"""From which shortening on it goes without what is never ground, which the card has."""


def compose(job: Job, display: Display, *, one_page: bool = True) -> Page:
    """The setup sheet of a card, on one page: what does not fit is only worth knowing, and it is said that the card has it.

    The cautions take two lines, and as many as they need where there is room for them.

    Args:
        job: the card worked out.
        display: the units of lengths.
        one_page: whether paper bounds it; else nothing is left out.
    """
    whole = _composed(job, display, 0)
    if not one_page:
        return with_all_cautions(whole)
    for shorter in range(SHORTEST):
        page = with_what_is_left_out(_composed(job, display, shorter), whole)
        if _fits(page, job, display):
            all_told = with_all_cautions(page)
            return all_told if _fits(all_told, job, display, SPARE) else page
    return with_what_is_left_out(_composed(job, display, SHORTEST), whole)


def _fits(page: Page, job: Job, display: Display, spare: int = 0) -> bool:
    """Whether a sheet is one page of either paper, with so many lines to spare."""
    text = as_text(page)
    larger = TURNED * bool(_turned(job, display)) + BESET * text.count(NEVER) + FRAMED * bool(page.before)
    larger += SHORTENED * (LEFT_OUT in text)
    return text.count("\n") + TALLER * _rows_more(page) + larger + spare <= ONE_PAGE


def _rows_more(page: Page) -> int:
    """Rows to write in beyond those that every sheet has."""
    tables = (block for section in page.sections for block in section.blocks if isinstance(block, Table))
    boxed = [one for one in tables if one.boxes]
    return sum(max(len(one.rows) - USUAL_ROWS, 0) for one in boxed) + sum(
        len(one.rows) for one in stand_below(boxed)
    )


def _composed(job: Job, display: Display, shorter: int) -> Page:
    told = verdicts.checks(job, display)
    stop, watch, good = (
        tuple(one for one in told if one[0] in states) for states in (("stop",), ("watch",), ("pass", "note"))
    )
    watch = (*still_missing(job), *watch)
    cautions, last_word = on_paper(of_what_is_done(job.cautions, "grinding"))
    on_the_way = tuple(readings.on_the_way(job, display))
    more = (*readings.more_flutes(job), *lead_said(job, display)) if on_the_way else ()
    drawing = tuple(_drawing(job))
    beside = len(on_the_way) == 1 and width(on_the_way[0]) + BESIDE + DRAWING <= PAPER
    used = (
        ("", (head.who(job),)),
        ("", (cautions,) if cautions.words else ()),
        ("", (Checks(watch),) if watch else ()),
        ("Set, in this order", tuple(_settings(job, display))),
        (heading(job, display), (*on_the_way, *more, *(drawing if beside else ()))),
        ("After grinding", (readings.boxes(job, display), *readings.found_now(job, display))),
        ("", (*verdicts.by_cam(job, display), *_to_write(job))),
    )
    tables = tuple(readings.tables(job, display))
    drawn = () if beside else drawing
    steps = _steps_told(shorter, len(on_the_way), has_tables=bool(tables))
    if shorter or not steps:
        # What is only worth knowing stands on the card; the paper is full.
        good = tuple(one for one in good if one[0] != "note")
    good = (*(good if shorter < SHORTER else ()), *(_never(job) if shorter < NO_NEVER else ()))
    looked_up = (
        ("How it is ground", tuple(_how_ground(job, display, steps))),
        ("What it means", (*(() if tables else drawn), *((Checks(good),) if good else ()))),
        ("", (*drawn, *tables) if tables else ()),
        ("As received", () if shorter == SHORTEST else tuple(_received(job, display))),
        ("Wanted", tuple(wanted(job, display))),
        ("", (last_word,)),
    )
    sections = [
        Section(over, tuple(block for block in blocks if block), looked_up=parts is looked_up)
        for parts in (used, looked_up)
        for over, blocks in parts
    ]
    return Page(
        head.title(job),
        tuple(section for section in sections if section.blocks),
        dense=True,
        before=head.stops(job, stop),
        aside=head.which(job),
    )


def _steps_told(shorter: int, read: int, *, has_tables: bool) -> tuple[str, ...]:
    """The steps of the way it is ground that have room on the paper, beside so many tables of readings.

    Where the indicator points stands over the readings already, and two tables of them with one of steps fill the paper.
    """
    steps = tuple(one for one in ON_PAPER if one != "read" or not read)
    if has_tables:
        steps = ON_FULL_PAPER if read < 2 else ()
    if shorter > 1:
        steps = tuple(one for one in steps if one in ON_FULL_PAPER and shorter == 2)
    return steps


def _never(job: Job) -> tuple[tuple[str, str], ...]:
    """What is never ground on such a tool, where it names the surface of the job; nothing when it was done."""
    never = never_ground(job.family, job.choice.surface)
    return (("note", f"{NEVER}{' '.join(never)}"),) if never and not job.card.done else ()


def _how_ground(job: Job, display: Display, steps: tuple[str, ...]) -> Iterator[Block]:
    """Six short lines at most, with the numbers of the job; nothing where something stops."""
    setup = setup_of(job)
    stopped = any(step.in_use and step.stopped for step in job.steps)
    if setup is not None and steps and not stopped:
        numbers = Numbers(job, display)
        yield setup_on_paper(job.book, setup, numbers, numbers.convert, steps)


def _received(job: Job, display: Display) -> Iterator[Block]:
    """What was found on the tool; what stands beside the boxes of today already is left out."""
    beside = readings.boxed(job)
    pairs = [
        (title(key, job.choice.surface), joined(found))
        for key, found in job.card.received.items()
        if joined(found) and key not in beside
    ]
    pairs += readings.received_angles(job, display)
    if pairs:
        yield Facts(tuple(pairs))
    if counted := counted_as(job):
        yield Said((counted,))


def _settings(job: Job, display: Display) -> Iterator[Block]:
    lines = setting_lines(job, display)
    if is_left(job):
        yield Said((OTHER_SIDE,), "strong")
    if lines:
        yield Items(tuple(_item(line) for line in lines if line.is_set))
    if turned := _turned(job, display):
        yield Said((turned,), "strong")
    if others := [line for line in lines if line.apart and not line.stopped]:
        yield Facts(tuple((f"{line.title}, {line.apart}", _apart(line)) for line in others))
    if checks := [line for line in lines if line.is_check and not line.stopped]:
        yield Facts(tuple((f"{line.title}, to check", f"{line.value}, {line.divisions}") for line in checks))
    if wants := of_no_setting(job):
        yield Said((f"Not worked out, for want of: {wants}.",))


def _turned(job: Job, display: Display) -> str:
    """How the tool is turned for what is set, and how that is proved, in whole sentences; empty where no more is to be said."""
    turned = [how_turned(job, step) for step in job.steps]
    proved = [
        say(one.sentence, display)
        for step in job.steps
        if step.in_use and step.works and not step.stopped
        for one in step.checks
        if tells_of_setting(step, one)
    ]
    return " ".join(filter(None, (*turned, *proved)))


def _apart(line: SettingLine) -> str:
    return "; ".join(part for part in (line.value, line.graduation, line.cost) if part)


def _item(line: SettingLine) -> Item:
    """One thing to set; no number of what is stopped, so that nobody sets it."""
    if line.stopped:
        return Item(line.title, "STOP", "not to be set: see above")
    return Item(line.title, line.value, "; ".join(filter(None, (line.counted, line.graduation))), line.cost)


def _drawing(job: Job) -> Iterator[Block]:
    figure = _figure(job)
    if figure is not None:
        yield Drawing(figure, f"One tooth of {job.card.title}")


def _figure(job: Job) -> Figure | None:
    """The drawing of the calculation that says most of the whole back of the tooth."""
    drawn = [
        (step.sheet.role.drawn, step.answer.result.figure)
        for step in job.steps
        if step.works and not step.stopped and step.answer.result and step.answer.result.figure
    ]
    return max(drawn, key=lambda one: one[0])[1] if drawn else None


def _to_write(job: Job) -> Iterator[Block]:
    """Lines for how it went: what is known already stands on them."""
    card = job.card
    time = f"{card.minutes} min" if card.minutes.isdecimal() else card.minutes
    yield ToWrite((("Time", time), ("Result", card.result), ("Name", "")))
    yield ToWrite((("Notes", card.notes),))
