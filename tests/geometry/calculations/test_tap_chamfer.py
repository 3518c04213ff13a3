"""The chamfer of a tap, as a whole."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Check, Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run


def chamfer(**values: Given) -> Result:
    return run(calculation("tap-chamfer"), values)


def advised(check: Check) -> float:
    """The one value that a check hands over."""
    ((_, value),) = check.cure
    assert isinstance(value, float)
    return value


TAP: dict[str, Given] = {"diameter": 10.0, "pitch": 1.5}


@given(st.floats(0.5, 40.0), st.sampled_from(["iso", "whitworth"]))
def test_threads_angle_and_length_are_three_ways_to_one_chamfer(threads: float, form: str) -> None:
    by_threads = chamfer(**TAP, thread_form=form, chamfer_threads=threads).outputs
    by_angle = chamfer(**TAP, thread_form=form, chamfer_angle=by_threads["chamfer_angle"]).outputs
    by_length = chamfer(**TAP, thread_form=form, chamfer_length=1.5 * threads).outputs
    assert by_angle == pytest.approx(by_threads, rel=1e-9)
    assert by_length == pytest.approx(by_threads, rel=1e-9)


@pytest.mark.parametrize(("threads", "degrees"), [(2, 17.05), (4, 8.72), (6, 5.84), (8, 4.38)])
def test_angle_by_the_depth_of_thread_on_the_screw(threads: float, degrees: float) -> None:
    # Derived: atan(17/24 x sqrt(3)/2 / n).
    found = chamfer(**TAP, chamfer_threads=threads).outputs["chamfer_angle"]
    assert math.degrees(found) == pytest.approx(degrees, abs=0.005)


def test_a_measured_point_takes_the_place_of_the_depth_of_thread() -> None:
    found = chamfer(**TAP, chamfer_length=6.0, point_diameter=8.0).outputs
    assert math.tan(found["chamfer_angle"]) == pytest.approx(1.0 / 6.0)
    assert found["point_diameter"] == pytest.approx(8.0)


def test_the_point_is_the_depth_of_thread_smaller_all_round() -> None:
    assert chamfer(**TAP, chamfer_threads=4.0).outputs["point_diameter"] == pytest.approx(
        10.0 - 1.226869 * 1.5, abs=1e-5
    )


@given(st.integers(1, 8), st.integers(1, 3), st.floats(3.0, 20.0))
def test_all_teeth_of_the_chamfer_together_cut_the_whole_depth(
    flutes: int, starts: int, threads: float
) -> None:
    found = chamfer(**TAP, chamfer_threads=threads, flutes=float(flutes), starts=float(starts)).outputs
    # Each groove is met once by every land in each lead of the chamfer's length.
    teeth = flutes * threads / starts
    assert teeth * found["chip_per_tooth"] == pytest.approx(17 / 24 * math.sqrt(3) / 2 * 1.5, rel=1e-9)
    assert found["square_chip_per_tooth"] == pytest.approx(
        found["chip_per_tooth"] * math.cos(found["chamfer_angle"])
    )


def test_one_tooth_never_cuts_more_than_the_whole_depth() -> None:
    found = chamfer(**TAP, chamfer_threads=0.5, flutes=1.0).outputs
    assert found["chip_per_tooth"] == pytest.approx(17 / 24 * math.sqrt(3) / 2 * 1.5)


def test_the_indicator_reads_the_fall_of_the_chamfer_in_all_three_senses() -> None:
    found = chamfer(**TAP, chamfer_threads=4.0, radial_chamfer_relief=math.radians(4), land_width=2.0)
    heel, angle = found.stations[-1].readings, found.outputs["chamfer_angle"]
    assert heel["drop"] == pytest.approx(2.0 * math.tan(math.radians(4)))
    assert heel["axial_drop"] == pytest.approx(heel["drop"] / math.tan(angle))
    assert heel["square_drop"] == pytest.approx(heel["drop"] * math.cos(angle))
    assert {key: found.outputs[key] for key in heel} == heel
    assert math.tan(found.outputs["square_chamfer_relief"]) == pytest.approx(heel["square_drop"] / 2.0)


@given(st.floats(1.0, 12.0), st.floats(0.0, 3.0))
def test_cutting_back_and_grinding_as_much_off_the_chamfer_brings_it_all_back(
    threads: float, cut: float
) -> None:
    before = chamfer(**TAP, chamfer_threads=threads).outputs
    stock = cut * math.sin(before["chamfer_angle"])
    after = chamfer(**TAP, chamfer_threads=threads, cut_back=cut, chamfer_stock=stock).outputs
    assert after["threads_left"] == pytest.approx(threads)
    assert after["point_diameter_after"] == pytest.approx(before["point_diameter"])
    assert after["full_thread_moves_back"] == pytest.approx(cut)


def test_cutting_back_takes_threads_and_widens_the_point() -> None:
    found = chamfer(**TAP, chamfer_threads=4.0, cut_back=1.5).outputs
    assert found["threads_left"] == pytest.approx(3.0)
    assert found["point_diameter_after"] == pytest.approx(10.0 - 2 * 4.5 * math.tan(found["chamfer_angle"]))


def test_cutting_back_past_the_chamfer_leaves_a_blunt_tap() -> None:
    found = chamfer(**TAP, chamfer_threads=4.0, cut_back=20.0)
    assert found.outputs["threads_left"] == 0.0
    assert found.outputs["point_diameter_after"] == 10.0
    assert "watch" in [check.state for check in found.checks]


def test_a_chamfer_without_relief_is_stopped() -> None:
    found = chamfer(**TAP, chamfer_threads=4.0, square_chamfer_relief=0.0)
    assert [check.state for check in found.checks] == ["stop", "pass"]
    cured = chamfer(**TAP, chamfer_threads=4.0, square_chamfer_relief=advised(found.checks[0]))
    assert [check.state for check in cured.checks] == ["pass", "pass"]


@pytest.mark.parametrize("sense", ["radial", "axial", "square"])
def test_a_feed_typed_for_a_relief_is_asked_about_in_the_sense_it_was_given(sense: str) -> None:
    key = f"{sense}_chamfer_relief"
    found = chamfer(**TAP, chamfer_threads=4.0, **{key: math.radians(0.008)})
    (watched,) = (check for check in found.checks if check.state == "watch")
    assert "was it a feed" in str(watched.sentence)
    cured = chamfer(**TAP, chamfer_threads=4.0, **{key: advised(watched)})
    assert [check.state for check in cured.checks] == ["pass", "pass"]


def test_the_steep_look_of_a_small_relief_along_a_slender_chamfer_is_no_slip() -> None:
    # Derived: 7 degrees on the radius of a chamfer of 4.38 degrees is atan(tan 7 / tan 4.38) = 58 along the axis.
    found = chamfer(**TAP, chamfer_threads=8.0, radial_chamfer_relief=math.radians(7))
    assert math.degrees(found.outputs["axial_chamfer_relief"]) == pytest.approx(58.0, abs=0.1)
    assert "watch" not in [check.state for check in found.checks]


def test_a_taper_tap_is_refused() -> None:
    for taper in ("npt", "bspt"):
        with pytest.raises(Refusal, match="works out the small end"):
            chamfer(**TAP, chamfer_threads=4.0, thread_taper=taper)


def test_a_pitch_in_threads_per_inch_typed_as_millimetres_is_asked_about() -> None:
    with pytest.raises(Refusal, match="Were threads per inch meant"):
        chamfer(diameter=12.7, pitch=13.0, chamfer_threads=4.0)
    assert chamfer(diameter=12.7, pitch=5.0, chamfer_threads=4.0).checks[0].state == "stop"


def test_lands_that_leave_no_room_for_a_flute_are_stopped() -> None:
    values: dict[str, Given] = {**TAP, "chamfer_threads": 4.0, "land_width": 9.0}
    # Derived: 9 mm on a circle of 10 is 103 degrees; four flutes have 90, three 120.
    assert chamfer(**values, flutes=4.0).checks[0].state == "stop"
    assert chamfer(**values, flutes=3.0).checks[0].state == "pass"


@pytest.mark.parametrize(
    "values", [{"chamfer_angle": math.radians(0.5)}, {"chamfer_angle": math.radians(89)}]
)
def test_a_chamfer_that_no_tap_has_is_refused_with_the_angles_it_may_have(values: dict[str, float]) -> None:
    with pytest.raises(Refusal, match=r"from 0\.8786 deg to 50\.82 deg"):
        chamfer(**TAP, **values)


def test_a_tap_may_be_ground_to_a_sharp_point_and_no_further() -> None:
    sharp = chamfer(**TAP, chamfer_threads=4.0, point_diameter=0.0, cut_back=0.0).outputs
    assert sharp["point_diameter_after"] == pytest.approx(0.0, abs=1e-9)
    # Derived: from a point of 8 mm at 45 degrees another 4 mm of length, and what is cut back besides.
    values: dict[str, Given] = {
        **TAP,
        "chamfer_angle": math.radians(45),
        "point_diameter": 8.0,
        "cut_back": 1.0,
    }
    most = 5.0 * math.sin(math.radians(45))
    assert chamfer(**values, chamfer_stock=most - 1e-6).outputs["point_diameter_after"] < 1e-5
    with pytest.raises(Refusal, match=r"less than 3\.536 mm"):
        chamfer(**values, chamfer_stock=most + 1e-6)


def test_a_point_as_large_as_the_tap_and_a_sharp_point_are_refused() -> None:
    with pytest.raises(Refusal, match="smaller than the tap"):
        chamfer(**TAP, chamfer_threads=4.0, point_diameter=10.0)
    with pytest.raises(Refusal, match="sharp point"):
        chamfer(**TAP, chamfer_threads=4.0, chamfer_stock=20.0)
    with pytest.raises(Refusal, match="only one"):
        chamfer(**TAP, chamfer_threads=4.0, radial_chamfer_relief=0.1, axial_chamfer_relief=0.1)


def test_stock_that_would_leave_a_sharp_point_is_not_advised() -> None:
    found = chamfer(
        diameter=13.0,
        pitch=0.375,
        point_diameter=0.625,
        chamfer_threads=0.875,
        flutes=1.0,
        chamfer_stock=0.5,
        cut_back=1.0,
    )
    (told,) = (one for one in found.checks if "does not enter" in str(one.sentence))
    assert told.state == "watch"
    assert "grind it anew" in str(told.sentence)
    assert told.cure == ()


# The root of a screw by its standard (ISO 724 and ISO 68-1, BS 84, ISO 2904, ASME B1.5) and its hole, diameter less pitch.
@pytest.mark.parametrize(
    ("form", "size", "pitch", "crests", "root", "hole"),
    [
        ("trapezoidal", 16.0, 4.0, 16.5, 16.0 - 4.0 - 2 * 0.25, 12.0),
        ("acme", 25.4, 5.08, 25.9, 25.4 - 5.08 - 2 * 0.254, 20.32),
        ("iso", 10.0, 1.5, 10.1, 10.0 - 2 * 17 / 24 * math.sqrt(3) / 2 * 1.5, 8.5),
        ("whitworth", 12.7, 25.4 / 12, 12.8, 12.7 - 2 * 0.640327 * 25.4 / 12, 12.7 - 25.4 / 12),
        ("ba", 6.0, 1.0, 6.05, 6.0 - 1.2, 5.0),
    ],
)
def test_the_hole_goes_by_the_thread_and_the_chamfer_begins_at_the_crests_as_measured(
    form: str, size: float, pitch: float, crests: float, root: float, hole: float
) -> None:
    found = chamfer(
        diameter=crests,
        nominal_diameter=size,
        pitch=pitch,
        thread_form=form,
        chamfer_threads=12.0,
        cut_back=0.01,
    )
    assert found.outputs["point_diameter"] == pytest.approx(root, abs=1e-4)
    slope = math.atan((crests - root) / 2 / (12 * pitch))
    assert found.outputs["chamfer_angle"] == pytest.approx(slope, abs=1e-5)
    holes = [amount.value for one in found.checks for name, amount in one.sentence.parts.items()
             if name == "hole" and not isinstance(amount, str)]  # fmt: skip
    assert holes == pytest.approx([hole, hole], abs=1e-4)


def test_a_point_between_the_hole_and_that_of_larger_crests_cannot_start() -> None:
    values: dict[str, Given] = {
        "diameter": 16.5,
        "pitch": 4.0,
        "thread_form": "trapezoidal",
        "chamfer_threads": 12.0,
        "point_diameter": 12.3,
    }
    assert chamfer(**values).checks[0].state == "pass"
    check = chamfer(**values, nominal_diameter=16.0).checks[0]
    assert check.state == "stop"
    assert advised(check) == pytest.approx(12.0)


def test_a_tap_that_measures_smaller_than_its_thread_has_become_so_as_a_whole_and_its_hole_stays() -> None:
    worn = chamfer(**{**TAP, "diameter": 9.9}, nominal_diameter=10.0, chamfer_threads=4.0)
    assert worn.outputs["chamfer_angle"] == chamfer(**TAP, chamfer_threads=4.0).outputs["chamfer_angle"]
    hole = worn.checks[0].sentence.parts["hole"]
    assert not isinstance(hole, str)
    assert hole.value == pytest.approx(8.5)


def test_a_tap_that_measures_far_from_its_thread_is_doubted() -> None:
    found = chamfer(**{**TAP, "diameter": 8.6}, nominal_diameter=10.0, chamfer_threads=4.0)
    assert found.checks[0].state == "watch"
    assert "hardly one for a thread" in str(found.checks[0].sentence)
    near = chamfer(**{**TAP, "diameter": 9.1}, nominal_diameter=10.0, chamfer_threads=4.0)
    assert all(one.state in {"pass", "note"} for one in near.checks)
