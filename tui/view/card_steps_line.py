"""The line of the steps of a card: their names, a sign at each fault, and the worst of the step in hand as far as there is room."""

from __future__ import annotations

import re

from rich.cells import cell_len

from geometry.quantities import QUANTITIES
from library.cards.cams import ByCam, show_angle
from library.cards.job import Job
from tui.view.card_faults import Fault, worst
from tui.view.card_form import CardForm
from tui.view.card_steps import STEPS
from tui.view.lines import Line, Piece, fit, line, padded, width_of

LEAST_WORST = 12
"""Cells below which the worst of a step gives way on the line of the steps."""

_CLAUSE_ENDS = re.compile(r"[;.:](?= )|,(?= such as )")
"""Where a sentence may end on the line of the steps, which has it in short."""


def steps_line(form: CardForm, width: int) -> Line:
    """The steps by name, the one in hand marked, with a sign at each fault; at the right the worst of this step.

    Args:
        form: the card being filled in.
        width: in cells.
    """
    wrong = form.fault_steps()
    pieces: list[Piece] = []
    for number, step in enumerate(STEPS):
        here = number == form.step
        said = step.title
        pieces += [Piece("[" if here else " ", "strong"), Piece(said, "head" if here else "quiet")]
        state = wrong.get(number)
        pieces.append(Piece("!" if state else "", "stop" if state == "stop" else "watch"))
        pieces.append(Piece("]" if here else " ", "strong"))
    steps = tuple(one for one in pieces if one.text)
    return padded((*steps, *_worst(form, width - width_of(steps) - 2)), width)


def _worst(form: CardForm, room: int) -> Line:
    """The worst of the step in hand, or how many of its lines still want something, as far as there is room."""
    wants = sum(row.is_missing for row in form.rows) if not form.card.done else 0
    fault = worst(form.faults_here())
    if room < LEAST_WORST:
        return ()
    if fault is None:
        return line("  ", Piece(f"{wants} to fill in", "quiet")) if wants else ()
    word = fault.state.upper()
    name = QUANTITIES[key].title if (key := fault.way.rpartition(".")[2]) in QUANTITIES else ""
    said = _as_fits(_in_short(fault, form.job), name, max(room - len(word) - 2, 0))
    return line("  ", Piece(word, fault.state), f"  {said}")


def _is_of_it(text: str, cam: ByCam) -> bool:
    """Whether a text is on what a cam gives in place of what is wanted; on several shoulders it tells more than that."""
    wanted = show_angle(cam.wanted)
    return show_angle(cam.given) in text and any(
        one in text for one in (f"{wanted} wanted", f"{wanted} was wanted")
    )


def _as_fits(text: str, name: str, room: int) -> str:
    """As much of what is wrong as there is room for: all, else whole clauses, else those without the name of their line.

    Args:
        text: what is wrong.
        name: of the line, with which it may begin.
        room: in cells.

    Example:
        >>> _as_fits("Land width: '7,98' has a comma; write 7.98.", "Land width", 30)
        "Land width: '7,98' has a comma"
        >>> _as_fits("Indicator drop: 'abc' does not begin with a number, such as 3.2 mm.", "Indicator drop", 35)
        "'abc' does not begin with a number"
        >>> _as_fits("Rotational speed is 1000000 rpm; it can be from 0 rpm to 200000 rpm.", "Rotational speed", 26)
        'Rotational speed is …'
        >>> _as_fits("Diameter: It is 0.000 mm; it can be from 0.050 mm to 500.00 mm.", "Diameter", 24)
        'Diameter is 0.000 mm'
    """
    head, _, told = text.partition(": ")
    if told.startswith("It "):
        # Without the name before it nobody would know what it is.
        text, told = f"{head} {told.removeprefix('It ')}", ""
    is_named = bool(name and told) and head.startswith(name)
    for one in (text, told) if is_named else (text,):
        ends = [found.start() for found in _CLAUSE_ENDS.finditer(one)]
        fitting = [end for end in (*ends, len(one)) if cell_len(one[:end]) <= room]
        if fitting and not (is_named and one is text and fitting[-1] == len(head)):
            return one[: fitting[-1]]
    return fit(told if is_named else text, room).rstrip()


def _in_short(fault: Fault, job: Job) -> str:
    """A fault in the words that do on the line of the steps."""
    cam = job.by_cam
    if fault.state == "watch" and cam is not None and cam.differs and _is_of_it(fault.text, cam):
        return f"cam {cam.throw} gives {show_angle(cam.given)}, {show_angle(cam.wanted)} wanted"
    step = job.step(fault.way.split(".")[1]) if fault.way.startswith("settings.") else None
    return fault.text.removeprefix(f"{step.sheet.title}: ") if step is not None else fault.text
