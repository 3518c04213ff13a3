"""The fields of a calculation as lines: what was typed, what the book gave, what is still wanted."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import zip_longest

from rich.cells import cell_len

from geometry.calculation import Field
from library.book.model import Value
from library.calc import ranges
from library.calc.field_titles import title_in
from library.calc.in_units import in_units, in_units_of
from library.calc.inputs import Input
from library.calc.wording import spoken
from library.issue import Issue
from tui.view.form import Form
from tui.view.lines import EMPTY, Line, Piece, Role, fit, line, padded, text_of, width_of, wrap

_MARK = 7

TWO_COLUMNS = 76
"""From this width on the answer stands beside the fields, not under them."""

ROOMY = 110
"""From this width on names and values have more room."""

GAP = " │ "
"""Between the fields and the answer."""

_ORIGINS = {"given": "typed", "entry": "book", "default": "default"}
"""The word that says who gave a value; no colour has to."""

OF_A_NAME = "thread"
"""The word for a value that the name of a thread says, typed where its diameter stands."""

MOST_LINES = 3
"""Lines that a value takes at most."""


@dataclass(frozen=True)
class Columns:
    """How wide the parts of the page are.

    Attributes:
        name: of a field.
        value: of a field.
        answer: what stands at the right of the fields, or under them.
        beside: whether it stands at the right.
    """

    name: int
    value: int
    answer: int
    beside: bool

    @property
    def fields(self) -> int:
        """The whole column of fields: a mark, the name, the value, and who gave it."""
        return 2 + self.name + 1 + self.value + 1 + _MARK


def columns(width: int) -> Columns:
    """The parts of the page for a screen so wide.

    Example:
        >>> columns(80).fields, columns(80).answer, columns(60).beside
        (44, 33, False)
    """
    if width < TWO_COLUMNS:
        return Columns(22, 14, width, beside=False)
    name, value = (30, 22) if width >= ROOMY else (21, 12)
    fields = 2 + name + 1 + value + 1 + _MARK
    return Columns(name, value, min(width - fields - len(GAP), 50), beside=True)


def field_lines(form: Form, field: Field, parts: Columns, *, live: bool = True) -> list[Line]:
    """A field; a name too long for its column goes on in the next line.

    Args:
        form: what is filled in.
        field: one of its fields.
        parts: how wide name and value are.
        live: whether it can be typed into here, so that one of the fields is in hand.
    """
    in_hand = live and field.key == form.focus
    names = wrap(
        title_in(form.sheet, field.key, form.surface),
        parts.name,
        "strong" if in_hand else "plain",
    )
    word = mark(form, field)
    value = _value(form, field.key, parts.value, parts.value + _MARK - len(word), in_hand=in_hand)
    over = max(width_of(value[0]) - parts.value, 0)
    first = line(
        Piece("> " if in_hand else "  ", "strong"),
        *padded(names[0], parts.name),
        " ",
        *value[0],
        " ",
        _marked(word, _MARK - over),
    )
    more = zip_longest(names[1:], value[1:], fillvalue=EMPTY)
    return [
        first,
        *(
            line("    ", *padded(name, parts.name - 2), " ", *rest) if rest else line("    ", *name)
            for name, rest in more
        ),
    ]


def issues_of(form: Form) -> tuple[Issue, ...]:
    """What is missing or wrong in the form so far."""
    return form.answer.issues if form.answer else ()


def _value(form: Form, key: str, width: int, most: int, *, in_hand: bool) -> list[Line]:
    """What a field holds, in its column; what is too long goes on below, unless the rest of the line has room for it."""
    typed, value = form.line(key), form.value(key)
    said = _said(form, value) if value is not None else ""
    if form.is_choice(key):
        return _told(spoken(said), width, most, "chosen" if in_hand else "plain")
    if typed.text:
        return [form.drawn.pieces(width)] if in_hand else _told(typed.text, width, most, "typed")
    offered = form.offer(key)
    if offered is not None and value is None:
        return [_offered(in_units(offered, form.display), width, most, in_hand=in_hand)]
    if form.is_nominal(key):
        return [_faint(f"nominal {form.nominal[key]}", width, most, in_hand=in_hand)]
    if in_hand:
        said = fit(said, width)
        return [line(Piece(said[:1], "cursor"), said[1:])]
    return _told(said, width, most, "plain")


def _said(form: Form, value: Input) -> str:
    """A value as it stands in its field; what the book gave, in the unit that is worked in."""
    return in_units_of(value.key, value.text, form.display) if value.origin == "entry" else value.text


def _told(text: str, width: int, most: int, role: Role) -> list[Line]:
    room = cell_len(text)
    if room <= most:
        return [line(Piece(fit(text, max(width, room)), role))]
    lines = [padded(one, width) for part in _parts(text, width) for one in wrap(part, width, role)]
    if len(lines) > MOST_LINES:
        rest = " ".join(text_of(one).strip() for one in lines[MOST_LINES - 1 :])
        lines = [*lines[: MOST_LINES - 1], line(Piece(fit(rest, width), role))]
    return lines


def _parts(text: str, width: int) -> list[str]:
    """A list of values in parts of whole ones; a unit that all of them have stands behind the last one alone."""
    values = text.split(", ")
    units = {one.rpartition(" ")[2] for one in values}
    if len(units) == 1 and all(" " in one for one in values):
        values = [*(one.rpartition(" ")[0] for one in values[:-1]), values[-1]]
    parts: list[str] = []
    for one in ",\n".join(values).split("\n"):
        if parts and cell_len(f"{parts[-1]} {one}") <= width:
            parts[-1] += f" {one}"
        else:
            parts.append(one)
    return parts


def mark(form: Form, field: Field) -> str:
    """What stands behind a field: where its value comes from, or whether one is wanted."""
    if any(one.key == field.key and not one.missing for one in issues_of(form)):
        return "fix"
    value = form.value(field.key)
    if value is not None and (whose := form.whose(field.key)):
        return whose
    if value is not None:
        # What nobody typed there and is given all the same is of the thread that was named.
        is_of_thread = value.origin == "given" and not form.line(field.key).text.strip()
        return OF_A_NAME if is_of_thread else _ORIGINS[value.origin]
    if field.key in form.needed():
        return "needed" if form.leads(field.key) else "or this"
    return "if any" if field.optional else ""


def _marked(word: str, width: int) -> Piece:
    """The word behind a field; one that wants something stands out."""
    roles: dict[str, Role] = {"fix": "watch", "needed": "strong", "or this": "strong"}
    return Piece(fit(word, width), roles.get(word, "quiet"))


def _offered(value: Value, width: int, most: int, *, in_hand: bool) -> Line:
    """The range of the book in an open field."""
    whole = f"book {ranges.said(value)}{f' {value.band}' if value.band else ''}"
    return _faint(whole if len(whole) <= width else ranges.said(value), width, most, in_hand=in_hand)


def _faint(said: str, width: int, most: int, *, in_hand: bool) -> Line:
    """What is told in an open field and does not fill it."""
    said = fit(said, max(width, len(said)) if len(said) <= most else width)
    return (
        line(Piece(said[:1], "cursor"), Piece(said[1:], "quiet")) if in_hand else line(Piece(said, "quiet"))
    )
