"""A line with its source: its numbers, its lengths in the unit that is worked in, its first sentence."""

from __future__ import annotations

import pytest

from geometry.sentences import Kind
from library.guidance.told import Told


def in_inches(number: float, kind: Kind) -> str:
    return f"{number / 25.4:.4f} in"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Fit the cam {chosen_throw}, high at the edge.", "Fit the cam (1.6 mm), high at the edge."),
        ("Set the head {wheel_head_height}.", "Set the head."),
        ("{chosen_throw}", " (1.6 mm)"),
        ("No number at all.", "No number at all."),
        ("A brace { alone.", "A brace { alone."),
    ],
)
def test_a_number_stands_in_brackets_where_the_job_knows_it_and_nothing_where_not(
    text: str, said: str
) -> None:
    assert Told(text).said(lambda key: {"chosen_throw": "1.6 mm"}.get(key, "")) == said


def test_a_length_stands_as_typed_until_a_unit_is_worked_in() -> None:
    line = Told("Take {0.508 mm} and {0.002 in}.")
    assert line.said() == "Take 0.508 mm and 0.002 in."
    # Derived: 0.508 / 25.4 = 0.02; what is in inches already stays as it was typed.
    assert line.said(convert=in_inches) == "Take 0.0200 in and 0.002 in."


def test_in_short_is_the_first_sentence_and_no_point_of_a_number_ends_it() -> None:
    assert Told("Take {0.02 mm} a pass. Then measure.").in_short() == "Take 0.02 mm a pass."
    assert Told("Without an end").in_short() == "Without an end"
