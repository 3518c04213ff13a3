"""One command opens an invented shop's book and touches nobody's own."""

from __future__ import annotations

from pathlib import Path

import pytest

from tui.main import main


def test_without_a_terminal_it_lays_the_book_out_and_says_how_to_open_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "yard"
    assert main(["demo", str(folder)]) == 0
    assert f"heelclear --library {folder}" in capsys.readouterr().out
    assert main(["--library", str(folder), "check"]) == 1
    assert "a-slip.toml" in capsys.readouterr().out


def test_a_folder_with_a_book_in_it_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "ours.toml").write_text("schema = 1\n", encoding="utf-8")
    assert main(["demo", str(tmp_path)]) == 2
    assert "name another folder" in capsys.readouterr().err
    assert sorted(path.name for path in tmp_path.iterdir()) == ["ours.toml"]
