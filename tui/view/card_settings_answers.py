"""What follows from the calculation in hand of a job card: what stops, what is set, what the indicator reads on the way."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import replace

from geometry.calculation import Result, Station
from geometry.quantities import quantity
from geometry.sentences import Kind
from library.calc.wording import STATIONS
from library.cards.finishing import differs
from library.cards.found_relief import told
from library.cards.job import Job, Step
from library.cards.settings_lines import SettingLine, setting_lines
from library.equipment.settings import in_divisions
from library.units.show import say, show
from tui.view.answer_lines import STATE_WORDS, output_lines, widest
from tui.view.card_pair import pair
from tui.view.card_row import Row
from tui.view.lines import EMPTY, Line, Piece, line, wrap
from tui.view.table import table

AT_THE_HEEL = frozenset({"heel_drop", "drop", "radial_drop", "square_drop", "axial_drop"})
"""What the indicator reads at the heel, by where it points."""

_WORST_FIRST = ("stop", "watch", "pass", "note")


def settings_answers(job: Job, row: Row, width: int) -> list[Line]:
    """The calculation in hand: the verdict, the heel, what is set, what is read on the way, what else comes out.

    Verdict and heel come first, so that they are in sight on a small screen without turning a page.
    """
    step = job.step(row.key) if row.key else None
    if step is None or step.skipped:
        return []
    checks = _checks(job, step, width)
    bad = [one for state in _WORST_FIRST[:2] for one in checks[state]]
    result = step.answer.result
    if result is None:
        return [*bad, *_troubles(step, width)]
    lines = [setting for setting in setting_lines(job, job.display) if setting.sheet == step.sheet.name]
    heel = {key: value for key, value in result.outputs.items() if key in AT_THE_HEEL}
    shown = {*heel, *(one.key for one in lines)}
    parts = (
        [*(bad or checks["pass"]), *_counted(job, step, width)],
        output_lines(step.answer, replace(result, outputs=heel), job.display, width),
        [one for setting in lines for one in _setting(setting, width)],
        _stations(job, result, width),
        output_lines(step.answer, _without(result, shown), job.display, width),
        (checks["pass"] if bad else []) + checks["note"],
        _rows(job, result, width),
        _recorded(job, step, width),
    )
    return [one for part in parts if part for one in (*part, EMPTY)]


def _checks(job: Job, step: Step, width: int) -> dict[str, list[Line]]:
    found: dict[str, list[Line]] = {state: [] for state in _WORST_FIRST}
    for check in step.checks:
        if step.relief is not None and check == told(step.relief):
            continue
        word = STATE_WORDS[check.state]
        first, *rest = wrap(f"{word} {say(check.sentence, job.display)}".strip(), width)
        text = first[0].text.removeprefix(word)
        begun = first if check.state == "note" else line(Piece(word, check.state), text)
        found[check.state] += [begun, *rest]
    return found


def _counted(job: Job, step: Step, width: int) -> list[Line]:
    """Which relief is counted with, where it is what chosen cams give and not what is wanted."""
    if step.relief is None:
        return []
    return wrap(say(told(step.relief).sentence, job.display), width)


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
    lines = pair(setting.title, setting.value, width)
    for text in (setting.graduation, setting.cost):
        lines += wrap(text, width, first="  ", rest="  ") if text else []
    return lines


def _without(result: Result, keys: Collection[str]) -> Result:
    """The result without what stands among the settings already."""
    return replace(result, outputs={key: value for key, value in result.outputs.items() if key not in keys})


def _stations(job: Job, result: Result, width: int) -> list[Line]:
    """The graduation from edge to heel, in divisions too where the machine names the graduation and there is room for them."""
    if not result.stations:
        return []
    with_divisions = _station_table(job, result.stations, None, divisions=True)
    if widest(with_divisions) <= width:
        return with_divisions
    return _station_table(job, result.stations, width, divisions=False)


def _station_table(
    job: Job, stations: Iterable[Station], width: int | None, *, divisions: bool
) -> list[Line]:
    stations = list(stations)
    keys = list(stations[0].readings)
    graduations = {
        key: job.machine.reading_graduation(key) if job.machine and divisions else None for key in keys
    }
    heading = ["", "turned"]
    for key in keys:
        graduation = graduations[key]
        heading += [
            quantity(key).title.lower(),
            *([f"x{''.join(graduation.division.text.split())}"] if graduation else []),
        ]
    rows = []
    for station in stations:
        cells = [STATIONS.get(station.fraction, f"{station.fraction:.2f}"), show(station.angle, Kind.ANGLE)]
        for key in keys:
            value = station.readings[key]
            cells.append(show(value, quantity(key).kind, job.display))
            count = in_divisions(job.machine, key, value) if job.machine and graduations[key] else None
            cells += [] if count is None else [f"{count + 0.0:.1f}"]
        rows.append(cells)
    return table(heading, rows, gap=" ", width=width)


def _rows(job: Job, result: Result, width: int) -> list[Line]:
    """The table of an answer, one number below the other, for a table is wider than this column."""
    lines: list[Line] = []
    for row in result.rows:
        lines += wrap(row.label, width, "strong")
        for key, value in row.values.items():
            said = show(value, quantity(key).kind, job.display)
            lines += pair(f"  {quantity(key).title.lower()}", said, width)
    return lines


def _recorded(job: Job, step: Step, width: int) -> list[Line]:
    lines: list[Line] = []
    for sheet, key, was, now in differs(job):
        if sheet == step.sheet.name:
            said = f"The record of that day has {quantity(key).title.lower()} {was}; today it comes out as {now or 'nothing'}."
            lines += wrap(said, width, "watch")
    return lines
