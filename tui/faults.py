"""What is kept and said when the program fails by a fault of its own."""

from __future__ import annotations

import os
import traceback
from datetime import datetime
from pathlib import Path

LOG_NAME = "heelclear.log"
LARGEST = 256 * 1024
"""Bytes of the log above which it is begun anew, so that it never fills a disk."""


def keep(error: BaseException, folder: Path) -> Path | None:
    """Write the traceback to the log; returns its path, or nothing where it cannot be written.

    Args:
        error: what went wrong.
        folder: the state folder, made where it is not there.
    """
    log = folder / LOG_NAME
    when = datetime.now().astimezone().isoformat(timespec="seconds")
    text = f"{when}\n{''.join(traceback.format_exception(error))}\n"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        anew = log.exists() and log.stat().st_size > LARGEST
        mode = "w" if anew else "a"
        with open(log, mode, encoding="utf-8", errors="backslashreplace", opener=_never_waiting) as file:
            file.write(text)
    except OSError:
        return None
    return log


def _never_waiting(path: str, flags: int) -> int:
    """Open a file; a pipe in its place that nobody reads is refused."""
    return os.open(path, flags | os.O_NONBLOCK | os.O_NOCTTY, 0o666)


def farewell(error: BaseException, log: Path | None) -> str:
    """What to tell the person, in one paragraph.

    Example:
        >>> farewell(KeyError("drop"), None)
        "Heelclear stopped by a fault of its own (KeyError: 'drop'). Nothing in your book was changed by it. The log could not be written; please report this line together with what 'heelclear doctor' prints."
    """
    name = f"{type(error).__name__}: {error}" if str(error) else type(error).__name__
    where = (
        f"The details are in {log}; please report them"
        if log is not None
        else "The log could not be written; please report this line"
    )
    return (
        f"Heelclear stopped by a fault of its own ({name}). Nothing in your book was changed by it. "
        f"{where} together with what 'heelclear doctor' prints."
    )
