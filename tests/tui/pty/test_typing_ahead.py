"""Keys that arrive together, as over a slow line, do what they do one by one."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

pytestmark = pytest.mark.depth
"""It takes long, and the server runs it."""

Open = Callable[..., Any]


def test_what_is_typed_ahead_goes_to_the_screen_that_it_opens(terminal: Open) -> None:
    opened = terminal()
    opened.wait_for(" of ")
    opened.press("hand tap", "f2", "10mm", "down", "1.5mm")
    shown = opened.wait_for("1.5mm")
    assert any("Diameter" in line and "10mm" in line for line in shown)
    opened.press("f9")
    assert any("Find: hand tap" in line for line in opened.wait_for("Find: "))


def test_going_back_faster_than_screens_close_leaves_the_program_in_order(terminal: Open) -> None:
    opened = terminal()
    opened.wait_for(" of ")
    opened.press("hand tap", "enter", "f2", "f4", "f9", "f9", "f9", "f9", "f9")
    assert opened.exit_code() == 0


SLOW_DISK = """
import sys, time
from library.book import opening
from tui.main import main
open_book = opening.open_book
def slowly(*names, **options):
    time.sleep(2)
    return open_book(*names, **options)
opening.open_book = slowly
sys.exit(main([]))
"""


def test_what_is_typed_before_the_book_is_read_waits_for_it(terminal: Open) -> None:
    opened = terminal(code=SLOW_DISK)
    opened.wait_for(" of ")
    opened.press("hand tap", "f2", "10mm", "down", "1.5mm")
    shown = opened.wait_for("1.5mm")
    assert any("Diameter" in line and "10mm" in line for line in shown)
    opened.press("f9")
    assert any("Find: hand tap " in line for line in opened.wait_for("Find: "))


def test_a_book_that_is_slow_to_read_keeps_nobody_from_leaving(terminal: Open) -> None:
    opened = terminal(code=SLOW_DISK.replace("sleep(2)", "sleep(600)"))
    opened.wait_for(" of ")
    opened.press("enter", "x")
    opened.send("f9")
    opened.wait_for_bytes(b"\x1b[?1049l")
