"""The service that runs the person's own editor: on a file of the book at a line, or on the notes of an entry."""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import zlib
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from library.book.model import Entry
from library.files.own_file import put_whole
from library.issue import Place

BEHIND_A_COLON = frozenset({"code", "codium", "code-insiders", "hx", "helix", "subl", "zed"})
"""Editors that want the line behind the file's name; all others take it before, with a plus."""

ENDS_ITS_OPTIONS = frozenset({"hx", "helix"})
"""Of these, those that take all behind two dashes as files; of the others it is not known."""

DASHES_BEHIND_LINE = frozenset({"vi", "vim", "view", "gvim", "nvim", "emacs"})
"""Editors that take a line, then two dashes, and all behind them as files."""

DASHES_BEFORE_LINE = frozenset({"nano", "rnano", "micro"})
"""Editors that want the two dashes first, and take the line behind them too."""

NONE_NAMED = (
    "Neither VISUAL nor EDITOR names an editor. Leave, name one (export EDITOR=nano), and start again."
)


class Editor:
    """The person's editor, and the notes that are written in it.

    The notes of an entry lie in a file of their own until they are saved in the book, so that nothing can lose
    them; where an earlier run left some, these are opened.

    Args:
        notes: the folder in which notes lie while they are written.
    """

    def __init__(self, notes: Path) -> None:
        self._notes = notes

    def is_named(self) -> bool:
        """Whether the person named an editor."""
        return bool(own_words())

    def run(self, place: Place) -> str:
        """Open a file at a line and wait until the editor has ended; returns a sentence where it went wrong."""
        return _refusal(command_for(own_words(), place.file, place.line))

    def file_of_notes(self, entry: Entry) -> Path:
        """The file in which the notes of an entry are written."""
        return self._notes / file_name(entry.id)

    def begin_notes(self, entry: Entry) -> None:
        """Write the notes as the entry has them into that file, unless an earlier run left some there.

        Raises:
            OSError: where that cannot be done.
        """
        file = self.file_of_notes(entry)
        if not file.exists():
            put_whole(file, [f"{entry.notes.rstrip()}\n".encode()])


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
    """The command that opens a file at a line, with the whole path, so that no name looks like a command or an option.

    Two dashes are put in besides where the editor is known to take them; another might open a file called so.

    Example:
        >>> command_for(["vi"], Path("/book/taps.toml"), 7)
        ['vi', '+7', '--', '/book/taps.toml']
        >>> command_for(["code", "--wait"], Path("/book/taps.toml"), 7)
        ['code', '--wait', '--goto', '/book/taps.toml:7']
    """
    program, path, at = Path(editor[0]).name, str(file.absolute()), f"+{line}"
    if program in BEHIND_A_COLON:
        before = ["--goto"] if program.startswith("cod") else ["--"] if program in ENDS_ITS_OPTIONS else []
        return [*editor, *before, f"{path}:{line}"]
    if program in DASHES_BEHIND_LINE:
        return [*editor, at, "--", path]
    if program in DASHES_BEFORE_LINE:
        return [*editor, "--", at, path]
    return [*editor, at, path]
