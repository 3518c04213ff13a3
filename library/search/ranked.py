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
        others: further sizes that the text has.
        numbered: what of it is a number of a tool and no size, as typed.
        angles: degrees that are sought, had by those that were found or by none.
        absent: those of them that none of these has.
        only_part: words that are names of other tools, and of these only a part of another word.
        left_out: words without which these were found.
        named: the tool, and its work material, that those words led away from.
        meant: words of the book that are near those that were left out.
        for_any: words of a work material, where all of these are for any.
        troubles: sentences about what could not be understood; that part is left out.
    """

    numbers: Sequence[int]
    size: Size | None = None
    only_told: tuple[str, ...] = ()
    steps: str = ""
    of_angle: str = ""
    others: tuple[Size, ...] = ()
    numbered: tuple[str, ...] = ()
    angles: tuple[str, ...] = ()
    only_part: tuple[str, ...] = ()
    left_out: tuple[str, ...] = ()
    named: str = ""
    meant: tuple[str, ...] = ()
    for_any: tuple[str, ...] = ()
    troubles: tuple[str, ...] = ()
    absent: tuple[str, ...] = ()

    @property
    def sizes(self) -> tuple[Size, ...]:
        """All sizes, the likeliest first."""
        return (self.size, *self.others) if self.size is not None else self.others

    @property
    def told(self) -> str:
        """What has to be said of the words, as a sentence; empty where the tools are called by them.

        Example:
            >>> Ranked([1], only_told=("rotary",)).told, Ranked([1]).told
            ("No tool here is called 'rotary'; the word stands in what is told of these.", '')
            >>> Ranked([1], left_out=("machine",), named="tap for bronze").told
            "No tap for bronze here is called 'machine'; these were found without that word."
            >>> Ranked([1], left_out=("{}",)).told
            "No tool here is called '{}'; these were found without that word."
        """
        steps = f"The steps {self.steps} do not go along: each step has its own diameter, typed on the card or in the calculator."
        called = [
            _called("No tool here is called", self.only_told, "the word stands", "the words stand", "in what is told of these"),
            _called("No tool here is called", self.only_part, "the word is a part", "the words are parts", "of other words here"),
            _called("No tool here is called", self.for_any, "these are", "these are", "for any material"),
            _called(f"No {self.named or 'tool'} here is called", self.left_out, "these were found without", "these were found without", "that word" if len(self.left_out) == 1 else "those words"),
            f"Near {'it' if len(self.left_out) == 1 else 'them'} in the book is {' and '.join(map(repr, self.meant))}." if self.meant else "",
        ]  # fmt: skip
        return " ".join(
            one for one in (*self.troubles, self.of_angle, *called, steps if self.steps else "") if one
        )


def _called(begins: str, words: Sequence[str], one: str, several: str, ends: str) -> str:
    """A sentence about words; empty where there are none."""
    named = " or ".join(map(repr, words))
    return f"{begins} {named}; {several if len(words) > 1 else one} {ends}." if words else ""
