"""The step of the settings over the whole width: what is set, in its order, in columns; under it what is read."""

from __future__ import annotations

from collections.abc import Mapping

from rich.cells import cell_len

from library.calc.left_hand import LEFT_HAND
from library.cards.hand import is_left
from library.cards.job import Job
from library.cards.settings_lines import setting_lines
from library.pages.readings_on_the_way import OnTheWay
from tui.keys import Keys, no_keys, with_keys
from tui.view.card_form import CardForm
from tui.view.card_lines import told_below
from tui.view.card_row import TO_FILL_IN, WANTS_INPUT, Row, Told
from tui.view.lines import Line, Piece, Role, fit, line, padded, width_of, wrap
from tui.view.text_line import TextLine

LEAST = 76
"""Cells from which settings stand in columns."""

TITLE, VALUE, DIVISIONS = 26, 14, 20
"""Cells of the columns; what is left is the note's."""

NAME, UNIT = 24, 10
"""Cells of the title and the unit of what is read."""

STANDS = "| "
"""Where the cursor would be, of a line that belongs to the one above it: the cursor takes them as one."""

ROLES: dict[str, Role] = {
    "ok": "pass",
    "WATCH": "watch",
    "STOP": "stop",
    "fix": "watch",
    WANTS_INPUT: "strong",
}
"""How the words for the state of a calculation are shown."""


def set_head(job: Job, width: int) -> Line:
    """That these are set, to which side of a left-hand tool, and on which machine with which wheel."""
    wheel, hand = job.wheel, f"{LEFT_HAND}, to the other side" if is_left(job) else ""
    rated = f" ({wheel.rated_speed.measure.text})" if wheel is not None and wheel.rated_speed else ""
    parts = (job.machine.title if job.machine else "", f"{wheel.title}{rated}" if wheel else "")
    said = ", ".join(part for part in parts if part)
    room = max(width - TITLE - 6, 0)
    return line(
        Piece(fit("SET, in this order", 2 + TITLE + 4), "head"),
        *((Piece(f"{hand}  ", "watch"),) if hand else ()),
        Piece(fit(said, max(room - len(hand) - 2, 0) if hand else room).rstrip(), "quiet"),
    )


def set_lines(form: CardForm, keys: Keys, width: int) -> tuple[list[Line], int, int]:
    """The lines of the settings, and the first and the last of those that belong to the one in hand.

    Args:
        form: the card being filled in, at its settings.
        keys: gives the key of an action.
        width: in cells, at least ``LEAST``.
    """
    lines: list[Line] = []
    first = last = 0
    found = setting_lines(form.job, form.job.display)
    counted = list(enumerate((one for one in found if one.is_set), 1))
    above: set[str] = set()
    for row in form.rows:
        in_hand = row.way == form.row.way
        if row.heading:
            numbers = {one.title: number for number, one in counted if one.sheet == row.key}
            above = {one.title for one in row.told if one.is_set}
            drawn = heading_lines(row, numbers, width, in_hand=in_hand)
            drawn += below_lines(row, width, keys)
        else:
            typed = form.drawn if in_hand else None
            own = (row.key, row.quantity)
            number, title = next(
                ((at, one.title) for at, one in counted if (one.sheet, one.key) == own and row.text),
                (0, ""),
            )
            # A setting is counted once: what is typed for it stands under it without a number.
            drawn = [field_line(row, typed, width, number, is_above=title in above)]
        drawn += [] if in_hand else told_below(form, row, width)
        if in_hand:
            first, last = len(lines), len(lines) + len(drawn) - 1
        lines += drawn
    return lines, first, last


