"""What looks like a slip is doubted on a card as soon as it is typed, whatever its calculation still wants."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.job import work_out
from library.cards.model import Setting, Tool
from library.cards.starting import from_entry
from library.units.show import say
from library.units.system import INCH


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def told(shipped: Book, name: str, typed: dict[str, str]) -> list[tuple[str, str]]:
    """What an unfinished calculation of a jobber drill of .362 in, or of a step drill, has to say."""
    entry = (
        "step-drill-spiral-flute-plain-steel" if name == "step-relief" else "twist-drill-jobber-plain-steel"
    )
    size = "0.25 in, 0.5 in" if name == "step-relief" else ".362 in"
    card = replace(
        from_entry(shipped, shipped.entries[entry]),
        units="in",
        tool=Tool(size=size, flutes="2"),
        settings={name: Setting(typed)},
    )
    step = work_out(card, shipped).step(name)
    assert step is not None
    assert step.answer.result is None
    return [(one.state, say(one.sentence, INCH)) for one in step.checks]


def test_a_least_diameter_far_under_that_of_the_tool_is_doubted(shipped: Book) -> None:
    assert told(shipped, "size-loss", {"least_diameter": ".002 in"}) == [
        (
            "watch",
            "Min. diameter: 0.0020 in does not go with a diameter of 0.3620 in. See the unit and the decimal point, and "
            "measure again.",
        )
    ]


def test_one_that_goes_with_the_tool_is_not(shipped: Book) -> None:
    assert told(shipped, "size-loss", {"least_diameter": ".352 in"}) == []


def test_a_feed_in_the_line_of_the_shoulder_angles_is_doubted(shipped: Book) -> None:
    ((state, said),) = told(shipped, "step-relief", {"included_angle": ".004"})
    assert state == "watch"
    assert said.startswith("Included angle: 0.0040 deg looks like a slip")
