"""The calculation of the heel's drop: its numbers, its indicator readings and what it says."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.sentences import Amount
from geometry.tooth.heel_advice import READABLE

AsShown = Callable[[Amount | str], float]
INCH = 25.4


def relief_drop(**values: Given) -> Result:
    return run(calculation("relief-drop"), values)


def states(result: Result) -> list[str]:
    return [check.state for check in result.checks]


def tool_of(diameter: float, relief: float, share: float, measure: str, form: str) -> dict[str, Given]:
    return {
        "diameter": diameter,
        "relief_angle": relief,
        "land_width": share * diameter,
        "land_measured_as": measure,
        "relief_form": form,
    }


tools = st.builds(
    tool_of,
    st.floats(2.0, 100.0),
    st.floats(math.radians(0.5), math.radians(44)),
    st.floats(0.01, 0.45),
    st.sampled_from(("arc", "chord")),
    st.sampled_from(("eccentric", "flat")),
)


def hardly_clearing(
    diameter: float, turned: float, share: float, measure: str, form: str
) -> dict[str, Given]:
    """A tool whose heel lies inside by this share of what an indicator shows, its relief worked out for that.

    Derived: a cam falls evenly, ``R tan(a) theta``; for a flat ``tan(a) = (R / r - cos(theta)) / sin(theta)``.
    """
    radius, drop = diameter / 2, share * READABLE
    rise = drop / (radius - drop) + 2 * math.sin(turned / 2) ** 2
    return {
        "diameter": diameter,
        "relief_angle": math.atan(drop / (radius * turned))
        if form == "eccentric"
        else math.atan(rise / math.sin(turned)),
        "land_width": radius * turned if measure == "arc" else diameter * math.sin(turned / 2),
        "land_measured_as": measure,
        "relief_form": form,
    }


heels_that_hardly_clear = st.builds(
    hardly_clearing,
    st.floats(2.0, 100.0),
    st.floats(0.05, 0.9),
    st.floats(0.02, 0.98),
    st.sampled_from(("arc", "chord")),
    st.sampled_from(("eccentric", "flat")),
)


def test_the_case_of_twelve_millimetres() -> None:
    # Derived: 2 tan(8 deg), and the polygon of the flat in the tests of the flat itself.
    tool: dict[str, Given] = {"diameter": 12.0, "relief_angle": math.radians(8), "land_width": 2.0}
    even, flat = relief_drop(**tool), relief_drop(**tool, relief_form="flat")
    assert even.outputs["heel_drop"] == pytest.approx(0.28108, abs=5e-6)
    assert flat.outputs["heel_drop"] == pytest.approx(-0.05485, abs=5e-6)
    assert flat.outputs["clear_land_width"] == pytest.approx(1.6755, abs=5e-5)
    assert states(even) == ["pass"]
    assert states(flat) == ["stop"]


def test_the_case_of_half_an_inch() -> None:
    tool: dict[str, Given] = {
        "diameter": 0.5 * INCH,
        "relief_angle": math.radians(7),
        "land_width": 0.080 * INCH,
    }
    assert relief_drop(**tool).outputs["heel_drop"] / INCH == pytest.approx(0.00982, abs=5e-6)
    flat = relief_drop(**tool, relief_form="flat").outputs["heel_drop"]
    assert flat / INCH == pytest.approx(-0.00307, abs=5e-6)


def test_the_sentence_of_a_heel_that_rubs_names_every_way_out() -> None:
    tool: dict[str, Given] = {
        "diameter": 12.0,
        "relief_angle": math.radians(8),
        "land_width": 2.0,
        "relief_form": "flat",
    }
    (check,) = relief_drop(**tool).checks
    assert str(check.sentence) == (
        "The flat, carried on to the heel, stands 0.05485 mm proud of the circle: the heel will rub. Narrow the land to 1.676 mm, "
        "raise the relief above 9.549 deg, or grind a second facet behind it."
    )


@given(tools)
def test_the_indicator_reads_from_nothing_at_the_edge_to_the_drop_at_the_heel(
    tool: Mapping[str, Given],
) -> None:
    result = relief_drop(**tool)
    readings = [station.readings["drop"] for station in result.stations]
    assert readings[0] == 0.0
    assert readings[-1] == pytest.approx(result.outputs["heel_drop"], rel=1e-9, abs=1e-12)
    assert [station.fraction for station in result.stations] == [0, 0.25, 0.5, 0.75, 1]
    assert result.stations[-1].angle == pytest.approx(result.outputs["land_angle"], rel=1e-15)
    if tool["relief_form"] == "eccentric":
        assert readings[2] == pytest.approx(readings[4] / 2, rel=1e-12)
    else:
        assert readings[2] >= readings[4] / 2


@given(tools)
def test_a_caliper_and_a_paper_strip_on_the_same_land_give_the_same_drop(tool: Mapping[str, Given]) -> None:
    result = relief_drop(**{**tool, "land_measured_as": "arc"})
    turned, diameter = result.outputs["land_angle"], tool["diameter"]
    assert not isinstance(diameter, str | tuple)
    across = diameter * math.sin(turned / 2)
    other = relief_drop(**{**tool, "land_measured_as": "chord", "land_width": across})
    assert other.outputs["heel_drop"] == pytest.approx(
        result.outputs["heel_drop"], rel=1e-7, abs=1e-12 * diameter
    )


@given(tools)
def test_inches_and_millimetres_give_the_same_heel(tool: Mapping[str, Given]) -> None:
    here = relief_drop(**tool).outputs
    scaled = {
        key: value / INCH if key in ("diameter", "land_width") and isinstance(value, float) else value
        for key, value in tool.items()
    }
    there = relief_drop(**scaled).outputs
    for key in {"heel_drop", "clear_land_width"} & set(here):
        assert there[key] == pytest.approx(here[key] / INCH, rel=1e-12, abs=1e-14)
    assert there["land_angle"] == pytest.approx(here["land_angle"], rel=1e-14)


def test_no_cure_is_offered_that_is_no_cure(as_shown: AsShown) -> None:
    @given(tools)
    def every_cure(tool: Mapping[str, Given]) -> None:
        result = relief_drop(**{**tool, "relief_form": "flat"})
        assume(result.checks[0].state == "stop")
        parts = result.checks[0].sentence.parts
        narrower = {**tool, "relief_form": "flat", "land_width": as_shown(parts["widest"])}
        assert "stop" not in states(relief_drop(**narrower))
        if "enough" in parts:
            steeper = as_shown(parts["enough"]) + math.radians(0.01)
            assert "stop" not in states(
                relief_drop(**{**tool, "relief_form": "flat", "relief_angle": steeper})
            )

    every_cure()


def test_a_heel_that_hardly_clears_is_cured_by_the_relief_named(as_shown: AsShown) -> None:
    @given(heels_that_hardly_clear)
    def every_cure(tool: Mapping[str, Given]) -> None:
        check = relief_drop(**tool).checks[0]
        assert check.state == "watch"
        again = relief_drop(**{**tool, "relief_angle": as_shown(check.sentence.parts["enough"])})
        assert again.outputs["heel_drop"] >= READABLE
        assert "watch" not in states(again)

    every_cure()


def test_a_land_too_narrow_for_an_indicator_is_looked_at_under_a_glass() -> None:
    (check,) = relief_drop(diameter=12.0, relief_angle=0.1, land_width=0.005).checks
    assert check.state == "watch"
    assert "glass" in str(check.sentence)


def test_a_heel_that_just_touches_is_a_stop() -> None:
    relief = 0.125
    result = relief_drop(diameter=8.0, relief_angle=relief, land_width=8 * relief, relief_form="flat")
    assert result.outputs["heel_drop"] == 0.0
    assert str(result.checks[0].sentence).startswith("The heel just touches the circle")
    assert "Narrow the land to 1 mm" in str(result.checks[0].sentence)


@pytest.mark.parametrize("form", ["eccentric", "flat"])
def test_no_land_and_no_relief_are_told_apart(form: str) -> None:
    no_land = relief_drop(diameter=12.0, relief_angle=0.1, land_width=0.0, relief_form=form)
    assert states(no_land) == ["watch"]
    assert no_land.figure is None
    no_relief = relief_drop(diameter=12.0, relief_angle=0.0, land_width=1.0, relief_form=form)
    assert states(no_relief) == ["stop"]
    assert no_relief.outputs["heel_drop"] <= 0.0


def test_a_relief_past_the_centre_is_refused_with_one_that_stays_short(as_shown: AsShown) -> None:
    tool: dict[str, Given] = {"diameter": 12.0, "land_width": 9.0}
    with pytest.raises(Refusal) as refused:
        relief_drop(**tool, relief_angle=math.radians(40))
    (problem,) = refused.value.problems
    assert problem.key == "relief_angle"
    relief_drop(**tool, relief_angle=as_shown(problem.sentence.parts["limit"]) - math.radians(0.01))


def test_a_flat_that_never_comes_round_is_refused_with_a_land_that_clears(as_shown: AsShown) -> None:
    tool: dict[str, Given] = {"diameter": 12.0, "relief_angle": math.radians(8), "relief_form": "flat"}
    with pytest.raises(Refusal) as refused:
        relief_drop(**tool, land_width=15.0)
    (problem,) = refused.value.problems
    assert problem.key == "land_width"
    assert "stop" not in states(relief_drop(**tool, land_width=as_shown(problem.sentence.parts["widest"])))
    with pytest.raises(Refusal, match="A flat without relief stands proud"):
        relief_drop(diameter=12.0, relief_angle=0.0, relief_form="flat", land_width=15.0)


def test_a_flat_that_rises_again_tells_where_it_is_deepest() -> None:
    result = relief_drop(diameter=12.0, relief_angle=math.radians(12), land_width=2.0, relief_form="flat")
    assert states(result) == ["pass", "note"]
    parts = result.checks[1].sentence.parts
    assert isinstance(parts["depth"], Amount)
    assert parts["depth"].value == pytest.approx(6 * (1 - math.cos(math.radians(12))), rel=1e-12)


@given(tools)
def test_the_figure_shows_the_chosen_form_first_and_ends_at_the_heel(tool: Mapping[str, Given]) -> None:
    result = relief_drop(**tool)
    assert result.figure is not None
    chosen = result.figure.curves[0]
    assert chosen.name == tool["relief_form"]
    assert {curve.name for curve in result.figure.curves} == {"eccentric", "flat"}
    assert chosen.points[0] == (0.0, 0.0)
    turned, depth = chosen.points[-1]
    if turned == result.figure.land_angle:
        assert depth == pytest.approx(result.outputs["heel_drop"], rel=1e-9, abs=1e-12)


def test_the_fall_of_the_cam_is_told_for_a_cam_only() -> None:
    tool: dict[str, Given] = {"diameter": 12.0, "relief_angle": math.radians(8), "land_width": 1.0}
    even = relief_drop(**tool).outputs
    assert even["throw_per_turn"] == pytest.approx(math.pi * 12 * math.tan(math.radians(8)), rel=1e-14)
    assert "throw_per_turn" not in relief_drop(**tool, relief_form="flat").outputs


def test_the_throw_for_a_lip_says_which_way_the_cam_moves_and_what_one_along_the_axis_has() -> None:
    lip: dict[str, Given] = {"surface": "lip", "point_angle": math.radians(118), "relief_angle": math.radians(12),
                             "diameter": 10.0, "land_width": 3.0, "flutes": 2.0, "throw_per": "tooth"}  # fmt: skip
    found = relief_drop(**lip)
    # By hand: half round the corner is 15.7080 mm, and falls by tan 12 along the axis, 3.3389 mm; a cam toward the axis
    # has that times tan 59, 5.5568 mm, for the lip lies at 59 degrees. Derived.
    assert found.outputs["throw_per_tooth"] == pytest.approx(5.5568, abs=1e-4)
    assert found.named["throw_per_tooth"] == "Throw per tooth, radial"
    (said,) = [one.sentence for one in found.checks if "axial throw" in one.sentence.template]
    axial, radial = said.parts["axial"], said.parts["radial"]
    assert isinstance(axial, Amount)
    assert isinstance(radial, Amount)
    assert (axial.value, radial.value) == pytest.approx((3.3389, 5.5568), abs=1e-4)


def test_the_throw_for_an_end_is_axial_and_that_of_a_land_needs_no_word() -> None:
    end = relief_drop(surface="end", relief_angle=0.1, diameter=10.0, land_width=2.0)
    assert end.named["throw_per_turn"] == "Throw per turn, axial"
    assert not relief_drop(surface="land", relief_angle=0.1, diameter=10.0, land_width=2.0).named


def test_an_eccentric_relief_begins_where_the_margin_ends() -> None:
    # By hand, round a circle of 20 mm: of a land of 1 mm 0.2 mm, 0.02 rad, run on the circle, and 0.8 tan 7 = 0.098 mm are left
    # to the heel; at the quarter, 0.25 mm on, 0.05 tan 7 are.
    given = tool_of(20.0, math.radians(7), 1 / 20, "arc", "eccentric")
    found = relief_drop(**given, margin_width=0.2)
    assert found.outputs["heel_drop"] == pytest.approx(0.8 * math.tan(math.radians(7)))
    assert found.outputs["land_angle"] == pytest.approx(0.1)
    quarter = found.stations[1].readings["drop"]
    assert quarter == pytest.approx(0.05 * math.tan(math.radians(7)))
    assert found.stations[0].readings["drop"] == 0
    assert any("the relief begins where it ends" in str(one.sentence) for one in found.checks)


def test_a_flat_from_the_edge_says_that_a_margin_is_not_counted() -> None:
    given = tool_of(20.0, math.radians(7), 1 / 20, "arc", "flat")
    found = relief_drop(**given, margin_width=0.2)
    assert found.outputs["heel_drop"] == relief_drop(**given).outputs["heel_drop"]
    assert any("0.2 mm is not counted" in str(one.sentence) for one in found.checks)


def test_a_margin_over_the_whole_land_is_refused_and_counts_on_no_other_surface() -> None:
    given = tool_of(20.0, math.radians(7), 1 / 20, "arc", "eccentric")
    with pytest.raises(Refusal) as refused:
        relief_drop(**given, margin_width=1.0)
    assert [one.key for one in refused.value.problems] == ["margin_width"]
    cone = given | {"surface": "cone", "included_angle": math.radians(90)}
    assert relief_drop(**cone, margin_width=0.2).outputs == relief_drop(**cone).outputs
