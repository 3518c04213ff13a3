"""An answer in which nothing is judged says so in the place of the verdict, in the calculator and on the command line."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from library.calc.answer import answer
from library.pages.answer import answer_page
from library.pages.as_text import as_text
from library.pages.brief_answer import brief_answer
from library.pages.reader import Reader
from library.units.system import METRIC
from tui.view.lines import text_of
from tui.view.verdict import verdict

TYPED = {
    # An end without a dish, and a land that a thread only moves along: both tell and neither judges.
    "end-teeth": {"diameter": "20 mm", "dish_angle": "0 deg", "relief_angle": "7 deg"},
    "lead-over-land": {"diameter": "16 mm", "pitch": "2 mm", "land_width": "4.2 mm"},
}


@pytest.mark.parametrize("name", TYPED)
def test_the_place_of_the_verdict_says_found_where_nothing_is_judged(name: str) -> None:
    found = answer(calculation(name), TYPED[name])
    reader = Reader(80)
    for page in (answer_page(found, None, METRIC), brief_answer(found, None, METRIC, reader)):
        assert sum(one.startswith("FOUND ") for one in as_text(page, reader).splitlines()) == 1
    assert text_of(verdict(found, METRIC, 80, 3).lines[0]).startswith(" FOUND ")


def test_what_is_judged_has_its_verdict_and_no_other_word() -> None:
    typed = {"diameter": "12 mm", "relief_angle": "8 deg", "land_width": "2 mm", "relief_form": "flat"}
    found = answer(calculation("relief-drop"), typed)
    assert "FOUND" not in as_text(answer_page(found, None, METRIC), Reader(80))
