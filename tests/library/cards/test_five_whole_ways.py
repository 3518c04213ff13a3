"""Five tools all the way from the find line to the sheet, and every number that was worked out found a second way.

The second way is by vectors in space or by the definition, never by the relation of the calculation. Derived, but for
the tables named beside a number. Of the calculations named here a number without a second way fails the test.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from math import asin, atan, cos, hypot, pi, radians, sin, sqrt, tan
from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.book.rows import Rows
from library.cards.editing import edited
from library.cards.job import Job, work_out
from library.cards.settings_lines import setting_lines
from library.cards.starting import from_entry, with_size
from library.demo import lay_out
from library.search.ranking import ranked
from library.setup_sheet.sheets import setup_sheet

Vector = tuple[float, float, float]
Numbers = Mapping[str, float]

NEAR = 2e-5
"""How far two ways may lie apart, in mm or radians: less than anything at a tool grinder can show."""

HALVES_OF_A_DEGREE = 0.5
"""Graduation of the yard's work head, in degrees."""


@dataclass(frozen=True)
class Way:
    """One tool.

    Attributes:
        sought: as typed into the find line.
        entry: that stands first then.
        typed: what is measured and decided, by its place on the card.
        found: every number of every calculation that works, found a second way.
        readings: what the indicator reads a part of the way over the land, by calculation and reading.
        set_to: what the sheet says is set, in degrees or mm.
    """

    sought: str
    entry: str
    typed: Mapping[str, str]
    found: Mapping[str, Numbers]
    readings: Mapping[tuple[str, str], Callable[[float], float]] = field(default_factory=dict)
    set_to: Mapping[str, str] = field(default_factory=dict)


def dot(one: Vector, other: Vector) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def moves(flutes: int, circle: int = 66) -> dict[str, float]:
    """Turns and holes of a head of 40 to 1, by division."""
    turns, rest = divmod(40 * circle, flutes * circle)
    holes = rest / flutes
    return {"index_circle": circle, "index_turns": turns, "index_holes": holes, "index_error": 0.0,
            "index_error_length": 0.0, "accumulated_error": 0.0}  # fmt: skip


class BevelFlat:
    """A plane behind an edge that lies on a cone, in space: the axis is z, the edge goes through (R, 0, 0)."""

    def __init__(self, radius: float, cone: float, relief: float) -> None:
        self.radius = radius
        self.cone = cone
        # The plane that touches the cone along the edge, turned about the edge by the relief square to it.
        self.normal = (cos(relief) * cos(cone), sin(relief), cos(relief) * sin(cone))
        self.level = self.normal[0] * radius

    def radial(self, turned: float) -> float:
        return self.radius - self.level / dot(self.normal, (cos(turned), sin(turned), 0.0))

    def _at_the_old_circle(self, turned: float) -> float:
        on_it = (self.radius * cos(turned), self.radius * sin(turned), 0.0)
        return dot(self.normal, on_it) - self.level

    def axial(self, turned: float) -> float:
        return self._at_the_old_circle(turned) / self.normal[2]

    def square(self, turned: float) -> float:
        across = (cos(self.cone) * cos(turned), cos(self.cone) * sin(turned), sin(self.cone))
        return self._at_the_old_circle(turned) / dot(self.normal, across)


class Cam:
    """A relief that falls by so much from tooth to tooth, evenly with the turning, behind an edge on a cone."""

    def __init__(self, diameter: float, flutes: int, throw: float, cone: float) -> None:
        self.per_radian = throw * flutes / (2 * pi)
        self.radius, self.cone = diameter / 2, cone

    def drops(self, turned: float) -> tuple[float, float, float]:
        fall = self.per_radian * turned
        return fall, fall * cos(self.cone), fall / tan(self.cone)

    def relief(self, land: float, wanted: float, flutes: int) -> dict[str, float]:
        turned = land / self.radius
        slope = self.per_radian / self.radius
        a_turn = 2 * pi * self.radius * tan(wanted)
        fall, square, axial = self.drops(turned)
        return {
            "heel_drop": fall, "square_drop": square, "axial_drop": axial, "land_angle": turned,
            "throw_per_turn": a_turn, "throw_per_tooth": a_turn / flutes, "relief_angle": atan(slope),
            "radial_relief_angle": atan(slope), "normal_relief_angle": atan(slope * cos(self.cone)),
            "axial_relief_angle": atan(slope / tan(self.cone)),
        }  # fmt: skip

    def readings(self, land: float) -> dict[tuple[str, str], Callable[[float], float]]:
        turned = land / self.radius
        return {
            ("relief-drop", "drop"): lambda part: self.drops(part * turned)[0],
            ("relief-drop", "square_drop"): lambda part: self.drops(part * turned)[1],
            ("relief-drop", "axial_drop"): lambda part: self.drops(part * turned)[2],
        }


