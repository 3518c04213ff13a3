"""The hook of a tap, found again by walking along the arc that a round wheel leaves."""

from __future__ import annotations

import cmath
import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run

TAP: dict[str, Given] = {"diameter": 12.0, "pitch": 1.75}
DEPTH = 17 / 24 * math.sqrt(3) / 2 * 1.75  # ISO 68-1: 17/24 of the fundamental triangle height


def hook(**values: Given) -> Result:
    return run(calculation("tap-hook"), {**TAP, **values})


def said(result: Result) -> str:
    return " ".join(f"{check.state}: {check.sentence}" for check in result.checks)


@given(st.floats(-20.0, 35.0), st.floats(4.0, 60.0))
def test_walking_along_the_arc_to_the_root_gives_the_same_hook(degrees: float, radius: float) -> None:
    # Independent: the edge at 6 on the axis up, the wheel's middle square to the face there; the root is found by halving.
    rake, edge = math.radians(degrees), 6j
    middle = edge - radius * cmath.exp(1j * rake)
    low, high = 0.0, DEPTH / radius / 4
    while abs(middle + (edge - middle) * cmath.exp(-1j * high)) > 6 - DEPTH:
        high *= 1.1
    for _ in range(200):
        half = (low + high) / 2
        inside = abs(middle + (edge - middle) * cmath.exp(-1j * half)) <= 6 - DEPTH
        low, high = (low, half) if inside else (half, high)
    root = middle + (edge - middle) * cmath.exp(-1j * high)
    chord = root - edge
    found = hook(rake_angle=rake, face_radius=radius).outputs
    assert found["hook_angle"] == pytest.approx(math.atan2(chord.real, -chord.imag), abs=1e-9)
    # The rake at the root: between the arc there and the way to the axis.
    along = (root - middle) * -1j
    assert found["root_rake_angle"] == pytest.approx(cmath.phase(along / -root), abs=1e-8)
    assert found["wheel_centre_ahead"] == pytest.approx(-middle.real)
    assert found["wheel_centre_below"] == pytest.approx(6 - middle.imag)
    back = hook(hook_angle=found["hook_angle"], face_radius=radius).outputs
    assert back["rake_angle"] == pytest.approx(rake, abs=1e-9)


def test_the_rim_of_the_wheel_cuts_the_circle_of_the_roots_at_the_end_of_the_chord() -> None:
    # Independent: the rim as a polygon of many corners, cut with the circle of the roots.
    found = hook(hook_angle=math.radians(10), face_radius=6.0).outputs
    rim = (
        shapely.Point(-found["wheel_centre_ahead"], 6 - found["wheel_centre_below"])
        .buffer(6.0, 4096)
        .exterior
    )
    roots = shapely.Point(0, 0).buffer(6 - DEPTH, 4096).exterior
    ends = [place for place in shapely.intersection(rim, roots).geoms if place.y > 0]
    leans = [math.atan2(place.x, 6 - place.y) for place in ends]
    assert min(leans, key=lambda one: abs(one - math.radians(10))) == pytest.approx(
        math.radians(10), abs=2e-5
    )
    assert rim.distance(shapely.Point(0, 6)) == pytest.approx(0.0, abs=1e-6)
    chord = shapely.LineString([(0, 6), max(((p.x, p.y) for p in ends), key=lambda one: one[1])])
    face = shapely.intersection(rim, shapely.box(0.0, chord.bounds[1], 3.0, 6.0))
    assert shapely.hausdorff_distance(chord, face, 0.01) == pytest.approx(found["face_hollow"], abs=1e-3)


def test_a_face_that_is_nearly_flat_has_one_rake_all_along_its_chord() -> None:
    found = hook(hook_angle=math.radians(12), face_radius=500.0).outputs
    assert found["rake_angle"] == pytest.approx(math.radians(12), abs=1.5e-3)
    # Published for a flat face, half the diameter times the sine of the rake: rotating-tool catalogue 2017, p. 734.
    assert found["face_offset"] == pytest.approx(6.0 * math.sin(math.radians(12)))


def test_a_narrow_face_makes_the_edge_too_keen_and_says_what_helps() -> None:
    keen = hook(hook_angle=math.radians(20), face_radius=1.2)
    assert keen.checks[0].state == "watch"
    assert "Ask for a hook of" in said(keen)
    assert "give the face a radius of" in said(keen)
    assert "pass: A hook of 10 deg along the chord is a rake of" in said(
        hook(hook_angle=math.radians(10), face_radius=6.0)
    )


def test_what_no_wheel_reaches_is_refused() -> None:
    with pytest.raises(Refusal, match="turns away before it reaches the root"):
        hook(hook_angle=math.radians(10), face_radius=0.4)
    with pytest.raises(Refusal, match="turns away before it reaches the root"):
        hook(rake_angle=math.radians(10), face_radius=0.4)
    with pytest.raises(Refusal, match="misses the root"):
        run(
            calculation("tap-hook"),
            {"diameter": 12.0, "pitch": 3.5, "hook_angle": math.radians(55), "face_radius": 9.0},
        )
