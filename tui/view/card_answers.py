"""What follows from a job card, beside the lines that are typed: angles, settings, stations, verdicts."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import replace

from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from geometry.worksheet import Result, Station
from library.cards.finishing import differs
from library.cards.history import sharpenings_left
from library.cards.inspecting import Relief, Verdict, received_reliefs, reliefs_after, verdicts
from library.cards.job import Job, Step
from library.cards.lessons import lessons
from library.cards.problems import keeps_open
from library.cards.settings_lines import SettingLine, setting_lines
from library.cards.thread_names import of_thread
from library.equipment.settings import in_divisions
from library.units.show import say, show
from tui.view.answer_lines import STATE_WORDS, output_lines, widest
from tui.view.card_row import Row
from tui.view.lines import EMPTY, Line, Piece, Role, line, spread_out, wrap
from tui.view.table import table

SHARES = {0.0: "edge", 0.25: "1/4", 0.5: "1/2", 0.75: "3/4", 1.0: "heel"}
"""The places between edge and heel."""

_WORST_FIRST = ("stop", "watch", "pass")


def tool_answers(job: Job, row: Row, width: int) -> list[Line]:
    """What the thread's name says, and what the book knows of machine and wheel."""
    lines: list[Line] = []
    for key, text in of_thread(job.card.tool.thread).items():
        if key in QUANTITIES:
            lines += _pair(quantity(key).title, text, width)
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


def _pair(title: str, value: str, width: int) -> list[Line]:
    """A title with its value at the right edge; on two lines where one does not hold them."""
    if len(title) + 1 + len(value) <= width:
        return [spread_out(line(title), line(Piece(value, "strong")), width)]
    return [*wrap(title, width), *wrap(value, width, "strong", first="  ", rest="  ")]


def received_answers(job: Job, row: Row, width: int) -> list[Line]:
    """The relief that was on the tool, flute by flute."""
    return _reliefs("Relief found", received_reliefs(job), width)


def _reliefs(title: str, found: Iterable[Relief], width: int) -> list[Line]:
    reliefs = list(found)
    if not reliefs:
        return []
    styles = list(dict.fromkeys(style for one in reliefs for style in one.angles))
    if not styles:
        return wrap(reliefs[0].trouble, width, "quiet")
    angles = [[show(one.angles[style], Kind.ANGLE) if style in one.angles else "-" for style in styles]
              for one in reliefs]  # fmt: skip
    rows = [(_flute(one.flute, len(reliefs)), *cells) for one, cells in zip(reliefs, angles, strict=True)]
    return [line(Piece(title, "strong")), *table(("", *styles), rows, gap=" ")]


def _flute(number: int, count: int) -> str:
    return f"flute {number}" if count > 1 else "tool"


def wanted_answers(job: Job, row: Row, width: int) -> list[Line]:
    """What the book has for the value in hand and where from; then every setting that follows."""
    one = job.card.wanted.get(row.key)
    lines: list[Line] = []
    if one is not None and one.book:
        lines += _pair("In the book", one.book, width)
        lines += wrap(f"Source: {one.source}", width, "quiet") if one.source else []
    elif row.key:
        lines += wrap("The book has no value for it.", width, "quiet")
    return [*lines, EMPTY, *_all_settings(job, width)]


def _all_settings(job: Job, width: int) -> list[Line]:
    found = setting_lines(job, job.display)
    if not found:
        return []
    told = [one for setting in found for one in _pair(setting.title, setting.value, width)]
    return [line(Piece("What follows", "strong")), *told]


def settings_answers(job: Job, row: Row, width: int) -> list[Line]:
    """The worksheet in hand: what stops, what is set, what the dial reads on the way, what else comes out."""
    step = job.step(row.key) if row.key else None
    if step is None or step.skipped:
        return []
    checks = _checks(job, step, width)
    bad = [one for state in _WORST_FIRST[:2] for one in checks[state]]
    result = step.answer.result
    if result is None:
        return [*bad, *_troubles(step, width)]
    lines = [setting for setting in setting_lines(job, job.display) if setting.sheet == step.sheet.name]
    parts = (
        bad,
        [one for setting in lines for one in _setting(setting, width)],
        _stations(job, result, width),
        output_lines(step.answer, _without(result, {one.key for one in lines}), job.display, width),
        _rows(job, result, width),
        checks["pass"],
        _recorded(job, step, width),
    )
    return [one for part in parts if part for one in (*part, EMPTY)]


def _checks(job: Job, step: Step, width: int) -> dict[str, list[Line]]:
    found: dict[str, list[Line]] = {state: [] for state in _WORST_FIRST}
    for check in step.checks:
        word = STATE_WORDS[check.state]
        first, *rest = wrap(f"{word} {say(check.sentence, job.display)}", width)
        text = first[0].text.removeprefix(word)
        found[check.state] += [line(Piece(word, check.state), text), *rest]
    return found


