"""Stock for wear or for a size, found again with planes in space and by grinding pass after pass."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run

Vector = tuple[float, float, float]


def wear(**values: Given) -> Result:
    return run(calculation("wear-stock"), values)


def said(result: Result) -> str:
    return " ".join(f"{check.state}: {check.sentence}" for check in result.checks)


def crossed(a: Vector, b: Vector) -> Vector:
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def dot(a: Vector, b: Vector) -> float:
    return sum(x * y for x, y in zip(a, b, strict=True))


def away(point: Vector, through: Vector, normal: Vector) -> float:
    """How far a point lies from a plane."""
    gap: Vector = (point[0] - through[0], point[1] - through[1], point[2] - through[2])
    return abs(dot(gap, normal)) / math.sqrt(dot(normal, normal))


def solved(rows: list[tuple[Vector, float]]) -> Vector:
    """The point on three planes, by Cramer's rule."""
    normals = [row for row, _ in rows]

    def det(columns: list[Vector]) -> float:
        return dot(columns[0], crossed(columns[1], columns[2]))

    whole = det(normals)
    swapped = [
        [tuple(side if at == axis else value for at, value in enumerate(row)) for row, side in rows]
        for axis in range(3)
    ]
    x, y, z = (det([*one]) / whole for one in swapped)  # type: ignore[list-item]
    return x, y, z


@given(
    st.floats(math.radians(20), math.radians(75)),
    st.floats(math.radians(2), math.radians(20)),
    st.floats(math.radians(-10), math.radians(20)),
    st.floats(0.05, 0.6),
)
def test_on_a_cone_the_planes_of_face_and_flank_give_the_same_stock(
    kappa: float, radial: float, rake: float, width: float
) -> None:
    # Derived, in space: x the way that the edge cuts, y along the radius, z along the axis away from the point.
    worn: Vector = (0.0, 10.0, 0.0)
    sound: Vector = (width, 10.0, 0.0)
    flank = crossed((0.0, math.sin(kappa), math.cos(kappa)), (1.0, -math.tan(radial), 0.0))
    face = crossed((0.0, 0.0, 1.0), (math.sin(rake), -math.cos(rake), 0.0))
    found = wear(
        surface="cone",
        included_angle=2 * kappa,
        diameter=20.0,
        wear_land=width,
        relief_angle=math.atan(math.tan(radial) * math.cos(kappa)),
        rake_angle=rake,
        sharpened_on="flank",
        infeed=0.01,
    ).outputs
    assert found["flank_stock"] == pytest.approx(away(worn, sound, flank), rel=1e-9)
    assert found["face_stock"] == pytest.approx(away(sound, worn, face), rel=1e-9)
    sharp = solved([(flank, dot(flank, sound)), (face, dot(face, worn)), ((0.0, 0.0, 1.0), 0.0)])
    assert found["wear_depth"] == pytest.approx(sharp[1] - 10.0, rel=1e-9)
    assert found["size_lost"] == pytest.approx(2 * (sharp[1] - 10.0), rel=1e-9)
    # The corner of a bevel or a chamfer stays on its circle and goes back along the axis.
    bevel = wear(
        surface="bevel",
        bevel_angle=kappa,
        diameter=20.0,
        wear_land=width,
        relief_angle=math.atan(math.tan(radial) * math.cos(kappa)),
        rake_angle=rake,
    ).outputs
    corner = solved([(flank, dot(flank, sound)), (face, dot(face, worn)), ((0.0, 1.0, 0.0), 10.0)])
    assert bevel["shortened_by"] == pytest.approx(-corner[2], rel=1e-9)


def test_a_face_ground_back_over_the_wear_loses_what_size_loss_says() -> None:
    # Derived: the sharp edge runs on the circle, so taking the wear off its face is one sharpening of that stock.
    values: dict[str, Given] = {
        "diameter": 12.0,
        "relief_angle": math.radians(4),
        "rake_angle": math.radians(10),
    }
    for form in ("eccentric", "flat"):
        found = wear(**values, wear_land=0.25, relief_form=form).outputs
        lost = run(
            calculation("size-loss"),
            {
                **values,
                "surface": "land",
                "land_width": 0.6,
                "relief_form": form,
                "stock_per_sharpening": found["face_stock"],
            },
        ).outputs["size_lost"]
        assert found["size_lost"] == pytest.approx(lost, rel=1e-12)
        assert found["diameter_after"] == pytest.approx(12.0 - lost)


def test_the_size_wanted_is_met_by_a_flank_cut_from_a_drawn_tooth() -> None:
    # Independent: the tooth as a polygon, its flank cut parallel; the new corner is found by the cut itself.
    relief, rake, radius = math.radians(9), math.radians(12), 10.0
    down = (math.sin(rake), -math.cos(rake))
    tooth = shapely.Polygon(
        [
            (0, radius),
            (3 * down[0], radius + 3 * down[1]),
            (4, radius - 3),
            (4, radius - 4 * math.tan(relief)),
        ]
    )
    stock = wear(
        surface="land",
        diameter=2 * radius,
        wanted_diameter=2 * radius - 0.1,
        relief_angle=relief,
        rake_angle=rake,
        sharpened_on="flank",
    ).outputs["flank_stock"]
    square = (math.sin(relief), math.cos(relief))
    far = 50.0
    through = (-stock * square[0], radius - stock * square[1])
    along = (math.cos(relief), -math.sin(relief))
    below = shapely.Polygon(
        [
            (through[0] - far * along[0], through[1] - far * along[1]),
            (through[0] + far * along[0], through[1] + far * along[1]),
            (through[0] + far * (along[0] - square[0]), through[1] + far * (along[1] - square[1])),
            (through[0] - far * (along[0] + square[0]), through[1] - far * (along[1] + square[1])),
        ]
    )
    top = max(y for _, y in shapely.intersection(tooth, below).exterior.coords)
    assert top == pytest.approx(radius - 0.05, abs=1e-9)


