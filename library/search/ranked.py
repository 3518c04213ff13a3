"""What a search finds, and what has to be said of its words."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from library.search.sizes import Size


class Ranked(NamedTuple):
    """The rows that a text finds.

    Attributes:
        numbers: of the rows, the likeliest first.
        size: what the text says of the tool's size, besides the words.
        only_told: words by which none of them is called, and no trouble either; they stand in what is told of tools.
        steps: the first and the last step of a tool, which do not go along.
        of_angle: that none of them has the angle that was sought, as a sentence.
    """

    numbers: Sequence[int]
    size: Size | None = None
    only_told: tuple[str, ...] = ()
    steps: str = ""
    of_angle: str = ""

    @property
    def told(self) -> str:
        """What has to be said of the words, as a sentence; empty where the tools are called by them.

        Example:
            >>> Ranked([1], only_told=("rotary",)).told, Ranked([1]).told
            ("No tool here is called 'rotary'; the word stands in what is told of these.", '')
        """
        steps = f"The steps {self.steps} do not go along: each step has its own diameter, typed on the card or in the calculator."
        named = " or ".join(map(repr, self.only_told))
        some = "the words stand" if len(self.only_told) > 1 else "the word stands"
        called = f"No tool here is called {named}; {some} in what is told of these." if named else ""
        return " ".join(one for one in (self.of_angle, called, steps if self.steps else "") if one)
