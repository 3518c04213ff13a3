"""Forms in which what was typed over comes back."""

from __future__ import annotations

from collections.abc import Mapping

from tui.view.fields import Fields
from tui.view.text_line import TextLine


class BroughtBack(Fields):
    """Fields that know what stood in them before it gave way to typing.

    Attributes:
        typed_over: what stood in lines before it was typed over, by their keys.
    """

    def __init__(self, focus: str, typed: Mapping[str, TextLine]) -> None:
        super().__init__(focus, dict(typed))
        self.typed_over: dict[str, str] = {}

    def gave_way(self, text: str) -> None:
        """Keep what is typed over, to be brought back."""
        self.typed_over[self.focus] = text

    @property
    def stood_here(self) -> str:
        """What stood in the line in hand before it was typed over; empty where nothing else did."""
        before = self.typed_over.get(self.focus, "")
        return before if before != self.in_hand.text else ""