def test_passes_taken_one_by_one_end_with_what_is_left() -> None:
    found = wear(surface="land", diameter=20.0, wear_land=0.3, relief_angle=math.radians(8), infeed=0.02)
    left, passes, last = found.outputs["face_stock"], 0, 0.0
    while left > 1e-12:
        last = min(0.02, left)
        left, passes = left - last, passes + 1
    assert found.outputs["passes"] == passes
    assert found.outputs["last_infeed"] == pytest.approx(last)


def test_a_lip_is_ground_on_its_flank_and_loses_length_and_size_by_the_back_taper() -> None:
    # Derived: a wear of 0.4 mm under a lip relief of 12 degrees is 0.4 tan 12 = 0.08502 mm along the axis.
    found = wear(
        surface="lip",
        point_angle=math.radians(118),
        diameter=12.0,
        wear_land=0.4,
        relief_angle=math.radians(12),
        back_taper=0.08,
    ).outputs
    assert next(iter(found)) == "flank_stock"
    assert found["flank_stock"] == pytest.approx(0.4 * math.sin(math.radians(10.32583)), rel=1e-6)
    assert found["shortened_by"] == pytest.approx(0.0850226, rel=1e-5)
    assert found["size_lost"] == pytest.approx(0.0850226 * 0.0008, rel=1e-5)


def test_a_tap_loses_its_size_by_the_relief_of_its_thread_as_the_face_goes_back() -> None:
    values: dict[str, Given] = {
        "surface": "chamfer",
        "chamfer_angle": math.radians(8),
        "diameter": 12.0,
        "wear_land": 0.3,
        "relief_angle": math.radians(6),
        "sharpened_on": "face",
    }
    untold = wear(**values)
    assert "diameter_after" not in untold.outputs
    assert "With the thread relief angle the size that is left can be told." in said(untold)
    told = wear(**values, thread_relief_angle=math.radians(1)).outputs
    assert told["size_lost"] == pytest.approx(2 * 0.3 * math.tan(math.radians(1)), rel=1e-12)


def test_wear_over_the_whole_land_and_a_flat_used_up_are_stops() -> None:
    base: dict[str, Given] = {"surface": "land", "diameter": 12.0, "relief_angle": math.radians(6)}
    assert "stop: The wear reaches over the whole land" in said(wear(**base, wear_land=1.2, land_width=1.0))
    used_up = wear(**base, wear_land=0.8, relief_form="flat")
    assert "stop: One flat loses relief" in said(used_up)
    assert "stop" not in said(wear(**base, wear_land=0.2, relief_form="flat"))


def test_a_size_that_grinding_cannot_reach_is_refused() -> None:
    base: dict[str, Given] = {"diameter": 12.0, "relief_angle": math.radians(6)}
    with pytest.raises(Refusal, match="Grinding makes a tool smaller"):
        wear(**base, surface="land", wanted_diameter=12.1)
    with pytest.raises(Refusal, match="brought to a size on its land"):
        wear(**base, surface="cone", included_angle=1.5, wanted_diameter=11.9)
    with pytest.raises(Refusal, match="Grind the flank"):
        wear(**base, surface="land", wanted_diameter=11.0, relief_form="flat", sharpened_on="face")


def test_wear_within_a_margin_costs_no_size_off_the_face() -> None:
    # By hand: on a radial face 0.15 mm of wear are 0.15 mm of stock, and 0.05 mm of a margin of 0.2 mm are left on the circle.
    worn: dict[str, Given] = {
        "surface": "land",
        "diameter": 16.0,
        "wear_land": 0.15,
        "relief_angle": math.radians(5),
        "relief_form": "flat",
        "rake_angle": 0.0,
        "land_width": 1.8,
        "sharpened_on": "face",
    }
    plain = run(calculation("wear-stock"), worn)
    found = run(calculation("wear-stock"), worn | {"margin_width": 0.2})
    assert plain.outputs["size_lost"] > 0
    assert found.outputs["size_lost"] == 0
    assert found.outputs["diameter_after"] == 16.0
    assert found.outputs["face_stock"] == pytest.approx(0.15)
    assert found.outputs["land_after"] == pytest.approx(1.65)
    assert any("costs no size" in str(one.sentence) for one in found.checks)
    beyond = run(calculation("wear-stock"), worn | {"margin_width": 0.1})
    assert beyond.outputs["size_lost"] == plain.outputs["size_lost"]
    assert any("is not counted" in str(one.sentence) for one in beyond.checks)
