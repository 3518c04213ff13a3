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
from geometry.evaluate import run
from geometry.sentences import Amount, Kind, Rounding

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
