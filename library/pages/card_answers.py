"""What follows from a job card, beside the lines that are typed: angles, settings, verdicts, what keeps it open.

Each function takes the card worked out and the quantity or calculation of the line in hand.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from itertools import islice

from geometry.edge.views import PLANES
from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from geometry.surfaces import SURFACES, surface_of_relief
from library.book.word_forms import LEAST_BEGUN
from library.calc.by_family import is_threaded
from library.calc.left_hand import OTHER_SIDE
from library.calc.past_the_range import past, within
from library.calc.wording import spoken
from library.cards.chosen import CHOSEN_ONCE
from library.cards.each_step import FLUTE, STEP
from library.cards.hand import is_left
from library.cards.how_ground import Numbers, ground_besides, ground_of, setup_of
from library.cards.inspecting import (
    Mark,
    Relief,
    Verdict,
    received_reliefs,
    reliefs_after,
    verdicts,
)
from library.cards.job import Job
from library.cards.last_facet import title_after
from library.cards.reading_units import each_in, shown_in, unit_read_in
from library.cards.rests_on import rests_on
from library.cards.setting_line import SettingLine
from library.cards.settings_lines import setting_lines
from library.cards.shall_be import presumed_limits, relief_key
from library.cards.still_to_measure import NOT_MEASURED
from library.cards.thread_names import of_thread
from library.cards.untold_relief import why_untold
from library.guidance.never import never_ground
from library.guidance.troubles import Recognised, recognised, symptoms_of
from library.guidance.wheels import recommended_for
from library.pages.card_end import end_answers
from library.pages.page import Block, Labelled, Named, Said, Table, Values
from library.pages.setting_answers import Parts, setting_answers
from library.pages.setup import on_card
from library.pages.troubles import beside_card
from library.pages.wheels import in_a_line
from library.units.show import say, show


def tool_answers(job: Job, key: str) -> Parts:
    """What the thread's name says, and what the book knows of machine and wheel."""
    # The diameter of a screw beside a tool that is called by it would be taken for that of the tool.
    thread = job.card.tool.thread if is_threaded(job.family) else ""
    names = of_thread(thread, job.book).items()
    yield (_values((quantity(one).title, text) for one, text in names if one in QUANTITIES),)
    if job.machine is not None:
        speeds = ", ".join(one.text for one in job.machine.spindle_speeds)
        yield _about(job.machine.title, f"Speeds: {speeds}" if speeds else "", job.machine.note)
    if job.wheel is not None:
        wheel = job.wheel
        yield _about(
            wheel.title,
            ", ".join(
                part for part in (spoken(wheel.shape), wheel.diameter.text if wheel.diameter else "") if part
            ),
            ", ".join(part for part in (wheel.grit, wheel.grade, wheel.bond) if part),
            f"rated {wheel.rated_speed.measure.text}" if wheel.rated_speed else "NO RATING in the book",
            f"dressed {wheel.dressed.isoformat()}" if wheel.dressed else "",
        )
    yield tuple(_recommended(job))


def _recommended(job: Job) -> Iterator[Block]:
    """The wheels that the book recommends for the tool and for what is ground on it."""
    found = recommended_for(job.book, ground_of(job))
    if found:
        yield Said(("Recommended wheels",), "strong")
        yield Labelled(
            tuple((str(number), f"{one.title}: {in_a_line(one)}") for number, one in enumerate(found, 1))
        )


def _about(title: str, *texts: str) -> tuple[Block, ...]:
    return Said((title,), "strong"), Said(tuple(text for text in texts if text), indent=2)


def _values(pairs: Iterable[tuple[str, str]]) -> Values:
    return Values(tuple(Named(title, text) for title, text in pairs), at_edge=True)


def received_answers(job: Job, key: str) -> Parts:
    """The relief that was on the tool, flute by flute, and what to look at for its trouble; in the line of that it stands first."""
    relief, trouble = _reliefs(f"Relief found{_of_surface(job)}", received_reliefs(job)), tuple(_trouble(job))
    if why := why_untold(job):
        relief = (Said((why,), "quiet"),)
    yield from (relief, trouble) if key else (trouble, relief)


def _trouble(job: Job) -> Iterator[Block]:
    """What to measure and to change for the trouble that the card tells of."""
    if found := _recognised(job):
        yield from beside_card(job.book, found, Numbers(job, job.display).convert)


