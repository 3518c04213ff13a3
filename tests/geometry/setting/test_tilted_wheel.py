"""The inclined wheel on a helical land, against the surface that it sweeps in space.

No published form of the relation was met, so every expected number is derived: from a straight line led
along the helix, and from a whole wheel of a given diameter led along it.
"""

from __future__ import annotations

import math
from itertools import pairwise

import mpmath
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq, minimize_scalar

from geometry.preconditions import GeometryError
from geometry.setting import tilt
from geometry.setting.round_wheel import round_wheel_relief, round_wheel_tilt

RELIEFS = st.floats(0.001, 0.7)
HELICES = st.floats(0.02, 1.2)


def swept_relief(line_tilt: float, helix: float, radius: float) -> float:
    """The relief of the surface that an inclined line sweeps while the tool is led along its helix.

    ``surface(x, s)`` is the place ``x`` along the line when the tool has gone ``s`` along its axis.
    """
    with mpmath.workdps(40):

        def surface(x: mpmath.mpf, s: mpmath.mpf) -> list[mpmath.mpf]:
            out, turn = radius - x * mpmath.tan(line_tilt), s * mpmath.tan(helix) / radius
            return [out * mpmath.cos(turn), out * mpmath.sin(turn), x - s]

        along = [mpmath.diff(lambda x, i=i: surface(x, mpmath.mpf(0))[i], 0) for i in range(3)]
        led = [mpmath.diff(lambda s, i=i: surface(mpmath.mpf(0), s)[i], 0) for i in range(3)]
        # The tangent plane cut square to the axis: a mix of both directions that keeps its height.
        behind = [a * led[2] - b * along[2] for a, b in zip(along, led, strict=True)]
        return float(mpmath.atan(abs(behind[0] / behind[1])))


def ground_radius(turned: float, line_tilt: float, helix: float, radius: float, wheel_radius: float) -> float:
    """How far from the axis a whole wheel leaves the land, ``turned`` behind the edge, square to the axis.

    The wheel is a cylinder whose lowest line lies at ``radius`` where the edge passes and sinks from there;
    it ends at that place, so the tool is only ever on one side of it.
    """
    sine, cosine = math.sin(line_tilt), math.cos(line_tilt)

    def met(s: float) -> float:
        """Where the ray from the tool's axis through that place meets the wheel when led ``s`` further."""
        angle = s * math.tan(helix) / radius - turned
        ray = (math.cos(angle), math.sin(angle))
        start = (-radius - wheel_radius * cosine, 0.0, s - wheel_radius * sine)
        # From the wheel's axis, the parts of the ray and of its start square to that axis.
        step = (ray[0], ray[1], 0.0)
        axis = (-sine, 0.0, cosine)
        along_step = sum(a * b for a, b in zip(step, axis, strict=True))
        along_start = sum(a * b for a, b in zip(start, axis, strict=True))
        square_step = [a - along_step * b for a, b in zip(step, axis, strict=True)]
        square_start = [a - along_start * b for a, b in zip(start, axis, strict=True)]
        a = sum(x * x for x in square_step)
        b = sum(x * y for x, y in zip(square_step, square_start, strict=True))
        c = sum(x * x for x in square_start) - wheel_radius**2
        return float((-b - math.sqrt(b * b - a * c)) / a)

    centre = turned * radius / math.tan(helix)
    found = minimize_scalar(met, bounds=(0.0, 2 * centre + 1), method="bounded", options={"xatol": 1e-10})
    return float(found.fun)


def test_eight_degrees_on_a_helix_of_thirty_take_the_tilt_of_the_check_value() -> None:
    found = tilt.wheel_tilt(math.radians(8), math.radians(30))
    assert math.degrees(found) == pytest.approx(4.6389, abs=5e-5)
    assert swept_relief(found, math.radians(30), 6.0) == pytest.approx(math.radians(8), rel=1e-12)


@given(RELIEFS, HELICES, st.floats(0.5, 60))
def test_a_line_led_along_the_helix_sweeps_just_the_wanted_relief(
    relief: float, helix: float, radius: float
) -> None:
    assert swept_relief(tilt.wheel_tilt(relief, helix), helix, radius) == pytest.approx(relief, rel=1e-9)


@pytest.mark.parametrize(("relief", "helix"), [(8.0, 30.0), (5.0, 20.0), (12.0, 40.0)])
def test_a_whole_wheel_leaves_a_land_that_falls_as_evenly(relief: float, helix: float) -> None:
    radius, wheel_radius = 6.0, 60.0
    line_tilt = tilt.wheel_tilt(math.radians(relief), math.radians(helix))
    places = (0.15, 0.2, 0.25, 0.3)
    left = [ground_radius(t, line_tilt, math.radians(helix), radius, wheel_radius) for t in places]
    slopes = [(a - b) / (0.05 * radius) for a, b in pairwise(left)]
    # The roundness of the wheel shifts the land and makes it steeper, by up to 3 parts in 100 here.
    assert slopes == pytest.approx([math.tan(math.radians(relief))] * 3, rel=0.03)


@given(RELIEFS, HELICES)
def test_a_tilt_leads_back_to_its_relief(relief: float, helix: float) -> None:
    assert tilt.relief_of_tilt(tilt.wheel_tilt(relief, helix), helix) == pytest.approx(relief, rel=1e-12)


@given(RELIEFS)
def test_on_a_helix_of_half_a_right_angle_tilt_and_relief_are_one(relief: float) -> None:
    assert tilt.wheel_tilt(relief, math.pi / 4) == pytest.approx(relief, rel=1e-12)


