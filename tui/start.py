"""Start the screens: look at the terminal first, then load what the first frame needs and nothing else."""

from __future__ import annotations

import argparse
import gc
import sys
from collections.abc import Iterator
from contextlib import contextmanager

from tui import terminal
from tui.doors import load


def run(options: argparse.Namespace) -> int:
    """Run the screens; returns the exit code.

    Python's search for cycles of garbage rests until the first frame: what is loaded until then stays
    anyway, and looking through it again and again takes a tenth of the start. Asyncio does without
    encryption where there is none; this program opens no connection, and saves four megabytes.

    Args:
        options: ``library`` (the shop's folder or nothing), ``units``, ``ascii``, ``figures`` and ``mouse``.
    """
    refusal = terminal.refusal()
    if refusal:
        return terminal.refuse(refusal)
    gc.disable()
    with _without("ssl"):
        run_program = load("tui.program", "run_program")
    return int(run_program(options))


@contextmanager
def _without(name: str) -> Iterator[None]:
    """While inside, a module that is not loaded yet cannot be imported; whoever can do without it does."""
    if name in sys.modules:
        yield
        return
    sys.modules[name] = None  # type: ignore[assignment]
    try:
        yield
    finally:
        del sys.modules[name]