def over_the_land(lead: float, diameter: float, land: float) -> dict[str, float]:
    turned = 2 * land / diameter
    return {"lead_over_land": lead * turned / (2 * pi), "lead": lead, "lead_angle": atan(lead / (pi * diameter)),
            "land_angle": turned}  # fmt: skip


def led(lead: float, diameter: float, land: float) -> Callable[[float], float]:
    return lambda part: part * over_the_land(lead, diameter, land)["lead_over_land"]


def the_lead_of_a_reamer() -> Way:
    cone, relief, land, radius = radians(45), radians(7), 0.8, 6.0
    turned = land / radius
    flat = BevelFlat(radius, cone, relief)
    radial = atan(tan(relief) / cos(cone))
    return Way(
        "machine reamer plain 12 h7",
        "reamer-machine-plain-steel",
        {"tool.flutes": "6", "received.diameter": "12 mm", "received.corner_wear": "0.15 mm", "received.land_width": "0.8 mm"},
        {
            "index-moves": moves(6),
            # ISO 286-1: H7 over 10 to 18 mm is 0 to 18 micrometres. DIN 1420, from memory: 15 percent of 18 below the top
            # are 2.7, taken as 3, and 35 percent are 6.3, taken as 7.
            "reamer-size": {"reamer_lower_limit": 12.008, "reamer_upper_limit": 12.015, "hole_lower_limit": 12.0,
                            "hole_upper_limit": 12.018, "left_to_grind": 0.0, "left_to_wear": 0.0},
            "face-offset": {"face_offset": 0.0, "rake_angle": 0.0},
            # The land of 45 degrees is worn by as much along the axis as along the radius; 0.015 D to ream, half of it a side.
            "bevel-lead": {"bevel_angle": cone, "axial_stock": 0.15, "square_stock": 0.15 / sqrt(2), "normal_relief_angle": relief,
                           "radial_relief_angle": radial, "axial_relief_angle": radial, "least_bevel_length": 0.015 * 12 / 2},
            "relief-drop": {"heel_drop": flat.radial(turned), "square_drop": flat.square(turned), "axial_drop": flat.axial(turned),
                            # A chord leaves the circle again as far behind as its angle says twice.
                            "clear_land_width": 2 * radial * radius, "land_angle": turned, "radial_relief_angle": radial,
                            "normal_relief_angle": relief, "axial_relief_angle": radial},
        },
        {
            ("relief-drop", "drop"): lambda part: flat.radial(part * turned),
            ("relief-drop", "square_drop"): lambda part: flat.square(part * turned),
            ("relief-drop", "axial_drop"): lambda part: flat.axial(part * turned),
        },
        {"bevel_angle": "45.00 deg", "axial_stock": "0.150 mm", "face_offset": "0.000 mm"},
    )  # fmt: skip


def a_reamer_on_its_lands() -> Way:
    relief, land, radius, margin = radians(7), 0.8, 6.0, 0.2
    turned = land / radius

    def behind_the_margin(part: float) -> float:
        """A flat that begins where the margin ends: where a ray from the axis meets it."""
        seen = max(part * turned - margin / radius, 0.0)
        return radius - radius * cos(relief) / (cos(seen) * cos(relief) + sin(seen) * sin(relief))

    return Way(
        "machine reamer plain 12 h7",
        "reamer-machine-plain-steel",
        {"tool.flutes": "6", "received.diameter": "12 mm", "received.land_width": "0.8 mm", "wanted.surface": "land"},
        {"reamer-land": {"heel_drop": behind_the_margin(1), "land_angle": turned, "clear_land_width": margin + 2 * relief * radius}},
        {("reamer-land", "drop"): behind_the_margin},
        {"face_offset": "0.000 mm"},
    )  # fmt: skip


