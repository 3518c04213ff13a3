"""The first steps at one start and at the next."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from library.book.folders import state_folder
from tui.first_steps import FILE

Open = Callable[..., Any]


@pytest.mark.depth
def test_what_was_done_once_is_told_no_more_and_what_was_not_is_told_at_the_next_start_too(
    terminal: Open,
) -> None:
    (state_folder() / FILE).unlink()
    first = terminal(afresh=True)
    first.wait_for("Enter opens the entry")
    first.press("enter")
    first.press("f9")
    first.press("f9")
    first.exit_code()
    second = terminal(afresh=True)
    told = second.wait_for("F2 gives settings")
    assert not any("Enter opens the entry" in line for line in told)
