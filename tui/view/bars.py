"""The title line of every screen, and its last line: one row of keys that is the same everywhere."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tui.actions import Where, on_screen
from tui.keys import Keymap, shown_key
from tui.meanings import MEANINGS, ROW
from tui.view.lines import Line, Piece, Role, fit, line, padded, spread_out, width_of


def banner(title: str, state: str, width: int, *, live: bool = True) -> Line:
    """The first line: what is shown at the left, its state at the right.

    Args:
        title: what is shown.
        state: of that.
        width: in cells.
        live: whether the keys go there, and not into another pane.
    """
    right = line(Piece(f"  {state}", "quiet"))
    role: Role = "head" if live else "quiet"
    return spread_out(line(Piece(fit(title, max(width - width_of(right), 1)).rstrip(), role)), right, width)


def book_title(keymap: Keymap, problems: int, unsaved: int) -> str:
    """The program's name, and what wants to be looked at, if anything.

    Args:
        keymap: the keys in force.
        problems: of the files of the book.
        unsaved: drafts that an earlier run left.
    """
    said = [f"{problems} problem{'s' if problems > 1 else ''}"] if problems else []
    said += [f"{unsaved} unsaved"] if unsaved else []
    return (
        f"Heelclear: the book   {', '.join(said)}: {keymap.told('menu')} lists them"
        if said
        else "Heelclear: the book"
    )


LEFT_OUT = ("units", "change", "cautions", "print", "calculate", "cards", "help", "menu", "back")
"""The order in which keys are left out where the row is too narrow even for short words: from its middle."""


def key_bar(where: Where, keymap: Keymap, width: int, typed: str = "", back: str = "") -> Line:
    """The last line: always the same keys in the same order, dim where one does nothing on this screen.

    Long words where they have room, short ones where they have not, and fewer where even those have none.

    Args:
        where: the screen.
        keymap: the keys in force.
        width: in cells.
        typed: a sign that is typed in the line in hand; another key is told for what it does elsewhere.
        back: the word for the way back, where that does more than it says; empty for the usual one.
    """
    here = on_screen(where)
    for gap, names in _fits(keymap, typed):
        row = [
            (key, f" {back}" if back and name == "back" else word, "key" if name in here else "quiet")
            for name, key, word in names
        ]
        if sum(len(key) + len(word) for key, word, _ in row) + gap * (len(row) - 1) <= width:
            pieces: list[Piece] = []
            for key, word, role in row:
                lead = " " * gap if pieces else ""
                pieces += [
                    Piece(lead + key, "key" if role == "key" else "quiet"),
                    Piece(word, "plain" if role == "key" else "quiet"),
                ]
            return padded(tuple(pieces), width)
    return padded((), width)


def _fits(keymap: Keymap, typed: str) -> Iterator[tuple[int, Sequence[tuple[str, str, str]]]]:
    """The ways to write the row, the widest first: the gap between two keys, and id, key and word of each."""
    keys = {name: _told(keymap, name, typed) for name in ROW}
    yield 2, [(name, keys[name], f" {MEANINGS[name].title}") for name in ROW]
    for count in range(len(LEFT_OUT)):
        yield (
            1,
            [(name, keys[name], _short(name, keys[name])) for name in ROW if name not in LEFT_OUT[:count]],
        )


def _told(keymap: Keymap, name: str, typed: str) -> str:
    """The key that is told of an action: its first one, but for a sign that is typed here."""
    others = [key for key in keymap.keys(name) if key != typed]
    return shown_key(others[0]) if others and keymap.keys(name)[0] == typed else keymap.told(name)


def _short(name: str, key: str) -> str:
    """The short word of a meaning, right behind a key of one sign."""
    word = MEANINGS[name].short or MEANINGS[name].title
    return word if len(key) == 1 else f" {word}"
