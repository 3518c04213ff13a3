"""A job card as a page: its steps, the lines of the one in hand, and beside them what follows."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from library.cards.rows import CardRow
from library.issue import Issue
from library.pages.card_answers import ANSWERS
from library.pages.cautions import at_arms_length
from library.pages.page import Block, Said
from tui.keys import Keys, no_keys, with_keys
from tui.view.card_form import CardForm
from tui.view.card_row import Row
from tui.view.card_steps import STEPS
from tui.view.lines import Line, Piece, Role, beside, filled, fit, line, padded, rule, wrap
from tui.view.page_lines import block_lines, part_lines
from tui.view.viewport import Viewport

GAP = " │ "
TWO_COLUMNS = 76
"""Cells from which what follows stands beside the lines."""

LEAST_WITH_CAUTIONS = 10
"""Lines of a page below which the cautions give way."""

_MARK = 2
_STATES: dict[str, Role] = {
    "ok": "pass",
    "WATCH": "watch",
    "STOP": "stop",
    "fix": "watch",
    "wants": "strong",
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


class CardPage:
    """What the screen shows of a card, and which part of it is in sight."""

    def __init__(
        self,
        form: CardForm,
        earlier: Callable[[str], Sequence[CardRow]] = lambda tool: (),
        keys: Keys = no_keys,
    ) -> None:
        """Make a page.

        Args:
            form: the card being filled in.
            earlier: gives the cards of a tool by its name.
            keys: gives the key of an action.
        """
        self.form = form
        self._earlier = earlier
        self._keys = keys
        self.view = Viewport()
        self.answers = Viewport()
        self._beside: tuple[int, str] = (0, "")

    def draw(self, width: int, height: int) -> list[Line]:
        """The page, exactly ``height`` lines."""
        parts = columns(width)
        foot = 2 if height >= 16 else 1
        warned = self._cautions(width) if height >= LEAST_WITH_CAUTIONS else []
        room = max(height - 2 - foot - len(warned), 1)
        follows = self._follows(parts.answer)
        lines, first, last = self._lines(parts)
        if parts.beside:
            self._reach(len(follows), room)
            seen = self._seen(lines, first, last, room)
            body = beside(seen, filled(follows[self.answers.top :], room), parts.lines, GAP)
        else:
            # Under the lines there is a third of the room for what follows, or as much as they leave.
            under = min(len(follows), max(room // 3, room - len(lines) - 1))
            self._reach(len(follows), max(under, 1))
            seen = self._seen(lines, first, last, room - under - 1 if under else room)
            shown = follows[self.answers.top : self.answers.top + under]
            body = [*seen, *([rule(width)] if under else []), *shown]
        return [self._steps(width), *filled(body, room), self._edge(width), *self._hint(width, foot), *warned]

    def page(self, pages: int) -> None:
        """See another part of what follows."""
        self.answers.scroll(pages * max(self.answers.height - 1, 1))

    def _reach(self, count: int, height: int) -> None:
        """So many lines follow, and so many of them are in sight."""
        self.answers.count, self.answers.height = count, height
        self.answers.scroll(0)

    def _steps(self, width: int) -> Line:
        """The steps by name, the one in hand marked; an exclamation mark where something does not add up."""
        wrong = self.form.issue_steps()
        pieces: list[Piece] = []
        for number, step in enumerate(STEPS):
            here = number == self.form.step
            said = f"{number + 1} {step.title}"
            pieces += [Piece("[" if here else " ", "strong"), Piece(said, "head" if here else "quiet")]
            state = wrong.get(number)
            pieces.append(Piece("!" if state else "", "stop" if state == "stop" else "watch"))
            pieces.append(Piece("]" if here else " ", "strong"))
        return padded(tuple(one for one in pieces if one.text), width)

    def _lines(self, parts: Columns) -> tuple[list[Line], int, int]:
        """The lines of the step, and the first and the last of those that belong to the one in hand."""
        lines: list[Line] = []
        first = last = 0
        for row in self.form.rows:
            drawn = self._row(row, parts)
            if row.way == self.form.row.way:
                first, last = len(lines), len(lines) + len(drawn) - 1
            lines += drawn
        return lines, first, last

    def _seen(self, lines: list[Line], first: int, last: int, room: int) -> list[Line]:
        """As many lines as there is room for, those in hand among them."""
        self.view.resize(len(lines), room)
        self.view.choose(last)
        self.view.choose(first)
        return filled(lines[self.view.top :], room)

    def _row(self, row: Row, parts: Columns) -> list[Line]:
        in_hand = row.way == self.form.row.way
        if row.heading:
            lines = self._heading(row, parts, in_hand=in_hand)
        elif row.wide:
            lines = self._wide(row, parts, in_hand=in_hand)
        else:
            lines = self._filled(row, parts, in_hand=in_hand)
        for text in row.below:
            lines += wrap(text, parts.lines, "quiet", first=" " * 5, rest=" " * 7)
        issues = self.form.issues_at(row)
        if issues and not in_hand:
            lines += wrap(_told(row, issues), parts.lines, "warn", first="   ! ", rest="     ")
        return lines

    def _heading(self, row: Row, parts: Columns, *, in_hand: bool) -> list[Line]:
        word = row.words(row.text) if row.text else row.default
        title = fit(row.label, parts.lines - _MARK - len(word) - 1)
        named = Piece(title, "strong" if in_hand else "plain")
        return [line(_mark(in_hand), named, " ", Piece(word, _STATES.get(word, "quiet")))]

    def _wide(self, row: Row, parts: Columns, *, in_hand: bool) -> list[Line]:
        """Free text over the whole width, under its label."""
        lines = [line("  ", row.label)] if row.label else []
        if in_hand:
            return [*lines, line(_mark(in_hand), *self.form.in_hand.pieces(parts.lines - _MARK))]
        return [*lines, *wrap(row.text, parts.lines, "typed", first="    ", rest="    ")]

    def _filled(self, row: Row, parts: Columns, *, in_hand: bool) -> list[Line]:
        """A label and what stands there; a label too long for its column goes on in the next line."""
        label, *rest = wrap(row.label.strip(), parts.label - _indent(row), "strong" if in_hand else "plain")
        indent = " " * _indent(row)
        value = self._value(row, parts.value, in_hand=in_hand)
        first = line(_mark(in_hand), indent, *padded(label, parts.label - _indent(row)), " ", *value)
        return [first, *(line("    ", indent, *one) for one in rest)]

    def _value(self, row: Row, width: int, *, in_hand: bool) -> Line:
        text = self.form.in_hand.text if in_hand else row.text
        if row.choices:
            said = fit(row.words(text) or row.words(row.default), width)
            return line(Piece(said, "chosen" if in_hand else "typed" if text else "quiet"))
        if row.said and not in_hand:
            return line(Piece(fit(row.words(text), width), "typed"))
        if text:
            return self.form.in_hand.pieces(width) if in_hand else line(Piece(fit(text, width), "typed"))
        said = fit(f"{row.default}  ({row.giver})" if row.giver else row.default, width)
        return line(Piece(said[:1], "cursor"), said[1:]) if in_hand else line(Piece(said, "quiet"))

    def _follows(self, width: int) -> list[Line]:
        """What stands beside the lines; it begins at its top again for another line."""
        place = (self.form.step, self.form.row.way)
        if place != self._beside:
            self._beside = place
            self.answers.top = 0
        parts = ANSWERS[self.form.step](self.form.job, self.form.row.key)
        return part_lines([self._before() if self.form.step == 0 else (), *parts], width)

    def _before(self) -> tuple[Block, ...]:
        """The earlier cards of this tool, where it has a name."""
        card = self.form.card
        rows = [row for row in self._earlier(card.tool.name) if row.id != card.id]
        if not rows:
            return ()
        many = f"{len(rows)} other card{'s' if len(rows) > 1 else ''} of {card.tool.name}"
        return (Said((f"{many}, the last one {rows[-1].id} {rows[-1].result}",), "strong"),)

    def _edge(self, width: int) -> Line:
        below = self.answers.below()
        if not below:
            return rule(width)
        return line(
            Piece(
                fit(f"── {below} more line{'s' if below > 1 else ''} of what follows: PgDn ──", width), "rule"
            )
        )

    def _cautions(self, width: int) -> list[Line]:
        """What can hurt somebody at this job."""
        key = self._keys("cautions")
        return block_lines([at_arms_length(self.form.job.cautions, f"{key} in full")], width)

    def _hint(self, width: int, height: int) -> list[Line]:
        """What is wrong with the line in hand, else what belongs there."""
        issues = self.form.issues_at(self.form.row)
        if issues:
            word = "STOP" if issues[0].state == "stop" else "WATCH"
            told = wrap(_told(self.form.row, issues), width, "warn", first=f"{word}: ", rest="  ")
            (first, *rest) = _at_most(told, width, height)
            return [
                line(
                    Piece(word, "stop" if word == "STOP" else "watch"),
                    Piece(first[0].text[len(word) :], "warn"),
                ),
                *rest,
            ]
        return _at_most(wrap(with_keys(self.form.row.hint, self._keys), width, "quiet"), width, height)


def _told(row: Row, issues: Sequence[Issue]) -> str:
    """The first problem of a line, without the name that the line has already, and how many more there are."""
    text = issues[0].text.removeprefix(f"{row.label.strip()}: ")
    return f"{text} (and {len(issues) - 1} more)" if len(issues) > 1 else text


def _at_most(lines: list[Line], width: int, height: int) -> list[Line]:
    """So many lines; where there are more, the last one says so."""
    if len(lines) <= height:
        return filled(lines, height)
    last = lines[height - 1][0]
    cut = fit(last.text, width - 1).rstrip().removesuffix("…")
    return [*lines[: height - 1], line(Piece(f"{cut}…", last.role))]


def _mark(in_hand: bool) -> Piece:
    return Piece("> " if in_hand else "  ", "strong")


def _indent(row: Row) -> int:
    return len(row.label) - len(row.label.lstrip())
