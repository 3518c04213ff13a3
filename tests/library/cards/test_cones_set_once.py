"""What is chosen once for a cone, a bevel or a chamfer: one cam, one swivel, and readings of one relief. Numbers by hand; derived."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.inspecting import received_reliefs, reliefs_after, verdicts
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Tool, Wanted
from library.cards.planning import plan
from library.cards.settings_lines import setting_lines
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC
from tests.library.cards.drawer import cone, countersink, output, tap


def test_a_countersink_takes_one_cam_for_its_cone_and_its_readings(drawer: Book) -> None:
    card = countersink(drop="0.0466 in")
    job = work_out(card, drawer)
    # Per tooth of three: 12.7 tan 8 / cos 41 * 2 pi / 3 = 4.9531 mm; the cam above it in the drawer is 20 mm.
    needed = 12.7 * math.tan(math.radians(8)) / math.cos(math.radians(41)) * 2 * math.pi / 3
    assert output(job, "cone-relief", "needed_radial_throw") == pytest.approx(needed)
    step = job.step("relief-drop")
    assert step is not None
    assert step.answer.inputs["chosen_throw"].value == 20.0
    by_cam = math.atan(20 / (2 * math.pi / 3) * math.cos(math.radians(41)) / 12.7)
    assert output(job, "cone-relief", "relief_angle") == pytest.approx(by_cam)
    assert output(job, "relief-drop", "relief_angle") == pytest.approx(by_cam)
    assert not any(
        check.state == "pass" and "wanted" in str(check.sentence) for one in job.steps for check in one.checks
    )


def test_a_correct_countersink_of_82_degrees_comes_out_as_8_degrees_and_passes(drawer: Book) -> None:
    # 1 in, land .250 in round the circle, an indicator at the axis: 12.7 * 0.5 * tan 8 / cos 41 mm is .0466 in.
    job = work_out(replace(countersink(".0466 in"), machine="bare"), drawer)
    assert [math.degrees(one.angles["eccentric"]) for one in reliefs_after(job)] == pytest.approx(
        [8.0] * 3, abs=0.01
    )
    assert [math.degrees(one.angles["eccentric"]) for one in received_reliefs(job)] == pytest.approx(
        [8.0] * 3, abs=0.01
    )
    (verdict,) = verdicts(job)
    assert verdict.state == "pass"
    square = edited(replace(countersink(".0351 in"), machine="bare"), "wanted.indicator_points", "square")
    square = replace(square, after={"drop": Inspection((".0351 in",) * 3, "", "0.5 thou")})
    found = work_out(square, drawer)
    assert [math.degrees(one.angles["eccentric"]) for one in reliefs_after(found)] == pytest.approx(
        [8.0] * 3, abs=0.02
    )
    assert verdicts(found)[0].state == "pass"


def test_the_wanted_relief_says_its_view_and_where_the_indicator_points(drawer: Book) -> None:
    text = " ".join(setup_sheet(work_out(replace(countersink(".0466 in"), machine="bare"), drawer)).split())
    assert "Cone relief: 8 deg, square to the edge; indicator at the axis reads 0.0466 in at the heel" in text


@pytest.mark.parametrize("form", ["text", "markdown", "html"])
def test_a_card_in_inches_prints_no_millimetre(drawer: Book, form: str) -> None:
    page = setup_sheet(work_out(replace(countersink(".0466 in"), machine=""), drawer), form)
    body = page.partition("</style>")[2] or page
    assert " mm" not in body.partition("Before you grind")[0]
    assert "0.0466 in" in body


@pytest.mark.parametrize(
    ("method", "title", "swivel"),
    [
        ("cam", "Half included angle", "45.00 deg"),
        ("wheel-head-height", "Half included angle", "45.00 deg"),
        # The rest turns it 11.24 degrees down, tan 8 / cos 45: tan 45 cos 11.24 is 0.9808.
        ("tooth-rest-height", "Axis to the wheel face", "44.45 deg"),
    ],
)
def test_a_cone_is_swivelled_to_by_half_of_its_angle_before_anything_else_of_it_is_set(
    drawer: Book, method: str, title: str, swivel: str
) -> None:
    card = edited(edited(cone(), "wanted.relief_method", method), "settings.setting-height.wheel_diameter",
                  "150 mm")  # fmt: skip
    titles = [line.title for line in setting_lines(work_out(card, drawer), METRIC)]
    settings = {line.title: line.value for line in setting_lines(work_out(card, drawer), METRIC)}
    # Derived: each side of a cone of 90 degrees lies 45 off its axis.
    assert settings[title] == swivel
    assert len({"Half included angle", "Axis to the wheel face"} & set(titles)) == 1
    made = next(one for one in titles if "throw" in one.lower() or "height" in one)
    assert titles.index(title) < titles.index(made)


@pytest.mark.parametrize(
    ("family", "angle", "relief", "surface", "text", "swivel"),
    [
        # Derived: tan 7 / cos 45 turns it 9.85 degrees down, and tan 45 cos 9.85 is 0.9853; 20 degrees by 8 make tan 19.82.
        ("reamer", "bevel_angle", "bevel_relief_angle", "bevel", "7 deg", "44.57 deg"),
        ("tap", "chamfer_angle", "chamfer_relief_angle", "chamfer", "8 deg", "19.82 deg"),
    ],
)
def test_on_a_rest_the_swivel_of_bevel_and_chamfer_stands_in_place_of_their_angle(
    drawer: Book, family: str, angle: str, relief: str, surface: str, text: str, swivel: str
) -> None:
    card = Card(
        family=family,
        machine="drawer",
        wheel="cup",
        tool=Tool("A-1", size="12 mm", thread="M12" if family == "tap" else "", flutes="4"),
        received={"land_width": ("1.5 mm",)},
        wanted={
            angle: Wanted("45 deg" if family == "reamer" else "20 deg"),
            relief: Wanted(text),
            "surface": Wanted(surface),
            "relief_method": Wanted("tooth-rest-height"),
        },
    )
    job = work_out(card, drawer)
    lines = {line.key: line.value for line in setting_lines(job, METRIC)}
    assert lines["axis_to_wheel_angle"] == swivel
    assert angle not in lines
    sheet = setup_sheet(job)
    assert f"a little less ({swivel})" in " ".join(sheet.split())


def test_the_plan_of_a_tap_and_a_countersink_names_the_change_of_the_head(drawer: Book) -> None:
    both = [tap(), cone()]
    changed = {line.title: line.value for line in plan(both, drawer, METRIC).turns[1].changes}
    assert changed.get("Half included angle", changed.get("Chamfer angle")) in {"45.00 deg", "7.00 deg"}
