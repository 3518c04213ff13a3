"""A fault of the program: told in a paragraph, kept in the log, the terminal as it was, and never exit code 0."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

from tui import faults

Open = Callable[..., Any]

BROKEN = """
import sys
from tui.screens.book import BookScreen
def fail(self):
    raise RuntimeError("title \\x1b]0;owned\\x07 of a file")
BookScreen.do_down = fail
from tui.main import main
sys.exit(main([]))
"""


def test_a_fault_restores_the_terminal_and_is_kept_in_the_log(terminal: Open, an_empty_home: Path) -> None:
    opened = terminal(code=BROKEN)
    opened.wait_for(" of ")
    opened.press("down")
    assert opened.exit_code() == 1
    assert b"\x1b[?1049l" in opened.written
    last = opened.written.rpartition(b"\x1b[?1049l")[2]
    assert b"stopped by a fault of its own" in last
    assert b"\x1b]0;" not in last
    log = an_empty_home / "state" / "heelclear" / "heelclear.log"
    assert "RuntimeError" in log.read_text(encoding="utf-8")


def test_the_log_is_begun_anew_before_it_fills_the_disk(tmp_path: Path) -> None:
    log = tmp_path / faults.LOG_NAME
    log.write_text("x" * (faults.LARGEST + 1), encoding="utf-8")
    assert faults.keep(KeyError("drop"), tmp_path) == log
    assert log.stat().st_size < 10_000


def test_a_log_that_cannot_be_written_is_no_second_fault(tmp_path: Path) -> None:
    (tmp_path / "state").write_text("a file where the folder would be", encoding="utf-8")
    assert faults.keep(KeyError("drop"), tmp_path / "state") is None
    assert "could not be written" in faults.farewell(KeyError("drop"), None)
