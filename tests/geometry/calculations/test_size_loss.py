"""Sharpenings counted one by one, on the face and on the end."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, asked_for, run
from geometry.sentences import Amount
from geometry.upkeep.sharpening import stock_along


def loss(**values: Given) -> Result:
    return run(calculation("size-loss"), values)


def states(result: Result) -> list[str]:
    return [check.state for check in result.checks]


CAM: dict[str, Given] = {
    "diameter": 12.0,
    "relief_angle": math.radians(4),
    "land_width": 3.0,
    "stock_per_sharpening": 0.2,
}


def test_a_cam_loses_stock_times_tangent_off_the_radius_each_time() -> None:
    found = loss(**CAM, least_land=1.0)
    assert found.outputs["size_lost"] == pytest.approx(2 * 0.2 * math.tan(math.radians(4)), rel=1e-12)
    diameters = [row.values["diameter_after"] for row in found.rows]
    falls = {round(before - after, 12) for before, after in zip([12.0, *diameters], diameters, strict=False)}
    assert len(falls) == 1


@given(
    st.floats(2.0, 50.0),
    st.floats(math.radians(1), math.radians(12)),
    st.floats(0.02, 0.2),
    st.floats(0.0, 0.1),
)
def test_the_count_is_that_of_a_tool_sharpened_by_hand(
    diameter: float, relief: float, stock: float, least: float
) -> None:
    # Independent: one sharpening after another on the tool that is left, its land measured anew each time.
    step, lands, size, turned = 2 * stock / diameter, [], diameter, 0.3
    while turned > 0:
        turned, size = turned - step, size - step * diameter * math.tan(relief)
        lands.append(turned * size / 2 - max(least * diameter, 0.0))
    assume(all(abs(spare) > 1e-6 for spare in lands))
    done = sum(1 for spare in lands if spare > 0)
    found = loss(
        diameter=diameter,
        relief_angle=relief,
        stock_per_sharpening=stock,
        land_width=0.3 * diameter / 2,
        least_land=least * diameter,
    )
    assert found.outputs["sharpenings_left"] == done
    assert found.outputs["diameter_after"] == pytest.approx(diameter - done * 2 * stock * math.tan(relief))


def test_the_first_limit_ends_the_count_and_is_named() -> None:
    by_size = loss(**CAM, least_diameter=11.9)
    assert by_size.outputs["sharpenings_left"] == 3
    assert "the diameter would fall under 11.9 mm" in str(by_size.checks[0].sentence)
    by_land = loss(**CAM, least_land=1.0)
    assert "the land would fall under 1 mm" in str(by_land.checks[0].sentence)
    assert by_land.outputs["land_after"] >= 1.0


def test_a_flat_runs_out_of_relief_before_it_runs_out_of_land() -> None:
    values = CAM | {"relief_angle": math.radians(8), "relief_form": "flat", "land_width": 1.2}
    found = loss(**values)
    left = int(found.outputs["sharpenings_left"])
    step = 2 * 0.2 / 12.0
    # Derived: a facet at relief a meets the circle again 2 a behind its edge, and both a and the land lose a step.
    assert 2 * (math.radians(8) - left * step) >= 0.2 - left * step
    assert 2 * (math.radians(8) - (left + 1) * step) < 0.2 - (left + 1) * step
    assert "heel" in str(found.checks[0].sentence)


def test_both_forms_take_nearly_the_same_off_a_narrow_land() -> None:
    cam, flat = (
        loss(**(CAM | {"land_width": 0.05, "stock_per_sharpening": 0.01, "relief_form": form}))
        for form in ("eccentric", "flat")
    )
    assert cam.outputs["size_lost"] == pytest.approx(flat.outputs["size_lost"], rel=0.02)


def test_grinding_the_end_loses_stock_times_taper() -> None:
    found = loss(
        ground_on="end",
        diameter=12.0,
        stock_per_sharpening=0.5,
        back_taper=0.08,
        usable_length=20.0,
        least_diameter=11.99,
    )
    # Derived: 0.08 over 100 mm takes 0.0004 for each half millimetre, so 0.01 is used up after 25.
    assert found.outputs["size_lost"] == pytest.approx(0.0004)
    assert found.outputs["sharpenings_left"] == 25
    assert found.outputs["diameter_after"] == pytest.approx(11.99)
    assert found.outputs["length_after"] == pytest.approx(7.5)


def test_back_taper_and_taper_ratio_say_the_same() -> None:
    values: dict[str, Given] = {
        "ground_on": "end",
        "diameter": 12.0,
        "stock_per_sharpening": 0.5,
        "usable_length": 20.0,
    }
    assert loss(**values, back_taper=0.08).outputs == pytest.approx(
        loss(**values, taper_ratio=0.0008).outputs
    )


def test_without_taper_only_the_length_counts() -> None:
    found = loss(
        ground_on="end", diameter=12.0, stock_per_sharpening=0.5, taper_ratio=0.0, usable_length=20.0
    )
    assert found.outputs["sharpenings_left"] == 40
    assert found.outputs["diameter_after"] == 12.0


def test_a_land_without_width_is_watched_and_no_limit_at_all_is_said() -> None:
    assert states(loss(**(CAM | {"land_width": 0.0}), least_land=0.5)) == ["watch"]
    assert states(loss(**CAM)) == ["pass", "watch"]


def test_the_table_shows_the_first_ten_and_the_last() -> None:
    found = loss(**(CAM | {"stock_per_sharpening": 0.01}), least_land=1.0)
    labels = [row.label for row in found.rows]
    assert labels[:10] == [f"after {times}" for times in range(1, 11)]
    assert labels[10:] == [f"after {int(found.outputs['sharpenings_left'])}"]
    assert found.rows[-1].values["diameter_after"] == found.outputs["diameter_after"]


@pytest.mark.parametrize("form", ["eccentric", "flat"])
def test_the_figure_shows_the_profile_along_which_the_edge_goes_back(form: str) -> None:
    found = loss(**CAM, relief_form=form, least_land=1.0)
    assert found.figure is not None
    (profile,) = found.figure.curves
    assert profile.name == form
    if form == "eccentric":
        angle, drop = profile.points[24]
        assert drop == pytest.approx(6.0 * math.tan(math.radians(4)) * angle)


def test_a_relief_that_would_pass_the_centre_is_refused() -> None:
    with pytest.raises(Refusal, match="centre"):
        loss(**(CAM | {"relief_angle": math.radians(44), "land_width": 20.0}))
    with pytest.raises(Refusal, match="taper"):
        loss(ground_on="end", diameter=1.0, stock_per_sharpening=5.0, taper_ratio=1.0, usable_length=20.0)


def test_stock_square_to_a_face_with_rake_goes_further_round_the_tool() -> None:
    """A hand's construction: a face leaning 15 degrees, moved 0.1 mm, meets a circle's tangent 0.10353 mm on (no relief)."""
    tool: dict[str, Given] = {
        "diameter": 12.0,
        "relief_angle": 0.0,
        "land_width": 3.0,
        "stock_per_sharpening": 0.1,
    }
    straight = loss(**tool)
    raked = loss(**tool, rake_angle=math.radians(15))
    assert 3.0 - straight.rows[0].values["land_after"] == pytest.approx(0.1)
    assert 3.0 - raked.rows[0].values["land_after"] == pytest.approx(0.103528, abs=5e-7)


@given(
    st.floats(math.radians(-10), math.radians(25)),
    st.floats(math.radians(1), math.radians(12)),
    st.floats(0.001, 0.02),
)
def test_the_new_edge_lies_where_the_moved_face_meets_the_relief(
    rake: float, relief: float, stock: float
) -> None:
    """Found by cutting two straight lines: the tangent that sinks by the relief, and the face moved square to itself."""
    share = stock_along(1.0, rake, relief)
    # Points (t, -t tan a) on the surface; the face runs inward from the edge along (sin g, -cos g).
    t = shapely.LineString([(0, 0), (1, -math.tan(relief))]).intersection(
        shapely.LineString(
            [
                (stock * math.cos(rake) - 2 * math.sin(rake), stock * math.sin(rake) + 2 * math.cos(rake)),
                (stock * math.cos(rake) + 2 * math.sin(rake), stock * math.sin(rake) - 2 * math.cos(rake)),
            ]
        )
    )
    assert t.x == pytest.approx(stock * share, rel=1e-9)


def test_a_taps_chamfer_is_read_square_to_the_axis_and_a_cone_square_to_itself() -> None:
    """8 degrees square to a cone of 82 degrees is tan 8 / cos 41 = 0.18622 square to the axis, by hand."""
    found = loss(
        surface="cone",
        included_angle=math.radians(82),
        diameter=25.4,
        relief_angle=math.radians(8),
        land_width=6.0,
        stock_per_sharpening=0.2,
    )
    assert found.outputs["size_lost"] == pytest.approx(2 * 0.2 * 0.18622, abs=2e-5)


def test_a_heel_that_rubs_already_is_not_said_to_rub_after_a_sharpening() -> None:
    (check,) = [one for one in loss(**(CAM | {"relief_form": "flat"})).checks if one.state == "stop"]
    assert "proud" in str(check.sentence)
    assert "after one sharpening" not in str(check.sentence)


def test_the_table_names_the_surface_whose_relief_it_tells() -> None:
    found = loss(**CAM, least_land=1.0, surface="thread-land")
    assert found.heads["relief_after"] == "thread land relief after, square to the axis"


def test_what_later_sharpenings_take_off_a_land_is_not_told_to_be_what_the_first_takes() -> None:
    # By hand, a land of 3.175 mm on 19.05 mm is a third of a radian, and 0.254 mm turn 0.02667 of it away each time. The
    # cam of 10.05 degrees takes 2 x 0.254 x tan 10.05 = 0.0900 mm off the size: the first takes 0.254 + 0.0450 x 0.3067,
    # 0.268 mm, off the land; the last, on a tool that is 0.99 mm smaller, less.
    found = loss(
        diameter=19.05, relief_angle=math.radians(10.05), land_width=3.175, stock_per_sharpening=0.254
    )
    (told,) = (check for check in found.checks if "left" in check.sentence.parts)
    part = told.sentence.parts["stock"]
    assert isinstance(part, Amount)
    assert part.value == pytest.approx(0.254 + 0.0450 * 0.3067, abs=1e-4)
    assert "the first takes {stock} off the land, each later one less" in told.sentence.template
    narrow = loss(diameter=19.05, relief_angle=math.radians(1), land_width=0.8, stock_per_sharpening=0.2)
    assert any(
        check.sentence.template.startswith(
            "Each sharpening of the faces makes the tool {lost} smaller and takes"
        )
        for check in narrow.checks
    )


REAMER: dict[str, Given] = {
    "surface": "land",
    "diameter": 16.012,
    "relief_angle": math.radians(5),
    "relief_form": "flat",
    "land_width": 1.8,
    "stock_per_sharpening": 0.03,
    "least_diameter": 16.008,
}


def test_a_margin_keeps_the_size_until_it_is_gone() -> None:
    # By hand: on a radial face 0.03 mm go round the circle, on which the whole margin lies; 0.2 / 0.03 is 6.67, so that six
    # leave 0.02 mm of it and 1.8 - 0.18 mm of the land, and the seventh leaves none.
    found = loss(**REAMER, margin_width=0.2)
    assert states(found) == ["pass"]
    assert found.outputs["sharpenings_left"] == 6
    assert found.outputs["size_lost"] == 0
    assert found.outputs["diameter_after"] == 16.012
    assert found.outputs["land_after"] == pytest.approx(1.62)
    assert found.rows[-1].values["margin_width"] == pytest.approx(0.02)
    assert "costs no size while it lasts" in str(found.checks[0].sentence)


def test_a_rake_takes_more_off_a_margin() -> None:
    # By hand: a face that leans 15 deg meets the circle 0.03 / cos 15 = 0.03106 mm further back; 0.1553 mm are five such.
    found = loss(**REAMER, margin_width=0.156, rake_angle=math.radians(15))
    assert found.outputs["sharpenings_left"] == 5
    assert found.rows[0].values["margin_width"] == pytest.approx(0.156 - 0.031058, abs=1e-6)


def test_a_margin_that_one_sharpening_takes_away_is_a_stop() -> None:
    found = loss(**REAMER | {"stock_per_sharpening": 0.25}, margin_width=0.2)
    assert states(found) == ["stop"]
    assert "size_lost" not in found.outputs
    assert "Take 0.1 mm at a time, or less" in str(found.checks[0].sentence)


def test_a_land_or_a_size_that_falls_short_ends_the_count_of_a_margin() -> None:
    # By hand: 1.8 - 0.03 n stays at 1.73 or above for two.
    by_land = loss(**REAMER, margin_width=0.2, least_land=1.73)
    assert by_land.outputs["sharpenings_left"] == 2
    assert "the land would fall under 1.73 mm" in str(by_land.checks[0].sentence)
    small = loss(**REAMER | {"least_diameter": 16.02}, margin_width=0.2)
    assert states(small) == ["stop"]
    assert "the tool is under 16.02 mm as it is" in str(small.checks[0].sentence)


def test_with_facets_the_first_counts_over_its_own_land() -> None:
    # Derived in the plane, the edge at (8, 0): the primary land goes along (-sin 5, cos 5) and ends, 0.6 mm on, 0.07507 rad
    # behind the edge. 0.07 mm off a radial face are 0.00875 rad, so that eight of them, 0.07 rad, stay on it. The new edge
    # is where the ray at that angle meets the line, 8 cos 5 / cos(5 - angle) from the axis.
    five, step = math.radians(5), 0.07 / 8
    given = REAMER | {"diameter": 16.0, "stock_per_sharpening": 0.07, "least_diameter": 15.0}
    found = loss(**given, primary_land=0.6, secondary_relief_angle=math.radians(15))
    assert states(found) == ["pass"]
    assert found.outputs["sharpenings_left"] == 8
    assert found.outputs["size_lost"] == pytest.approx(16 - 16 * math.cos(five) / math.cos(five - step))
    assert found.outputs["diameter_after"] == pytest.approx(16 * math.cos(five) / math.cos(five - 8 * step))
    assert "with one more the primary land would be gone" in str(found.checks[0].sentence)


def test_the_heel_of_a_second_facet_ends_the_count_where_the_circle_sinks_to_it() -> None:
    # Derived in the plane: the second facet leaves the end of the primary land, p, in the direction (-sin 15, cos 15), and
    # the ray of the heel, 0.45 rad behind the edge, meets it at the distance found here.
    edge, five, fifteen, heel = 8.0, math.radians(5), math.radians(15), 0.45
    p = edge - 0.6 * math.sin(five), 0.6 * math.cos(five)
    far = (p[0] * math.cos(fifteen) + p[1] * math.sin(fifteen)) / math.cos(heel - fifteen)
    step = 0.07 / 8
    circles = [edge * math.cos(five) / math.cos(five - times * step) for times in range(9)]
    left = sum(circle >= far for circle in circles[1:])
    assert 0 < left < 8
    given = REAMER | {"diameter": 16.0, "stock_per_sharpening": 0.07, "least_diameter": 15.0}
    wide = given | {"land_width": heel * 8}
    found = loss(**wide, primary_land=0.6, secondary_relief_angle=fifteen)
    assert found.outputs["sharpenings_left"] == left
    assert "the heel behind the primary land would come up to the circle" in str(found.checks[0].sentence)


def test_a_primary_land_alone_says_that_what_stands_behind_it_is_not_counted() -> None:
    found = loss(**REAMER | {"least_diameter": 15.9}, primary_land=0.6)
    assert states(found) == ["pass", "note"]
    assert found.outputs["sharpenings_left"] == 20


def test_a_primary_land_too_wide_for_its_relief_is_a_stop() -> None:
    # By hand: a flat of 5 deg is back on the circle of 16.012 mm after 16.012 sin 5 = 1.396 mm.
    found = loss(**REAMER | {"least_diameter": 15.9}, primary_land=1.5)
    assert states(found)[0] == "stop"
    assert "its back rubs" in str(found.checks[0].sentence)


def test_a_secondary_relief_without_the_width_of_the_primary_land_is_asked_for_that() -> None:
    with pytest.raises(Refusal) as refused:
        loss(**REAMER, secondary_relief_angle=math.radians(15))
    assert [one.key for one in refused.value.problems] == ["primary_land"]


def test_neither_margin_nor_facets_are_asked_of_a_tool_ground_on_its_end() -> None:
    asked = asked_for(calculation("size-loss"), {"ground_on": "end", "surface": "land"})
    assert {"margin_width", "primary_land", "secondary_relief_angle"}.isdisjoint(one.key for one in asked)
    asked = asked_for(calculation("size-loss"), {"ground_on": "face", "surface": "land"})
    assert {"margin_width", "primary_land", "secondary_relief_angle"} <= {one.key for one in asked}
