"""What a tool is called by is kept apart from what it measures."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from library.book.model import Book
from library.calc.answer import answer
from library.cards.model import Card, Tool
from library.cards.provenance import known_texts

REAMER = calculation("reamer-size")


def test_a_tolerance_is_typed_as_it_stands_on_the_drawing() -> None:
    for text in ("H7", "h7", " H7 "):
        found = answer(REAMER, {"hole_tolerance": text, "nominal_diameter": "12"})
        assert not found.issues
        assert found.inputs["hole_tolerance"].value == "H7"
    assert "H7 or H6" in answer(REAMER, {"hole_tolerance": "Q7", "nominal_diameter": "12"}).issues[0].text


def test_a_card_fills_the_nominal_size_from_the_tool_and_the_measured_one_from_the_bench() -> None:
    card = Card(tool=Tool(size="12 mm"), received={"diameter": ("11.98 mm", "11.99 mm")})
    known = {one.key: one.text for one in reversed(known_texts(card, None, None))}
    assert known["nominal_diameter"] == "12 mm"
    assert known["measured_diameter"] == "11.98 mm, 11.99 mm"
    thread = {one.key: one.text for one in known_texts(Card(tool=Tool(thread="M12")), None, None)}
    assert thread["nominal_diameter"] == "12 mm"


def test_an_empty_book_is_enough() -> None:
    assert answer(REAMER, {"nominal_diameter": "12 mm"}, book=Book({})).result is not None


def test_a_thread_may_be_named_where_the_nominal_size_is_asked_for() -> None:
    found = answer(calculation("tap-limits"), {"nominal_diameter": "1/4-20 UNC", "tap_limit": "h3"})
    assert not found.issues
    assert found.inputs["tap_limit"].value == "H3"
    taper = answer(calculation("tap-limits"), {"nominal_diameter": "1/4 NPT", "tap_limit": "H3"})
    assert "taper pipe tap" in taper.issues[0].text
    by_class = answer(calculation("tap-limits"), {"nominal_diameter": "M12", "tap_limit": "6H"})
    assert by_class.inputs["tap_limit"].value == "ISO2-6H"


def test_the_class_in_the_name_of_a_thread_gives_its_limits() -> None:
    found = answer(calculation("tap-limits"), {"nominal_diameter": "1/4-20 UNC-2B", "tap_limit": "h5"})
    assert found.result is not None
    assert found.result.outputs["thread_upper_limit"] / 25.4 == pytest.approx(0.2224)
    # UNEF, 12-UN and 16-UN: ASME B1.1 reckons with nine pitches. 1-1/2-16: 0.0068 in, by hand.
    fine = answer(calculation("screw-thread"), {"diameter": "1-1/2-16 UN-2B"})
    assert fine.result is not None
    wide = fine.result.outputs["thread_upper_limit"] - fine.result.outputs["thread_lower_limit"]
    assert wide / 25.4 == pytest.approx(0.0068)
    # A leadscrew's class is another one, and a pipe thread has none of these.
    for name in ("Tr 20 x 4-7H", "G 1/2", "1/4-18 NPT"):
        assert answer(calculation("screw-thread"), {"diameter": name}).issues == ()
