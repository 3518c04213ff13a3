"""The chamfer of a tap, drawn again as a line beside the axis."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Point
from shapely.affinity import translate

from geometry.preconditions import GeometryError
from geometry.thread.chamfer import (
    RELIEF_FACTORS,
    chamfer_angle,
    chamfer_length,
    chip_per_tooth,
    moved_back,
    reliefs,
    stock_for,
)

angles = st.floats(math.radians(1), math.radians(60))
small_reliefs = st.floats(math.radians(0.1), math.radians(30))


def side(angle: float) -> LineString:
    """The chamfer in a plane through the axis: the axis is x, the point of the tap to the left."""
    return LineString([(-100.0, 10.0 - 100.0 * math.tan(angle)), (100.0, 10.0 + 100.0 * math.tan(angle))])


@given(st.floats(0.1, 5.0), st.floats(0.1, 50.0))
def test_angle_and_length_of_a_chamfer_are_there_and_back(height: float, length: float) -> None:
    assert chamfer_length(height, chamfer_angle(height, length)) == pytest.approx(length, rel=1e-12)


@given(angles, st.floats(0.001, 0.1))
def test_a_cone_moved_along_the_radius_moves_in_all_three_senses_as_its_drawing_does(
    angle: float, fall: float
) -> None:
    before, after = side(angle), translate(side(angle), yoff=-fall)
    here = Point(0.0, 10.0)
    along_axis = LineString([(0.0, 10.0), (90.0, 10.0)]).intersection(after)
    assert isinstance(along_axis, Point)
    assert before.distance(here) < 1e-9
    assert along_axis.x == pytest.approx(fall * RELIEF_FACTORS["axial_chamfer_relief"](angle), rel=1e-6)
    assert after.distance(here) == pytest.approx(
        fall * RELIEF_FACTORS["square_chamfer_relief"](angle), rel=1e-6
    )


@given(small_reliefs, angles, st.sampled_from(sorted(RELIEF_FACTORS)))
def test_each_of_the_three_reliefs_gives_the_same_three(relief: float, angle: float, given_as: str) -> None:
    found = reliefs(relief, given_as, angle)
    assert found[given_as] == relief
    for key, value in found.items():
        again = reliefs(value, key, angle)
        assert again == pytest.approx(found, rel=1e-9)


@given(small_reliefs)
def test_on_a_chamfer_of_forty_five_degrees_radial_and_axial_relief_are_one(relief: float) -> None:
    found = reliefs(relief, "radial_chamfer_relief", math.radians(45))
    assert found["axial_chamfer_relief"] == pytest.approx(found["radial_chamfer_relief"], rel=1e-12)


def test_no_relief_is_none_in_every_sense() -> None:
    assert set(reliefs(0.0, "axial_chamfer_relief", 0.2).values()) == {0.0}


@given(st.floats(0.2, 6.0), st.integers(1, 8), angles, st.integers(1, 4))
def test_the_chip_is_the_rise_of_the_chamfer_from_tooth_to_tooth(
    pitch: float, flutes: int, angle: float, starts: int
) -> None:
    # Independent: follow one groove of the work. Each land comes by a whole turn divided by the lands later,
    # with the tap that much of its lead further in, and cuts to the height its chamfer has there.
    lead = pitch * starts
    heights = [lead * turn / flutes * math.tan(angle) for turn in range(3 * flutes)]
    chips = [after - before for before, after in pairwise(heights)]
    assert chips == pytest.approx([chip_per_tooth(lead, flutes, angle)] * len(chips), rel=1e-9)


@given(angles, st.floats(0.001, 1.0))
def test_stock_off_the_chamfer_moves_its_end_back_as_the_drawing_does(angle: float, stock: float) -> None:
    crest = LineString([(-100.0, 10.0), (200.0, 10.0)])
    # Square to itself, into the metal: toward the axis and away from the point.
    moved = translate(side(angle), xoff=stock * math.sin(angle), yoff=-stock * math.cos(angle))
    met = crest.intersection(moved)
    assert isinstance(met, Point)
    assert moved_back(stock, angle) == pytest.approx(met.x, rel=1e-6)


@given(angles, st.floats(0.0, 10.0))
def test_stock_and_way_back_are_there_and_back(angle: float, way: float) -> None:
    assert moved_back(stock_for(way, angle), angle) == pytest.approx(way, rel=1e-12, abs=1e-15)


@pytest.mark.parametrize("angle", [0.0, math.pi / 2, -0.1, math.nan])
def test_a_chamfer_that_is_a_cylinder_or_a_face_is_refused(angle: float) -> None:
    for ask in (
        lambda: chamfer_length(1.0, angle),
        lambda: chip_per_tooth(1.0, 3, angle),
        lambda: moved_back(0.1, angle),
        lambda: stock_for(0.1, angle),
        lambda: reliefs(0.1, "radial_chamfer_relief", angle),
    ):
        with pytest.raises(GeometryError):
            ask()


def test_a_relief_in_no_known_sense_is_refused() -> None:
    with pytest.raises(GeometryError, match="radial, along the axis or square"):
        reliefs(0.1, "sideways", 0.2)
