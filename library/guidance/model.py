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


WHEEL_LINES: Mapping[str, str] = {
    "abrasive": "Grain",
    "grit": "Grit",
    "grade": "Grade",
    "bond": "Bond",
    "shape": "Shape",
    "speed": "Speed",
    "infeed": "Infeed",
    "coolant": "Cool",
    "dress": "Dress",
}
"""What is told of a recommended wheel, each with its word."""

OPERATIONS: Mapping[str, str] = {
    "relief": "relief of teeth",
    "face": "faces of flutes",
    "point": "drill points",
    "web": "webs and split points",
    "cylinder": "round to a diameter",
    "hole": "holes and small places",
}
"""What is ground with a wheel, each word with what it stands for."""

OPERATION_OF: Mapping[str, str] = {
    "lip": "point",
    "face": "face",
    "spiral-point": "face",
    "web": "web",
    "hole": "hole",
}
"""The operation by which a surface is ground; of any other it is the relief of teeth."""


@dataclass(frozen=True)
class RecommendedWheel:
    """A kind of wheel for tools of a material and an operation.

    Attributes:
        id: its name in the files.
        title: in words.
        tool_materials: words of what the tools are made of.
        operations: words of what is ground; empty for every one.
        abrasives: words of what may cut in it.
        shapes: its types by ISO 525.
        like: the id of another, whose lines it takes where it has none itself.
        lines: what is told of it, by ``WHEEL_LINES``.
        synonyms: other words that a search should find it by.
        extra: the shop's own keys beginning with ``x-``, untouched.
        layer: the highest layer that has a part of it.
        place: where it begins in that layer's file.
    """

    id: str
    title: str
    tool_materials: tuple[str, ...] = ()
    operations: tuple[str, ...] = ()
    abrasives: tuple[str, ...] = ()
    shapes: tuple[str, ...] = ()
    like: str = ""
    lines: Mapping[str, Told] = field(default_factory=dict)
    synonyms: tuple[str, ...] = ()
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shipped"
    place: Place = NOWHERE


@dataclass(frozen=True)
class UnsuitedWheel:
    """A wheel that does not go with a tool or a way of grinding: it is said on every card that has both.

    Attributes:
        id: its name in the files.
        title: in words.
        state: ``stop`` or ``watch``.
        tool_materials: of the tools; empty for tools of every material.
        abrasives: of the wheels; empty for wheels of every one.
        shapes: of the wheels; empty for every shape.
        methods: how the relief is made; empty for every way.
        why: the reason.
        take: what to take in its place.
        extra: the shop's own keys beginning with ``x-``, untouched.
        layer: the highest layer that has a part of it.
        place: where it begins in that layer's file.
    """

    id: str
    title: str
    state: str = "watch"
    tool_materials: tuple[str, ...] = ()
    abrasives: tuple[str, ...] = ()
    shapes: tuple[str, ...] = ()
    methods: tuple[str, ...] = ()
    why: Told | None = None
    take: Told | None = None
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shipped"
    place: Place = NOWHERE


def recommended_wheels(book: Book) -> Mapping[str, RecommendedWheel]:
    """The recommended wheels of the book by id, each as it stands in the files."""
    return cast(Mapping[str, RecommendedWheel], book.more.get("recommended_wheel", {}))


def unsuited_wheels(book: Book) -> Mapping[str, UnsuitedWheel]:
    """The wheels that do not go with a tool or a way of grinding, by id."""
    return cast(Mapping[str, UnsuitedWheel], book.more.get("unsuited_wheel", {}))


WAYS: Mapping[str, str] = {"more": "more", "less": "less", "alike": "all alike"}
"""Which way a value is changed, each word with how it is said."""


@dataclass(frozen=True)
class Symptom:
    """A trouble that is seen, what to measure then, and which value to change which way.

    Attributes:
        id: its name in the files.
        title: the trouble as it is said; several symptoms with one title tell of one trouble.
        families: ids of the families that it is seen on; empty for every tool.
        synonyms: how it is said too.
        when: words of an entry that it is seen on alone; empty where it is seen on every entry of the families.
        measure: what to measure.
        value: the quantity to change; empty where it is none.
        way: a word of ``WAYS``; empty where there is no quantity.
        change: what to do.
        extra: the shop's own keys beginning with ``x-``, untouched.
        layer: the highest layer that has a part of it.
        place: where it begins in that layer's file.
    """

    id: str
    title: str
    families: tuple[str, ...] = ()
    synonyms: tuple[str, ...] = ()
    when: tuple[str, ...] = ()
    measure: Told | None = None
    value: str = ""
    way: str = ""
    change: Told | None = None
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shipped"
    place: Place = NOWHERE


def symptoms(book: Book) -> Mapping[str, Symptom]:
    """The symptoms of the book by id."""
    return cast(Mapping[str, Symptom], book.more.get("symptom", {}))
