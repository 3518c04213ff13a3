"""What follows from a job card, beside the lines that are typed: angles, settings, stations, verdicts."""

from __future__ import annotations

from collections.abc import Iterable

from geometry.edge.views import PLANES
from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from geometry.surfaces import SURFACES, surface_of_relief
from library.cards.chosen import CHOSEN_ONCE
from library.cards.history import sharpenings_left
from library.cards.inspecting import Relief, Verdict, received_reliefs, reliefs_after, verdicts
from library.cards.issues import keeps_open
from library.cards.job import Job
from library.cards.learn import lessons
from library.cards.settings_lines import setting_lines
from library.cards.thread_names import of_thread
from library.pages.setting_answers import setting_answers
from library.units.show import show
from tui.view.card_pair import pair
from tui.view.card_row import Row
from tui.view.lines import EMPTY, Line, Piece, Role, line, spread_out, wrap
from tui.view.page_lines import part_lines
from tui.view.table import table


def tool_answers(job: Job, row: Row, width: int) -> list[Line]:
    """What the thread's name says, and what the book knows of machine and wheel."""
    lines: list[Line] = []
    for key, text in of_thread(job.card.tool.thread).items():
        if key in QUANTITIES:
            lines += pair(quantity(key).title, text, width)
    if job.machine is not None:
        speeds = ", ".join(one.text for one in job.machine.spindle_speeds)
        lines += _block(job.machine.title, [f"Speeds: {speeds}" if speeds else "", job.machine.note], width)
    if job.wheel is not None:
        wheel = job.wheel
        facts = [
            ", ".join(part for part in (wheel.shape, wheel.diameter.text if wheel.diameter else "") if part),
            ", ".join(part for part in (wheel.grit, wheel.bond) if part),
            f"rated {wheel.rated_speed.measure.text}" if wheel.rated_speed else "NO RATING in the book",
            f"dressed {wheel.dressed.isoformat()}" if wheel.dressed else "",
        ]
        lines += _block(wheel.title, facts, width)
    return lines


def _block(title: str, texts: Iterable[str], width: int) -> list[Line]:
    told = [one for text in texts if text for one in wrap(text, width, first="  ", rest="  ")]
    return [EMPTY, *wrap(title, width, "strong"), *told]


def received_answers(job: Job, row: Row, width: int) -> list[Line]:
    """The relief that was on the tool, flute by flute."""
    return _reliefs(f"Relief found{_of_surface(job)}", received_reliefs(job), width)


def _of_surface(job: Job) -> str:
    """Of which surface a relief is; empty where nobody can tell."""
    surface = SURFACES.get(job.choice.surface)
    return f", {surface.title}" if surface is not None else ""


def _reliefs(title: str, found: Iterable[Relief], width: int) -> list[Line]:
    reliefs = list(found)
    if not reliefs:
        return []
    forms = list(dict.fromkeys(form for one in reliefs for form in one.angles))
    if not forms:
        return wrap(reliefs[0].trouble, width, "quiet")
    angles = [[show(one.angles[form], Kind.ANGLE) if form in one.angles else "-" for form in forms]
              for one in reliefs]  # fmt: skip
    rows = [(_flute(one.flute, len(reliefs)), *cells) for one, cells in zip(reliefs, angles, strict=True)]
    return [line(Piece(title, "strong")), *table(("", *forms), rows, gap=" ")]


def _flute(number: int, count: int) -> str:
    return f"flute {number}" if count > 1 else "tool"


def wanted_answers(job: Job, row: Row, width: int) -> list[Line]:
    """What the book has for the value in hand and where from; then every setting that follows."""
    one = job.card.wanted.get(row.key)
    lines: list[Line] = []
    if one is not None and one.book:
        lines += pair("In the book", one.book, width)
        lines += wrap(f"Source: {one.source}", width, "quiet") if one.source else []
    elif row.key and row.key not in CHOSEN_ONCE:
        lines += wrap("The book has no value for it.", width, "quiet")
    surface = surface_of_relief(row.key)
    if surface is not None:
        lines += wrap(f"Given {PLANES[surface.view]}.", width)
    lines += _of_cam(job, width)
    return [*lines, EMPTY, *_all_settings(job, width)]


