"""Started for the first time and for the second."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from library.book.folders import state_folder
from tui.program import STARTED

Open = Callable[..., Any]


def test_only_the_very_first_start_tells_what_to_do(terminal: Open) -> None:
    (state_folder() / STARTED).unlink()
    first = terminal(afresh=True)
    first.wait_for("Your first time here")
    first.press("f9")
    first.exit_code()
    second = terminal(afresh=True)
    assert not any("Your first time here" in line for line in second.wait_for(" of "))