def a_gun_tap() -> Way:
    diameter, pitch, land, flutes = 9.98, 1.5, 2.5, 3
    # ISO 724: the fundamental triangle is 0.866025 of the pitch high; the root of a bolt lies 17/24 of it under the crest.
    depth = 17 / 24 * sqrt(3) / 2 * pitch
    length, beyond = 5 * pitch, 2
    cone = atan(depth / length)
    # Of 4 to 8 degrees: the cam of 1.6 mm would give 8.7, that of 1 mm gives 5.5.
    cam = Cam(diameter, flutes, 1.0, cone)
    gash = (length + beyond * pitch) * tan(radians(10))
    return Way(
        "gun tap plain m10",
        "tap-spiral-point-plain-steel",
        {"tool.thread": "M10 x 1.5", "tool.flutes": "3", "received.diameter": "9.98 mm", "received.land_width": "2.5 mm"},
        {
            "index-moves": moves(3),
            "tap-chamfer": {"chamfer_angle": cone, "chamfer_length": length, "chamfer_threads": 5.0,
                            "point_diameter": diameter - 2 * depth, "chip_per_tooth": depth / (5 * flutes),
                            "square_chip_per_tooth": depth / (5 * flutes) * cos(cone)},
            "spiral-point": {"spiral_point_angle": radians(10), "spiral_point_depth": gash, "spiral_point_length": length + beyond * pitch,
                             "threads_beyond": beyond,
                             # What the gash leaves of the straight width across the land.
                             "front_land": hypot(diameter / 2 * (1 - cos(2 * land / diameter)), diameter / 2 * sin(2 * land / diameter)) - gash},
            "relief-drop": cam.relief(land, radians(6), flutes),
            "lead-over-land": over_the_land(pitch, diameter, land),
        },
        {**cam.readings(land), ("lead-over-land", "lead_over_land"): led(pitch, diameter, land)},
        {"chamfer_angle": "6.99 deg", "spiral_point_angle": "10.00 deg", "spiral_point_depth": "1.851 mm",
         "chosen_throw": "1.000 mm"},
    )  # fmt: skip


def a_drill_on_a_work_head() -> Way:
    radius, web, land = 5.0, 0.75, 5.0
    wanted, fall_along, ahead = tan(radians(12)), 1 / tan(radians(59)), asin(web / radius)
    # The flat holds the lip, and at the corner, which lies ahead of the axis, a line square to the radius that falls by what
    # is wanted: its normal is square to both.
    lip, round_the_corner = (1.0, 0.0, -fall_along), (sin(ahead), cos(ahead), -wanted)
    normal = (
        -lip[2] * round_the_corner[1],
        lip[2] * round_the_corner[0] - lip[0] * round_the_corner[2],
        lip[0] * round_the_corner[1],
    )
    fall_behind = normal[1] / normal[2]

    def below_the_corner(part: float) -> float:
        """How much lower the flat is, a part of the land behind the outer corner, than the corner."""
        at = ahead - part * land / radius
        return (radius * cos(at) - radius * cos(ahead)) * fall_along + (web - radius * sin(at)) * fall_behind

    to_the_axis = atan(hypot(normal[0], normal[1]) / normal[2])
    assert below_the_corner(1) < 0
    # Both flats are equally high where they meet; the other one is this one after half a turn.
    chisel = atan(fall_along / fall_behind)
    step = 1e-6
    return Way(
        "jobber drill plain 10",
        "twist-drill-jobber-plain-steel",
        {"received.diameter": "10 mm", "received.web_thickness": "1.5 mm", "received.land_width": "5 mm", "wanted.relief_method": "work-head"},
        {
            "point-setup": {"roll_angle": atan(normal[1] / normal[0]), "axis_to_wheel_angle": pi / 2 - to_the_axis,
                            # Square to the lip: between the flat and the plane of the lip that holds the circle's direction.
                            "normal_relief_angle": atan(fall_behind / hypot(1.0, fall_along)),
                            "corner_relief_angle": atan(below_the_corner(step / land) / step),
                            "chisel_edge_angle": pi - chisel, "chisel_edge_supplement": chisel, "axial_drop": below_the_corner(1),
                            # The flat over the axis, less the flat over the corner.
                            "point_height": radius * (cos(ahead) * fall_along - sin(ahead) * fall_behind)},
            "drill-point": {"half_point_angle": radians(59), "point_length": radius * fall_along, "land_angle": land / radius,
                            # The web was measured, so that the flat behind the lip is the same.
                            "relief_angle": atan(fall_behind / hypot(1.0, fall_along)),
                            # Of a cone of this relief all the way, as an arc of 5 mm rolled out.
                            "axial_drop": land * wanted},
            # The heel of so wide a single flat stands ahead of the corner, so that no feed clears.
            "feed-clearance": {"inner_diameter": 2 * web},
        },
        {("point-setup", "axial_drop"): below_the_corner},
        {"roll_angle": "11.64 deg", "axis_to_wheel_angle": "58.47 deg"},
    )  # fmt: skip


