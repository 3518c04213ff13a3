"""The web of a drill, found again on lines that are drawn from the side and from the front."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run

DRILL: dict[str, Given] = {"diameter": 12.0, "web_thickness": 1.8, "second_web": 2.6, "web_distance": 50.0}


def web(**values: Given) -> Result:
    return run(calculation("drill-web"), {**DRILL, **values})


def said(result: Result) -> str:
    return " ".join(f"{check.state}: {check.sentence}" for check in result.checks)


@given(st.floats(0.0, 49.0), st.floats(0.8, 1.7), st.floats(10.0, 70.0))
def test_floor_of_the_notch_and_bottom_of_the_flute_meet_where_the_notch_ends(
    off: float, wanted: float, degrees: float
) -> None:
    # Independent: half of the drill from the side as two lines; where they cross is found by the drawing.
    flute = shapely.LineString([(0.0, 0.9), (200.0, 0.9 + 200.0 * 0.8 / 2 / 50.0)])
    reach = 150.0
    floor = shapely.LineString(
        [
            (off, wanted / 2),
            (
                off + reach * math.cos(math.radians(degrees)),
                wanted / 2 + reach * math.sin(math.radians(degrees)),
            ),
        ]
    )
    found = web(length_ground_off=off, wanted_web=wanted, notch_angle=math.radians(degrees)).outputs
    crossing = shapely.intersection(flute, floor)
    assert found["notch_length"] == pytest.approx(crossing.x - off, rel=1e-6)
    at_point = shapely.intersection(flute, shapely.LineString([(off, 0.0), (off, 10.0)]))
    assert found["web_after"] == pytest.approx(2 * at_point.y, rel=1e-9)
    assert found["thinning_stock"] == pytest.approx(at_point.y - wanted / 2, rel=1e-9)


def test_two_measurements_give_the_growth_over_a_hundred_millimetres() -> None:
    # Derived by hand: 0.8 mm over 50 mm are 1.6 mm over 100; 30 mm shorter the web is 1.8 + 0.48 mm.
    found = web(length_ground_off=30.0)
    assert found.outputs["web_growth"] == pytest.approx(0.016)
    assert "from 1.8 mm to 2.28 mm: 1.6 mm over 100 mm" in said(found)
    assert found.outputs["web_after"] == pytest.approx(2.28)
    assert found.outputs["web_share"] == pytest.approx(19.0)
    # A text on drills of 2 to 10 mm has the web grow 1.4 to 1.8 mm over 100 mm.
    assert 1.4 <= 100 * found.outputs["web_growth"] <= 1.8
    assert [row.values["web_after"] for row in found.rows] == pytest.approx([1.8, 2.0, 2.2, 2.4, 2.6])


@given(st.floats(0.6, 2.5), st.floats(46.0, 60.0))
def test_the_chisel_edge_is_cut_short_between_the_two_sides_of_the_web(wanted: float, degrees: float) -> None:
    # Independent: the point from the front; the sides of the web are level lines, the chisel edge a slanting one.
    slant = complex(math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))
    before = abs(slant * (1.8 / slant.imag))
    after = abs(slant * (min(wanted, 1.8) / slant.imag))
    found = web(wanted_web=wanted, chisel_edge_angle=math.pi - math.radians(degrees)).outputs
    assert found["chisel_edge_length"] == pytest.approx(before)
    assert found["thinned_edge_length"] == pytest.approx(after)
    assert 2 * found["new_lip_length"] == pytest.approx(before - after, abs=1e-12)


def test_a_target_that_nobody_gave_is_common_practice_and_says_so() -> None:
    thinned, split = web(), web(thinning="split")
    assert thinned.outputs["thinning_stock"] == pytest.approx((1.8 - 1.2) / 2)
    assert split.outputs["thinning_stock"] == pytest.approx((1.8 - 0.36) / 2)
    for found in (thinned, split):
        assert "common practice, no source" in said(found)
    assert "common practice" not in said(web(wanted_web=1.2))


def test_nothing_is_thinned_that_is_thin_and_a_weak_point_is_a_watch() -> None:
    assert "pass: The web of 1.8 mm" in said(web(wanted_web=2.0))
    weak = web(wanted_web=0.4)
    assert weak.checks[0].state == "watch"
    assert "Leave 0.72 mm or more." in said(weak)


def test_what_two_measurements_cannot_tell_is_refused_or_doubted() -> None:
    once: dict[str, Given] = {"diameter": 12.0, "web_thickness": 1.8}
    with pytest.raises(Refusal, match="further back") as refused:
        run(calculation("drill-web"), {**once, "length_ground_off": 5.0})
    assert refused.value.problems[0].missing
    assert "watch: By these measurements the web becomes thinner" in said(web(second_web=1.2))
    with pytest.raises(Refusal, match="no flutes"):
        web(length_ground_off=900.0)
    with pytest.raises(Refusal, match="never comes out"):
        web(notch_angle=0.0)
