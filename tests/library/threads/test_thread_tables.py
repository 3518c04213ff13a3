"""The thread tables hang together, and a thread is found by what a person calls it."""

from __future__ import annotations

import re
import tomllib
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.quantities import QUANTITIES
from geometry.sentences import Kind
from library.book.opening import open_book
from library.threads import Thread, all_series, all_threads, find_threads, nearest_threads
from library.threads.reading import TABLES
from library.units.read import read

SERIES = ["iso-metric-coarse", "iso-metric-fine", "unified-coarse", "unified-fine", "unified-extra-fine", "unified-8", "unified-12", "unified-16", "whitworth", "british-fine", "british-pipe-parallel", "british-pipe-taper", "american-pipe-taper", "british-association", "metric-trapezoidal", "metric-trapezoidal-starts", "acme"]  # fmt: skip
INCH_SERIES = {
    "unified-coarse",
    "unified-fine",
    "unified-extra-fine",
    "unified-8",
    "unified-12",
    "unified-16",
    "whitworth",
    "british-fine",
}
MEASURES = ("diameter", "pitch_diameter", "minor_diameter", "screw_minor_diameter", "tap_drill")
DRILL = re.compile(r"No\. \d{1,2}|[A-Z]|[\d./-]+ (?:in|mm)")


def number(text: str) -> float:
    """A length in millimetres, read as the program reads typing."""
    return read(text, Kind.LENGTH, unit_wanted=True).number


def every_thread() -> list[Thread]:
    return list(all_threads().values())


def test_all_series_are_there_and_every_thread_is_counted_once() -> None:
    assert sorted(all_series()) == sorted(SERIES)
    rows = [tomllib.loads(file.read_text(encoding="utf-8"))["thread"] for file in TABLES.glob("*.toml")]
    assert len(all_threads()) == sum(map(len, rows))


def test_metric_threads_run_from_one_to_sixty_four_millimetres() -> None:
    for series in ("iso-metric-coarse", "iso-metric-fine"):
        sizes = {number(thread.diameter) for thread in every_thread() if thread.series.id == series}
        assert (min(sizes), max(sizes)) == (1, 64)


def test_every_series_says_where_each_of_its_columns_came_from() -> None:
    sources = open_book().sources
    for series in all_series().values():
        assert {"sizes", "diameters", "tap_drills"} <= set(series.origins)
        for column, origin in series.origins.items():
            assert origin.citation.document in sources, (series.id, column)
            assert origin.citation.place, (series.id, column)


def test_a_second_drill_or_a_number_of_flutes_has_a_source_too() -> None:
    for thread in every_thread():
        if thread.other_tap_drills:
            assert "other_tap_drills" in thread.series.origins, thread.id
        if thread.flutes:
            assert "flutes" in thread.series.origins, thread.id


def test_every_measure_reads_as_a_length_with_its_unit() -> None:
    for thread in every_thread():
        for name in MEASURES:
            text = getattr(thread, name)
            assert not text or number(text) > 0, (thread.id, name)
        for drill in thread.other_tap_drills:
            assert DRILL.fullmatch(drill), thread.id


def test_a_thread_has_a_pitch_in_one_way_only() -> None:
    for thread in every_thread():
        assert bool(thread.pitch) != bool(thread.threads_per_inch), thread.id


def test_diameters_nest_as_they_must() -> None:
    for thread in every_thread():
        outside = number(thread.diameter)
        inside = [number(text) for text in (thread.pitch_diameter, thread.minor_diameter) if text]
        assert [outside, *inside] == sorted([outside, *inside], reverse=True), thread.id
        if thread.tap_drill and thread.minor_diameter:
            assert number(thread.tap_drill) < outside, thread.id


def test_what_a_thread_fills_is_read_by_the_calculations_as_it_stands() -> None:
    for thread in every_thread():
        for key, text in thread.fills().items():
            row = QUANTITIES[key]
            if row.kind is Kind.CHOICE:
                assert text in row.choices, thread.id
            else:
                assert row.low <= read(text, row.kind).number <= row.high, (thread.id, key)


def test_choosing_a_thread_gives_diameter_pitch_and_starts() -> None:
    (metric,) = find_threads("M12")
    assert metric.fills() == {
        "diameter": "12 mm",
        "pitch": "1.75 mm",
        "starts": "1",
        "thread_form": "iso",
        "thread_taper": "parallel",
    }
    (inch,) = find_threads("3/4-10 UNC")
    assert inch.fills() == {
        "diameter": "3/4 in",
        "threads_per_inch": "10 tpi",
        "starts": "1",
        "thread_form": "iso",
        "thread_taper": "parallel",
    }
    (whitworth,) = find_threads("1/2 BSW")
    assert whitworth.fills()["thread_form"] == "whitworth"


