"""What the shipped book says a document says, against the rows of that document, typed in a second time."""

from __future__ import annotations

import math

import pytest

from library.book.model import Book, Value
from library.book.opening import open_book


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def cited(book: Book, entry: str, key: str, document: str) -> list[Value]:
    """The values of one entry that rest on one document."""
    value = book.entries[entry].values[key]
    found = [
        one
        for one in (value, *value.also, *(band.value for band in value.bands))
        if one.citation.document == document
    ]
    assert found, f"{entry}.{key} does not rest on {document}"
    return found


def ends(value: Value, in_degrees: bool = False) -> tuple[float | None, float | None]:
    """Low and high of a value, or its usual figure twice."""
    low, high = value.low or value.usual, value.high or value.usual
    turn = math.degrees if in_degrees else float
    return (
        round(turn(low.number), 9) if low else None,
        round(turn(high.number), 9) if high else None,
    )


# Mechanical Engineer's Data Handbook, page 182, table "Drill angles".
@pytest.mark.parametrize(
    ("entry", "point", "least", "most"),
    [
        ("twist-drill-aluminium-wrought", 140, 12, 15),
        ("twist-drill-magnesium", 100, 12, 15),
        ("twist-drill-brass-free-cutting", 130, 10, 12),
        ("twist-drill-copper", 125, 12, 15),
        ("twist-drill-plastic-hard", 30, 12, 15),
        ("twist-drill-manganese-steel", 130, 7, 10),
    ],
)
def test_drill_angles_are_those_of_the_data_handbook(
    book: Book, entry: str, point: int, least: int, most: int
) -> None:
    assert ends(cited(book, entry, "point_angle", "data-handbook")[0], True) == (point, point)
    assert ends(cited(book, entry, "lip_relief_angle", "data-handbook")[0], True) == (least, most)


# A drill maker's technical page following IS supply conditions, helix angles by type and size; the two
# rows of type H up to 5 mm are alike and stand as one.
@pytest.mark.parametrize(
    ("entry", "rows"),
    [
        ("twist-drill-type-n", {(22, 28), (24, 30), (25, 31), (27, 34), (29, 38)}),
        ("twist-drill-type-h", {(11, 15), (12, 17), (13, 17), (14, 19)}),
        ("twist-drill-type-s", {(31, 36), (33, 38), (34, 40), (37, 42), (39, 46)}),
    ],
)
def test_helix_angles_by_size_are_those_of_the_supply_conditions(
    book: Book, entry: str, rows: set[tuple[float, float]]
) -> None:
    assert {ends(value, True) for value in cited(book, entry, "helix_angle", "drill-maker-is")} == rows


# TM 9-254, paragraph 4-27: taper 7 to 10 threads, plug 3 to 5, bottoming 1 to 2.
@pytest.mark.parametrize(
    ("entry", "threads"),
    [
        ("tap-hand-taper-plain-steel", (7, 10)),
        ("tap-hand-plain-steel", (3, 5)),
        ("tap-hand-bottoming-plain-steel", (1, 2)),
    ],
)
def test_chamfers_of_hand_taps_are_those_of_the_army_manual(
    book: Book, entry: str, threads: tuple[int, int]
) -> None:
    assert ends(cited(book, entry, "chamfer_threads", "army-tm-9-254")[0]) == threads


# A tap maker's technical page following IS 6171: 5 deg over 8 threads, 10 over 4, 20 over 2 to 3; the
# set of two 7 over 6 and 20 over 2 to 3; the nut tap 2 over 20; back taper at most 1 in 1000.
@pytest.mark.parametrize(
    ("entry", "degrees", "threads"),
    [
        ("tap-hand-taper-plain-steel", 5, (8, 8)),
        ("tap-hand-plain-steel", 10, (4, 4)),
        ("tap-hand-bottoming-plain-steel", 20, (2, 3)),
        ("tap-hand-fine-first-plain-steel", 7, (6, 6)),
        ("tap-hand-fine-second-plain-steel", 20, (2, 3)),
        ("tap-nut-plain-steel", 2, (20, 20)),
    ],
)
def test_tap_sets_are_those_of_the_indian_standard(
    book: Book, entry: str, degrees: int, threads: tuple[int, int]
) -> None:
    assert ends(cited(book, entry, "chamfer_angle", "tap-maker-is")[0], True) == (degrees, degrees)
    assert ends(cited(book, entry, "chamfer_threads", "tap-maker-is")[0]) == threads


