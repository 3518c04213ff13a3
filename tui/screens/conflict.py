"""An edit conflict: what the value was, what each of two people made of it, and which to keep."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING

from library.editing.merging import Choice, Conflict, Side
from library.editing.wording import words
from library.sanitize import sanitize
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, Role, line, wrap

if TYPE_CHECKING:
    from tui.screens.base_screen import Needs
    from tui.session import Session


YOURS, OTHERS = "Yours here", "Saved by somebody else"
"""What each side is called, here and in every sentence about it."""


class ConflictScreen(Reading):
    """One conflict after the other; nothing is saved before all are answered.

    Args:
        session: of the program.
        conflicts: what to ask, in this order.
        answered: takes the answers, in the same order.
        where: the file or the copy in which somebody else's stands; empty where that is plain.
    """

    WHERE = "conflict"

    def __init__(
        self,
        session: Session,
        conflicts: Sequence[Conflict],
        answered: Callable[[list[Choice]], None],
        where: str = "",
    ) -> None:
        super().__init__(session)
        self.conflicts = list(conflicts)
        self.choices: list[Choice] = []
        self._answered = answered
        self._where = where
        self._chosen = 0

    @property
    def conflict(self) -> Conflict:
        """The one that is asked about."""
        return self.conflicts[min(len(self.choices), len(self.conflicts) - 1)]

    def title_text(self) -> str:
        """Which of how many."""
        count = len(self.conflicts)
        return "Both of you changed this" + (f" ({len(self.choices) + 1} of {count})" if count > 1 else "")

    def body(self, width: int, height: int) -> list[Line]:
        """The three states, which scroll, over what can be done."""
        ways = [one for place, way in enumerate(self._ways()) for one in self._shown(way, width, place)]
        ways = ways[: max(height - 3, 1)]
        return [*super().body(width, max(height - len(ways), 1)), *ways][:height]

    def text(self, width: int) -> list[Line]:
        """The three states."""
        conflict = self.conflict
        lines = [*wrap(subject(conflict), width, "head"), EMPTY]
        theirs = f"{OTHERS}, in {self._where}" if self._where else OTHERS
        return lines + three(conflict, ("It was", YOURS, theirs), width)

    def _ways(self) -> tuple[tuple[str, str], ...]:
        """What can be done, and its name; the harmless one first."""
        name = subject(self.conflict)
        return (
            ("leave", "Leave it for now: goes back, and nothing is saved."),
            ("mine", f"Keep yours: {name} as you typed it here, over what somebody else saved."),
            ("theirs", f"Keep what is saved: {name} as somebody else saved it; yours is let go."),
        )

    def _shown(self, way: tuple[str, str], width: int, place: int) -> list[Line]:
        role: Role = "chosen" if place == self._chosen else "plain"
        return wrap(way[1], width, role, first="> " if place == self._chosen else "  ", rest="    ")

    def do_up(self) -> None:
        """To the way before."""
        self._chosen = max(self._chosen - 1, 0)

    def do_down(self) -> None:
        """To the next way."""
        self._chosen = min(self._chosen + 1, len(self._ways()) - 1)

    def do_go_on(self) -> None:
        """Take the chosen way."""
        match self._ways()[self._chosen][0]:
            case "mine":
                self._choose("mine")
            case "theirs":
                self._choose("theirs")
            case _:
                self.do_back()

    def needs(self) -> Needs:
        """There is one before from the second on."""
        return {**super().needs(), "previous": lambda: self.choices}

    def do_previous(self) -> None:
        """Back to the conflict before, to answer it anew."""
        if self.choices:
            self.choices.pop()
            self._chosen = self.view.top = 0
        else:
            self.say("This is the first of them.")

    def _choose(self, side: Side) -> None:
        self.choices.append(Choice(self.conflict, side))
        self._chosen = self.view.top = 0
        if len(self.choices) == len(self.conflicts):
            self.app.pop_screen()
            self._answered(self.choices)


def three(conflict: Conflict, names: tuple[str, str, str], width: int) -> list[Line]:
    """The three states; of a value with several fields only those fields that differ."""
    sides = (conflict.base, conflict.mine, conflict.theirs)
    tables = [side for side in sides if isinstance(side, Mapping)]
    return _by_field(names, tables, width) if len(tables) == len(sides) else _whole(names, sides, width)


def _whole(names: Sequence[str], sides: Sequence[object], width: int) -> list[Line]:
    lines: list[Line] = []
    for name, value in zip(names, sides, strict=True):
        lines.append(line(Piece(name, "strong")))
        lines += [one for text in spelt_out(value) for one in wrap(text, width, first="    ", rest="      ")]
        lines.append(EMPTY)
    return lines


def _by_field(names: Sequence[str], tables: Sequence[Mapping[str, object]], width: int) -> list[Line]:
    lines: list[Line] = []
    shared = []
    column = max(map(len, names)) + 6
    for field in dict.fromkeys(key for table in tables for key in table):
        values = ["; ".join(spelt_out(table.get(field))) for table in tables]
        if len(set(values)) == 1:
            shared.append(f"{words(field)} {values[0]}")
            continue
        lines.append(line(Piece(words(field), "strong")))
        for name, value in zip(names, values, strict=True):
            lines += wrap(value, width, first=f"    {name}".ljust(column), rest=" " * column)
        lines.append(EMPTY)
    return lines + ([*wrap(f"The same in all: {', '.join(shared)}.", width), EMPTY] if shared else [])


def subject(conflict: Conflict) -> str:
    """What both changed, in words.

    Example:
        >>> subject(Conflict("entry", "gun-tap", "rake_angle", None, None, None))
        'rake angle of gun-tap'
    """
    name = sanitize(conflict.id)
    if not conflict.key:
        return f"{conflict.array} {name}, the whole of it"
    return f"{words(conflict.key)} of {name}" if name else words(conflict.key)


def spelt_out(value: object) -> list[str]:
    """A value of a file in full, a line for each of its fields.

    Example:
        >>> spelt_out({"usual": "5 deg", "source": "shop"}), spelt_out(None), spelt_out(["eyes", "dust"])
        (['usual: 5 deg', 'source: shop'], ['nothing'], ['eyes, dust'])
    """
    if value is None:
        return ["nothing"]
    if isinstance(value, Mapping):
        return [f"{words(str(key))}: {'; '.join(spelt_out(item))}" for key, item in value.items()] or [
            "empty"
        ]
    if isinstance(value, list | tuple):
        return [", ".join("; ".join(spelt_out(item)) for item in value) or "an empty list"]
    return str(value).splitlines() or ["an empty text"]
