"""What a calculation means, told before any number: the worst first; or what is still to be given or put right."""

from __future__ import annotations

from dataclasses import dataclass

from library.calc.answer import Answer
from library.calc.field_titles import name_in
from library.calc.wording import by_title
from library.pages.answer import checks, wanted
from library.units.system import Display
from tui.view.lines import Line, Piece, Role, filled, fit, line, text_of, wrap

LINES, FEW_LINES = 3, 2
"""Lines for what is told first, on a screen of usual width and where more words find room in one."""

WIDE = 100
"""Columns from which a verdict takes fewer lines."""

_ROLES: dict[str, Role] = {"stop": "stop", "watch": "watch", "pass": "pass"}

_HANG = len(" WATCH  ")


@dataclass(frozen=True)
class Verdict:
    """What is told first.

    Attributes:
        lines: as many as were asked for, however little there is to tell, so that nothing below them moves.
        rest: the states and sentences for which there was no room, the worst first.
    """

    lines: list[Line]
    rest: tuple[tuple[str, str], ...] = ()

    @property
    def more(self) -> str:
        """What is worse than a remark in the rest, in words; empty where nothing is."""
        found = [state for state, _ in self.rest if state in {"stop", "watch", "fix"}]
        counted = [f"{found.count(state)} {state.upper()}" for state in dict.fromkeys(found)]
        return f"{' and '.join(counted)} below" if counted else ""


def lines_for(width: int) -> int:
    """How many lines a verdict takes on a screen so wide."""
    return FEW_LINES if width >= WIDE else LINES


def verdict(answer: Answer | None, display: Display, width: int, most: int, in_hand: str = "") -> Verdict:
    """What is told first, in exactly so many lines: the worst, and whatever else there is room for.

    Args:
        answer: of the calculation; nothing before the first one.
        display: the units of the sentences.
        width: in cells.
        most: lines.
        in_hand: the key of the field that is typed into, whose fault is told before those of the others.
    """
    said = _said(answer, display, in_hand) if answer is not None else []
    lines: list[Line] = []
    told = 0
    for state, text in said:
        own = _behind(state, text, width)
        if lines and len(lines) + len(own) > most:
            break
        if len(own) > most:
            lines = _cut(own, most, width)
            break
        lines += own
        told += 1
    return Verdict(filled(lines, most), tuple(said[told:]))


def _said(answer: Answer, display: Display, in_hand: str = "") -> list[tuple[str, str]]:
    """All there is to tell, the worst first; what is wrong comes before what is missing."""
    if answer.result is not None:
        found = checks(answer.result.checks, display)
        return list(found.as_verdict().checks) if found is not None else []
    called = {one.key: name_in(answer.sheet, one.key, answer.surface) for one in answer.sheet.inputs}
    faults = sorted((one for one in answer.issues if not one.missing), key=lambda one: one.key != in_hand)
    wrong = [("fix", by_title(one.text, called)) for one in faults]
    missing = wanted(answer)
    return wrong or ([("open", text) for text in missing.texts] if missing is not None else [])


def _behind(state: str, text: str, width: int) -> list[Line]:
    """A sentence behind its state; a note carries none."""
    word = "" if state == "note" else f" {state.upper()} "
    first, *more = wrap(text, max(width - _HANG, 12)) or [line("")]
    head = line(Piece(word, _ROLES.get(state, "strong")), " " * (_HANG - len(word)), *first)
    return [head, *(line(" " * _HANG, *one) for one in more)]


def _cut(lines: list[Line], most: int, width: int) -> list[Line]:
    """The beginning of a sentence that is told whole elsewhere."""
    last = text_of(lines[most - 1])
    if most == 1:
        return [(*lines[0][:2], Piece(f"{fit(last[_HANG:], max(width - _HANG - 1, 1)).rstrip()}…"))]
    return [*lines[: most - 1], line(f"{fit(last, width - 1).rstrip()}…")]
