"""The calculator as a page: the verdict, then what was given beside what is set or read, the drawing, all other checks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from geometry.calculation import Result
from library.book.model import Book
from library.calc.field_titles import title_in
from library.calc.inputs import shown
from library.calc.left_hand import LEFT_HAND, says_left_hand
from library.calc.ranges import ends_of, said
from library.calc.surfaces import only_surface, row_of
from library.calc.wording import in_one_paragraph
from library.equipment.model import Machine
from library.pages.answer import HEEL_READ, RELIEFS_OF_FORMS, RELIEFS_TOLD, outputs, rows, settings
from library.pages.cautions import at_arms_length
from library.pages.page import Block, Checks, Said, Table, Values
from library.pages.station_table import DIVISIONS, read_points, read_where, stations
from library.units.system import Display
from tui.figure.alphabet import ASCII, Alphabet
from tui.figure.panel import LOWEST
from tui.view.calculator_fields import GAP, Columns, columns, field_lines
from tui.view.figure_page import NUMBERS, column_width, figure_column, large_figures
from tui.view.form import Form
from tui.view.lines import EMPTY, Line, Piece, beside, filled, fit, line, rule, text_of, wrap
from tui.view.page_lines import block_lines, part_lines
from tui.view.verdict import Verdict, lines_for, verdict
from tui.view.viewport import Viewport

LOW = 18
"""Lines of a screen below which what is told takes fewer of them."""

TALL = 40
"""Lines of a screen from which what is told of the value in hand takes one more."""


_WHENCE = {
    "kept": "Kept from what was typed before. ",
    "nominal": "The size that was sought; nobody measured it. ",
}
"""What is said of a value that nobody typed now, by the word behind its field."""

_BRINGS = {
    "machine": "Left and Right bring what the machine has. ",
    "wheel": "Left and Right bring the wheels of the shop. ",
}


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
        self.whole = "? in full"
        self.lists = "F6 lists them"
        self.small = "Ctrl+G shows all again"
        self.machine: Machine | None = None
        self.view = Viewport()
        self._in_hand = range(0)
        self._follows = True

    def body(
        self, display: Display, width: int, height: int, *, large: bool = False, live: bool = True
    ) -> list[Line]:
        """The verdict, the numbers and the drawings: exactly ``height`` lines.

        Args:
            display: the units.
            width: in cells.
            height: in lines.
            large: whether the drawings stand large in place of the numbers.
            live: whether it can be typed into here, so that one of the fields is in hand.
        """
        lines = lines_for(width) if height >= LOW else 1
        first = verdict(self.form.answer, display, width, lines, self.form.focus)
        head = [*first.lines, _ruled("GIVEN", first.more, width)]
        room = height - len(head) - 1
        if room < 1:
            return filled([*head, EMPTY], height)
        if large:
            head[-1] = _ruled("GIVEN", ", ".join(one for one in (first.more, self.small) if one), width)
            return [*head, *self._large(first, display, width, room), rule(width)]
        aside = column_width(width, len(GAP))
        numbers = width - aside - len(GAP) if aside else width
        body = self._numbers(first, display, numbers, live=live)
        if not aside and room - len(body) >= LOWEST + 1:
            body += [EMPTY, *figure_column(self.form, display, width, room - len(body) - 1, self.alphabet)]
        self.view.refit(len(body), room)
        if self._follows and live:
            for at in self._in_hand:
                self.view.choose(at)
            self._follows = False
        shown = filled(body[self.view.top :], room)
        if aside:
            drawn = figure_column(self.form, display, aside, room, self.alphabet)
            shown = beside(shown, drawn, numbers, GAP)
        head[-1] = _ruled("GIVEN", first.more, width, self.view.top)
        return [*head, *shown, _edge(body[self.view.top + room :], width)]

    def foot(self, display: Display, width: int, height: int) -> list[Line]:
        """What the book says of the value in hand, or else how to measure it; and the cautions in short.

        Args:
            display: the units.
            width: in cells.
            height: of the whole screen, which says how many lines there are for it.
        """
        key, surface = self.form.focus, self.form.surface
        room = 1 if height < LOW else 2 if height < TALL else 3
        for told in self._tellings(display):
            said = wrap(f"{title_in(self.form.sheet, key, surface)}: {told}", width, "quiet")
            if len(said) <= room:
                break
        else:
            cut, where = " ".join(text_of(one) for one in said[room - 1 :]), f"  {self.whole}"
            said[room - 1 :] = [line(Piece(fit(cut, width - len(where)) + where, "quiet"))]
        return [*filled(said, room), *self._cautions(width)]

    def _tellings(self, display: Display) -> Iterator[str]:
        """What is told of the value in hand, then the same for where it finds no room: the source in short, the keys first."""
        key = self.form.focus
        row, whence = row_of(key, self.form.surface or only_surface(self.form.sheet)), self._whence(key)
        # Of what the book says something the same key changes that.
        said = self.form.entry is not None and self.form.slot(key) in self.form.entry.values
        listed = "" if said else f", {self.lists}"
        keys = f"Left and Right change it{listed}." if row.choices else ""
        full, brief = (self._from_book(display, brief=short) for short in (False, True))
        if full:
            yield f"{whence}{keys} {full}".replace("  ", " ").strip()
            yield f"{whence}{keys} {brief}".replace("  ", " ").strip()
        else:
            yield f"{whence}{row.measured} {keys}".rstrip()
            yield f"{whence}{keys} {row.measured}".replace("  ", " ").strip()

    def told_of_value(self, display: Display) -> str:
        """All that is told of the value in hand, but for what the quantity is and how it is measured."""
        return f"{self._whence(self.form.focus)}{self._from_book(display, brief=False)}".strip()

    def _whence(self, key: str) -> str:
        """What a list has to do with the value in hand, and where that is from."""
        listed = self.form.told_of_list(key)
        alone = "" if key in self.form.of_lists() else self._whence_alone(key)
        return f"{listed} {alone}" if listed else alone

    def _whence_alone(self, key: str) -> str:
        """Where the value in hand is from, where nobody typed it here, and what an arrow brings in its place."""
        form = self.form
        if form.is_nominal(key):
            return f"The nominal {form.nominal[key]} is no measurement. "
        if form.is_handed(key):
            return f"{_WHENCE['kept'] if key in form.handed_kept else ''}{form.handed_by.get(key, '')} "
        text, whose = form.line(key).text, form.whose(key)
        wheel, has = form.whence.of_what(key, text), {one.source for one in form.offered.get(key, ())}
        if wheel is not None and whose == "wheel":
            return f"Of {wheel.whose}. {_BRINGS['wheel']}"
        if whose == "sought":
            return f"The tool was sought with this angle; the book has {_said_by(form, key)}. "
        brings = "".join(_BRINGS[one] for one in sorted(has) if one == "machine" or not text)
        return f"{_WHENCE.get(whose, '')}{brings}"

    def scroll_to_field(self) -> None:
        """Bring the field in hand into sight with the next drawing."""
        self._follows = True

    def _large(self, first: Verdict, display: Display, width: int, room: int) -> list[Line]:
        field = next(one for one in self.form.fields if one.key == self.form.focus)
        in_hand = field_lines(self.form, field, columns(min(width, NUMBERS)))[0]
        return large_figures(in_hand, _told(first, width), self.form, display, width, room, self.alphabet)

    def _numbers(self, first: Verdict, display: Display, width: int, *, live: bool) -> list[Line]:
        """What was given beside what is set and read, and under both what else it means and what else is told."""
        parts = columns(width)
        given: list[Line] = []
        for field in self.form.fields:
            own = field_lines(self.form, field, parts, live=live)
            if field.key == self.form.focus:
                self._in_hand = range(len(given), len(given) + len(own))
            given += own
        answer = self.form.answer
        under = _told(first, width)
        if answer is None or answer.result is None:
            return [*given, *([EMPTY, *under] if under else [])]
        answered = block_lines(self._answered(answer.result, display, parts.answer), parts.answer)
        under = [*under, *part_lines([(rows(answer.result, display),)], width)]
        return [*_joined(given, answered, parts), *([EMPTY, *under] if under else [])]

    def _answered(self, result: Result, display: Display, width: int) -> Iterator[Block]:
        """What is set, what is read on the way, and what else was found; the number that was asked for comes first."""
        answer = self.form.answer
        assert answer is not None
        set_to = settings(answer, display, self.machine)
        readings = stations(result.stations, display, self.machine, "READ", read_points(answer))
        # The last of the readings tells it already, where nothing says how far it may be off.
        at_the_heel = HEEL_READ - answer.spreads.keys() if result.stations else frozenset()
        told = {*set_to, *at_the_heel}
        found = [key for key in result.outputs if key not in told]
        first = next(iter(result.outputs))
        asked = [key for key in found if key == first or (key in RELIEFS_OF_FORMS and first in RELIEFS_TOLD)]
        rest = [key for key in found if key not in asked]
        if asked:
            yield from _under("FOUND", outputs(answer, asked, display))
        if set_to:
            hand = f", {LEFT_HAND}" if says_left_hand(result) else ""
            yield from _under(f"SET{hand}", Values(tuple(set_to.values()), at_edge=True))
        if readings is not None:
            yield readings
            where = read_where(answer)
            divided = (
                self.machine.title if self.machine is not None and _in_divisions(readings, width) else ""
            )
            yield from (
                Said((one,), "quiet") for one in (where, f"div of {divided}" if divided else "") if one
            )
        if rest:
            yield from _under("ALSO", outputs(answer, rest, display))

    def _from_book(self, display: Display, *, brief: bool) -> str:
        """Range, note and source of the value in hand, where the book gave it."""
        value, offered = self.form.value(self.form.focus), self.form.offer(self.form.focus)
        if offered is not None and self.book is not None:
            ends = " or ".join(ends_of(offered)).replace(" or ", ", ", max(len(ends_of(offered)) - 2, 0))
            return f"Right and Left take {ends} of the book's {in_one_paragraph(self.book, offered, brief=brief)}"
        if value is None or value.recommended is None or self.book is None:
            return ""
        here = f"{shown(value.key, value.value, display)} here, " if value.share_of_diameter else ""
        return here + in_one_paragraph(self.book, value.recommended, brief=brief)

    def _cautions(self, width: int) -> list[Line]:
        if self.form.answer is None or not self.form.answer.cautions:
            return [EMPTY]
        return block_lines([at_arms_length(self.form.answer.cautions, self.full)], width)


def _told(first: Verdict, width: int) -> list[Line]:
    """What found no room in the verdict; what is to be put right is marked as a sentence of its own."""
    wrong = [
        one
        for state, text in first.rest
        if state == "fix"
        for one in wrap(text, width, first="! ", rest="  ")
    ]
    others = tuple(one for one in first.rest if one[0] not in {"fix", "open"})
    return [*wrong, *block_lines([Checks(others)], width)]


def _ruled(label: str, more: str, width: int, above: int = 0) -> Line:
    """A line across that says what stands under it, how much is above, and whether a warning is still to come."""
    told = f" {more} ──" if more else ""
    room = max(width - len(label) - 1 - len(told), 0)
    over = f"── {above} line{'s' if above > 1 else ''} above: PgUp " if above else ""
    line_of = f"{over}{'─' * room}"[:room]
    return line(Piece(f"{label} ", "quiet"), Piece(line_of, "rule"), Piece(told, "warn"))


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


def _in_divisions(readings: Table, width: int) -> bool:
    """Whether the readings are told in divisions too, which give way where there is no room."""
    head = [text_of(one) for one in block_lines([replace(readings, rows=readings.rows[:1])], width)]
    return any(DIVISIONS.strip() in one.split() for one in head)


def _under(label: str, block: Values | None) -> tuple[Block, ...]:
    """Values under a word that says what they are for."""
    return (Said((label,), "quiet"), block) if block is not None else ()


def _said_by(form: Form, key: str) -> str:
    """What the entry has for a quantity, as it is written there."""
    value = form.entry.values.get(key) if form.entry is not None else None
    if value is None:
        return "none"
    return value.usual.text if value.usual is not None else said(value)