def heading_lines(row: Row, numbers: Mapping[str, int], width: int, *, in_hand: bool) -> list[Line]:
    """A calculation: a line for each thing that is set by it or comes out, which the cursor takes as one.

    Args:
        row: with what it tells.
        numbers: of what it sets, by title, as the setup sheet counts.
        width: in cells.
        in_hand: whether the cursor is on it.
    """
    found = row.told or (Told(row.label, note=row.words(row.text) if row.text else row.default),)
    lines: list[Line] = []
    for place, one in enumerate(found):
        count = _counted(numbers.get(one.title, 0) if one.is_set else 0)
        mark = STANDS if place else "> " if in_hand else "  "
        if one.is_text:
            lines += wrap(one.title, width, first=f"{mark:<7}", rest=" " * 7)
            continue
        lines += _in_columns(one, count, mark, width, in_hand=in_hand)
    return lines


def _counted(number: int) -> str:
    """The number of a setting; blank where there is none."""
    return f"{number:>2} " if number else "   "


def _in_columns(one: Told, count: str, marked: str, width: int, *, in_hand: bool) -> list[Line]:
    """Title, number, divisions and note; a title takes the room that the others leave, and goes on in the next line."""
    role: Role = "strong" if in_hand else "plain"
    room = max(width - 2 - TITLE - 1 - VALUE - 2, 0)
    # A long note begins further left where the divisions leave it the room.
    cells = max(min(DIVISIONS, room - 1 - len(one.note)), min(len(one.divisions), DIVISIONS), 0)
    has_numbers = bool(one.value or one.divisions)
    before = TITLE - 2 + VALUE + (0 if has_numbers else cells + 2)
    first, *rest = wrap(one.title, max(before - len(one.value) - (1 if one.value else 0), 1), role)
    free = max(before - width_of(first) - len(one.value), 0)
    mark = Piece(marked, "strong" if in_hand else "quiet")
    begin: tuple[Piece | str, ...] = (mark, Piece(count), *first, " " * free, Piece(one.value))
    if has_numbers and (len(one.divisions) > cells or len(one.note) > room - cells - 1):
        # What has no room in one line has it in two, the note under the divisions.
        column = " " * max(min(2 + TITLE + 1 + VALUE + 2, width - len(one.note)), 7)
        told = [
            line(*begin, Piece(f"  {fit(one.divisions, room).rstrip()}")),
            line(column, *_note(fit(one.note, width - len(column)).rstrip())),
        ]
    else:
        behind = Piece(f"  {fit(one.divisions, cells)}" if has_numbers else "")
        told = [line(*begin, behind, " ", *_note(fit(one.note, max(room - cells - 1, 0)).rstrip()))]
    return [*told, *(line(" " * 7, *more) for more in rest)]


def _note(text: str) -> Line:
    """How a calculation stands, in its own colour, and what else is noted."""
    word = next((one for one in ROLES if f"{text} ".startswith(f"{one} ")), "")
    rest = Piece(text.removeprefix(word), "quiet")
    return line(Piece(word, ROLES[word]), rest) if word else line(rest)


TYPED_FOR = "typed for setting {}"
"""Behind what was typed for a setting that stands above with its number."""


