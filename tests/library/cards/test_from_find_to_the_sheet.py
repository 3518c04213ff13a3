"""From the entry of the shipped book to the sheet at the machine: each number found a second way, by hand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.job import Job, work_out
from library.cards.settings_lines import setting_lines
from library.cards.starting import from_entry
from library.demo import lay_out
from library.setup_sheet.sheets import setup_sheet


@pytest.fixture(scope="module")
def yard_book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    folder: Path = tmp_path_factory.mktemp("demo") / "yard"
    lay_out(folder)
    return open_book(folder)


def job(book: Book, entry: str, measured: Mapping[str, str]) -> Job:
    """A card begun from an entry, with what was measured and typed."""
    card = replace(from_entry(book, book.entries[entry]), id="2026-12-01-01", machine="grey-grinder")
    for way, text in measured.items():
        card = edited(card, way, text)
    return work_out(card, book)


def settings(found: Job) -> dict[str, str]:
    return {line.key: line.value for line in setting_lines(found, found.display)}


def test_the_lead_of_a_machine_reamer(yard_book: Book) -> None:
    worn = {"received.diameter": "12 mm", "received.corner_wear": "0.15 mm"}
    found = job(yard_book, "reamer-machine-plain-steel", worn)
    step = found.step("bevel-lead")
    assert step is not None
    assert step.works
    # By hand: the book has a bevel of 45 degrees, at which the stock along the axis is the wear itself, and 0.015 D
    # to ream, of which half is the least length. Derived.
    assert settings(found)["bevel_angle"] == "45.00 deg"
    assert settings(found)["axial_stock"] == "0.150 mm"
    assert step.answer.result is not None
    assert step.answer.result.outputs["least_bevel_length"] == pytest.approx(0.015 * 12 / 2)
    assert "Bevel angle" in setup_sheet(found)
    # The work head of the yard is graduated in half degrees.
    assert "90 div" in " ".join(line.divisions for line in setting_lines(found, found.display))


def test_a_drill_on_a_work_head_is_set_by_roll_and_swivel_and_by_nothing_else(yard_book: Book) -> None:
    measured = {"received.diameter": "10 mm", "wanted.relief_method": "work-head"}
    plain = job(
        yard_book, "twist-drill-jobber-plain-steel", {**measured, "wanted.relief_method": "wheel-head-height"}
    )
    assert plain.step("point-setup") is None
    assert settings(plain)["half_point_angle"] == "59.00 deg"
    found = job(yard_book, "twist-drill-jobber-plain-steel", measured)
    # By hand from 118 and 12 degrees, the lip asin(0.15) ahead: (tan 12 - 0.15 cot 59) / cos 8.6269 = 0.123829, and
    # 0.123829 tan 59 = 0.206085 = tan 11.645; the swivel is not half the point. Derived.
    assert settings(found)["roll_angle"] == "11.64 deg"
    assert settings(found)["axis_to_wheel_angle"] == "58.47 deg"
    assert "half_point_angle" not in settings(found)
    sheet = setup_sheet(found)
    # Nobody measured the web: the sheet names the one that roll and readings hang on.
    assert "1.500 mm is taken, 0.15 of the diameter" in " ".join(sheet.split())
    assert "Made by: roll and swivel of the work head" in " ".join(sheet.split())
    # The roll of the yard is graduated in quarter degrees: 47 of them are 11.75 degrees.
    assert "47 div" in " ".join(line.divisions for line in setting_lines(found, found.display))


def test_of_facets_only_the_readings_of_facets_are_on_the_sheet(yard_book: Book) -> None:
    measured = {
        "received.diameter": "10 mm",
        "received.web_thickness": "1.5 mm",
        "received.land_width": "5 mm",
        "wanted.relief_method": "work-head",
        "settings.point-setup.second_lip_relief_angle": "26 deg",
    }
    found = job(yard_book, "twist-drill-jobber-plain-steel", measured)
    assert found.step("relief-drop") is None
    step = found.step("drill-point")
    assert step is not None
    assert step.answer.result is not None
    assert not step.answer.result.stations
    # Derived: at half of the land the circle of 5 mm has gone 28.6479 degrees on from the lip, which lies asin(0.15) =
    # 8.6269 ahead; 5 sin 20.0210 = 1.7119 behind the line and 5 cos = 4.6978 along the lip, from 0.75 and 4.9434:
    # the first facet falls by (tan 12 - 0.15 cot 59) / cos 8.6269 = 0.123829:
    # 0.75 x 0.123829 + 1.7119 tan 26 - (4.9434 - 4.6978) cot 59 = 0.7803.
    assert "0.780" in setup_sheet(found)
    assert "STOP" not in setup_sheet(found)


def test_a_tap_of_five_flutes_that_was_read_over_a_vee(yard_book: Book) -> None:
    measured = {"tool.flutes": "5", "received.vee_reading": "17.89 mm"}
    found = job(yard_book, "tap-hand-plain-steel", measured)
    step = found.step("vee-reading")
    assert step is not None
    assert step.works
    assert step.answer.result is not None
    # By hand: 1 / sin 54 = 1.236068, and 2 * 17.89 / 2.236068 = 16.0013. Derived.
    assert step.answer.result.outputs["diameter"] == pytest.approx(16.0013, abs=1e-4)
    assert "16.001 mm" in setup_sheet(found)
    quiet = job(yard_book, "tap-hand-plain-steel", {"tool.flutes": "5"}).step("vee-reading")
    assert quiet is not None
    assert quiet.rests


def test_what_is_read_over_a_vee_is_the_diameter_of_every_later_calculation(yard_book: Book) -> None:
    told = {
        "tool.flutes": "5",
        "tool.thread": "M16",
        "received.vee_reading": "17.89 mm",
        "received.land_width": "4 mm",
    }
    found = job(yard_book, "tap-hand-plain-steel", told)
    # By hand as above: 16.0013, which is written to a micron; M16 by its name would be 16.
    for name in ("face-offset", "relief-drop"):
        step = found.step(name)
        assert step is not None
        assert step.answer.inputs["diameter"].value == pytest.approx(16.001)
        assert step.provenance["diameter"] == "worked"
    assert found.known_text("diameter") == "16.001 mm"
    inches = job(yard_book, "tap-hand-plain-steel", {**told, "units": "in"})
    assert inches.known_text("diameter") == "0.6300 in"  # 16.0013 / 25.4 = 0.62997


@pytest.mark.parametrize(
    ("more", "diameter"),
    [
        ({"received.diameter": "15.98 mm"}, 15.98),  # the caliper itself was laid on
        ({"wanted.diameter": "15.5 mm"}, 15.5),  # a person made it another size
        (
            {"settings.vee-reading.vee_angle": "90 deg"},
            16.0,
        ),  # in that vee it rocks: the reading says nothing
    ],
)
def test_a_vee_hands_nothing_on_over_a_measure_a_decision_or_a_stop(
    yard_book: Book, more: dict[str, str], diameter: float
) -> None:
    told = {
        "tool.flutes": "5",
        "tool.thread": "M16",
        "received.vee_reading": "17.89 mm",
        "received.land_width": "4 mm",
    }
    step = job(yard_book, "tap-hand-plain-steel", {**told, **more}).step("relief-drop")
    assert step is not None
    assert step.answer.inputs["diameter"].value == pytest.approx(diameter)


def test_a_reamer_is_judged_by_what_was_read_over_a_vee_against_a_master(yard_book: Book) -> None:
    told = {
        "tool.flutes": "5",
        "tool.size": "12 mm",
        "received.vee_difference": "0.02 mm",
        "settings.vee-reading.master_diameter": "12 mm",
        "settings.reamer-size.hole_tolerance": "H7",
    }
    step = job(yard_book, "reamer-hand-plain-steel", told).step("reamer-size")
    assert step is not None
    # By hand: 12 + 2 * 0.02 / 2.236068 = 12.0179, with 1 + 1 / sin 54 = 2.236068. Derived.
    assert step.answer.inputs["measured_diameter"].value == pytest.approx(12.018)
    assert step.answer.inputs["nominal_diameter"].value == 12.0


def test_a_gun_tap_brings_its_spiral_point_from_the_book(yard_book: Book) -> None:
    measured = {"tool.thread": "M10 x 1.5"}
    found = job(yard_book, "tap-spiral-point-plain-steel", measured)
    step = found.step("spiral-point")
    assert step is not None
    assert step.works
    # By hand: 5 threads of chamfer and 2 more of 1.5 are 10.5, and 10.5 tan 10 = 1.85144. Derived.
    assert settings(found)["spiral_point_angle"] == "10.00 deg"
    assert settings(found)["spiral_point_depth"] == "1.851 mm"
    assert "10.500 mm long and goes 2 threads past" in " ".join(setup_sheet(found).split())
    straight = job(yard_book, "tap-hand-plain-steel", measured).step("spiral-point")
    assert straight is not None
    assert straight.rests


def test_the_face_of_a_step_drill_in_a_universal_vise_is_set_in_minutes(yard_book: Book) -> None:
    entry = next(one for one in yard_book.entries.values() if one.family == "step-drill")
    quiet = job(yard_book, entry.id, {}).step("compound-angles")
    assert quiet is not None
    assert quiet.rests
    slopes = {
        "settings.compound-angles.along_slope_angle": "8 deg",
        "settings.compound-angles.cross_slope_angle": "12 deg",
    }
    found = job(yard_book, entry.id, slopes)
    # By hand: tan 8 = 0.140541, tan 12 = 0.212557; atan(0.212557 / 0.140541) = 56.53 degrees, and the root of the sum of
    # their squares, 0.254814, is the tangent of 14.30. The vise has divisions of 15 minutes: 57 are 14.25. Derived.
    assert settings(found)["base_swivel_angle"] == "56.53 deg"
    assert settings(found)["compound_tilt_angle"] == "14.30 deg"
    told = {line.key: line.graduation for line in setting_lines(found, found.display)}
    assert told["compound_tilt_angle"] == "57 divisions of 15 min, vise tilt"


@pytest.mark.parametrize(
    ("entry", "wheel_passes"),
    [
        ("counterbore-m6", "a loose pilot out, the cup clear of a fixed one"),
        ("end-mill-plain-steel", "the rim of the wheel clear of the next tooth"),
    ],
)
def test_the_sheet_of_end_teeth_says_what_the_wheel_must_pass(
    yard_book: Book, entry: str, wheel_passes: str
) -> None:
    found = job(yard_book, entry, {"received.diameter": "11 mm", "tool.flutes": "3"})
    assert wheel_passes in " ".join(setup_sheet(found).split())


def test_the_sheet_of_a_step_drill_that_falls_short_has_no_praise_of_its_weakest_shoulder(
    yard_book: Book,
) -> None:
    found = job(
        yard_book,
        "step-drill-spiral-flute-plain-steel",
        {
            "tool.size": "6, 8, 10 mm",
            "settings.step-relief.included_angle": "90, 90 deg",
            "settings.step-relief.radial_throw": "2.5 mm",
        },
    )
    told = [line for line in setup_sheet(found).splitlines() if "is the weakest" in line]
    assert "Shoulder 2 has 6.42 deg at its outer end" in " ".join(setup_sheet(found).split())
    assert not [line for line in told if "PASS" in line]


def test_a_list_of_shoulder_angles_that_is_too_long_is_told_before_the_card_has_a_throw(
    yard_book: Book,
) -> None:
    found = job(
        yard_book,
        "step-drill-spiral-flute-plain-steel",
        {"tool.size": "6, 8, 10 mm", "settings.step-relief.included_angle": "90, 90, 90 deg"},
    )
    step = found.step("step-relief")
    assert step is not None
    wrong = [one.text for one in step.answer.issues if not one.missing]
    assert wrong == [
        "included_angle: There are 3 included angles for 2 shoulders; give one for all, or one for each."
    ]
