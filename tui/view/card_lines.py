"""The lines of a job card: a label and what stands there, and below it what the book says and what is wrong."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tui.view.card_faults import Fault
from tui.view.card_form import CardForm
from tui.view.card_row import TO_FILL_IN, WANTS_INPUT, Row
from tui.view.lines import Line, Piece, Role, fit, line, padded, wrap

GAP = " │ "
TWO_COLUMNS = 76
"""Cells from which what follows stands beside the lines."""

_MARK = 2
_STATES: dict[str, Role] = {
    "ok": "pass",
    "WATCH": "watch",
    "STOP": "stop",
    "fix": "watch",
    WANTS_INPUT: "strong",
}


@dataclass(frozen=True)
class Columns:
    """How wide the parts of the page are.

    Attributes:
        label: of a line.
        value: of a line.
        answer: of what follows.
        beside: whether that stands beside the lines, and not under them.
    """

    label: int
    value: int
    answer: int
    beside: bool

    @property
    def lines(self) -> int:
        """The whole column of lines."""
        return _MARK + self.label + 1 + self.value


def columns(width: int) -> Columns:
    """The parts of the page for a screen so wide.

    Example:
        >>> columns(80).lines, columns(80).answer, columns(60).beside
        (47, 30, False)
    """
    if width < TWO_COLUMNS:
        return Columns(20, max(width - _MARK - 21, 8), width, beside=False)
    label, value = (26, 32) if width >= 110 else (20, 24)
    taken = _MARK + label + 1 + value + len(GAP)
    return Columns(label, value, min(width - taken, 60), beside=True)


def told_below(form: CardForm, row: Row, width: int) -> list[Line]:
    """What is wrong in a line that is not in hand; what only is on watch in a calculation says so by its word."""
    faults = [one for one in form.faults_at(row) if one.state == "stop" or not row.heading]
    return wrap(told(row, faults), width, "warn", first="   ! ", rest="     ") if faults else []


def row_lines(form: CardForm, row: Row, parts: Columns) -> list[Line]:
    """A line of the card with what belongs below it: what the book says, and what is wrong where it is not in hand."""
    in_hand = row.way == form.row.way
    if row.heading:
        lines = _heading(row, parts, in_hand=in_hand)
    elif row.wide:
        lines = _wide(form, row, parts, in_hand=in_hand)
    else:
        lines = _filled(form, row, parts, in_hand=in_hand)
    for text in row.below:
        lines += wrap(text, parts.lines, "quiet", first=" " * 5, rest=" " * 7)
    return lines if in_hand else [*lines, *told_below(form, row, parts.lines)]


def _heading(row: Row, parts: Columns, *, in_hand: bool) -> list[Line]:
    word = row.words(row.text) if row.text else row.default
    title = fit(row.label, parts.lines - _MARK - len(word) - 1)
    named = Piece(title, "strong" if in_hand else "plain")
    return [line(_mark(in_hand), named, " ", Piece(word, _STATES.get(word, "quiet")))]


def _wide(form: CardForm, row: Row, parts: Columns, *, in_hand: bool) -> list[Line]:
    """Free text over the whole width, under its label."""
    lines = [line("  ", row.label)] if row.label else []
    if in_hand:
        return [*lines, line(_mark(in_hand), *form.drawn.pieces(parts.lines - _MARK))]
    return [*lines, *wrap(row.text, parts.lines, "typed", first="    ", rest="    ")]


def _filled(form: CardForm, row: Row, parts: Columns, *, in_hand: bool) -> list[Line]:
    """A label and what stands there; a label too long for its column goes on in the next line."""
    label, *rest = wrap(row.label.strip(), parts.label - _indent(row), "strong" if in_hand else "plain")
    indent = " " * _indent(row)
    value = _value(form, row, parts.value, in_hand=in_hand)
    first = line(_mark(in_hand), indent, *padded(label, parts.label - _indent(row)), " ", *value)
    return [first, *(line("    ", indent, *one) for one in rest)]


def _value(form: CardForm, row: Row, width: int, *, in_hand: bool) -> Line:
    text = form.in_hand.text if in_hand else row.text
    blank = TO_FILL_IN if row.wants and not form.card.done else ""
    if row.choices:
        said = fit(row.words(text) or row.words(row.default) or blank, width)
        return line(Piece(said, "chosen" if in_hand else "typed" if text else "quiet"))
    if row.said and not in_hand:
        return line(Piece(fit(row.words(text), width), "typed"))
    if text:
        return form.drawn.pieces(width) if in_hand else line(Piece(fit(text, width), "typed"))
    said = fit(f"{row.default}  ({row.giver})" if row.giver else row.default or blank, width)
    return line(Piece(said[:1], "cursor"), said[1:]) if in_hand else line(Piece(said, "quiet"))


def told(row: Row, faults: Sequence[Fault]) -> str:
    """The first fault of a line, without the name that the line has already, and how many more there are."""
    text = faults[0].text.removeprefix(f"{row.label.strip()}: ")
    return f"{text} (and {len(faults) - 1} more)" if len(faults) > 1 else text


def _mark(in_hand: bool) -> Piece:
    return Piece("> " if in_hand else "  ", "strong")


def _indent(row: Row) -> int:
    return len(row.label) - len(row.label.lstrip())