def test_the_back_taper_of_a_tap_is_at_most_one_in_a_thousand(book: Book) -> None:
    high = cited(book, "tap-hand-plain-steel", "back_taper", "tap-maker-is")[0].high
    assert high is not None
    assert high.number / 100 == pytest.approx(1 / 1000, rel=1e-12)


# A cutting tool maker's user guide, page 33: pilot drill and counterbore for cap screws, relief 6 to 8 deg.
@pytest.mark.parametrize(
    ("screw", "pilot", "diameter"),
    [
        ("m3", 3.4, 6),
        ("m4", 4.5, 8),
        ("m5", 5.5, 10),
        ("m6", 6.6, 11),
        ("m8", 9, 15),
        ("m10", 11, 18),
        ("m12", 14, 20),
    ],
)
def test_counterbores_are_those_of_the_user_guide(
    book: Book, screw: str, pilot: float, diameter: float
) -> None:
    entry = f"counterbore-{screw}"
    assert ends(cited(book, entry, "pilot_diameter", "tool-maker-user-guide")[0]) == (pilot, pilot)
    assert ends(cited(book, entry, "diameter", "tool-maker-user-guide")[0]) == (diameter, diameter)
    assert ends(cited(book, entry, "end_relief_angle", "tool-maker-user-guide")[0], True) == (6, 8)


# Centring, Drilling and Counterboring / Countersinking, trainees' handbook, table 1: d1 and d2 in mm.
@pytest.mark.parametrize(
    ("work", "pilot", "mouth"),
    [
        ("to-4", 0.5, 1.5),
        ("4-to-6", 0.75, 2),
        ("6-to-10", 1, 2.5),
        ("10-to-25", 2, 5),
        ("25-to-63", 3, 8),
        ("63-to-100", 5, 12),
    ],
)
def test_centre_holes_are_those_of_the_trainees_handbook(
    book: Book, work: str, pilot: float, mouth: float
) -> None:
    entry = f"centre-drill-work-{work}"
    assert ends(cited(book, entry, "pilot_diameter", "gtz-centring")[0]) == (pilot, pilot)
    assert ends(cited(book, entry, "mouth_diameter", "gtz-centring")[0]) == (mouth, mouth)


def test_reamer_angles_for_aluminium_are_those_of_the_service_manual(book: Book) -> None:
    """T.O. 1-1A-9, paragraph 3-203: top rake 5 to 8, primary 4 to 7, secondary 15 to 20, spiral 10 degrees."""
    for key, least, most in (
        ("rake_angle", 5, 8),
        ("land_relief_angle", 4, 7),
        ("second_land_relief_angle", 15, 20),
        ("helix_angle", 10, 10),
    ):
        assert ends(cited(book, "reamer-machine-aluminium-wrought", key, "to-1-1a-9")[0], True) == (
            least,
            most,
        )


def test_the_taper_of_a_pipe_tap_agrees_with_its_half_angle(book: Book) -> None:
    """ASME B1.20.1: 1 in 16 on the diameter, half angle 1 degree 47 minutes; the two must say the same."""
    values = book.entries["tap-pipe-taper-american"].values
    ratio, angle = values["taper_ratio"].usual, values["taper_angle"].usual
    assert ratio is not None
    assert angle is not None
    assert 2 * math.atan(ratio.number / 2) == pytest.approx(angle.number, abs=math.radians(1 / 60))
