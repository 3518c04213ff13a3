"""Whoever does what a stop or a watch says is rid of it: faces, sharpening, chamfers, threads and indexing.

The advice is taken as it is shown, rounded to what an indicator or a protractor can be set to.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.calculation import Check, Given
from geometry.calculations import calculation
from geometry.running import run
from geometry.sentences import Amount, Kind, Rounding
from geometry.tooth.land import land_width

RESOLUTION = {Kind.LENGTH: 0.001, Kind.ANGLE: math.radians(0.01), Kind.RATIO: 0.01, Kind.COUNT: 1.0}


def shown(check: Check, name: str) -> float:
    """An amount of a sentence as a person reads it, rounded the way it asks to be."""
    part = check.sentence.parts[name]
    assert isinstance(part, Amount)
    steps = part.value / RESOLUTION[part.kind]
    rounded = {
        Rounding.DOWN: math.floor(steps + 1e-9),
        Rounding.UP: math.ceil(steps - 1e-9),
        Rounding.NEAREST: round(steps),
    }[part.rounding]
    return rounded * RESOLUTION[part.kind]


def bad(name: str, values: Mapping[str, Given]) -> list[Check]:
    return [check for check in run(calculation(name), values).checks if check.state in ("watch", "stop")]


@given(st.floats(5.0, 50.0), st.floats(math.radians(15), math.radians(50)), st.floats(0.1, 0.8))
def test_a_face_that_misses_a_step_meets_it_at_the_offset_that_is_named(
    diameter: float, rake: float, part: float
) -> None:
    values: dict[str, Given] = {
        "diameter": diameter,
        "rake_angle": rake,
        "other_diameter": (part * diameter,),
    }
    found = bad("face-offset", values)
    assume(found)
    limits = [shown(check, "limit") for check in found if "limit" in check.sentence.parts]
    assume(limits)
    del values["rake_angle"]
    values["face_offset"] = min(limits)
    assert not [check for check in bad("face-offset", values) if "limit" in check.sentence.parts]


SHARPENED = st.fixed_dictionaries(
    {
        "diameter": st.floats(6.0, 40.0),
        "relief_angle": st.floats(math.radians(3), math.radians(15)),
        "relief_form": st.sampled_from(["eccentric", "flat"]),
        "land_measured_as": st.sampled_from(["arc", "chord"]),
        "land_width": st.floats(0.3, 3.0),
        "stock_per_sharpening": st.floats(0.05, 1.0),
        "least_land": st.floats(0.05, 3.0),
        "least_diameter": st.floats(1.0, 40.0),
    }
)


@given(SHARPENED)
def test_each_limit_of_a_face_is_lifted_by_what_is_allowed_instead(values: dict[str, Given]) -> None:
    stops = [check for check in bad("size-loss", values) if check.state == "stop"]
    assume(stops)
    cured = dict(values)
    for check in stops:
        template = check.sentence.template
        if "Allow a land" in template:
            cured["least_land"] = max(shown(check, "after"), 0.0)
        elif "Allow a diameter" in template:
            cured["least_diameter"] = shown(check, "after")
        elif "{half}" in template:
            assume(shown(check, "half") >= 0.001)
            cured["stock_per_sharpening"] = shown(check, "half")
        elif "{enough}" in template:
            cured["relief_angle"] = shown(check, "enough")
        elif "{widest}" in template:
            cured["land_width"] = shown(check, "widest")
        else:
            assert "second facet" in template
            return
    # Less stock or a narrower land is a new question, so its own limits may come up; those just lifted may not.
    again = {check.sentence.template for check in bad("size-loss", cured)}
    if any("{half}" in check.sentence.template for check in stops):
        assert not any("whole land" in template for template in again)
    elif any("{enough}" in check.sentence.template for check in stops):
        assert not any("heel rubs" in template for template in again)
    else:
        assert again.isdisjoint({check.sentence.template for check in stops})


@given(
    st.floats(6.0, 40.0),
    st.floats(math.radians(3), math.radians(15)),
    st.floats(0.05, 0.6),
    st.floats(0.1, 0.9),
    st.sampled_from(["arc", "chord"]),
)
def test_narrowing_the_land_of_a_flat_lets_its_heel_clear(
    diameter: float, relief: float, stock: float, over: float, measured_as: str
) -> None:
    # A land that clears now, and no longer when the face has been ground once.
    turned = relief * (2 - stock * over)
    values: dict[str, Given] = {
        "diameter": diameter,
        "relief_angle": relief,
        "relief_form": "flat",
        "land_width": land_width(turned, diameter, measured_as),
        "land_measured_as": measured_as,
        "stock_per_sharpening": stock * relief * diameter / 2,
    }
    (stopped,) = (check for check in bad("size-loss", values) if check.state == "stop")
    values["land_width"] = shown(stopped, "widest")
    assert [check.state for check in bad("size-loss", values)] == ["watch"]


@given(
    st.floats(4.0, 40.0),
    st.floats(2.0, 5.0),
    st.floats(0.01, 2.5),
    st.floats(0.0, 0.01),
    st.floats(3.9, 40.0),
)
def test_each_limit_of_an_end_is_lifted_by_what_is_allowed_instead(
    diameter: float, stock: float, usable: float, taper: float, least: float
) -> None:
    values: dict[str, Given] = {
        "ground_on": "end",
        "diameter": diameter,
        "stock_per_sharpening": stock,
        "usable_length": usable,
        "taper_ratio": taper,
        "least_diameter": least,
    }
    stops = bad("size-loss", values)
    assume(stops)
    for check in stops:
        if "after" in check.sentence.parts:
            values["least_diameter"] = shown(check, "after")
        else:
            values["stock_per_sharpening"] = shown(check, "usable")
    assert bad("size-loss", values) == []


@given(st.floats(1.0, 12.0), st.floats(0.1, 8.0), st.floats(0.7, 0.99))
def test_a_tap_cut_back_starts_again_after_the_stock_that_is_named(
    threads: float, cut: float, point: float
) -> None:
    values: dict[str, Given] = {"diameter": 10.0, "pitch": 1.5, "chamfer_threads": threads, "cut_back": cut}
    if point > 0.8:
        values["point_diameter"] = point * 10.0
    watches = [check for check in bad("tap-chamfer", values) if check.state == "watch"]
    assume(watches)
    values["chamfer_stock"] = shown(watches[0], "again")
    assert not [check for check in bad("tap-chamfer", values) if check.state == "watch"]


@given(st.floats(2.0, 12.0), st.floats(8.6, 9.9))
def test_a_point_ground_down_to_the_size_that_is_named_enters_the_hole(threads: float, point: float) -> None:
    values: dict[str, Given] = {
        "diameter": 10.0,
        "pitch": 1.5,
        "chamfer_threads": threads,
        "point_diameter": point,
    }
    (stop,) = bad("tap-chamfer", values)
    values["point_diameter"] = shown(stop, "hole")
    assert bad("tap-chamfer", values) == []


SCREWS = st.tuples(st.floats(3.0, 50.0), st.floats(0.05, 0.3), st.sampled_from(["iso", "whitworth"]))


@given(SCREWS, st.floats(0.1, 1.5))
def test_a_hole_of_the_size_that_is_named_can_be_tapped(screw: tuple[float, float, str], part: float) -> None:
    diameter, pitch, form = screw
    values: dict[str, Given] = {
        "diameter": diameter,
        "pitch": pitch * diameter,
        "thread_form": form,
        "drilled_diameter": part * diameter,
    }
    stops = bad("screw-thread", values)
    assume(stops)
    values["drilled_diameter"] = shown(
        stops[0], "drill" if "drill" in stops[0].sentence.parts else "smallest"
    )
    assert bad("screw-thread", values) == []


@given(SCREWS, st.floats(101.0, 130.0), st.sampled_from(["three-quarters", "five-eighths"]))
def test_the_percentage_that_is_named_can_be_tapped(
    screw: tuple[float, float, str], percent: float, counted_as: str
) -> None:
    diameter, pitch, form = screw
    values: dict[str, Given] = {
        "diameter": diameter,
        "pitch": pitch * diameter,
        "thread_form": form,
        "thread_percent": percent,
        "full_thread": counted_as,
    }
    (stopped,) = bad("screw-thread", values)
    values["thread_percent"] = shown(stopped, "most")
    assert bad("screw-thread", values) == []


@given(
    st.sampled_from([7, 9, 11, 13, 14, 18, 27, 33, 49, 54]),
    st.sampled_from([1, 5, 24, 40, 60]),
    st.lists(st.sampled_from([61.0, 67.0, 71.0, 73.0, 79.0]), min_size=1, max_size=4),
)
def test_the_circle_that_is_named_divides_exactly(flutes: int, ratio: int, plates: list[float]) -> None:
    values: dict[str, Given] = {
        "flutes": float(flutes),
        "index_ratio": float(ratio),
        "plate_holes": tuple(plates),
    }
    (found,) = bad("index-moves", values)
    values["plate_holes"] = (*plates, shown(found, "needed"))
    assert bad("index-moves", values) == []


@given(
    st.lists(st.floats(2.0, 60.0), min_size=2, max_size=8), st.integers(2, 80), st.sampled_from([1, 5, 40])
)
def test_unequal_edges_do_not_fall_together_on_the_circle_that_is_named(
    parts: list[float], plate: int, ratio: int
) -> None:
    whole = math.fsum(parts)
    spacing = tuple(2 * math.pi * part / whole for part in parts)
    assume(min(spacing) > math.radians(1.01))
    values: dict[str, Given] = {
        "flutes": float(len(spacing)),
        "spacing_angles": spacing,
        "index_ratio": float(ratio),
        "plate_holes": (float(plate),),
    }
    found = bad("index-moves", values)
    assume(found)
    if found[0].state == "stop":
        values["plate_holes"] = (float(plate), shown(found[0], "needed"))
        assert all(check.state != "stop" for check in bad("index-moves", values))
        return
    # The watch says that the angles of the table are exact.
    rows = run(calculation("index-moves"), values).rows
    exact = tuple(row.values["index_angle"] for row in rows if "index_angle" in row.values)
    assume(min(exact) > math.radians(1.01))
    assert bad("index-moves", {**values, "spacing_angles": exact}) == []