def _recognised(job: Job) -> tuple[Recognised, ...]:
    wrong, family = job.card.wrong.strip(), job.card.family
    if not wrong:
        return ()

    def find() -> tuple[Recognised, ...]:
        return recognised(wrong, symptoms_of(job.book, family, job.book.entries.get(job.card.entry)))

    return job.answers.remembered(("recognised", wrong, family, job.card.entry), find)


def is_unknown_trouble(job: Job) -> bool:
    """Whether a card says what is wrong in words of which none is a trouble that the book knows of such tools."""
    # What somebody has only begun to type is nothing yet.
    is_said = len(job.card.wrong.strip()) >= LEAST_BEGUN
    return is_said and bool(symptoms_of(job.book, job.card.family)) and not _recognised(job)


def _of_surface(job: Job) -> str:
    """Of which surface a relief is; empty where nobody can tell."""
    surface = SURFACES.get(job.choice.surface)
    return f", {surface.title}" if surface is not None else ""


def _reliefs(title: str, found: Iterable[Relief]) -> tuple[Block, ...]:
    reliefs = list(found)
    forms = list(dict.fromkeys(form for one in reliefs for form in one.angles))
    if not forms:
        return tuple(Said((one.trouble,), "quiet") for one in reliefs[:1])
    rows = tuple(
        (_flute(one.flute, len(reliefs)),
         *(show(one.angles[form], Kind.ANGLE) if form in one.angles else "-" for form in forms))
        for one in reliefs)  # fmt: skip
    return Said((title,), "strong"), Table(("", *forms), rows)


def _flute(number: int, count: int, place: str = FLUTE) -> str:
    return f"{place} {number}" if count > 1 else "tool"


def wanted_answers(job: Job, key: str) -> Parts:
    """What the book has for the value in hand and where from; then every setting that follows."""
    yield tuple(_of_book(job, key))
    found = setting_lines(job, job.display)
    if found:
        yield Said(("What follows",), "strong"), _values(_followed(one) for one in found), *_stopping(job)


def _followed(one: SettingLine) -> tuple[str, str]:
    """A setting with its number; of what must not be set as it stands that it stops."""
    return one.title, "STOP" if one.stopped else one.value


def _stopping(job: Job) -> Iterator[Block]:
    """Why what follows from what is wanted stops, first of all: it stands on the page Set, too late for who is choosing here."""
    told = (
        Said((f"STOP on Set, {step.sheet.title}: {say(one.sentence, job.display)}",), "stop")
        for step in job.steps
        if step.works
        for one in step.checks
        if one.state == "stop"
    )
    yield from islice(told, 1)


def _of_book(job: Job, key: str) -> Iterator[Block]:
    one = job.card.wanted.get(key)
    if one is not None and one.book:
        yield _values([("In the book", one.book)])
        yield Said((f"Source: {one.source}",) if one.source else (), "quiet")
    elif key and key not in CHOSEN_ONCE:
        yield Said(("The book has no value for it.",), "quiet")
    surface, cam = surface_of_relief(key), job.by_cam
    if surface is not None:
        yield Said((f"Given {PLANES[surface.view]}.",))
    if cam is not None and cam.differs:
        said = (
            f"The cam of {cam.throw} gives {show(cam.given, Kind.ANGLE)}, not {show(cam.wanted, Kind.ANGLE)}"
        )
        value = job.entry.values.get(key) if key == relief_key(job) else None
        end, allowed = past(value, cam.given), within(value, cam.given)
        if allowed:
            yield Said((f"{said}: {allowed}.",))
        else:
            yield Said((f"{said}, and {end}." if end else f"{said}.",), "warn")


def settings_answers(job: Job, name: str) -> Parts:
    """The calculation in hand, and below it how the tool is ground, with the numbers of the job."""
    yield from setting_answers(job, name)
    if is_left(job):
        yield (Said((OTHER_SIDE,)),)
    if besides := ground_besides(job):
        yield (Said((besides,)),)
    never = never_ground(job.family, job.choice.surface)
    if never:
        yield (Labelled((("NEVER", " ".join(never)),)),)
    setup = setup_of(job)
    if setup is not None:
        numbers = Numbers(job, job.display)
        yield on_card(job.book, setup, numbers, numbers.convert)


