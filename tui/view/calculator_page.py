"""The calculator as a page: the verdict, then what was given beside what is set or read, the drawing, all other checks."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.calculation import Result
from library.book.model import Book
from library.calc.inputs import shown
from library.calc.ranges import ends_of
from library.calc.surfaces import row_of, title_of
from library.calc.wording import in_one_paragraph
from library.equipment.model import Machine
from library.pages.answer import checks, outputs, rows, settings, stations
from library.pages.cautions import at_arms_length
from library.pages.page import Block, Said, Values
from library.units.system import Display
from tui.figure.alphabet import ASCII, Alphabet
from tui.figure.panel import LOWEST
from tui.view.calculator_fields import GAP, Columns, columns, field_lines, issues_of
from tui.view.figure_page import NUMBERS, column_width, figure_column, large_figures
from tui.view.form import Form
from tui.view.lines import EMPTY, Line, Piece, beside, filled, fit, line, rule, text_of, wrap
from tui.view.page_lines import block_lines, part_lines
from tui.view.verdict import MOST, in_words, verdict, worst
from tui.view.viewport import Viewport

LOW = 18
"""Lines of a screen below which what is told takes fewer of them."""

HEEL = frozenset({"heel_drop", "drop"})
"""What the last of the readings tells already, where nothing says how far it may be off."""


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
        self.machine: Machine | None = None
        self.view = Viewport()

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
        told, whole = verdict(self.form.answer, display, width, MOST if height >= LOW else 1)
        head = [*told, _ruled("GIVEN", width)]
        room = height - len(head) - 1
        if room < 1:
            return filled([*head, EMPTY], height)
        if large:
            return [*head, *self._large(display, width, room), rule(width)]
        aside = column_width(width, len(GAP))
        numbers = width - aside - len(GAP) if aside else width
        body = self._numbers(display, numbers, whole=whole, live=live)
        if not aside and room - len(body) >= LOWEST + 1:
            body += [EMPTY, *figure_column(self.form, display, width, room - len(body) - 1, self.alphabet)]
        self.view.refit(len(body), room)
        shown = filled(body[self.view.top :], room)
        if aside:
            drawn = figure_column(self.form, display, aside, room, self.alphabet)
            shown = beside(shown, drawn, numbers, GAP)
        return [*head, *shown, _edge(body[self.view.top + room :], width)]

    def foot(self, display: Display, width: int, height: int) -> list[Line]:
        """What the book says of the value in hand, or else how to measure it; and the cautions in short.

        Args:
            display: the units.
            width: in cells.
            height: of the whole screen, which says how many lines there are for it.
        """
        key, surface = self.form.focus, self.form.surface
        row = row_of(key, surface)
        keys = " Left and Right change it." if row.choices else ""
        room = 2 if height >= LOW else 1
        book = self._from_book(display)
        told = f"{keys.strip()} {book}".strip() if book else row.measured + keys
        said = wrap(f"{title_of(key, surface)}: {told}", width, "quiet")
        if len(said) > room:
            cut = " ".join(text_of(one) for one in said[room - 1 :])
            said[room - 1 :] = [line(Piece(fit(cut, width), "quiet"))]
        return [*filled(said, room), *self._cautions(width)]

    def scroll_to_field(self) -> None:
        """Bring the field in hand into sight."""
        keys = [field.key for field in self.form.fields]
        self.view.choose(keys.index(self.form.focus) if self.form.focus in keys else 0)

    def _large(self, display: Display, width: int, room: int) -> list[Line]:
        field = next(one for one in self.form.fields if one.key == self.form.focus)
        in_hand = field_lines(self.form, field, columns(min(width, NUMBERS)))[0]
        return large_figures(in_hand, self._troubles(width), self.form, display, width, room, self.alphabet)

    def _numbers(self, display: Display, width: int, *, whole: bool, live: bool) -> list[Line]:
        """What was given beside what is set and read, and under both what it means and what else is told."""
        parts = columns(width)
        given = [one for field in self.form.fields for one in field_lines(self.form, field, parts, live=live)]
        answer = self.form.answer
        if answer is None or answer.result is None:
            return given + self._troubles(width, whole)
        result, first = answer.result, worst(answer) if whole else None
        answered = block_lines(self._answered(result, display), parts.answer)
        others = [one for one in result.checks if one is not first]
        under = part_lines([(checks(others, display),), (rows(result, display),)], width)
        return [*_joined(given, answered, parts), *([EMPTY, *under] if under else [])]

    def _answered(self, result: Result, display: Display) -> Iterator[Block]:
        """What is set, what is read on the way, and what else was found; the number that was asked for comes first."""
        answer = self.form.answer
        assert answer is not None
        set_to = settings(answer, display, self.machine)
        readings = stations(result.stations, display, self.machine, "READ")
        at_the_heel = HEEL - answer.spreads.keys() if result.stations else frozenset()
        told = {*set_to, *at_the_heel}
        found = [key for key in result.outputs if key not in told]
        asked = [key for key in found if key == next(iter(result.outputs))]
        rest = [key for key in found if key not in asked]
        if asked:
            yield from _under("FOUND", outputs(answer, asked, display))
        if set_to:
            yield from _under("SET", Values(tuple(set_to.values()), at_edge=True))
        if readings is not None:
            yield readings
            if self.machine is not None:
                yield Said((f"div of {self.machine.title}",), "quiet")
        if rest:
            yield from _under("ALSO", outputs(answer, rest, display))

    def _troubles(self, width: int, told: bool = True) -> list[Line]:
        """What is wrong; the first of it stands in the verdict, where that has room for all of it."""
        wrong = [one.text for one in issues_of(self.form) if not one.missing]
        lines = [wrap(in_words(text), width, first="! ", rest="  ") for text in wrong[1 if told else 0 :]]
        return [one for issue in lines for one in (EMPTY, *issue)]

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


def _ruled(label: str, width: int) -> Line:
    """A line across that says what stands under it."""
    return line(Piece(f"{label} ", "quiet"), Piece("─" * (width - len(label) - 1), "rule"))


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


def _under(label: str, block: Values | None) -> tuple[Block, ...]:
    """Values under a word that says what they are for."""
    return (Said((label,), "quiet"), block) if block is not None else ()
