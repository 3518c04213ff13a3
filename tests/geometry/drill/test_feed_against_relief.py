"""Relief against the feed: the path of a place on the lip laid out in space, and searches along the lip.

All expected numbers are derived; the sources tell only that the feed eats relief and most near the centre.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq

from geometry.drill import feed as feeding
from geometry.preconditions import GeometryError

FEEDS = st.floats(0.001, 5)
DIAMETERS = st.floats(0.2, 60)
RELIEFS = st.floats(0.01, 0.7)


def test_the_feed_climbs_as_the_check_values_say() -> None:
    assert math.degrees(feeding.feed_slope(0.25, 6.0)) == pytest.approx(0.7599, abs=5e-5)
    assert math.degrees(feeding.feed_slope(0.25, 6.0 / 4)) == pytest.approx(3.0368, abs=5e-5)


@pytest.mark.parametrize(("diameter", "degrees"), [(6.0, 0.7599), (1.5, 3.0368)])
def test_a_path_laid_out_in_space_climbs_by_the_same_angle(diameter: float, degrees: float) -> None:
    # Two points of the path a thousandth of a turn apart, and the chord between them.
    turn, radius = 2 * math.pi / 1000, diameter / 2
    across = math.hypot(radius * math.cos(turn) - radius, radius * math.sin(turn))
    assert math.degrees(math.atan2(0.25 / 1000, across)) == pytest.approx(degrees, abs=1e-4)


@given(FEEDS, DIAMETERS)
def test_a_path_unrolled_climbs_the_feed_in_one_way_round(feed: float, diameter: float) -> None:
    slope = feeding.feed_slope(feed, diameter)
    assert math.sin(slope) / math.cos(slope) == pytest.approx(feed / (math.pi * diameter), rel=1e-12)


@given(RELIEFS, DIAMETERS)
def test_the_largest_feed_is_the_one_that_leaves_nothing(relief: float, diameter: float) -> None:
    largest = feeding.largest_feed(relief, diameter)
    searched = brentq(
        lambda f: feeding.relief_left(relief, f, diameter), 0, 2 * largest + 1, xtol=1e-13, rtol=1e-13
    )
    assert largest == pytest.approx(searched, rel=1e-9)


@given(FEEDS, DIAMETERS)
def test_relief_as_steep_as_the_feed_allows_that_feed_and_no_more(feed: float, diameter: float) -> None:
    assert feeding.largest_feed(feeding.feed_slope(feed, diameter), diameter) == pytest.approx(
        feed, rel=1e-12
    )


@given(RELIEFS, DIAMETERS)
def test_without_feed_all_relief_is_left(relief: float, diameter: float) -> None:
    assert feeding.relief_left(relief, 0.0, diameter) == relief


@given(FEEDS)
def test_on_an_ever_larger_circle_the_feed_costs_ever_less(feed: float) -> None:
    assert feeding.feed_slope(feed, 1e13) == pytest.approx(0, abs=1e-12)


@given(FEEDS)
def test_at_the_axis_the_feed_is_as_steep_as_the_axis(feed: float) -> None:
    assert feeding.feed_slope(feed, 1e-12) == pytest.approx(math.pi / 2, abs=1e-8)


def test_rising_relief_goes_evenly_with_the_diameter() -> None:
    relief = feeding.relief_along_lip("rising", (12.0, math.radians(8)), (2.0, math.radians(20)))
    assert [round(math.degrees(relief(d)), 9) for d in (12.0, 7.0, 2.0)] == [8, 14, 20]


def test_constant_relief_stays() -> None:
    relief = feeding.relief_along_lip("constant", (12.0, 0.14), (2.0, 0.9))
    assert relief(12.0) == relief(2.0) == 0.14


@given(RELIEFS, st.floats(2, 40), st.floats(0.05, 0.9))
def test_under_a_cam_every_place_falls_back_alike_along_the_axis(
    relief: float, outer: float, share: float
) -> None:
    along = feeding.relief_along_lip("cam", (outer, relief), (outer * share, relief))
    # The fall in one turn is the way round times the slope, and has to be one number for the lip.
    falls = [math.pi * d * math.tan(along(d)) for d in (outer, outer * (1 + share) / 2, outer * share)]
    assert falls == pytest.approx([falls[0]] * 3, rel=1e-12)


@given(
    st.sampled_from(["constant", "rising"]),
    RELIEFS,
    st.floats(0.01, 1.4),
    st.floats(1, 40),
    st.floats(0.02, 0.95),
    FEEDS,
)
def test_least_is_left_at_an_end_of_the_lip(
    runs: str, relief: float, inner_relief: float, outer: float, share: float, feed: float
) -> None:
    inner = outer * share
    along = feeding.relief_along_lip(runs, (outer, relief), (inner, inner_relief))

    def left(diameter: float) -> float:
        return along(diameter) - feeding.feed_slope(feed, diameter)

    at_ends = min(left(inner), left(outer))
    assert all(left(inner + (outer - inner) * part / 200) >= at_ends - 1e-12 for part in range(201))


@given(st.floats(0.001, 20), FEEDS, st.floats(0.05, 20), st.floats(0.01, 40))
def test_on_an_even_fall_no_place_has_less_left_than_the_weakest(
    fall: float, feed: float, inner: float, more: float
) -> None:
    outer = inner + more
    weakest = feeding.weakest_of_fall(fall, feed, inner, outer)
    assert inner <= weakest <= outer
    least = feeding.left_of_fall(fall, feed, weakest)
    for part in range(201):
        assert feeding.left_of_fall(fall, feed, inner + more * part / 200) >= least - 1e-12


@given(st.floats(0.001, 20), FEEDS, DIAMETERS, DIAMETERS)
def test_an_even_fall_clears_everywhere_or_nowhere(
    fall: float, feed: float, one: float, other: float
) -> None:
    assume(abs(fall - feed) > 1e-9)
    assert (feeding.left_of_fall(fall, feed, one) > 0) is (fall > feed)
    assert (feeding.left_of_fall(fall, feed, other) > 0) is (fall > feed)


@pytest.mark.parametrize(
    ("call", "key"),
    [
        (lambda: feeding.feed_slope(-0.1, 6.0), "feed"),
        (lambda: feeding.feed_slope(0.1, 0.0), "diameter"),
        (lambda: feeding.feed_slope(math.nan, 6.0), "feed"),
        (lambda: feeding.largest_feed(math.pi / 2, 6.0), "relief_angle"),
        (lambda: feeding.relief_along_lip("constant", (6.0, 0.1), (6.0, 0.1)), "inner_diameter"),
        (lambda: feeding.relief_along_lip("sideways", (6.0, 0.1), (1.0, 0.1)), "lip_relief_runs"),
        (lambda: feeding.relief_along_lip("rising", (6.0, 0.1), (1.0, 1.6)), "inner_relief_angle"),
    ],
)
def test_what_no_lip_can_have_is_refused_by_name(call: object, key: str) -> None:
    with pytest.raises(GeometryError) as refused:
        call()  # type: ignore[operator]
    assert refused.value.key == key
