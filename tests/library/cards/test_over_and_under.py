"""A reading that is over what it may be calls for another thing than one that is under it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.cards.inspecting import verdicts
from library.cards.issues import keeps_open
from library.cards.job import work_out
from library.cards.model import Card, Inspection

ELSE = ", or say in the result what becomes of the tool."


@pytest.mark.parametrize(
    ("key", "shall", "within", "text", "side", "cure"),
    [
        ("drop", "0.80 mm", "0.02 mm", "0.85 mm", "over", f"The heel lies too deep: set less and grind the whole land again{ELSE}"),
        ("drop", "0.80 mm", "0.02 mm", "0.75 mm", "under",
         f"The heel lies too high: grind as far as the heel, or set more and grind it again{ELSE}"),
        ("rake_angle", "10 deg", "0.5 deg", "11.7 deg", "over", f"Set less and grind it again{ELSE}"),
        ("rake_angle", "10 deg", "0.5 deg", "8.3 deg", "under", f"Set more and grind it again{ELSE}"),
        ("diameter", "11.9 mm", "0.02 mm", "11.95 mm", "over", f"It is too large: grind it again{ELSE}"),
    ],
)  # fmt: skip
def test_what_to_do_goes_by_the_side_on_which_a_reading_is_off(
    job: Card, book: Book, key: str, shall: str, within: str, text: str, side: str, cure: str
) -> None:
    found = work_out(replace(job, after={key: Inspection((text,) * 4, shall, within)}), book)
    (verdict,) = (one for one in verdicts(found) if one.key == key)
    assert verdict.marks[0].side == side
    told = [one.text for one in keeps_open(found) if one.way == f"after.{key}"]
    assert len(told) == 4
    assert all(one.endswith(f" {side} the tolerance. {cure}") for one in told)


def test_a_tool_that_is_too_small_is_not_sent_back_to_the_wheel(job: Card, book: Book) -> None:
    card = replace(job, after={"diameter": Inspection(("11.80 mm",), "11.9 mm", "0.02 mm")})
    said = " ".join(one.text for one in keeps_open(work_out(card, book)))
    assert "11.80 mm is less than the 11.880 mm it must have" in said
    assert "rind it again" not in said
