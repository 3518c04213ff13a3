"""What a new hand has not done yet: it is told in the book until it was done once, or put away."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from library.files.own_file import put_whole
from library.files.plain_bytes import plain_bytes

FILE = "first-steps"
"""The file in the state folder with a line for each step that was done."""

LARGEST = 1024
"""Bytes that are read of it; all steps take forty."""

STEPS = ("open", "calculate", "card", "menu", "demo")
"""The steps in their order; without the file all of them are told."""

_DONE_BY = {
    ("book", "go-on"): "open",
    ("book", "calculate"): "calculate",
    ("entry", "calculate"): "calculate",
    ("entry", "go-on"): "calculate",
    ("*", "begin-card"): "card",
    ("*", "cards"): "card",
    ("*", "menu"): "menu",
}
"""The step that an action of a screen is."""


@dataclass
class FirstSteps:
    """The steps that are left.

    Attributes:
        left: in their order.
        folder: where it is written down what was done; nowhere where it is nothing.
    """

    left: Sequence[str] = ()
    folder: Path | None = None

    def did(self, where: str, action: str) -> None:
        """Something was done on a screen."""
        if self.left:
            self.take(_DONE_BY.get((where, action)) or _DONE_BY.get(("*", action)) or "")

    def take(self, *steps: str) -> None:
        """Steps were done; where that cannot be written down, they are told again at the next start."""
        left = tuple(one for one in self.left if one not in steps)
        if left == tuple(self.left):
            return
        self.left = left
        if self.folder is None:
            return
        done = [one for one in STEPS if one not in left] + [
            one for one in _told(self.folder) if one not in STEPS
        ]
        with suppress(OSError):
            put_whole(self.folder / FILE, ["".join(f"{one}\n" for one in done).encode()], lasting=False)

    def put_away(self) -> None:
        """Tell none of them any more."""
        self.take(*STEPS)


def first_steps(folder: Path) -> FirstSteps:
    """The steps that are left by what the state folder says, which need not be there.

    Args:
        folder: the state folder.
    """
    done = _told(folder)
    return FirstSteps(tuple(one for one in STEPS if one not in done), folder)


def _told(folder: Path) -> list[str]:
    """What the file says was done, also of steps that only another version of the program knows."""
    try:
        return plain_bytes(folder / FILE, LARGEST).decode("utf-8", "replace").split()
    except OSError:
        return []
