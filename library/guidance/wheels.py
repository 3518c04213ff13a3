"""Which wheels the book recommends for a tool, and what it says against the wheel at hand."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from library.book.model import Book
from library.book.tool_materials import TOOL_MATERIALS
from library.equipment.abrasives import ABRASIVES, called
from library.equipment.model import Wheel
from library.guidance.following import lines_with_others
from library.guidance.model import (
    OPERATION_OF,
    WHEEL_LINES,
    RecommendedWheel,
    UnsuitedWheel,
    recommended_wheels,
    unsuited_wheels,
)


@dataclass(frozen=True)
class Ground:
    """What is known of a tool and how it is ground, as far as it matters to the wheel.

    Attributes:
        tool_material: a word of ``TOOL_MATERIALS``; empty where nobody can tell.
        surface: the word of what is ground; empty where nobody can tell.
        method: how the relief is made; empty where nobody can tell.
    """

    tool_material: str = ""
    surface: str = ""
    method: str = ""


def whole(book: Book, wheel: RecommendedWheel) -> RecommendedWheel:
    """A recommended wheel with the lines of those that it follows."""
    return replace(wheel, lines=lines_with_others(wheel, recommended_wheels(book), WHEEL_LINES))


def recommended_for(book: Book, ground: Ground) -> tuple[RecommendedWheel, ...]:
    """The wheels for a tool and what is ground on it, whole; for every operation where nobody can tell what is ground."""
    operation = OPERATION_OF.get(ground.surface, "relief") if ground.surface else ""
    return tuple(
        whole(book, one)
        for one in recommended_wheels(book).values()
        if ground.tool_material in one.tool_materials and (not operation or operation in one.operations)
    )


@dataclass(frozen=True)
class Against:
    """What the book says against the wheel at hand.

    Attributes:
        rule: the table that says it.
        by_name: whether the abrasive was only read off the name of the wheel, so that it may be another.
    """

    rule: UnsuitedWheel
    by_name: bool = False

    @property
    def stops(self) -> bool:
        """Whether nothing is to be ground so; what rests on a name alone is only to be looked at."""
        return self.rule.state == "stop" and not self.by_name

    def said(self, wheel: Wheel, ground: Ground) -> str:
        """The reason, and what to take in place of it.

        Args:
            wheel: at hand.
            ground: the tool and how it is ground.
        """
        abrasive = ABRASIVES.get(wheel.abrasive or called(wheel.title), "")
        known = " by its name" if self.by_name else ""
        parts = [
            f"of {abrasive}{known}" if self.rule.abrasives else "",
            _shape(wheel) if self.rule.shapes else "",
        ]
        about = " and ".join(part for part in parts if part)
        tool = f", and the tool is {TOOL_MATERIALS[ground.tool_material]}" if self.rule.tool_materials else ""
        lines = (self.rule.why, self.rule.take)
        reasons = " ".join(line.said() for line in lines if line is not None)
        return f"{wheel.title} is {about}{tool}. {reasons}".strip()


def _shape(wheel: Wheel) -> str:
    number, _, name = wheel.shape.removeprefix("type-").partition("-")
    return f"a {name.replace('-', ' ')} wheel (type {number})"


def against(book: Book, wheel: Wheel, ground: Ground) -> tuple[Against, ...]:
    """What the book says against a wheel for a tool: each rule of which every condition is known and met.

    Args:
        book: has the rules.
        wheel: at hand.
        ground: the tool and how it is ground.
    """
    abrasive, by_name = (wheel.abrasive, False) if wheel.abrasive else (called(wheel.title), True)
    return tuple(
        Against(one, by_name and bool(one.abrasives))
        for one in unsuited_wheels(book).values()
        if _met(one.tool_materials, ground.tool_material)
        and _met(one.abrasives, abrasive)
        and _met(one.shapes, wheel.shape)
        and _met(one.methods, ground.method)
        and (one.tool_materials or one.abrasives or one.shapes or one.methods)
    )


def _met(wanted: Iterable[str], known: str) -> bool:
    words = tuple(wanted)
    return not words or known in words
