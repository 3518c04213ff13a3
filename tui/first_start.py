"""Whether the program was ever started here before, so that a new hand is told what to do, once."""

from __future__ import annotations

from pathlib import Path

NAME = "started"
TEXT = "Heelclear was started here before. Without this file it shows its first five lines again.\n"


def is_first(state: Path) -> bool:
    """Whether nothing in the state folder tells of an earlier start.

    Args:
        state: the state folder, which need not be there.
    """
    return not (state / NAME).exists()


def remember(state: Path) -> None:
    """Leave word of this start; where that cannot be written, the next one is a first start again."""
    try:
        state.mkdir(parents=True, exist_ok=True)
        (state / NAME).write_text(TEXT, encoding="utf-8")
    except OSError:
        return
