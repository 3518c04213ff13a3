"""Signals: the terminal is restored and the exit code says which signal it was."""

from __future__ import annotations

import asyncio
import signal
from collections.abc import Callable

ENDING = (signal.SIGHUP, signal.SIGTERM, signal.SIGINT)
"""The line was cut, somebody asked to end, and ctrl+c from outside."""


def exit_code(number: int) -> int:
    """The exit code of a program that a signal ended.

    Example:
        >>> exit_code(signal.SIGTERM)
        143
    """
    return 128 + number


def on_ending(leave: Callable[[int], None]) -> None:
    """Call ``leave`` with the exit code when one of these signals comes; needs the running loop."""
    loop = asyncio.get_running_loop()
    for number in ENDING:
        loop.add_signal_handler(number, leave, exit_code(number))
