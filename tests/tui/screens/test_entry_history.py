"""The history of an entry says whether there may be more of it than is shown."""

from __future__ import annotations

from datetime import datetime

from library.history.entry_history import MOST_COMMITS, KeyChange, Revision
from tui.screens.entry_history import history_lines
from tui.view.lines import text_of

CHANGED = Revision("2", "Ann", datetime(2026, 5, 2), "Rake", (KeyChange("rake_angle", "4 deg", "5 deg"),))
BEGUN = Revision("1", "Ann", datetime(2026, 5, 1), "Begin", (KeyChange("id", None, "gun-tap"),))


def told(*revisions: Revision) -> str:
    return " ".join(text_of(one).strip() for one in history_lines(revisions, 80))


def test_a_history_that_does_not_reach_the_beginning_says_so() -> None:
    older = f"What is older than the last {MOST_COMMITS} changes of the book in git is not shown here"
    assert older in told(CHANGED)
    assert older not in told(CHANGED, BEGUN)
    assert "4 deg -> 5 deg" in told(CHANGED)
    assert f"in the last {MOST_COMMITS} changes of the book" in told()