@given(RELIEFS, HELICES)
def test_relief_and_helix_may_be_exchanged(relief: float, helix: float) -> None:
    assert tilt.wheel_tilt(relief, helix) == pytest.approx(tilt.wheel_tilt(helix, relief), rel=1e-12)


@given(RELIEFS)
def test_the_straighter_the_flute_the_less_tilt_is_left(relief: float) -> None:
    assert tilt.wheel_tilt(relief, 0.0) == 0
    assert tilt.wheel_tilt(relief, 1e-9) == pytest.approx(1e-9 * math.tan(relief), rel=1e-6)


@given(RELIEFS, HELICES, st.floats(0.01, 30))
def test_what_the_contact_falls_along_the_wheel_is_what_the_land_falls(
    relief: float, helix: float, land: float
) -> None:
    contact = tilt.contact_length(land, helix)
    fall = tilt.fall_along_wheel(contact, tilt.wheel_tilt(relief, helix))
    # The land falls by its width times the slope of its relief, in whichever way the place got there.
    assert fall == pytest.approx(land * math.tan(relief), rel=1e-9)
    assert tilt.land_reached(contact, helix) == pytest.approx(land, rel=1e-12)


@pytest.mark.parametrize(
    ("call", "key"),
    [
        (lambda: tilt.wheel_tilt(-0.1, 0.5), "relief_angle"),
        (lambda: tilt.wheel_tilt(0.1, math.pi / 2), "helix_angle"),
        (lambda: tilt.relief_of_tilt(0.1, 0.0), "helix_angle"),
        (lambda: tilt.relief_of_tilt(math.nan, 0.5), "wheel_tilt"),
        (lambda: tilt.contact_length(1.0, 0.0), "helix_angle"),
        (lambda: tilt.contact_length(-1.0, 0.5), "land_width"),
    ],
)
def test_what_no_wheel_can_grind_is_refused_by_name(call: object, key: str) -> None:
    with pytest.raises(GeometryError) as refused:
        call()  # type: ignore[operator]
    assert refused.value.key == key


def searched_relief(line_tilt: float, helix: float, radius: float, wheel_radius: float) -> float:
    """The relief where the surface that a whole wheel leaves meets the circle of the edges, by nothing but a search.

    For each place round the tool the wheel is led past it, and the least distance from the axis at which it
    ever passes is what is left standing; no normal and no condition of contact is used.
    """
    axis = (-math.sin(line_tilt), 0.0, math.cos(line_tilt))

    def left(turned: float) -> float:
        def met(s: float) -> float:
            angle = s * math.tan(helix) / radius - turned
            ray = (math.cos(angle), math.sin(angle), 0.0)
            start = (-radius - wheel_radius * axis[2], 0.0, s + wheel_radius * axis[0])
            along_ray = sum(a * b for a, b in zip(ray, axis, strict=True))
            along_start = sum(a * b for a, b in zip(start, axis, strict=True))
            square_ray = [a - along_ray * b for a, b in zip(ray, axis, strict=True)]
            square_start = [a - along_start * b for a, b in zip(start, axis, strict=True)]
            a = sum(x * x for x in square_ray)
            b = sum(x * y for x, y in zip(square_ray, square_start, strict=True))
            under = b * b - a * (sum(x * x for x in square_start) - wheel_radius**2)
            return (-b - math.sqrt(under)) / a if under >= 0 else 10 * radius

        centre = turned * radius / math.tan(helix)
        found = minimize_scalar(
            met,
            bounds=(centre - 2 * radius, centre + 2 * radius),
            method="bounded",
            options={"xatol": 1e-11},
        )
        return float(found.fun)

    edge = brentq(lambda turned: left(turned) - radius, -0.6, 0.3, xtol=1e-12)
    step = 1e-4
    return math.atan((left(edge - step) - left(edge + step)) / (2 * step * radius))


@pytest.mark.parametrize(("relief", "real"), [(8.0, 8.08), (15.0, 15.54), (20.0, 21.34), (25.0, 27.78)])
def test_a_round_wheel_grinds_what_a_search_of_the_least_distance_finds(relief: float, real: float) -> None:
    lean = tilt.wheel_tilt(math.radians(relief), math.radians(30))
    searched = searched_relief(lean, math.radians(30), 6.0, 75.0)
    assert math.degrees(searched) == pytest.approx(real, abs=5e-3)
    found = round_wheel_relief(lean, math.radians(30), 12.0, 150.0)
    assert found == pytest.approx(searched, abs=1e-5)


@given(st.floats(0.01, 0.6), st.floats(0.05, 1.2), st.floats(1, 60), st.floats(10, 400))
def test_the_tilt_of_a_round_wheel_leads_back_to_its_relief(
    relief: float, helix: float, diameter: float, wheel: float
) -> None:
    lean = round_wheel_tilt(relief, helix, diameter, wheel)
    assert round_wheel_relief(lean, helix, diameter, wheel) == pytest.approx(relief, rel=1e-6)
    assert lean <= tilt.wheel_tilt(relief, helix)


@given(st.floats(0.01, 0.6), st.floats(0.05, 1.2), st.floats(1, 60))
def test_a_thin_wheel_is_a_line_and_a_huge_one_a_plane(relief: float, helix: float, diameter: float) -> None:
    lean = tilt.wheel_tilt(relief, helix)
    assert round_wheel_relief(lean, helix, diameter, diameter * 1e-6) == pytest.approx(relief, rel=1e-4)
    # A plane leaves the same line at every height: sin(relief) takes the place of tan(relief). Derived.
    plane = math.asin(math.tan(relief))
    assert round_wheel_relief(lean, helix, diameter, diameter * 1e7) == pytest.approx(plane, rel=1e-5)
