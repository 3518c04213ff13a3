"""The answer of a calculation as lines: outputs, indicator readings, tables and checks."""

from __future__ import annotations

import math
from collections.abc import Sequence

from geometry.calculation import Result
from geometry.edge.asked import RELIEF_KEYS
from geometry.quantities import quantity
from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.calc.answer import Answer, off_by
from library.calc.surfaces import RELIEF, title_of
from library.calc.wording import STATIONS
from library.units.show import say, show, show_answer
from library.units.system import Display
from tui.view.lines import Line, Piece, fit, line, spread_out, width_of, wrap
from tui.view.table import table

STATE_WORDS = {"pass": "PASS", "watch": "WATCH", "stop": "STOP", "note": ""}
READABLE = 100
"""Cells of a sentence above which the eye loses its line."""

_WORST_FIRST = ("stop", "watch", "pass", "note")


def output_lines(answer: Answer, result: Result, display: Display, width: int) -> list[Line]:
    """Each answered quantity with its value, and how far it may be off where that is known.

    A relief in the view in which it is given is told once.
    """
    lines: list[Line] = []
    for key, value in result.outputs.items():
        if _is_told(key, value, answer, result):
            continue
        row = quantity(key)
        spread = answer.spreads.get(key)
        said = show_answer(value, row, display)
        *above, name = wrap(title_of(key, answer.surface), max(width - len(said) - 1, 12))
        lines += [*above, spread_out(name, line(Piece(said, "strong")), width)]
        if spread is not None and spread.dominant:
            lines.append(line(Piece(fit(off_by(row.kind, spread, display), width, right=True), "quiet")))
    return lines


def _is_told(key: str, value: float, answer: Answer, result: Result) -> bool:
    """Whether an output only repeats the relief of the surface, which is given or answered in the same view."""
    surface = SURFACES.get(answer.surface)
    if surface is None or key != RELIEF_KEYS[surface.view]:
        return False
    given = answer.inputs.get(RELIEF)
    relief = result.outputs.get(RELIEF, given.value if given is not None else None)
    return isinstance(relief, float) and math.isclose(relief, value, abs_tol=1e-9)


def station_lines(result: Result, display: Display, width: int | None = None) -> list[Line]:
    """The indicator readings at the edge, on the way, and at the heel; within ``width`` where one is given."""
    if not result.stations:
        return []
    keys = list(result.stations[0].readings)
    heading = ("", "turned", *(quantity(key).title.lower() for key in keys))
    rows = [
        (
            STATIONS.get(station.fraction, f"{station.fraction:.2f}"),
            show(station.angle, Kind.ANGLE, display),
            *(show(station.readings[key], quantity(key).kind, display) for key in keys),
        )
        for station in result.stations
    ]
    return table(heading, rows, width=width)


def row_lines(result: Result, display: Display, width: int | None = None) -> list[Line]:
    """The table of an answer that has one; within ``width`` where one is given."""
    if not result.rows:
        return []
    keys = list(dict.fromkeys(key for row in result.rows for key in row.values))
    heading = ("", *(quantity(key).title.lower() for key in keys))
    rows = [
        (
            row.label,
            *(show(row.values[k], quantity(k).kind, display) if k in row.values else "" for k in keys),
        )
        for row in result.rows
    ]
    return table(heading, rows, width=width)


def check_lines(result: Result, display: Display, width: int) -> list[Line]:
    """What the numbers mean at the machine, the worst first, each with its state in a word."""
    lines: list[Line] = []
    width = min(width, READABLE)
    for check in sorted(result.checks, key=lambda one: _WORST_FIRST.index(one.state)):
        word = STATE_WORDS[check.state]
        first, *rest = wrap(say(check.sentence, display), width, first=" " * 6, rest=" " * 6)
        shown = first[0].text[6:]
        said = Piece(" " * (6 - len(word)) + shown)
        lines.append(line(said) if check.state == "note" else line(Piece(word, check.state), said))
        lines += rest
    return lines


def widest(lines: Sequence[Line]) -> int:
    """Cells that the widest of some lines takes."""
    return max(map(width_of, lines), default=0)
