"""The fewest facets, against a search that knows nothing of how they were planned."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import assume, given, reject
from hypothesis import strategies as st
from numpy.typing import NDArray
from shapely import LineString, Point

from geometry.preconditions import GeometryError
from geometry.tooth.back import Back, back
from geometry.tooth.corners import corners, deepest_gap, least_gap
from geometry.tooth.facet_plan import DEEPEST, MOST_FACETS, depth_with, fewest, nearest_allowed, plan
from geometry.tooth.facets import Facet

Values = tuple[float, float, float, float, float, float | None]

diameters = st.floats(0.5, 100.0)
reliefs = st.floats(math.radians(4), math.radians(30))
lands = st.floats(0.3, 5.5)
shares = st.floats(0.1, 1.9)
gaps = st.floats(0.02, 1.0)
depths = st.floats(1.02, 30.0)


def job(diameter: float, relief: float, land: float, share: float, gap: float, depth: float | None) -> Values:
    """Values for ``plan`` that fit one another: a primary land that ends inside, a gap that it leaves."""
    width = share * diameter / 2 * math.sin(relief)
    ends = diameter / 2 - math.hypot(width * math.cos(relief), diameter / 2 - width * math.sin(relief))
    least = gap * ends
    floor = diameter / 2 * (1 - math.cos(relief))
    deepest = None if depth is None else min(0.85 * diameter / 2, depth * max(floor, least))
    return diameter, land, relief, width, least, deepest


jobs = st.builds(job, diameters, reliefs, lands, shares, gaps, st.none() | depths)


def planned(values: Values) -> tuple[Facet, ...]:
    """The plan, leaving out the jobs that ask for more facets than anyone grinds."""
    try:
        return plan(*values)
    except GeometryError as error:
        assert "behind" in error.sentence.parts, error
        reject()


def drawn(facets: tuple[Facet, ...], diameter: float) -> list[tuple[float, float]]:
    """The corners, laid out from the edge with nothing but the angles and widths."""
    points = [(0.0, diameter / 2)]
    for facet in facets:
        across, up = points[-1]
        points.append(
            (across + facet.width * math.cos(facet.angle), up - facet.width * math.sin(facet.angle))
        )
    return points


@given(jobs)
def test_everything_behind_the_primary_land_keeps_the_gap_and_no_facet_goes_too_deep(
    values: Values,
) -> None:
    diameter, _, _, width, least, deepest = values
    facets = planned(values)
    # A primary land that is cut off by the heel has nothing behind it.
    assume(len(facets) > 1 or facets[0].width >= width)
    points = drawn(facets, diameter)
    radius, slack = diameter / 2, 1e-9 * diameter
    behind = LineString(points[1:]) if len(points) > 2 else Point(points[1])
    farthest = max(math.hypot(*point) for point in points[1:])
    assert radius - farthest >= least - slack
    assert radius - farthest == pytest.approx(least_gap(corners(facets, diameter)[1:], diameter), abs=slack)
    if len(facets) > 1:
        assert facets[0].width == pytest.approx(width, rel=1e-9)
        limit = radius * DEEPEST if deepest is None else deepest
        assert radius - behind.distance(Point(0, 0)) <= limit + slack
        assert deepest_gap(corners(facets, diameter), diameter) <= limit + slack


@given(jobs)
def test_the_facets_reach_from_the_edge_to_the_heel_each_steeper_than_the_one_before(
    values: Values,
) -> None:
    facets = planned(values)
    assert facets[0].start == 0.0
    assert facets[0].start_drop == 0.0
    assert facets[0].angle == values[2]
    assert facets[-1].end == pytest.approx(values[1], rel=1e-12)
    for before, after in pairwise(facets):
        assert after.start == before.end
        assert after.start_drop == pytest.approx(before.end_drop, abs=1e-10 * values[0])
        assert after.angle > before.angle - 1e-7


def search(start: tuple[float, float], land: float, nearest: float, farthest: float, most: int) -> int | None:
    """The fewest straight lines from ``start`` to a ray inside a ring, found by trying corners on a grid.

    Nothing is assumed of the corners: they may lie anywhere in the ring, and lines may turn either way.
    """
    radii = np.linspace(nearest, farthest, 5)
    turns = np.linspace(start[0], land, 41)
    at, out = np.meshgrid(turns[1:], radii, indexing="ij")
    along = np.concatenate([[start[0]], at.ravel()])
    radius = np.concatenate([[start[1]], out.ravel()])
    points = np.stack([radius * np.sin(along), radius * np.cos(along)], axis=1)
    joined = (
        clear_of(points, nearest)
        & (along[None, :] - along[:, None] < math.pi)
        & (along[None, :] > along[:, None])
    )
    reached = np.zeros(len(points), dtype=bool)
    reached[0] = True
    for count in range(1, most + 1):
        reached = reached | joined[reached].any(axis=0)
        if reached[along >= land - 1e-12].any():
            return count
    return None


def clear_of(points: NDArray[np.float64], nearest: float) -> NDArray[np.bool_]:
    """For every two points, whether the straight line between them passes the axis at ``nearest`` or further."""
    way = points[None, :, :] - points[:, None, :]
    square = np.maximum((way**2).sum(axis=2), 1e-300)
    share = np.clip(-(points[:, None, :] * way).sum(axis=2) / square, 0.0, 1.0)
    foot = points[:, None, :] + share[:, :, None] * way
    passes: NDArray[np.bool_] = np.hypot(foot[..., 0], foot[..., 1]) >= nearest * (1 - 1e-12)
    return passes


@given(jobs)
def test_no_search_finds_a_shorter_chain(
    values: Values,
) -> None:
    diameter, land, relief, width, least, deepest = values
    _, rest = back(diameter, land, relief, width, least)
    assume(rest is not None)
    assert rest is not None
    behind = len(planned(values)) - 1
    nearest = nearest_allowed(diameter, deepest)
    found = search((rest.start, rest.first_radius), land, nearest, diameter / 2 - least, behind)
    assert found is None or found == behind


@pytest.mark.parametrize(
    ("land", "deepest", "behind"),
    [(1.0, None, 1), (2.0, None, 1), (3.0, None, 2), (2.0, 1.0, 2), (2.0, 0.5, 3), (2.0, 0.3, 4)],
)
def test_the_search_finds_as_few_on_ordinary_tools(land: float, deepest: float | None, behind: int) -> None:
    _, rest = back(12.0, land, 0.25, 1.0, 0.1)
    assert rest is not None
    nearest = nearest_allowed(12.0, deepest)
    # The ring is a hair wider than allowed, so that a corner of the grid lies near any corner that is possible.
    found = search((rest.start, rest.first_radius), land, nearest * 0.995, 5.9 * 1.002, behind + 2)
    assert found == behind
    assert len(plan(12.0, land, 0.25, 1.0, 0.1, deepest)) - 1 == behind


@given(jobs)
def test_one_facet_more_than_the_fewest_never_goes_deeper(
    values: Values,
) -> None:
    diameter, land, relief, width, least, _ = values
    _, rest = back(diameter, land, relief, width, least)
    assume(rest is not None)
    assert rest is not None
    facets = planned(values)
    shallower = depth_with(rest, len(facets))
    assume(shallower is not None)
    assert shallower is not None
    assert shallower <= deepest_gap(corners(facets, diameter), diameter) + 1e-9 * diameter


@given(jobs)
def test_allowing_the_depth_of_one_more_gives_one_more(
    values: Values,
) -> None:
    diameter, land, relief, width, least, _ = values
    _, rest = back(diameter, land, relief, width, least)
    assume(rest is not None)
    assert rest is not None
    facets = plan(diameter, land, relief, width, least)
    shallower = depth_with(rest, len(facets))
    assume(shallower is not None)
    assert shallower is not None
    again = plan(diameter, land, relief, width, least, shallower * (1 + 1e-7))
    assert len(again) == len(facets) + 1
    assert deepest_gap(corners(again, diameter), diameter) == pytest.approx(shallower, rel=1e-5)


@given(jobs)
def test_with_less_depth_allowed_it_takes_more_facets(values: Values) -> None:
    # Facets of which the first would be flatter than the primary land go as deep as one half a degree steeper.
    diameter, land, relief, width, least, _ = values
    facets = planned(values)
    assume(len(facets) > 2)
    found = deepest_gap(corners(facets, diameter)[1:], diameter)
    first = facets[1]
    shows = diameter / 2 - first.height if first.angle <= relief + math.radians(0.5) + 1e-9 else 0.0
    if found <= shows + 1e-9 * diameter:
        return
    try:
        again = plan(diameter, land, relief, width, least, 0.98 * found)
    except GeometryError:
        return
    assert len(again) > len(facets)


def test_three_facets_dig_no_deeper_than_three_need() -> None:
    # Derived: the primary land, carried on, dips 6 (1 - cos 15 deg) = 0.204 mm; half a degree more 0.218 mm.
    # A first facet of 15.5 deg reaches to the corner behind it, and one more to the heel, within that depth.
    relief = math.radians(15)
    shallow = plan(12.0, 1.0, relief, 0.5, 0.05, 0.25)
    assert len(shallow) == 3
    for deepest in (0.3, 0.4):
        again = plan(12.0, 1.0, relief, 0.5, 0.05, deepest)
        assert len(again) > 3 or deepest_gap(corners(again, 12.0), 12.0) == pytest.approx(
            deepest_gap(corners(shallow, 12.0), 12.0), rel=1e-9
        )


@given(jobs, st.sampled_from((1 / 25.4, 25.4)))
def test_a_plan_in_inches_is_the_plan_in_millimetres(values: Values, factor: float) -> None:
    diameter, land, relief, width, least, deepest = values
    here = planned(values)
    there = plan(
        diameter * factor,
        land,
        relief,
        width * factor,
        least * factor,
        None if deepest is None else deepest * factor,
    )
    assert len(here) == len(there)
    for one, other in zip(here, there, strict=True):
        assert other.angle == pytest.approx(one.angle, rel=1e-6)
        assert other.width == pytest.approx(one.width * factor, rel=1e-6)


def test_a_first_facet_that_keeps_the_gap_to_the_heel_needs_no_other() -> None:
    (only,) = plan(12.0, 0.2, 0.25, 0.5, 0.05)
    assert only.end == 0.2
    assert only.end_drop > 0.05


def test_a_primary_land_over_the_whole_land_is_cut_at_the_heel() -> None:
    (only,) = plan(12.0, 0.2, 0.25, 5.0, 0.05)
    assert only.end == 0.2


def test_nothing_is_planned_behind_a_primary_land_that_is_back_on_the_circle() -> None:
    (only,) = plan(12.0, 1.5, 0.25, 12 * math.sin(0.25) * 1.01, 0.05)
    assert only.end_drop < 0


def test_a_primary_land_that_leaves_less_than_the_gap_sets_the_gap() -> None:
    facets = plan(12.0, 1.5, 0.25, 0.3, 0.2)
    assert facets[0].end_drop < 0.2
    assert facets[-1].end_drop == pytest.approx(facets[0].end_drop, rel=1e-12)


def test_a_depth_that_leaves_no_room_is_refused_with_one_that_does() -> None:
    with pytest.raises(GeometryError) as refused:
        plan(12.0, 1.5, 0.25, 1.0, 0.1, 0.15)
    assert refused.value.key == "deepest_gap"
    bound = refused.value.sentence.parts["bound"]
    assert not isinstance(bound, str)
    assert bound.value == pytest.approx(6 * (1 - math.cos(0.25)), rel=1e-9)
    assert len(plan(12.0, 1.5, 0.25, 1.0, 0.1, bound.value * 1.01)) > 2


def test_a_depth_that_asks_for_too_many_is_refused_with_one_that_does() -> None:
    with pytest.raises(GeometryError) as refused:
        plan(12.0, 6.0, math.radians(3), 0.3, 0.01, 0.0105)
    enough = refused.value.sentence.parts["enough"]
    assert not isinstance(enough, str)
    assert len(plan(12.0, 6.0, math.radians(3), 0.3, 0.01, enough.value * 1.001)) <= MOST_FACETS + 1


def test_a_depth_to_the_axis_is_refused() -> None:
    with pytest.raises(GeometryError, match="axis"):
        nearest_allowed(12.0, 5.9)
    with pytest.raises(GeometryError, match="more than zero"):
        nearest_allowed(12.0, 0.0)


def test_the_number_grows_as_the_depth_shrinks() -> None:
    rest = Back(12.0, 0.17, 0.16, 3.0, 0.1, 0.25)
    counts = [fewest(rest, nearest) for nearest in np.linspace(1.0, 5.8, 40)]
    assert counts == sorted(counts)
    assert counts[0] < counts[-1]