def an_npt_tap() -> Way:
    inch, pitch, land, flutes = 25.4, 25.4 / 14, 5.0, 4
    # ASME B1.20.1 for 1/2-14 NPT: E0 is D - (0.05 D + 1.1) p, L1 .320 in, and the taper 1 in 16; its table 2 has .75843
    # and .77843 in. ANSI B94.9, from memory: the tap projects .579 in through the ring.
    gauge, projects = 0.320 * inch, 0.579 * inch
    small = 0.84 * inch - (0.05 * 0.84 + 1.1) * pitch
    at_the_gauge = small + gauge / 16
    assert (small / inch, at_the_gauge / inch) == pytest.approx((0.75843, 0.77843), abs=6e-6)
    end = small - projects / 16
    root = end - 0.8 * pitch
    length = 2.5 * pitch
    crest = end + length / 16 + 0.8 * pitch
    cone = atan((crest - root) / 2 / length)
    diameter = 0.84 * inch
    # Of 4 to 8 degrees: the cam of 2.5 mm would give 8.5, that of 1.6 mm gives 5.5.
    cam = Cam(diameter, flutes, 1.6, cone)
    return Way(
        "tap 1/2-14 npt",
        "tap-pipe-taper-american",
        {"tool.thread": "1/2-14 NPT", "tool.flutes": "4", "received.land_width": "5 mm"},
        {
            "index-moves": moves(4),
            "pipe-tap": {"chamfer_angle": cone, "chamfer_length": length, "chamfer_threads": 2.5, "front_pitch_diameter": small,
                         "pitch_diameter": at_the_gauge, "gauge_length": gauge, "tap_depth": gauge + projects,
                         "projection_after": projects, "end_pitch_diameter": end,
                         "full_threads_beyond": (projects - length) / pitch,
                         # Three threads more are screwed on with a wrench.
                         "usable_length": projects - length - 3 * pitch, "turns_lost": 0.0, "point_diameter_after": root,
                         "chip_per_tooth": (crest - root) / 2 / (2.5 * flutes)},
            "relief-drop": cam.relief(land, radians(6), flutes),
            "lead-over-land": over_the_land(pitch, diameter, land),
        },
        {**cam.readings(land), ("lead-over-land", "lead_over_land"): led(pitch, diameter, land)},
        {"chamfer_angle": "19.35 deg", "chosen_throw": "1.600 mm"},
    )  # fmt: skip


def a_tap_of_five_flutes() -> Way:
    pitch, land, flutes = 2.0, 4.0, 5
    # A pentagon of five edges between two walls of 108 degrees touches them square, so that the height over the apex is
    # the radius upward and the radius by the sine of half the angle downward.
    radius = 17.89 / (1 + 1 / sin(radians(54)))
    diameter, cone = round(2 * radius, 3), radians(8)
    # It is a little larger than M16 over its crests, and has the root of M16.
    depth = (diameter - 16) / 2 + 17 / 24 * sqrt(3) / 2 * pitch
    length = depth / tan(cone)
    # Of 4 to 8 degrees: the cam of 1.6 mm would give 9.0, that of 1 mm gives 5.7.
    cam = Cam(diameter, flutes, 1.0, cone)
    chip = depth / (length / pitch * flutes)
    return Way(
        "hand tap second m16",
        "tap-hand-plain-steel",
        {"tool.thread": "M16", "tool.flutes": "5", "received.vee_reading": "17.89 mm", "received.land_width": "4 mm"},
        {
            "index-moves": moves(5),
            "vee-reading": {"diameter": 2 * radius, "vee_reading": 17.89, "vee_angle": radians(108),
                            # Of the diameter in the reading.
                            "vee_gain": 17.89 / (2 * radius), "fitting_vee_angle": pi - 2 * pi / flutes},
            "tap-chamfer": {"chamfer_angle": cone, "chamfer_length": length, "chamfer_threads": length / pitch,
                            "point_diameter": diameter - 2 * depth, "chip_per_tooth": chip, "square_chip_per_tooth": chip * cos(cone)},
            "relief-drop": cam.relief(land, radians(6), flutes),
            "lead-over-land": over_the_land(pitch, diameter, land),
        },
        {**cam.readings(land), ("lead-over-land", "lead_over_land"): led(pitch, diameter, land)},
        {"chamfer_angle": "8.00 deg", "chosen_throw": "1.000 mm"},
    )  # fmt: skip


