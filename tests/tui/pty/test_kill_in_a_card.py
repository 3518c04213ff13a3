"""A program killed in the middle of a job card loses half a second of typing at most."""

from __future__ import annotations

import signal
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from library.demo import lay_out

Open = Callable[..., Any]

KEPT_WITHIN = 0.5
"""Seconds from a key to its draft."""

SLOW_MACHINE = 0.5
"""Seconds that a busy machine may take to wake the program and to write; no promise of the program."""

EVERY = 0.06
"""Seconds between two keys, as a quick typist has them."""

TEXT = "It squeals in bronze and leaves a burr on every second thread, the third land is chipped"


@pytest.fixture
def yard(tmp_path: Path) -> Path:
    folder = tmp_path / "yard"
    lay_out(folder)
    return folder


def test_kill_9_while_typing_loses_at_most_half_a_second(terminal: Open, yard: Path) -> None:
    opened = terminal("--library", str(yard))
    opened.wait_for(" of ")
    opened.press("bronze spi")
    opened.press("\x06")
    opened.wait_for("New job card")
    opened.press("T-99\x0e")
    opened.wait_for("[2 Received]")
    typed: list[float] = []
    for sign in TEXT:
        opened.press(sign) if not typed else opened_write(opened, sign)
        typed.append(time.monotonic())
        time.sleep(EVERY)
    end = time.monotonic()
    opened.kill(signal.SIGKILL)
    opened.exit_code()
    safe = sum(1 for moment in typed if moment < end - KEPT_WITHIN - SLOW_MACHINE)
    assert safe > len(TEXT) // 2

    again = terminal("--library", str(yard))
    again.wait_for("1 unsaved draft")
    again.press("\x12")
    again.wait_for("Job card: new card")
    again.press("enter")
    again.wait_for("T-99")
    again.press("\x0e")
    shown = "".join(line.strip() for line in again.wait_for("[2 Received]"))
    back = next(count for count in range(len(TEXT), 0, -1) if TEXT[:count][-30:] in shown)
    print(f"{len(TEXT)} characters typed, {back} came back: {(len(TEXT) - back) * EVERY:.2f} s lost")
    assert back >= safe


def opened_write(opened: Any, sign: str) -> None:
    """Send a key without waiting for what is painted."""
    import os

    os.write(opened.file, sign.encode())
    opened.read(0.0, 0.001)
