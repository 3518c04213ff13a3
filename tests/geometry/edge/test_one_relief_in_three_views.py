"""One relief of an edge at an angle to the axis, found again by cutting a surface with a turned plunger."""

from __future__ import annotations

import math
from typing import get_args

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq

from geometry.edge.readings import (
    eccentric_from_reading,
    eccentric_reading,
    flat_from_reading,
    flat_reach,
    flat_reading,
)
from geometry.edge.views import View, left_of_feed, normal_of, on_helix, seen, turned_into
from geometry.preconditions import GeometryError

RELIEFS = st.floats(math.radians(0.5), math.radians(30))
KAPPAS = st.floats(math.radians(1), math.radians(89))
DIAMETERS = st.floats(0.5, 100.0)
ANY_VIEW = st.sampled_from(get_args(View))


def plane_of_a_flat(
    relief: float, kappa: float, radius: float
) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """The normal of the facet's plane and a point on it, the tip of the tool up the z axis; built from vectors."""
    along = (-math.sin(kappa), 0.0, math.cos(kappa))
    outward = (math.cos(kappa), 0.0, math.sin(kappa))
    behind = tuple(
        math.cos(relief) * t - math.sin(relief) * n for t, n in zip((0, 1, 0), outward, strict=True)
    )
    cross = (
        along[1] * behind[2] - along[2] * behind[1],
        along[2] * behind[0] - along[0] * behind[2],
        along[0] * behind[1] - along[1] * behind[0],
    )
    return cross, (radius, 0.0, 0.0)


def plunger(
    view: str, kappa: float, radius: float, turned: float, depth: float
) -> tuple[float, float, float]:
    """The tip of a plunger that came in by ``depth``, after the tool was turned back under it by ``turned``."""
    inward, down = {
        "radial": (1.0, 0.0),
        "axial": (0.0, 1.0),
        "normal": (math.cos(kappa), math.sin(kappa)),
    }[view]
    r, z = radius - depth * inward, -depth * down
    return r * math.cos(turned), r * math.sin(turned), z


def cut(view: str, relief: float, kappa: float, radius: float, turned: float) -> float:
    """How far the plunger comes in until it meets the plane, by solving for it."""
    normal, point = plane_of_a_flat(relief, kappa, radius)

    def above(depth: float) -> float:
        tip = plunger(view, kappa, radius, turned, depth)
        return sum(n * (t - p) for n, t, p in zip(normal, tip, point, strict=True))

    return float(brentq(above, -3 * radius, 0.95 * radius, xtol=1e-13))


@given(RELIEFS, KAPPAS, DIAMETERS, ANY_VIEW, st.floats(0.01, 1.0))
def test_a_flat_reads_what_a_plunger_finds_on_its_plane(
    relief: float, kappa: float, diameter: float, view: View, share: float
) -> None:
    turned = share * min(1.2, flat_reach(relief, kappa))
    reading = flat_reading(relief, kappa, diameter, view)(turned)
    assume(abs(reading) < 0.9 * diameter / 2)
    assert reading == pytest.approx(
        cut(view, relief, kappa, diameter / 2, turned), rel=1e-7, abs=1e-9 * diameter
    )


@given(RELIEFS, KAPPAS, DIAMETERS, ANY_VIEW)
def test_a_flat_begins_with_the_slope_of_its_view(
    relief: float, kappa: float, diameter: float, view: View
) -> None:
    angle = seen(relief, kappa, view)
    assert angle is not None
    tiny = 1e-6
    slope = flat_reading(relief, kappa, diameter, view)(tiny) / (tiny * diameter / 2)
    assert slope == pytest.approx(math.tan(angle), rel=1e-3, abs=1e-5)


def test_the_countersink_of_one_inch_reads_what_was_worked_out_by_hand() -> None:
    """82 degrees, 8 degrees square to the cone, land 0.250 in: derived by hand from tan 8 = 0.140541, cos 41 = 0.754710."""
    relief, kappa = math.radians(8), math.radians(41)
    turned = 0.250 / 0.5
    at_axis = eccentric_reading(relief, kappa, 1.0, "radial")(turned)
    square = eccentric_reading(relief, kappa, 1.0, "normal")(turned)
    assert at_axis == pytest.approx(0.250 * 0.140541 / 0.754710, abs=1e-6)
    assert square == pytest.approx(0.250 * 0.140541, abs=1e-6)
    radial = seen(relief, kappa, "radial")
    assert radial is not None
    assert math.degrees(radial) == pytest.approx(10.549, abs=5e-4)


