"""The person's own editor: a file of the book opened at a line, and notes written in it."""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import zlib
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from tui.changing import Met, Wish

if TYPE_CHECKING:
    from library.book.model import Entry, Place
    from library.editing.merging import Choice
    from tui.app import Heelclear

BEHIND_A_COLON = frozenset({"code", "codium", "code-insiders", "hx", "helix", "subl", "zed"})
"""Editors that want the line behind the file's name; all others take it before, with a plus."""

NONE_NAMED = (
    "Neither VISUAL nor EDITOR names an editor. Leave, name one (export EDITOR=nano), and start again."
)


class Editor:
    """Hands the terminal to the person's editor, and takes it back.

    Args:
        app: the program.
        notes: the folder in which notes lie while they are written.
    """

    def __init__(self, app: Heelclear, notes: Path) -> None:
        self._app = app
        self._notes = notes

    def open(self, place: Place) -> None:
        """Open a file of the book at a line, then read the book again."""
        if not own_words():
            self._app.say(f"{NONE_NAMED} Or open {place.file} in another window; it is line {place.line}.")
        elif self._run(place.file, place.line):
            self._app.read_again("The book was read again.")

    def write_notes(self, entry: Entry) -> None:
        """Have the notes of an entry written in the editor, and show what that would change in the book.

        They lie in a file of their own until they are saved in the book, so that nothing can lose them; where
        an earlier run left some, these are opened.
        """
        if not own_words():
            self._app.say(NONE_NAMED)
            return
        file = self._notes / file_name(entry.id)
        try:
            if not file.exists():
                file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
                file.write_text(f"{entry.notes.rstrip()}\n", encoding="utf-8")
            if self._run(file, 1):
                self._take(entry, file, {"notes": entry.notes})
        except (OSError, UnicodeDecodeError) as error:
            reason = getattr(error, "strerror", None) or "it is no text in UTF-8"
            self._app.say(f"The notes cannot be taken from {file}: {reason}.")

    def _take(self, entry: Entry, file: Path, began: dict[str, object]) -> None:
        text = file.read_text(encoding="utf-8")
        if text.strip() == str(began["notes"]).strip():
            file.unlink()
            self._app.say("The notes were not changed.")
            return

        def answered(met: Met, choices: Sequence[Choice]) -> None:
            theirs = next(iter(met.values())).theirs
            if choices[0].side == "mine":
                self._take(entry, file, {"notes": theirs or ""})
            else:
                self._app.say(f"The notes stay as somebody else saved them; yours are in {file}.")

        def saved() -> None:
            with suppress(OSError):
                file.unlink()

        from library.editing.changes import SetText

        self._app.changing.look(Wish(SetText(entry.id, "notes", text), began, answered, saved))

    def _run(self, file: Path, line: int) -> bool:
        """Run the editor; returns whether it ended well, and says so where it did not."""
        command = command_for(own_words(), file, line)
        self._app.drafting.keep_now()
        with self._app.suspend():
            refusal = _refusal(command)
        self._app.repaint()
        if refusal:
            self._app.read_again(refusal)
        return not refusal


def _refusal(command: Sequence[str]) -> str:
    """Run a command to its end; returns a sentence where it did not go well.

    Nothing is raised: the terminal would not be taken back.
    """
    try:
        done = subprocess.run(command, check=False)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        return f"{command[0]} could not be started: {reason}. VISUAL or EDITOR names it."
    return f"{command[0]} ended with {done.returncode}." if done.returncode else ""


def file_name(entry: str) -> str:
    """The name of the file in which the notes of an entry are written, whatever its id holds.

    Example:
        >>> file_name("gun-tap"), file_name("../gun tap")
        ('gun-tap-83d364fe.txt', 'gun-tap-34ae1183.txt')
    """
    plain = re.sub(r"[^a-z0-9]+", "-", entry.casefold()).strip("-")[:60]
    return f"{plain}-{zlib.crc32(entry.encode('utf-8', 'replace')):08x}.txt"


def own_words() -> list[str]:
    """The editor that the person named, as the words of a command; empty where there is none."""
    named = os.environ.get("VISUAL") or os.environ.get("EDITOR") or ""
    with suppress(ValueError):
        return shlex.split(named)
    return [named]


def command_for(editor: Sequence[str], file: Path, line: int) -> list[str]:
    """The command that opens a file at a line.

    Example:
        >>> command_for(["vi"], Path("taps.toml"), 7)
        ['vi', '+7', 'taps.toml']
        >>> command_for(["code", "--wait"], Path("taps.toml"), 7)
        ['code', '--wait', '--goto', 'taps.toml:7']
    """
    program = Path(editor[0]).name
    if program not in BEHIND_A_COLON:
        return [*editor, f"+{line}", str(file)]
    goto = ["--goto"] if program.startswith("cod") else []
    return [*editor, *goto, f"{file}:{line}"]
