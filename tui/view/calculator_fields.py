"""The fields of a calculation as lines: what was typed, what the book gave, what is still wanted."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.calculation import Field
from library.book.model import Value
from library.calc import ranges
from library.calc.surfaces import title_of
from library.calc.wording import spoken
from library.issue import Issue
from tui.view.form import Form
from tui.view.lines import Line, Piece, Role, fit, line, padded, wrap

_MARK = 7

TWO_COLUMNS = 76
"""From this width on the answer stands beside the fields, not under them."""

ROOMY = 110
"""From this width on names and values have more room."""

GAP = " │ "
"""Between the fields and the answer."""

_ORIGINS = {"given": "typed", "entry": "book", "default": "default"}
"""The word that says who gave a value; no colour has to."""

HANDED = "found"
"""The word for a value that another calculation found."""


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
    names = wrap(title_of(field.key, form.surface), parts.name, "strong" if in_hand else "plain")
    first = line(
        Piece("> " if in_hand else "  ", "strong"),
        *padded(names[0], parts.name),
        " ",
        *_value(form, field.key, parts.value, in_hand=in_hand),
        " ",
        _marked(mark(form, field)),
    )
    return [first, *(line("    ", *rest) for rest in names[1:])]


def issues_of(form: Form) -> tuple[Issue, ...]:
    """What is missing or wrong in the form so far."""
    return form.answer.issues if form.answer else ()


def _value(form: Form, key: str, width: int, *, in_hand: bool) -> Line:
    typed, value = form.line(key), form.value(key)
    said = value.text if value is not None else ""
    if form.is_choice(key):
        return line(Piece(fit(spoken(said), width), "chosen" if in_hand else "plain"))
    if typed.text:
        return typed.pieces(width) if in_hand else line(Piece(fit(typed.text, width), "typed"))
    offered = form.offer(key)
    if offered is not None and value is None:
        return _offered(offered, width, in_hand=in_hand)
    said = fit(said, width)
    return line(Piece(said[:1], "cursor"), said[1:]) if in_hand else line(said)


def mark(form: Form, field: Field) -> str:
    """What stands behind a field: where its value comes from, or whether one is wanted."""
    if any(one.key == field.key and not one.missing for one in issues_of(form)):
        return "fix"
    value = form.value(field.key)
    if form.is_handed(field.key):
        return HANDED
    if form.is_laid_out(field.key):
        return "machine"
    if value is not None:
        return _ORIGINS[value.origin]
    if field.key in form.needed():
        return "or this" if field.one_of and _is_second(form, field) else "needed"
    return "if any" if field.optional else ""


def _is_second(form: Form, field: Field) -> bool:
    group = [one.key for one in form.fields if one.one_of == field.one_of]
    return group.index(field.key) > 0


def _marked(word: str) -> Piece:
    """The word behind a field; one that wants something stands out."""
    roles: dict[str, Role] = {"fix": "watch", "needed": "strong", "or this": "strong"}
    return Piece(fit(word, _MARK), roles.get(word, "quiet"))


def _offered(value: Value, width: int, *, in_hand: bool) -> Line:
    """The range of the book in an open field."""
    said = f"book {ranges.said(value)}{f' {value.band}' if value.band else ''}"
    said = fit(said if len(said) <= width else ranges.said(value), width)
    return (
        line(Piece(said[:1], "cursor"), Piece(said[1:], "quiet")) if in_hand else line(Piece(said, "quiet"))
    )
