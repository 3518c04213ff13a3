"""Esc and a digit are one key with a number: Esc waits a moment for the digit, however far apart a slow line sets them."""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol

from textual import events

WAIT = 0.5
"""Seconds that Esc waits for a digit."""


class Timer(Protocol):
    """What a clock gives."""

    def stop(self) -> None:
        """Let it not ring."""


class HeldEscape:
    """Holds Esc back until the next key, or until a moment is over.

    Args:
        clock: has something done after so many seconds, unless it is stopped.
        let_go: takes Esc when no key came in time.

    Attributes:
        is_held: whether Esc waits.
    """

    def __init__(
        self, clock: Callable[[float, Callable[[], None]], Timer], let_go: Callable[[], None]
    ) -> None:
        self._clock = clock
        self._let_go = let_go
        self._timer: Timer | None = None

    @property
    def is_held(self) -> bool:
        """Whether Esc waits."""
        return self._timer is not None

    def keys(self, event: events.Key) -> list[events.Key]:
        """What a key means with the one before: nothing yet, itself, Esc and itself, or a key with a number."""
        digit = _digit(event)
        if event.key.startswith("alt+") and digit:
            return [*self.release(), _numbered(digit)]
        if event.key == "escape":
            before = self.release()
            self._timer = self._clock(WAIT, self._too_late)
            return before
        if self.is_held and digit:
            self.release()
            return [_numbered(digit)]
        return [*self.release(), event]

    def release(self) -> list[events.Key]:
        """Esc, where it waited."""
        if self._timer is None:
            return []
        self._timer.stop()
        self._timer = None
        return [events.Key("escape", "\x1b")]

    def _too_late(self) -> None:
        self._timer = None
        self._let_go()


def _digit(event: events.Key) -> str:
    """The digit of a key, with Alt or without; empty where it is none."""
    last = event.key.removeprefix("alt+")
    return last if len(last) == 1 and last in "0123456789" else ""


def _numbered(digit: str) -> events.Key:
    return events.Key(f"f{digit if digit != '0' else '10'}", None)
