"""The calculator as a page: fields at the left, answer at the right, checks below, cautions always in sight."""

from __future__ import annotations

import re
from dataclasses import dataclass

from geometry.calculation import Field
from geometry.quantities import QUANTITIES
from library.book.model import Book, Value
from library.calc import ranges
from library.calc.inputs import shown
from library.calc.ranges import ends_of
from library.calc.surfaces import row_of, title_of
from library.calc.wording import in_one_paragraph
from library.issue import Issue
from library.pages.answer import checks, outputs, rows, stations, wanted
from library.pages.cautions import at_arms_length
from library.units.system import Display
from tui.figure.alphabet import ASCII, Alphabet
from tui.view.figure_page import NUMBERS, column_width, figure_column, large_figures
from tui.view.form import Form
from tui.view.lines import (
    EMPTY,
    Line,
    Piece,
    Role,
    beside,
    filled,
    fit,
    line,
    padded,
    rule,
    text_of,
    width_of,
    wrap,
)
from tui.view.page_lines import block_lines, part_lines
from tui.view.viewport import Viewport

_MARK = 7
_KEY = re.compile(r"\b[a-z]+(?:_[a-z]+)+\b")
TWO_COLUMNS = 76
"""From this width on the answer stands beside the fields, not under them."""

GAP = " │ "
"""Between the fields and the answer."""

