"""A job card as a page: its steps, the lines of the one in hand, and beside them what follows."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from library.book.model import Book
from library.calc.cautions import of_what_is_done
from library.cards.history import Visit, sharpenings_left
from library.cards.rows import CardRow
from library.cards.settings_lines import setting_lines
from library.pages.card_answers import ANSWERS, is_unknown_trouble
from library.pages.cautions import at_arms_length
from library.pages.left_with import left_with
from library.pages.page import Block, Said
from library.pages.readings_on_the_way import on_the_way
from tui.figure.alphabet import ASCII, Alphabet
from tui.keys import Keys, no_keys, with_keys
from tui.view import card_set_table
from tui.view.card_form import CardForm
from tui.view.card_hint import hint_lines
from tui.view.card_lines import GAP, Columns, columns, row_lines
from tui.view.card_side import Drawn, side_lines, still_lines
from tui.view.card_steps import STEPS
from tui.view.card_steps_line import steps_line
from tui.view.lines import (
    EMPTY,
    Line,
    Piece,
    at_most,
    beside,
    edge_of,
    filled,
    fit,
    line,
    rule,
)
from tui.view.page_lines import block_lines, part_lines
from tui.view.viewport import Viewport

LEAST_WITH_CAUTIONS = 10
"""Lines of a page below which the cautions give way."""

WITH_SIDE = 100
"""Cells from which a drawing, what the tool came with and its life stand at the right."""

BESIDE_SIDE = 80
"""Cells of the card beside that."""

LEAST_WITH_HEAD = 8
"""Lines of the settings below which their head gives way."""

LEAST_WITH_PAGES = 6
"""Lines of the settings that stay while somebody turns pages under them."""

MOST_OF_READ = 8
"""Lines of what is read that stay in sight where settings need the room."""

MOST_OF_WHAT_FOLLOWS = 84
"""Cells of what follows under the settings."""

MOST_OF_HINT = 3
"""Lines at most for what belongs into the line in hand, or what is wrong there."""

LEAST_WITH_STILL = 20
"""Lines of a page below which the empty half stays empty."""

STILL_STEPS = ("received", "wanted", "after")
"""The parts of a card beside which something stands still where nothing follows yet."""

UNKNOWN_TROUBLE = (
    "The book knows no trouble of such tools by these words; {change} on their line lists those it knows."
)
"""What stands beside words for a trouble that were not recognised."""

RECEIVED = next(number for number, step in enumerate(STEPS) if "wrong" in step.sections)
"""The number of the step that says what is wrong."""

SETTINGS = next(number for number, step in enumerate(STEPS) if "settings" in step.sections)
"""The number of the step that stands in columns."""


class CardPage:
    """What the screen shows of a card, and which part of it is in sight."""

    def __init__(
        self,
        form: CardForm,
        earlier: Callable[[str], Sequence[CardRow]] = lambda tool: (),
        keys: Keys = no_keys,
        visits: Callable[[str, str], Sequence[Visit]] = lambda tool, card_id: (),
        alphabet: Alphabet = ASCII,
    ) -> None:
        """Make a page.

        Args:
            form: the card being filled in.
            earlier: gives the cards of a tool by its name.
            keys: gives the key of an action.
            visits: gives the cards of a tool before the one of an id, with its sizes.
            alphabet: of the drawings.
        """
        self._visits = visits
        self._drawn = Drawn(alphabet)
        self.form = form
        self._earlier = earlier
        self._keys = keys
        self.view = Viewport()
        self.answers = Viewport()
        self._beside: tuple[int, str] = (0, "")
        self._paged = False
        self._sought: tuple[Book, tuple[str, str], bool] | None = None

    def draw(self, width: int, height: int) -> list[Line]:
        """The page, exactly ``height`` lines."""
        hint = hint_lines(self.form, self._keys, width)
        foot = max(2, min(len(hint), MOST_OF_HINT if height >= 20 else 2)) if height >= 16 else 1
        warned = self._cautions(width) if height >= LEAST_WITH_CAUTIONS else []
        room = max(height - 2 - foot - len(warned), 1)
        side = side_width(width)
        card = width - side - len(GAP) if side else width
        # The foot is now lower, now higher: what stands still is counted from the least room there is.
        still = height - 2 - MOST_OF_HINT - len(warned) if height >= LEAST_WITH_STILL and not side else 0
        body = self._set(card, room) if self._in_columns(card) else self._filled_in(card, room, still)
        if side:
            body = beside(filled(body, room), self._side(side, room), card, GAP)
        head, edge = steps_line(self.form, width), self._edge(width)
        return [head, *filled(body, room), edge, *at_most(hint, width, foot), *warned]

    def _in_columns(self, width: int) -> bool:
        """Whether the settings are in hand, and the screen is wide enough for their columns."""
        return self.form.step == SETTINGS and width >= card_set_table.LEAST

    def _filled_in(self, width: int, room: int, still: int = 0) -> list[Line]:
        """The lines, and beside or under them what follows from them; beside them in so many lines also what stands still."""
        parts = columns(width)
        follows = self._follows(parts.answer)
        lines, first, last = self._lines(parts)
        if parts.beside:
            self._reach(len(follows), room)
            seen = self._seen(lines, first, last, room)
            told = self._over_what_stands_still(follows[self.answers.top :], parts.answer, still)
            return beside(seen, filled(told, room), parts.lines, GAP)
        # Under the lines there is a third of the room for what follows, or as much as they leave.
        under = min(len(follows), max(room // 3, room - len(lines) - 1))
        self._reach(len(follows), max(under, 1))
        seen = self._seen(lines, first, last, room - under - 1 if under else room)
        shown = follows[self.answers.top : self.answers.top + under]
        return [*seen, *([rule(width)] if under else []), *shown]

    def _over_what_stands_still(self, follows: list[Line], width: int, height: int) -> list[Line]:
        """What follows, and at the foot of an otherwise empty half what stands still there, in so many lines."""
        form = self.form
        section = form.row.section if form.row.section in STILL_STEPS else form.rows[-1].section
        if section not in STILL_STEPS or (section == "wanted" and setting_lines(form.job, form.job.display)):
            return follows
        room = height - len(follows) - (1 if follows else 0)
        visits = self._before_this()
        left = sharpenings_left(form.job)
        found = still_lines(form.job, section, visits, left, width, room, self._drawn) if room > 0 else []
        return [*filled(follows, height - len(found)), *found] if found else follows

    def _set(self, width: int, room: int) -> list[Line]:
        """What is set in columns; under it what is read on the way, then what follows from the line in hand."""
        head = [card_set_table.set_head(self.form.job, width)] if room > LEAST_WITH_HEAD else []
        lines, first, last = card_set_table.set_lines(self.form, self._keys, width)
        read = card_set_table.read_lines(on_the_way(self.form.job), width)
        follows = self._follows(min(width, MOST_OF_WHAT_FOLLOWS))
        below = [*read, *([EMPTY] if read and follows else []), *follows]
        room -= len(head)
        under = min(len(read), MOST_OF_READ, room // 2)
        # Who turns the page there wants to read, and needs no more of the settings than the line in hand.
        under = max(under, room // 3, room - len(lines) - 1, room - LEAST_WITH_PAGES if self._paged else 0)
        under = min(under, len(below))
        self._reach(len(below), max(under, 1))
        seen = self._seen(lines, first, last, room - under - 1 if under else room)
        shown = below[self.answers.top : self.answers.top + under]
        between = [edge_of(self.view.below(), width, "Down")] if under else []
        return [*head, *seen, *between, *shown]

    def _side(self, width: int, height: int) -> list[Line]:
        """What stands at the right of everything on a wide screen."""
        form = self.form
        visits = self._before_this()
        left = sharpenings_left(form.job)
        return filled(side_lines(form.job, form.row, visits, left, width, height, self._drawn), height)

    def page(self, pages: int) -> None:
        """See another part of what follows."""
        self.answers.scroll(pages * max(self.answers.height - 1, 1))
        # Who turned a page keeps the room for reading until he is back at the top or goes to another line.
        self._paged = pages > 0 or self.answers.top > 0

    def _reach(self, count: int, height: int) -> None:
        """So many lines follow, and so many of them are in sight."""
        self.answers.count, self.answers.height = count, height
        self.answers.scroll(0)

    def _lines(self, parts: Columns) -> tuple[list[Line], int, int]:
        """The lines of the step, and the first and the last of those that belong to the one in hand."""
        lines: list[Line] = []
        first = last = 0
        for row in self.form.rows:
            drawn = row_lines(self.form, row, parts, self._keys)
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

    def _follows(self, width: int) -> list[Line]:
        """What stands beside the lines; it begins at its top again for another line."""
        place = (self.form.step, self.form.row.way)
        if place != self._beside:
            self._beside = place
            self.answers.top, self._paged = 0, False
        parts = ANSWERS[self.form.step](self.form.job, self.form.row.key)
        return part_lines([self._first(), *parts, self._last()], width)

    def _first(self) -> tuple[Block, ...]:
        """What stands before everything that follows."""
        if self.form.step == 0:
            return self._before()
        if self.form.step != RECEIVED:
            return ()
        return self._unknown() if self.form.row.section == "wrong" else self._left_with()

    def _last(self) -> tuple[Block, ...]:
        """What stands behind it."""
        if self.form.step != RECEIVED:
            return ()
        return self._left_with() if self.form.row.section == "wrong" else self._unknown()

    def _left_with(self) -> tuple[Block, ...]:
        """With what the tool was left last time, by the readings after grinding on its card before this one."""
        return left_with([one.card for one in self._before_this()], self.form.card.id)

    def _before_this(self) -> Sequence[Visit]:
        """The cards of this tool before this one, with its sizes."""
        card = self.form.card
        return self._visits(card.tool.name, card.id)

    def _unknown(self) -> tuple[Block, ...]:
        """That the book knows no trouble by the words on the card, and where those are that it knows."""
        job = self.form.job
        asked = (job.card.family, job.card.wrong)
        # What is wrong stays the same while the rest of the step is typed; a book that was read again is another one.
        if self._sought is None or self._sought[0] is not job.book or self._sought[1] != asked:
            self._sought = (job.book, asked, is_unknown_trouble(job))
        return (Said((with_keys(UNKNOWN_TROUBLE, self._keys),), "quiet"),) if self._sought[2] else ()

    def _before(self) -> tuple[Block, ...]:
        """The earlier cards of this tool, where it has a name."""
        card = self.form.card
        rows = [row for row in self._earlier(card.tool.name) if row.id != card.id]
        if not rows:
            return ()
        many = f"{len(rows)} other card{'s' if len(rows) > 1 else ''} of {card.tool.name}"
        return (Said((f"{many}, the last one {rows[-1].id} {rows[-1].ended}",), "strong"),)

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
        """What can hurt somebody at this job, what belongs to the step in hand in front."""
        key = self._keys("cautions")
        found = of_what_is_done(self.form.job.cautions, STEPS[self.form.step].doing)
        return block_lines([at_arms_length(found, f"{key} in full")], width)


def side_width(width: int) -> int:
    """The cells of what stands at the right of everything; 0 where the screen is too narrow for it.

    Example:
        >>> side_width(80), side_width(120), side_width(160)
        (0, 37, 72)
    """
    if width < WITH_SIDE:
        return 0
    return width - BESIDE_SIDE - max(width - 120, 0) // 8 - len(GAP)
