"""The person's editor is given a file of the book as a file, whatever its name looks like."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from library.issue import Place
from tui.services.editor import Editor

HOSTILE = (
    '+call system("touch ran")|q!.toml',
    "-something.toml",
    "--cmd=q.toml",
    "+7",
    "a name: with blanks:3.toml",
)

# How each of these editors is given a line and a file that begins like an option; common practice, no source.
WORDS = {
    "vi": ["+7", "--", "{}"],
    "vim": ["+7", "--", "{}"],
    "nvim": ["+7", "--", "{}"],
    "emacs": ["+7", "--", "{}"],
    "nano": ["--", "+7", "{}"],
    "micro": ["--", "+7", "{}"],
    "hx": ["--", "{}:7"],
    "helix": ["--", "{}:7"],
    "code": ["--goto", "{}:7"],
    "editor-of-mine": ["+7", "{}"],
}

SCRIPT = """\
#!{python} -S
import sys
with open({log!r}, "w", encoding="utf-8", errors="surrogateescape") as log:
    log.write("\\0".join(sys.argv[1:]))
"""


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder of the book, in which the program was started."""
    folder = tmp_path / "book"
    folder.mkdir()
    monkeypatch.chdir(folder)
    return folder


def _given(name: str, editor: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What an editor of that name is given for a file that lies in the folder we stand in."""
    log, script = tmp_path / "log", tmp_path / editor
    script.write_text(SCRIPT.format(python=sys.executable, log=str(log)))
    script.chmod(0o700)
    monkeypatch.setenv("VISUAL", f"'{script}' --own")
    file = Path(".") / name
    file.write_text("schema = 1\n")
    assert Editor(tmp_path / "notes").run(Place(file, 7)) == ""
    return log.read_text().split("\0")


@pytest.mark.parametrize("editor", WORDS)
def test_an_editor_gets_the_whole_path_behind_what_ends_its_options(
    editor: str, book: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    name = HOSTILE[0]
    expected = ["--own", *(word.format(book / name) for word in WORDS[editor])]
    assert _given(name, editor, tmp_path, monkeypatch) == expected


@pytest.mark.parametrize("name", HOSTILE)
def test_no_name_of_a_file_is_a_command_or_an_option(
    name: str, book: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    given = _given(name, "some-editor", tmp_path, monkeypatch)
    assert given == ["--own", "+7", str(book / name)]
