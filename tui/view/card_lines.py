"""The lines of a job card: a label and what stands there, and below it what the book says and what is wrong."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import zip_longest

from rich.cells import cell_len

from tui.keys import Keys, no_keys, with_keys
from tui.view.card_faults import Fault
from tui.view.card_form import CardForm
from tui.view.card_row import TO_FILL_IN, WANTS_INPUT, Row
from tui.view.lines import EMPTY, Line, Piece, Role, fit, line, padded, text_of, wrap

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


def row_lines(form: CardForm, row: Row, parts: Columns, keys: Keys = no_keys) -> list[Line]:
    """A line of the card with what belongs below it: what the book says, and what is wrong where it is not in hand."""
    in_hand = row.way == form.row.way
    if row.heading:
        lines = _heading(row, parts, in_hand=in_hand)
    elif row.wide:
        lines = _wide(form, row, parts, in_hand=in_hand)
    else:
        lines = _filled(form, row, parts, in_hand=in_hand)
    for text in row.below:
        lines += wrap(with_keys(text, keys), parts.lines, "quiet", first=" " * 5, rest=" " * 7)
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
    value, *more = _value(form, row, parts.value, in_hand=in_hand)
    first = line(_mark(in_hand), indent, *padded(label, parts.label - _indent(row)), " ", *value)
    names = (line("    ", indent, *one) for one in rest)
    room = _MARK + parts.label
    return [
        first,
        *(line(*padded(name, room), " ", *told) for name, told in zip_longest(names, more, fillvalue=EMPTY)),
    ]


def _value(form: CardForm, row: Row, width: int, *, in_hand: bool) -> list[Line]:
    """What stands in a line; out of hand it goes on below, in hand the part around the cursor is shown."""
    blank = TO_FILL_IN if row.is_missing and not form.card.done else ""
    if in_hand:
        return _in_hand(form, row, width, blank)
    if row.text:
        text = row.words(row.text) if row.choices or row.said else row.text
    else:
        text = (row.words(row.default) if row.choices else row.default) or blank
        if row.giver and not row.choices:
            text = f"{row.default}  ({row.giver})"
    role: Role = "typed" if row.text else "quiet"
    if cell_len(text) <= width:
        return [line(Piece(fit(text, width), role))]
    return wrap(text, width, role)


def _in_hand(form: CardForm, row: Row, width: int, blank: str) -> list[Line]:
    text = form.in_hand.text
    if row.choices:
        return wrap(row.words(text) or row.words(row.default) or blank, width, "chosen")
    if text:
        return [form.drawn.pieces(width)]
    said = f"{row.default}  ({row.giver})" if row.giver else row.default or blank
    first, *more = wrap(said, width) if cell_len(said) > width else [line(Piece(fit(said, width), "plain"))]
    shown = text_of(first)
    return [line(Piece(shown[:1], "cursor"), shown[1:]), *more]


def told(row: Row, faults: Sequence[Fault]) -> str:
    """The first fault of a line, without the name that the line has already, and what more is said of it, by its verdict."""
    text = faults[0].text.removeprefix(f"{row.label.strip()}: ")
    counts = Counter(one.state for one in faults[1:])
    more = " and ".join(f"{counts[state]} {state.upper()}" for state in ("stop", "watch") if counts[state])
    return f"{text} (also {more} in this line)" if more else text


def _mark(in_hand: bool) -> Piece:
    return Piece("> " if in_hand else "  ", "strong")


def _indent(row: Row) -> int:
    return len(row.label) - len(row.label.lstrip())