_ORIGINS = {"given": "typed", "entry": "book", "default": "default"}
"""The word that says who gave a value; no colour has to."""


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
        (47, 30, False)
    """
    if width < TWO_COLUMNS:
        return Columns(22, 14, width, beside=False)
    name, value = (30, 22) if width >= 110 else (22, 14)
    fields = 2 + name + 1 + value + 1 + _MARK
    return Columns(name, value, min(width - fields - len(GAP), 50), beside=True)


class CalculatorPage:
    """What the calculator shows of a form, and which part of it is in sight."""

    def __init__(
        self, form: Form, alphabet: Alphabet = ASCII, book: Book | None = None, full: str = "F4 in full"
    ) -> None:
        """Make a page.

        Args:
            form: what it shows.
            alphabet: of the drawings.
            book: has the sources.
            full: where the cautions stand in full.
        """
        self.form = form
        self.full = full
        self.alphabet = alphabet
        self.book = book
        self.view = Viewport()

    def draw(self, display: Display, width: int, height: int, *, large: bool = False) -> list[Line]:
        """The page, exactly ``height`` lines.

        Args:
            display: the units.
            width: in cells.
            height: in lines.
            large: whether the drawings stand large in place of the numbers.
        """
        foot = self._foot(display, width, height)
        room = height - len(foot) - 1
        if large:
            return [*self._large(display, width, room), rule(width), *foot]
        aside = column_width(width, len(GAP))
        numbers = width - aside - len(GAP) if aside else width
        body = self._body(display, numbers)
        self.view.refit(len(body), room)
        shown = filled(body[self.view.top :], room)
        if aside:
            drawn = figure_column(self.form, display, aside, room, self.alphabet)
            shown = beside(shown, drawn, numbers, GAP)
        return [*shown, _edge(body[self.view.top + room :], width), *foot]

    def _large(self, display: Display, width: int, room: int) -> list[Line]:
        field = next(one for one in self.form.fields if one.key == self.form.focus)
        in_hand = self._field(field, columns(min(width, NUMBERS)))[0]
        waiting = [*self._wanted(width), *self._troubles(width)]
        return large_figures(in_hand, waiting, self.form, display, width, room, self.alphabet)

    def scroll_to_field(self) -> None:
        """Bring the field in hand into sight."""
        keys = [field.key for field in self.form.fields]
        self.view.choose(keys.index(self.form.focus) if self.form.focus in keys else 0)

    def _body(self, display: Display, width: int) -> list[Line]:
        parts = columns(width)
        fields = [one for field in self.form.fields for one in self._field(field, parts)]
        answer = self.form.answer
        if answer is None or answer.result is None:
            return _joined(fields, self._wanted(parts.answer), parts) + self._troubles(width)
        result = answer.result
        on_the_way = (stations(result.stations, display),)
        beside_fields = (outputs(answer, result.outputs, display),)
        read = part_lines([on_the_way], parts.answer)
        if EMPTY not in read and max(map(width_of, read), default=0) <= parts.answer:
            # One table, not several.
            right, below = part_lines([beside_fields, on_the_way], parts.answer), [(rows(result, display),)]
        else:
            right, below = part_lines([beside_fields], parts.answer), [on_the_way, (rows(result, display),)]
        under = part_lines([(checks(result.checks, display),), *below], width)
        return [*_joined(fields, right, parts), EMPTY, *under]

    def _field(self, field: Field, parts: Columns) -> list[Line]:
        """A field; a name too long for its column goes on in the next line."""
        in_hand = field.key == self.form.focus
        names = wrap(title_of(field.key, self.form.surface), parts.name, "strong" if in_hand else "plain")
        first = line(
            Piece("> " if in_hand else "  ", "strong"),
            *padded(names[0], parts.name),
            " ",
            *self._value(field.key, parts.value, in_hand=in_hand),
            " ",
            _marked(self._mark(field)),
        )
        return [first, *(line("    ", *rest) for rest in names[1:])]

    def _value(self, key: str, width: int, *, in_hand: bool) -> Line:
        typed, value = self.form.line(key), self.form.value(key)
        said = value.text if value is not None else ""
        if self.form.is_choice(key):
            return line(Piece(fit(said, width), "chosen" if in_hand else "plain"))
        if typed.text:
            return typed.pieces(width) if in_hand else line(Piece(fit(typed.text, width), "typed"))
        offered = self.form.offer(key)
        if offered is not None and value is None:
            return _offered(offered, width, in_hand=in_hand)
        said = fit(said, width)
        return line(Piece(said[:1], "cursor"), said[1:]) if in_hand else line(said)

    def _mark(self, field: Field) -> str:
        if any(t.key == field.key and not t.missing for t in self._answer_issues()):
            return "fix"
        value = self.form.value(field.key)
        if value is not None:
            return _ORIGINS[value.origin]
        if field.key in self.form.needed():
            return "or this" if field.one_of and self._is_second(field) else "needed"
        return "if any" if field.optional else ""

    def _is_second(self, field: Field) -> bool:
        group = [one.key for one in self.form.fields if one.one_of == field.one_of]
        return group.index(field.key) > 0

    def _answer_issues(self) -> tuple[Issue, ...]:
        return self.form.answer.issues if self.form.answer else ()

    def _wanted(self, width: int) -> list[Line]:
        return part_lines([(wanted(self.form.answer),)], width) if self.form.answer is not None else []

    def _troubles(self, width: int) -> list[Line]:
        lines: list[Line] = []
        for issue in self._answer_issues():
            if not issue.missing:
                lines += [EMPTY, *wrap(_in_words(issue.text), width, first="! ", rest="  ")]
        return lines

    def _foot(self, display: Display, width: int, height: int) -> list[Line]:
        """What the book says of the value in hand, or else how to measure it; and the cautions in short."""
        key, surface = self.form.focus, self.form.surface
        row = row_of(key, surface)
        keys = " Left and Right change it." if row.choices else ""
        room = 2 if height >= 18 else 1
        book = self._from_book(display)
        told = f"{keys.strip()} {book}".strip() if book else row.measured + keys
        said = wrap(f"{title_of(key, surface)}: {told}", width, "quiet")
        if len(said) > room:
            cut = " ".join(text_of(one) for one in said[room - 1 :])
            said[room - 1 :] = [line(Piece(fit(cut, width), "quiet"))]
        return [*filled(said, room), *self._cautions(width)]

    def _from_book(self, display: Display) -> str:
        """Range, note and source of the value in hand, where the book gave it."""
        value, offered = self.form.value(self.form.focus), self.form.offer(self.form.focus)
        if offered is not None and self.book is not None:
            ends = " or ".join(ends_of(offered)).replace(" or ", ", ", max(len(ends_of(offered)) - 2, 0))
            return f"Right and Left take {ends} of the book's {in_one_paragraph(self.book, offered)}"
        if value is None or value.recommended is None or self.book is None:
            return ""
        here = f"{shown(value.key, value.value, display)} here, " if value.share_of_diameter else ""
        return here + in_one_paragraph(self.book, value.recommended)

    def _cautions(self, width: int) -> list[Line]:
        if self.form.answer is None or not self.form.answer.cautions:
            return [EMPTY]
        return block_lines([at_arms_length(self.form.answer.cautions, self.full)], width)


def _marked(word: str) -> Piece:
    """The word behind a field; one that wants something stands out."""
    roles: dict[str, Role] = {"fix": "watch", "needed": "strong", "or this": "strong"}
    return Piece(fit(word, _MARK), roles.get(word, "quiet"))


def _offered(value: Value, width: int, *, in_hand: bool) -> Line:
    """The range of the book in an open field."""
    said = f"book {ranges.said(value)}"
    said = fit(said if len(said) <= width else ranges.said(value), width)
    return (
        line(Piece(said[:1], "cursor"), Piece(said[1:], "quiet")) if in_hand else line(Piece(said, "quiet"))
    )


def _in_words(text: str) -> str:
    """A sentence that names quantities by key, as the fields name them."""
    said = _KEY.sub(lambda key: QUANTITIES[key[0]].title.lower() if key[0] in QUANTITIES else key[0], text)
    return said[:1].upper() + said[1:]


def _edge(below: list[Line], width: int) -> Line:
    """The line under the part in sight: how much is below it, and whether a warning is among that."""
    if not below:
        return rule(width)
    roles = {piece.role for one in below for piece in one}
    worst = next((word for role, word in (("stop", "a STOP"), ("watch", "a WATCH")) if role in roles), "")
    count = f"{len(below)} more line{'s' if len(below) > 1 else ''}"
    told = fit(f"── {count}{', with ' if worst else ''}{worst}: PgDn ──", width)
    return line(Piece(told, "warn" if worst else "rule"))


def _joined(fields: list[Line], answer: list[Line], parts: Columns) -> list[Line]:
    return beside(fields, answer, parts.fields, GAP) if parts.beside else [*fields, EMPTY, *answer]