def after_answers(job: Job, key: str) -> Parts:
    """Pass or fail for each flute with the spread between them; then the relief that is on the tool now.

    Before all that stands on what the reading at the heel rests, where that is less than it seems.
    """
    if less := rests_on(job):
        yield (Said((less,), "warn"),)
    for verdict in verdicts(job):
        if verdict.marks:
            yield tuple(_verdict(job, verdict))
    yield _reliefs(f"Relief now{_of_surface(job)}", reliefs_after(job))


def _verdict(job: Job, verdict: Verdict) -> Iterator[Block]:
    kind = quantity(verdict.key).kind
    title = title_after(verdict.key, job)
    limits, may_be = verdict.limits, verdict.may_be
    own = job.display.unit(kind)
    read_in = unit_read_in((one.text for one in verdict.marks), kind, job.display)

    def told(name: str, said: Callable[[str], str], *below: str) -> Values:
        """In the unit that the readings below stand in, and in that of the card where it is another."""
        beside = (said(own),) if read_in != own else ()
        return Values((Named(f"  {name}", said(read_in), below=(*beside, *below)),), at_edge=True)

    def wanted(unit: str) -> str:
        if verdict.wanted is not None:
            return shown_in(verdict.wanted, kind, unit)
        return limits.said_in(kind, unit) if limits is not None else "no limit set"

    yield Said((title,), "strong")
    judged = verdict.wanted is not None or limits is not None
    cam = f"by the cam of {job.by_cam.throw}" if verdict.first_wanted is not None and job.by_cam else ""
    if verdict.each:
        own_by = "size" if verdict.place == STEP else "land"
        whose = f"each by its own {own_by}{', ' if cam else ''}{cam}"
        yield told("shall be", lambda unit: each_in(verdict.each, kind, unit), whose)
        if verdict.first_each:
            yield told("was wanted", lambda unit: each_in(verdict.first_each, kind, unit))
    elif verdict.first_wanted is not None and cam:
        first = verdict.first_wanted
        yield told("shall be", wanted, cam)
        yield told("was wanted", lambda unit: shown_in(first, kind, unit))
    elif judged:
        yield told("shall be", wanted, *((limits.whose,) if limits is not None and limits.whose else ()))
    else:
        yield _values([("  shall be", wanted(own))])
        if (presumed := presumed_limits(job) if verdict.key == "diameter" else None) is not None:
            yield told(f"by {presumed.whose}, presumed", lambda unit: presumed.said_in(kind, unit))
    if may_be is not None and may_be != limits and not verdict.each:
        is_worn = limits is not None and limits.worn is not None
        yield told("worn, may be" if is_worn else "may be", lambda unit: may_be.said_in(kind, unit))
    many = len(verdict.marks)
    marks = (
        _mark(one, many, verdict.place, _own_limits(verdict, one, kind, read_in)) for one in verdict.marks
    )
    yield Values(tuple(marks), at_edge=True)
    if (spread := verdict.spread) is not None:
        title = "spread by land" if verdict.each else "spread"
        yield told(title, lambda unit: shown_in(spread, kind, unit))


def _own_limits(verdict: Verdict, mark: Mark, kind: Kind, unit: str) -> str:
    """From where to where a reading that is off may be, where that is another on another flute; else empty."""
    found = verdict.may_be_of(mark.flute) if verdict.each and mark.state == "stop" else None
    return found.said_in(kind, unit) if found is not None else ""


def _mark(mark: Mark, count: int, place: str, may_be: str = "") -> Named:
    """One reading with its verdict, and from where to where it may be where each flute has its own limits."""
    title = f"  {_flute(mark.flute, count, place)} {mark.text}"
    below = tuple(part for part in (mark.text_off, f"may be {may_be}" if may_be else "") if part)
    if not mark.text.strip():
        return Named(title.rstrip(), NOT_MEASURED, role="quiet")
    if mark.state == "watch":
        return Named(title, "not judged", below=below, role="quiet")
    if mark.state == "stop":
        return Named(title, "OFF", below=below, role="stop")
    return Named(title, "PASS", below=below, role="pass")


ANSWERS: tuple[Callable[[Job, str], Parts], ...] = (
    tool_answers, received_answers, wanted_answers, settings_answers, after_answers, end_answers,
)  # fmt: skip
"""What stands beside each step, in the order of the steps."""
