"""Scrolling: which part of something long is in sight, and which line of it is chosen."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass
class Viewport:
    """A window of ``height`` lines over ``count`` lines, with a chosen line that stays in sight.

    Attributes:
        count: lines in all.
        height: lines in sight.
        chosen: the chosen line, from 0.
        top: the first line in sight.

    Example:
        >>> view = Viewport(count=100, height=10)
        >>> view.move(12)
        >>> view.chosen, view.top
        (12, 3)
    """

    count: int = 0
    height: int = 1
    chosen: int = 0
    top: int = 0

    def move(self, by: int) -> None:
        """Choose the line ``by`` lines further on, stopping at the ends."""
        self.choose(self.chosen + by)

    def page(self, pages: int) -> None:
        """Choose a line a whole window further on; the window moves with it."""
        step = pages * max(self.height - 1, 1)
        self.top += step
        self.choose(self.chosen + step)

    def choose(self, index: int) -> None:
        """Choose a line and bring it into sight."""
        self.chosen = max(0, min(index, self.count - 1))
        self._settle()

    def resize(self, count: int, height: int) -> None:
        """Take a new number of lines or a new height; the chosen line stays in sight."""
        self.count, self.height = count, max(height, 1)
        self.choose(self.chosen)

    def refit(self, count: int, height: int) -> None:
        """Take a new number of lines and stay where it was scrolled to; a new height brings the chosen line back."""
        if max(height, 1) != self.height:
            self.resize(count, height)
        self.count = count
        self.scroll(0)

    def scroll(self, by: int) -> None:
        """Move the window without choosing."""
        self.top = max(0, min(self.top + by, self.count - self.height))

    def below(self) -> int:
        """How many lines lie under the window."""
        return max(0, self.count - self.top - self.height)

    def _settle(self) -> None:
        lowest = max(self.count - self.height, 0)
        self.top = max(0, min(self.top, self.chosen, lowest))
        self.top = max(self.top, self.chosen - self.height + 1)