WAYS = (
    the_lead_of_a_reamer(),
    a_reamer_on_its_lands(),
    a_gun_tap(),
    a_drill_on_a_work_head(),
    an_npt_tap(),
    a_tap_of_five_flutes(),
)


@pytest.fixture(scope="module")
def yard_book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    folder: Path = tmp_path_factory.mktemp("demo") / "yard"
    lay_out(folder)
    return open_book(folder)


def card_for(book: Book, way: Way) -> Job:
    """The job of the card that is begun from what the find line has, with what is measured typed."""
    rows = book.rows if isinstance(book.rows, Rows) else Rows.of(book.rows)
    numbers, size, *_ = ranked(rows, way.sought)
    assert way.entry in [rows[number].id for number in numbers[:3]], [
        rows[number].id for number in numbers[:5]
    ]
    card = replace(from_entry(book, book.entries[way.entry]), id="2026-12-01-01", machine="grey-grinder")
    if size is not None:
        card = with_size(card, size)
    for place, text in way.typed.items():
        card = edited(card, place, text)
    return work_out(card, book)


@pytest.mark.parametrize("way", WAYS, ids=lambda way: way.sought)
def test_every_number_from_the_find_line_to_the_sheet_is_found_a_second_way(
    yard_book: Book, way: Way
) -> None:
    job = card_for(yard_book, way)
    worked = {step.sheet.name: step.answer.result for step in job.steps if step.works and not step.rests}
    outputs = {name: result.outputs for name, result in worked.items() if result is not None}
    # A calculation that is added later brings the test of its numbers along.
    assert outputs.keys() >= way.found.keys()
    for name, numbers in ((name, outputs[name]) for name in way.found):
        assert numbers.keys() == way.found[name].keys(), name
        for key, number in numbers.items():
            assert number == pytest.approx(way.found[name][key], abs=NEAR), (name, key)


@pytest.mark.parametrize("way", WAYS, ids=lambda way: way.sought)
def test_every_reading_on_the_way_is_found_a_second_way(yard_book: Book, way: Way) -> None:
    seen = set()
    for step in card_for(yard_book, way).steps:
        if step.rests or step.answer.result is None or step.sheet.name not in way.found:
            continue
        for station in step.answer.result.stations:
            for key, reading in station.readings.items():
                wanted = way.readings[step.sheet.name, key](station.fraction)
                assert reading == pytest.approx(wanted, abs=NEAR), (step.sheet.name, key, station.fraction)
                seen.add((step.sheet.name, key))
    assert seen == way.readings.keys()


@pytest.mark.parametrize("way", WAYS, ids=lambda way: way.sought)
def test_the_sheet_says_what_is_set_to_the_division_of_the_machine(yard_book: Book, way: Way) -> None:
    job = card_for(yard_book, way)
    lines = {line.key: line for line in setting_lines(job, job.display) if line.key}
    assert {key: line.value for key, line in lines.items()} == way.set_to
    sheet = setup_sheet(job)
    for key, told in way.set_to.items():
        assert told.split()[0] in sheet, key
        if told.endswith("deg"):
            divisions = round(float(told.split()[0]) / HALVES_OF_A_DEGREE)
            quarters = round(float(told.split()[0]) / HALVES_OF_A_DEGREE * 2)
            assert lines[key].divisions in {f"{divisions} div", f"{quarters} div"}, key