def field_line(
    row: Row, typed: TextLine | None, width: int, number: int = 0, *, is_above: bool = False
) -> Line:
    """A line that is typed into, its text under the numbers.

    Args:
        row: the line.
        typed: what stands in it while it is in hand; nothing for another line.
        width: in cells.
        number: as the setup sheet counts, where what is typed is a setting itself; else 0.
        is_above: whether that setting stands above in a line of its own, which has the number then.
    """
    of_setting = Piece(f"  {TYPED_FOR.format(number)}" if is_above else "", "quiet")
    number = 0 if is_above else number
    mark = Piece("> " if typed is not None else "  ", "strong")
    role: Role = "strong" if typed is not None else "plain"
    rest = max(width - 2 - TITLE - 1, 1)

    def told(*cells: Piece | str) -> Line:
        """The name, and the cells behind it; where the first of them begins with blanks a long name goes on there."""
        first, *others = (one if isinstance(one, Piece) else Piece(one) for one in cells)
        name = row.label.strip()
        blanks = len(first.text) - len(first.text.lstrip())
        over = min(max(cell_len(name) - (TITLE - 5), 0), max(blanks - 1, 0))
        title = Piece(f"{_counted(number)}  {fit(name, TITLE - 5 + over)}", role)
        return line(mark, title, " ", Piece(first.text[over:], first.role), *others)

    if row.choices:
        said = row.words(row.text) or row.words(row.default)
        # What is wider than a number goes on where divisions and notes would stand; a choice has neither.
        text = Piece(
            fit(said, min(max(VALUE, len(said)), rest), right=True),
            "chosen" if typed is not None else "typed" if row.text else "quiet",
        )
        return told(text)
    # What is typed stands in hand where it stands afterwards: under the numbers.
    if typed is not None and typed.text:
        before = max(min(VALUE, rest) - cell_len(typed.text), 0)
        return told(" " * before, *typed.pieces(rest - before))
    if row.text:
        return told(Piece(fit(row.text, VALUE, right=True), "typed"), of_setting)
    said = TO_FILL_IN if row.wants else row.default
    stands = fit(said, VALUE, right=True)
    giver = Piece(f"  {row.giver}" if row.giver else "", "quiet")
    if typed is None:
        return told(Piece(stands, "quiet"), giver)
    before = max(len(stands) - len(stands.lstrip()), 0) if said else VALUE
    behind = stands[before + 1 :]
    return told(" " * before, Piece(stands[before : before + 1] or " ", "cursor"), behind, giver)


def below_lines(row: Row, width: int, keys: Keys = no_keys) -> list[Line]:
    """What a calculation still wants from another step, and which key goes there."""
    return [
        one
        for text in row.below
        if text.startswith("for want of")
        for one in wrap(with_keys(text, keys), width, "quiet", first=" " * 5, rest=" " * 7)
    ]


def read_lines(found: OnTheWay | None, width: int) -> list[Line]:
    """What the indicator reads from edge to heel, each unit once; nothing where nothing is read."""
    if found is None:
        return []
    room = max((width - TITLE - 12) // max(len(found.places), 1), 6)
    cells = min(room, 9)
    wanted = max((cell_len(f"  {title} {unit}") for title, unit, _ in found.rows), default=0)
    name = min(max(NAME + UNIT, wanted), width - cells * len(found.places))
    at = f" at {found.at} diameter" if found.at else ""
    head = f"READ{at}{',' if at else ' '} indicator {found.points}, zero at the edge"
    judged = f"may be {found.may_be}" if found.may_be else ""
    read = f"read {', '.join(found.read)}" if found.read else ""
    if found.land:
        # Each flute has its own heel, so that what it may be stands beside what was read.
        head = f"READ{at}{',' if at else ''} on the {found.land}; indicator {found.points}, zero at the edge"
        read, judged = "; ".join(part for part in (read, judged) if part), ""
    elif cell_len(head) + cell_len(judged) + 2 > width:
        read, judged = "; ".join(part for part in (judged, read) if part), ""
    lines = [
        padded(
            line(
                Piece(fit(head, max(width - len(judged) - 2, 0)), "head"),
                Piece(f"  {judged}", "strong" if judged else "plain"),
            ),
            width,
        ),
        line(
            Piece(" " * name, "quiet"),
            Piece("".join(fit(one, cells, right=True) for one in found.places), "quiet"),
        ),
    ]
    for title, unit, numbers in found.rows:
        label = f"{fit(f'  {title}', max(name - cell_len(unit) - 1, 0))} {unit}"
        lines.append(line(Piece(label), Piece("".join(fit(one, cells, right=True) for one in numbers))))
    lines += wrap(found.rises, width, "quiet", first="  ", rest="  ") if found.rises else []
    return [*lines, *(wrap(read, width, "typed", first="      ", rest="      ") if read else [])]
