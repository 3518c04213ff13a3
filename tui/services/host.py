"""The protocol of what a service may ask of the program that it works for."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Protocol

if TYPE_CHECKING:
    from textual.timer import Timer


class Host(Protocol):
    """The program, as far as a service knows it."""

    @property
    def front(self) -> object:
        """The screen in front; only whether it is still the same is asked."""

    def say(self, sentence: str) -> None:
        """Tell the person something, until the next key."""

    def draw_front(self) -> None:
        """Show the screen in front as it now is."""

    def on_screen(self, do: Callable[[], None]) -> None:
        """Call something on the thread of the screens; called from another thread."""

    def in_thread(self, work: Callable[[], None], group: str, *, exclusive: bool = False) -> None:
        """Run something in a thread; where it is exclusive, whatever else of its group is running is cancelled."""

    def set_timer(self, delay: float, callback: Callable[[], None]) -> Timer:
        """Do something once, some seconds from now."""

    def set_interval(self, interval: float, callback: Callable[[], None]) -> Timer:
        """Do something again and again."""
