"""A program killed in the middle of a job card gives back all that it had written of the typing."""

from __future__ import annotations

import signal
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from library.demo import lay_out
from tui.services.autosave import SOON

Open = Callable[..., Any]

LOST_AT_MOST = len("the third land is chipped")
"""Letters that are still to be typed when the program is killed, so that it happens in the middle."""

TEXT = "It squeals in bronze and leaves a burr on every second thread, the third land is chipped"


@pytest.fixture
def yard(tmp_path: Path) -> Path:
    folder = tmp_path / "yard"
    lay_out(folder)
    return folder


def solid(text: str) -> str:
    """A text without its blanks, one of which is gone where a line ends."""
    return "".join(text.split())


def kept_of(home: Path) -> str:
    """As much of the text as stands in a draft on the disk."""
    folder = home / "state" / "heelclear" / "drafts"
    texts = [path.read_text() for path in folder.glob("*.toml")]
    return next((TEXT[:n] for n in range(len(TEXT), 0, -1) if any(TEXT[:n] in text for text in texts)), "")


@pytest.mark.depth
def test_kill_9_while_typing_loses_what_came_after_the_last_writing_alone(
    terminal: Open, yard: Path, an_empty_home: Path
) -> None:
    """How much that is depends on the machine, and is reported; the program's own clock for it is half a second."""
    assert SOON <= 0.5
    opened = terminal("--library", str(yard))
    opened.wait_for(" of ")
    opened.press("bronze spi")
    opened.press("\x06")
    opened.wait_for("New job card")
    opened.press("T-99\x0e")
    opened.wait_for("[Received]")
    first, rest = TEXT[:-LOST_AT_MOST], TEXT[-LOST_AT_MOST:]
    for sign in first:
        opened.send(sign)
        opened.read(0.02)
    end = time.monotonic() + 90
    while len(kept_of(an_empty_home)) <= len(TEXT) // 2:
        assert time.monotonic() < end, "nothing of it was ever written"
        opened.read(0.05)
    for sign in rest:
        opened.send(sign)
        opened.read(0.02)
    opened.kill(signal.SIGKILL)
    opened.exit_code()
    kept = len(kept_of(an_empty_home))

    again = terminal("--library", str(yard))
    again.wait_for("1 unsaved")
    again.press("f8", "unsaved", "enter")
    again.wait_for("Job card: new card")
    again.press("enter")
    again.wait_for("T-99")
    shown = solid("".join(line.partition("│")[0] for line in again.wait_for("[Received]")))
    back = next(count for count in range(len(TEXT), 0, -1) if solid(TEXT[:count][-30:]) in shown)
    print(f"{len(TEXT)} characters typed, {back} came back")
    assert solid(TEXT[:back]) == solid(TEXT[:kept])
    assert kept > len(TEXT) // 2