def _of_cam(job: Job, width: int) -> list[Line]:
    """What the chosen cam gives beside what is wanted."""
    cam = job.by_cam
    if cam is None or not cam.differs:
        return []
    said = f"The cam of {cam.throw} gives {show(cam.given, Kind.ANGLE)}, not {show(cam.wanted, Kind.ANGLE)}."
    return wrap(said, width, "watch")


def _all_settings(job: Job, width: int) -> list[Line]:
    found = setting_lines(job, job.display)
    if not found:
        return []
    told = [one for setting in found for one in pair(setting.title, setting.value, width)]
    return [line(Piece("What follows", "strong")), *told]


def settings_answers(job: Job, row: Row, width: int) -> list[Line]:
    """What follows from the calculation in hand."""
    return part_lines(setting_answers(job, row.key), width)


def after_answers(job: Job, row: Row, width: int) -> list[Line]:
    """Pass or fail for each flute with the spread between them; then the relief that is on the tool now."""
    lines: list[Line] = []
    for verdict in verdicts(job):
        if verdict.marks:
            lines += [*_verdict(job, verdict, width), EMPTY]
    return [*lines, *_reliefs(f"Relief now{_of_surface(job)}", reliefs_after(job), width)]


def _verdict(job: Job, verdict: Verdict, width: int) -> list[Line]:
    kind = quantity(verdict.key).kind
    title = "Indicator drop at the heel" if verdict.key == "drop" else quantity(verdict.key).title
    limits, may_be = verdict.limits, verdict.may_be
    wanted = limits.said(kind, job.display) if limits is not None else "no limit set"
    wanted = show(verdict.wanted, kind, job.display) if verdict.wanted is not None else wanted
    lines = [line(Piece(title, "strong")), *pair("  shall be", wanted, width)]
    if verdict.first_wanted is not None and job.by_cam is not None:
        lines += wrap(f"by the cam of {job.by_cam.throw}", width, first="  ", rest="  ")
        lines += pair("  was wanted", show(verdict.first_wanted, kind, job.display), width)
    if may_be is not None and may_be != limits:
        lines += pair("  may be", may_be.said(kind, job.display), width)
    words: dict[str, tuple[str, Role]] = {
        "pass": ("PASS", "pass"),
        "stop": ("OFF", "stop"),
        "watch": ("not judged", "quiet"),
    }
    for mark in verdict.marks:
        word, role = words[mark.state]
        at_left = f"  {_flute(mark.flute, len(verdict.marks))} {mark.text}"
        lines.append(spread_out(line(at_left), line(Piece(word, role)), width))
        lines += wrap(mark.text_off, width, "watch", first="    ", rest="    ") if mark.text_off else []
    if verdict.spread is not None:
        lines += pair("  spread", show(verdict.spread, kind, job.display), width)
    return lines


def end_answers(job: Job, row: Row, width: int) -> list[Line]:
    """What keeps the card open, how often the tool can still be sharpened, and what the book may learn."""
    lines: list[Line] = []
    if job.card.done:
        day = job.card.finished.isoformat() if job.card.finished else ""
        lines += wrap(f"Done {day}. It is a record now.", width, "strong")
    else:
        wrong = keeps_open(job)
        many = f"{len(wrong)} thing{'s' if len(wrong) > 1 else ''}"
        said = (
            f"{many} keep{'' if len(wrong) > 1 else 's'} the card open:"
            if wrong
            else "Everything adds up; the card can be closed."
        )
        lines += wrap(said, width, "strong")
        for one in wrong:
            lines += wrap(one.text, width, "watch", first="! ", rest="  ")
    left = sharpenings_left(job)
    if left is not None:
        lines += [EMPTY, *pair("Sharpenings left", str(left), width)]
    learned = lessons(job.card)
    if learned:
        lines += [EMPTY, *wrap("Learned on this job, and not in the book yet:", width)]
        for lesson in learned:
            title = quantity(lesson.key).title if lesson.key in QUANTITIES else lesson.key
            lines += pair(f"  {title}", lesson.value, width)
    return lines


ANSWERS = (tool_answers, received_answers, wanted_answers, settings_answers, after_answers, end_answers)
"""What stands beside each step, in the order of the steps."""
