"""The data model of what the book tells of the work, as frozen objects."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import cast

from library.book.model import Book, Layer
from library.guidance.told import Told
from library.issue import NOWHERE, Place

STEPS: Mapping[str, str] = {
    "hold": "Hold",
    "true": "True",
    "wheel": "Wheel",
    "set": "Set",
    "feed": "Feed",
    "coolant": "Cool",
    "dress": "Dress",
    "read": "Read",
    "check": "Check",
}
"""The steps of a set-up in their order, each with its word."""

ON_PAPER = ("hold", "true", "set", "feed", "read", "check")
"""Those that are carried to the machine; wheel, coolant and dressing are settled before."""

ON_FULL_PAPER = ("set",)
"""What is left of them where the paper holds tables of steps too."""

AT_A_GLANCE = ("hold", "set", "feed", "read")
"""Those that stand beside an entry that is read at arm's length, where what to check is told of the whole tool."""


@dataclass(frozen=True)
class Setup:
    """How one surface of a tool is ground, step by step.

    Attributes:
        id: its name in the files.
        title: what is ground and how, in words.
        family: the id of the family whose tools are ground so; empty for one that others only follow.
        surface: the word of the surface, or of what is ground beside those that are relieved.
        methods: how its relief is made; empty where it is made in any way.
        when: words of an entry that it is for; empty where it is for every entry of the family.
        like: the id of another, whose steps it follows where it has none itself.
        lines: what to do, by step.
        synonyms: other words that a search should find it by.
        extra: the shop's own keys beginning with ``x-``, untouched.
        layer: the highest layer that has a part of it.
        place: where it begins in that layer's file.
    """

    id: str
    title: str
    family: str = ""
    surface: str = ""
    methods: tuple[str, ...] = ()
    when: tuple[str, ...] = ()
    like: str = ""
    lines: Mapping[str, Told] = field(default_factory=dict)
    synonyms: tuple[str, ...] = ()
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shipped"
    place: Place = NOWHERE


def setups(book: Book) -> Mapping[str, Setup]:
    """The set-ups of the book by id, each as it stands in the files."""
    return cast(Mapping[str, Setup], book.more.get("setup", {}))