def test_choosing_a_taper_pipe_thread_says_which_taper() -> None:
    for name, taper in (("1/4 NPT", "npt"), ("R 1/4", "bspt"), ("G 1/4", "parallel"), ("1/4 BSPT", "bspt")):
        (found,) = find_threads(name)
        assert found.fills()["thread_taper"] == taper


@pytest.mark.parametrize(
    ("asked", "title"),
    [
        ("M12", "M12 x 1.75"),
        ("m8x1", "M8 x 1"),
        ("M 10 x 1.25", "M10 x 1.25"),
        ("M12\u00d71,5", "M12 x 1.5"),
        ("1/4-20 UNC", "1/4-20 UNC"),
        ("#10-32", "No. 10-32 UNF"),
        ("no 10-32 unf", "No. 10-32 UNF"),
        ("1 1/4-7 unc", "1-1/4-7 UNC"),
        ('1-1/4" - 7 UNC', "1-1/4-7 UNC"),
        ("g 1/2", "G 1/2"),
        ("1/2 BSP", "G 1/2"),
        ("r1/2", "R 1/2"),
        ("1/2 npt", "1/2-14 NPT"),
        ("5/8 bsf", "5/8-14 BSF"),
        ("2ba", "2 BA"),
        ("BA 6", "6 BA"),
        ("tr20x4", "Tr 20 x 4"),
        ("Tr 8", "Tr 8 x 1.5"),
        ("1 acme", "1-5 Acme"),
    ],
)
def test_a_thread_is_found_by_what_people_write(asked: str, title: str) -> None:
    assert [thread.title for thread in find_threads(asked)] == [title]


def test_a_name_that_two_threads_share_gives_both() -> None:
    assert [thread.title for thread in find_threads("1/4-20")] == ["1/4-20 UNC", "1/4-20 BSW"]


def test_what_is_not_there_is_not_found_but_something_near_is_offered() -> None:
    assert find_threads("M12 x 1.7") == ()
    assert "M12 x 1.75" in nearest_threads("M12 x 1.7")


def test_the_tap_drill_of_m12_keeps_both_tables() -> None:
    (thread,) = find_threads("M12")
    assert (thread.tap_drill, thread.other_tap_drills) == ("10.2 mm", ("10.3 mm",))


@given(st.text(max_size=60))
def test_any_text_may_be_asked_for(asked: str) -> None:
    for thread in find_threads(asked):
        assert thread.id in all_threads()
    assert len(nearest_threads(asked)) <= 3


@given(st.sampled_from(every_thread()))
def test_every_thread_is_found_by_each_of_its_names(thread: Thread) -> None:
    for name in thread.names():
        assert thread in find_threads(name)


def test_titles_give_the_size_that_the_row_holds() -> None:
    """The designation and the diameter are typed apart; they must say the same."""
    for thread in every_thread():
        if thread.series.id in INCH_SERIES:
            size = thread.title.split(" ")[0] if not thread.title.startswith("No.") else ""
            if size:
                whole = re.fullmatch(r"(?:(\d+)-)?(\d+/\d+|\d+)-[\d.]+", size)
                assert whole, thread.title
                inches = int(whole[1] or 0) + Fraction(whole[2])
                assert number(thread.diameter) == pytest.approx(float(inches) * 25.4, rel=1e-12), thread.id


SHARES = {
    "iso": (0.649519, 1.082532),
    "whitworth": (0.640327, 1.280654),
    "ba": (0.6, 1.2),
    "trapezoidal": (0.5, 1.0),
    "acme": (0.5, 1.0),
}
"""How much of the pitch is taken off the diameter for the pitch diameter and for the minor diameter of the nut."""


def test_every_row_obeys_the_form_of_its_series() -> None:
    """The 60 degree relations of ISO 724 and B1.1, the 55 degree ones of BS 84, those of BA, ISO 2904 and B1.5; rounded."""
    for thread in every_thread():
        if thread.series.id == "american-pipe-taper":
            continue
        metric = bool(thread.pitch)
        p = number(thread.pitch) if metric else 25.4 / float(thread.threads_per_inch.removesuffix(" tpi"))
        outside = number(thread.diameter)
        in_millimetres = thread.pitch_diameter.endswith("mm")
        slack = 0.00051 if in_millimetres else 0.000101 * 25.4
        if thread.series.id.startswith("british-pipe"):
            slack = 0.00151  # ISO 228-1 rounds the depth first, and two of it are taken away.
        pitch_share, minor_share = SHARES[thread.series.thread_form]
        assert number(thread.pitch_diameter) == pytest.approx(outside - pitch_share * p, abs=slack), thread.id
        assert number(thread.minor_diameter) == pytest.approx(outside - minor_share * p, abs=slack), thread.id
