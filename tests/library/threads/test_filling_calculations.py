"""Choosing a thread fills what a calculation asks of it, and never what a person typed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculations import calculation, calculation_names
from library.calc.inputs import typed_inputs
from library.threads import NotChosen, Thread, all_threads, choose, texts_for
from library.units.system import METRIC

THREAD_SHEETS = ("lead-over-land", "tap-chamfer", "screw-thread")


@pytest.mark.parametrize("name", THREAD_SHEETS)
@given(thread=st.sampled_from(list(all_threads().values())))
def test_every_thread_is_read_without_trouble_by_every_sheet_about_threads(name: str, thread: Thread) -> None:
    sheet = calculation(name)
    texts = texts_for(sheet, thread)
    found, issues = typed_inputs(sheet, texts, METRIC)
    assert issues == []
    assert {"pitch", "threads_per_inch"} & set(found)


def test_what_was_typed_stays() -> None:
    sheet = calculation("lead-over-land")
    texts = texts_for(sheet, choose("M12"), {"pitch"})
    assert "pitch" not in texts
    assert texts["diameter"] == "12 mm"
    assert not {"pitch", "threads_per_inch"} & set(texts_for(sheet, choose("3/4-10 UNC"), {"pitch"}))


def test_no_sheet_is_given_a_field_it_does_not_have() -> None:
    for name in calculation_names():
        sheet = calculation(name)
        for thread in (choose("M12"), choose("3/4-10 UNC"), choose("G 1/2")):
            assert all(sheet.field(key) is not None for key in texts_for(sheet, thread))


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        ("1/4-20", "'1/4-20' may be 1/4-20 UNC or 1/4-20 BSW. Write which."),
        ("M12 x 1.7", "Did you mean M12 x 1.75"),
        ("", "Write it such as M16"),
    ],
)
def test_a_name_that_decides_nothing_gets_a_sentence(asked: str, sentence: str) -> None:
    with pytest.raises(NotChosen) as caught:
        choose(asked)
    assert sentence in str(caught.value)
