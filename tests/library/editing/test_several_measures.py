"""The lists of a machine are typed as readings of a card are: the unit after the last holds for all."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.sentences import Kind
from library.cards.reading_units import with_the_last_unit as on_a_card
from library.editing.typed_tables import as_typed, as_written, changed, complaints
from library.units.several import in_short, parted, with_the_last_unit

MACHINE = {"title": "The grey grinder"}


@pytest.mark.parametrize(
    ("key", "typed", "written"),
    [
        ("cam_throws", "0.4, 0.8, 1.2 mm", ["0.4 mm", "0.8 mm", "1.2 mm"]),
        ("cam_throws", "0.4 mm, 1/16 in", ["0.4 mm", "1/16 in"]),
        ("cam_throws", "1/64; 1/32 in", ["1/64 in", "1/32 in"]),
        ("spindle_speeds", "2800, 4200 rpm", ["2800 rpm", "4200 rpm"]),
        ("spindle_speeds", "2800 rpm", ["2800 rpm"]),
    ],
)
def test_a_unit_after_the_last_holds_for_all_and_the_file_has_it_with_each(
    key: str, typed: str, written: list[str]
) -> None:
    texts = {**MACHINE, key: typed}
    assert as_written("machine", texts)[key] == written
    assert complaints("machine", "grey", texts) == {}


def test_what_the_file_has_stands_in_the_form_with_one_unit_and_is_no_change() -> None:
    typed = as_typed("machine", {"cam_throws": ["0.4 mm", "0.8 mm"], "spindle_speeds": ["2800 rpm", "3 Hz"]})
    assert typed == {"cam_throws": "0.4, 0.8 mm", "spindle_speeds": "2800 rpm, 3 Hz"}
    assert changed("machine", {"cam_throws": "0.4 mm, 0.8 mm"}, {"cam_throws": "0.4, 0.8 mm"}) == {}


@pytest.mark.parametrize(
    "typed", ["0.4, 0.8, 1.2 mm", "0.4, 0.8", "1/8, 3/16 in", "0.4, wide mm", "0,4 mm", "40 thou"]
)
def test_card_and_machine_are_read_by_one_reader(typed: str) -> None:
    written = as_written("machine", {"cam_throws": typed}).get("cam_throws")
    assert written == list(parted(on_a_card("drop", typed)))


@given(
    st.lists(st.tuples(st.decimals(0, 99, places=2), st.sampled_from(["mm", "in"])), min_size=1, max_size=6)
)
def test_what_is_told_in_short_is_read_back_as_it_was(found: list[tuple[object, str]]) -> None:
    measures = tuple(f"{number} {unit}" for number, unit in found)
    short = in_short(Kind.LENGTH, measures, between=", ")
    assert (with_the_last_unit(Kind.LENGTH, parted(short)) or parted(short)) == measures


@pytest.mark.parametrize(
    ("array", "key", "typed", "said"),
    [
        ("machine", "plate_holes", "15, 3000", "Hole circles is 3000."),
        ("machine", "index_ratio", "400000", "Dividing-head ratio is 400000."),
        ("wheel", "diameter", "98000 mm", "Wheel diameter is 98000"),
        ("wheel", "rated_speed", "35000 m/s", "Rated surface speed is 35000"),
        (
            "machine",
            "cam_throws",
            "0.4, 0.8",
            "'0.4' has no unit. Write the unit after the last: 0.4, 0.8 mm.",
        ),
        (
            "machine",
            "spindle_speeds",
            "1400 rpm, 2800",
            "'2800' has no unit. Write the unit after the last: 1400 rpm, 2800 rpm.",
        ),
        ("machine", "spindle_speeds", "2800", "'2800' has no unit. Write it as "),
        (
            "machine",
            "spindle_speeds",
            "1, 1.6, 2.5 mm",
            "'1 mm' is given as a length. A rotational speed is wanted",
        ),
        (
            "machine",
            "spindle_speeds",
            "1400,2800 rpm",
            "'1400,2800 rpm' has a comma. Write 1400.2800 rpm with a point for a decimal, or 1400, 2800 rpm",
        ),
        ("machine", "spindle_speeds", "1, 5,6 mm", "'1, 5,6 mm' has a comma."),
        ("machine", "spindle_speeds", "1, 5 kg", "'5 kg' has a unit that is not known here."),
    ],
)
def test_what_is_wrong_is_told_in_shop_words(array: str, key: str, typed: str, said: str) -> None:
    told = complaints(array, "grey", {"title": "Grey", key: typed})[key]
    assert told.startswith(said)
    assert "_" not in told
    assert "e+0" not in told