def _troubles(step: Step, width: int) -> list[Line]:
    """What is wrong, then what is still wanted, alternatives together."""
    lines = [
        one
        for trouble in step.answer.troubles
        if not trouble.missing
        for one in wrap(trouble.text, width, "watch")
    ]
    missing = {trouble.key for trouble in step.answer.troubles if trouble.missing}
    groups: dict[str, list[str]] = {}
    wanted = {field.one_of for field in step.answer.fields if field.key in missing} - {""}
    for field in step.answer.fields:
        if field.key in missing or field.one_of in wanted:
            groups.setdefault(field.one_of or field.key, []).append(quantity(field.key).title.lower())
    if groups:
        names = ", ".join(" or ".join(group) for group in groups.values())
        lines += wrap(f"The answer stands here as soon as you have given: {names}.", width, "quiet")
    return lines


def _setting(setting: SettingLine, width: int) -> list[Line]:
    lines = _pair(setting.title, setting.value, width)
    for text in (setting.dial, setting.cost):
        lines += wrap(text, width, first="  ", rest="  ") if text else []
    return lines


def _without(result: Result, keys: Collection[str]) -> Result:
    """The result without what stands among the settings already."""
    return replace(result, outputs={key: value for key, value in result.outputs.items() if key not in keys})


def _stations(job: Job, result: Result, width: int) -> list[Line]:
    """The dial from edge to heel, in divisions too where the machine names the dial; without them where it is narrow."""
    if not result.stations:
        return []
    with_divisions = _station_table(job, result.stations, divisions=True)
    return (
        with_divisions
        if widest(with_divisions) <= width
        else _station_table(job, result.stations, divisions=False)
    )


def _station_table(job: Job, stations: Iterable[Station], *, divisions: bool) -> list[Line]:
    stations = list(stations)
    keys = list(stations[0].readings)
    dials = {key: job.machine.reading_dial(key) if job.machine and divisions else None for key in keys}
    heading = ["", "turned"]
    for key in keys:
        dial = dials[key]
        heading += [
            quantity(key).title.lower(),
            *([f"x{''.join(dial.division.text.split())}"] if dial else []),
        ]
    rows = []
    for station in stations:
        cells = [SHARES.get(station.fraction, f"{station.fraction:.2f}"), show(station.angle, Kind.ANGLE)]
        for key in keys:
            value = station.readings[key]
            cells.append(show(value, quantity(key).kind, job.display))
            count = in_divisions(job.machine, key, value) if job.machine and dials[key] else None
            cells += [] if count is None else [f"{count + 0.0:.1f}"]
        rows.append(cells)
    return table(heading, rows, gap=" ")


def _rows(job: Job, result: Result, width: int) -> list[Line]:
    """The table of an answer, one number below the other, for a table is wider than this column."""
    lines: list[Line] = []
    for row in result.rows:
        lines += wrap(row.label, width, "strong")
        for key, value in row.values.items():
            lines += _pair(
                f"  {quantity(key).title.lower()}", show(value, quantity(key).kind, job.display), width
            )
    return lines


def _recorded(job: Job, step: Step, width: int) -> list[Line]:
    lines: list[Line] = []
    for sheet, key, was, now in differs(job):
        if sheet == step.sheet.name:
            said = f"The record of that day has {quantity(key).title.lower()} {was}; today it comes out as {now or 'nothing'}."
            lines += wrap(said, width, "watch")
    return lines


def after_answers(job: Job, row: Row, width: int) -> list[Line]:
    """Pass or fail for each flute with the spread between them; then the relief that is on the tool now."""
    lines: list[Line] = []
    for verdict in verdicts(job):
        if verdict.marks:
            lines += [*_verdict(job, verdict, width), EMPTY]
    return [*lines, *_reliefs("Relief now", reliefs_after(job), width)]


def _verdict(job: Job, verdict: Verdict, width: int) -> list[Line]:
    kind = quantity(verdict.key).kind
    title = "Drop at the heel" if verdict.key == "drop" else quantity(verdict.key).title
    wanted = show(verdict.wanted, kind, job.display) if verdict.wanted is not None else "nobody said"
    lines = [line(Piece(title, "strong")), *_pair("  shall be", wanted, width)]
    if verdict.allowed is not None and verdict.wanted is not None:
        low, high = verdict.wanted - verdict.allowed.minus, verdict.wanted + verdict.allowed.plus
        between = f"{show(low, kind, job.display)} to {show(high, kind, job.display)}"
        lines += _pair("  may be", between, width)
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
        lines += _pair("  spread", show(verdict.spread, kind, job.display), width)
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
            else "Everything adds up: Ctrl+F closes the card."
        )
        lines += wrap(said, width, "strong")
        for one in wrong:
            lines += wrap(one.text, width, "watch", first="! ", rest="  ")
    left = sharpenings_left(job)
    if left is not None:
        lines += [EMPTY, *_pair("Sharpenings left", str(left), width)]
    learned = lessons(job.card)
    if learned:
        lines += [EMPTY, *wrap("Learned on this job; Ctrl+T puts it into the book:", width)]
        for lesson in learned:
            title = quantity(lesson.key).title if lesson.key in QUANTITIES else lesson.key
            lines += _pair(f"  {title}", lesson.value, width)
    return lines


ANSWERS = (tool_answers, received_answers, wanted_answers, settings_answers, after_answers, end_answers)
"""What stands beside each step, in the order of the steps."""