@given(RELIEFS, KAPPAS, ANY_VIEW)
def test_a_view_and_back_is_the_same_relief(relief: float, kappa: float, view: View) -> None:
    shown = seen(relief, kappa, view)
    assert shown is not None
    assert normal_of(shown, kappa, view) == pytest.approx(relief, rel=1e-9)


@given(RELIEFS, KAPPAS, DIAMETERS, ANY_VIEW, st.floats(0.02, 0.95))
def test_a_reading_gives_back_the_relief_it_came_from(
    relief: float, kappa: float, diameter: float, view: View, share: float
) -> None:
    turned = share * min(1.2, flat_reach(relief, kappa))
    even = eccentric_reading(relief, kappa, diameter, view)(turned)
    assert eccentric_from_reading(even, turned, kappa, diameter, view) == pytest.approx(relief, rel=1e-9)
    flat = flat_reading(relief, kappa, diameter, view)(turned)
    assume(abs(flat) < 0.9 * diameter / 2)
    assert flat_from_reading(flat, turned, kappa, diameter, view) == pytest.approx(relief, rel=1e-6)


@pytest.mark.parametrize(("kappa", "view"), [(0.0, "axial"), (math.pi / 2, "radial")])
def test_a_view_that_shows_nothing_is_refused(kappa: float, view: View) -> None:
    assert seen(0.1, kappa, view) is None
    for refused in (
        lambda: normal_of(0.1, kappa, view),
        lambda: flat_reading(0.1, kappa, 10.0, view),
        lambda: eccentric_reading(0.1, kappa, 10.0, view),
        lambda: flat_from_reading(0.1, 0.2, kappa, 10.0, view),
    ):
        with pytest.raises(GeometryError):
            refused()


@given(RELIEFS, DIAMETERS, st.floats(0.0, 2.0))
def test_an_end_tooth_falls_like_a_plane_along_the_axis(
    relief: float, diameter: float, turned: float
) -> None:
    """A plane through a radial edge: z = -y tan(a), and y = r sin(theta). Derived."""
    reading = flat_reading(relief, math.pi / 2, diameter, "axial")(turned)
    assert reading == pytest.approx(diameter / 2 * math.sin(turned) * math.tan(relief), rel=1e-9, abs=1e-12)


@given(RELIEFS, st.floats(-1.2, 1.2))
def test_square_to_a_helical_land_is_the_angle_between_two_vectors(relief: float, helix: float) -> None:
    """The facet holds the helical edge and the slope square to the axis; its angle to the tangent plane is found by vectors."""
    edge = (math.sin(helix), 0.0, math.cos(helix))
    slope = (math.cos(relief), -math.sin(relief), 0.0)
    normal = (
        edge[1] * slope[2] - edge[2] * slope[1],
        edge[2] * slope[0] - edge[0] * slope[2],
        edge[0] * slope[1] - edge[1] * slope[0],
    )
    between = math.acos(min(1.0, abs(normal[1]) / math.sqrt(sum(n * n for n in normal))))
    assert on_helix(relief, helix) == pytest.approx(between, abs=1e-7)


def test_what_a_feed_leaves_is_the_relief_less_the_slope_of_the_path() -> None:
    """Feed 0.25 mm on a circumference of 18.85 mm: 0.7599 degrees of slope, by hand."""
    assert math.degrees(left_of_feed(math.radians(12), 0.25, 6.0)) == pytest.approx(12 - 0.7599, abs=1e-4)


@given(RELIEFS, st.floats(math.radians(30), math.radians(85)))
def test_a_lip_given_along_the_axis_is_shallower_square_to_itself(relief: float, kappa: float) -> None:
    square = turned_into(relief, kappa, "axial", "normal")
    assert square is not None
    assert square < relief
