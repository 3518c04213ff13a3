"""The drawing of a tooth for paper."""

from __future__ import annotations

import math
import re
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculations import calculation
from geometry.evaluate import run
from geometry.figure import Curve, Figure, curve
from library.figures.svg import HEIGHT, WIDTH, caption, exaggeration, svg

SVG = "{http://www.w3.org/2000/svg}"


def lines(figure: Figure) -> list[list[tuple[float, float]]]:
    found = []
    for one in ElementTree.fromstring(svg(figure, "A tooth")).iter(f"{SVG}polyline"):
        places = [place.split(",") for place in one.attrib["points"].split()]
        found.append([(float(x), float(y)) for x, y in places])
    return found


def tooth(relief: float = 8, land: float = 3.2, form: str = "eccentric") -> Figure:
    values = {
        "diameter": 12.0,
        "relief_angle": math.radians(relief),
        "land_width": land,
        "relief_form": form,
    }
    figure = run(calculation("relief-drop"), values).figure  # type: ignore[arg-type]
    assert figure is not None
    return figure


def test_the_drops_are_drawn_as_many_times_deeper_as_is_said() -> None:
    figure = tooth(land=1.2)
    times = exaggeration(figure)
    assert f"drops drawn {times} times as deep" in caption(figure)
    face, heel, circle, profile = lines(figure)[:4]
    # Derived: an even cam falls 1.2 tan 8 over the land; the radius to the heel leans by half of the land.
    fall, half = 1.2 * math.tan(math.radians(8)), figure.land_angle / 2
    edge, end = profile[0], profile[-1]
    scale = (end[0] - edge[0]) / (2 * 6 * math.sin(half) - fall * math.sin(half))
    assert (end[1] - edge[1]) / scale == pytest.approx(times * fall * math.cos(half), rel=0.02)
    # The circle is an arch that is as many times higher: its sagitta over the chord of the land.
    assert (edge[1] - min(y for _, y in circle)) / scale == pytest.approx(
        times * 6 * (1 - math.cos(half)), rel=0.02
    )
    assert face[0] == pytest.approx(edge)
    assert heel[0] == pytest.approx(end)


@pytest.mark.parametrize("land", [1.2, 3.2, 6.3, 9.0])
def test_a_flat_is_drawn_straight_and_from_45_degrees_on_to_scale(land: float) -> None:
    figure = tooth(relief=10, land=land, form="flat")
    profile = lines(figure)[3]
    (x1, y1), (x2, y2) = profile[0], profile[-1]
    for x, y in profile:
        assert abs((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1)) / math.hypot(x2 - x1, y2 - y1) < 0.02
    assert exaggeration(figure) == 1 or land < 4
    assert exaggeration(figure) > 1 or land > 2


def test_only_what_stands_outside_the_circle_is_filled() -> None:
    assert "polygon" not in svg(tooth(), "x")
    figure = tooth(form="flat")
    (filled,) = ElementTree.fromstring(svg(figure, "x")).iter(f"{SVG}polygon")
    begins, _ = filled.attrib["points"].split()[0].split(",")
    profile = lines(figure)[3]
    # Derived: a flat of 8 degrees is back on the circle 16 degrees behind the edge.
    share = (math.sin(figure.land_angle / 2) - math.sin(figure.land_angle / 2 - math.radians(16))) / (
        2 * math.sin(figure.land_angle / 2)
    )
    circle_width = lines(figure)[2]
    scale = (circle_width[-1][0] - circle_width[0][0]) / (2 * math.sin(1.24 * figure.land_angle / 2))
    assert float(begins) - profile[0][0] == pytest.approx(
        share * 2 * math.sin(figure.land_angle / 2) * scale, abs=1
    )


def test_a_proud_heel_is_drawn_outside_the_circle() -> None:
    # Flat, 8 degrees, 3.2 wide on 12: the heel is proud by derivation, for it is wider than twice the relief angle.
    figure = tooth(form="flat")
    circle, profile = lines(figure)[2:4]
    assert min(y for _, y in profile) < min(y for _, y in circle)


def test_the_face_leans_back_for_a_positive_rake_and_forward_for_a_negative_one() -> None:
    def lean(rake: float) -> float:
        figure = Figure(6.0, 0.4, (curve("eccentric", 0.4, lambda angle: 0.5 * angle),), math.radians(rake))
        (x, y), (foot_x, foot_y) = lines(figure)[0]
        return math.degrees(math.atan2(foot_x - x, foot_y - y))

    # The edge stands half the land to the left of the middle, so that its radius leans by half the land angle.
    radial = math.degrees(0.2)
    assert lean(0) == pytest.approx(radial, abs=0.2)
    assert lean(15) == pytest.approx(radial + 15, abs=0.2)
    assert lean(-10) == pytest.approx(radial - 10, abs=0.2)


@given(
    st.floats(0.5, 200),
    st.floats(0.01, 3.0),
    st.floats(-0.2, 0.4),
    st.integers(0, 4),
    st.floats(-0.7, 0.7),
)
def test_every_tooth_is_drawn_within_its_paper(
    radius: float, land: float, slope: float, count: int, rake: float
) -> None:
    curves = tuple(curve(f"line {n}", land, lambda angle: radius * slope * angle / 2) for n in range(count))
    text = svg(Figure(radius, land, curves, rake), "x")
    root = ElementTree.fromstring(text)
    assert root.tag == f"{SVG}svg"
    for places in re.findall(r'points="([^"]*)"', text):
        for place in places.split():
            x, y = map(float, place.split(","))
            assert -1 <= x <= WIDTH + 1
            assert -1 <= y <= HEIGHT + 1


def test_a_profile_of_two_points_follows_the_circle() -> None:
    figure = Figure(6.0, 1.0, (Curve("gap", ((0.0, 0.05), (1.0, 0.05))),))
    profile = lines(figure)[3]
    assert len(profile) > 20
    chord = [
        profile[0][1] + (profile[-1][1] - profile[0][1]) * i / (len(profile) - 1) for i in range(len(profile))
    ]
    assert min(y - straight for (_, y), straight in zip(profile, chord, strict=True)) < -5


def test_words_from_outside_are_text() -> None:
    text = svg(tooth(), "<script>&\x1b")
    assert "<script" not in text
    assert "\x1b" not in text
    ElementTree.fromstring(text)


def test_a_tooth_without_a_profile_is_drawn_true() -> None:
    assert exaggeration(Figure(6.0, 0.5, ())) == 1
    assert "drops drawn true" in caption(Figure(6.0, 0.5, ()))
