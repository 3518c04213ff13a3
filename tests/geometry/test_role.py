"""What each calculation says of its part in a job, held against its own inputs and answers."""

from __future__ import annotations

from geometry.calculation import Calculation
from geometry.calculations import calculation, calculation_doing, calculation_names
from geometry.quantities import QUANTITIES
from geometry.role import FACETS, FOUND, HEEL, HEIGHTS, LASTING, MOVES, Cam
from geometry.surfaces import SURFACES
from tests.each import each

ALL = [calculation(name) for name in calculation_names()]
each_calculation = each("sheet", ALL, lambda sheet: sheet.name)


@each_calculation
def test_sets_and_hands_on_only_what_it_asks_for_or_answers(sheet: Calculation) -> None:
    known = {*(field.key for field in sheet.inputs), *sheet.outputs}
    assert set(sheet.role.sets) <= known
    assert {sheet.role.hands_on} - {""} <= known


@each_calculation
def test_takes_a_cam_in_inputs_of_its_own(sheet: Calculation) -> None:
    cam = sheet.role.cam or Cam("surface", "surface")
    if sheet.role.cam is not None:
        assert sheet.field(cam.throw) is not None
        assert sheet.field(cam.wanted) is not None
        assert cam.gives or "relief_angle" in sheet.outputs
        assert all(surface in {"", *SURFACES} and key in QUANTITIES for surface, key in cam.gives)


@each_calculation
def test_one_that_rests_says_what_measuring_brings_it_in(sheet: Calculation) -> None:
    assert (sheet.role.of_course is None) == (sheet.role.about == "")
    if sheet.role.about:
        assert sheet.field(sheet.role.about) is not None


@each_calculation
def test_uses_only_words_that_the_card_knows(sheet: Calculation) -> None:
    assert sheet.role.does in {"", HEEL, FOUND, LASTING}
    assert sheet.role.rows in {"", MOVES, FACETS, HEIGHTS}
    assert set(sheet.role.tells) <= {"pass", "note"}


def test_every_question_of_a_job_is_answered_by_one_calculation_alone() -> None:
    for question in (HEEL, FOUND, LASTING):
        assert [sheet.role.does for sheet in ALL].count(question) == 1
        assert calculation_doing(question).role.does == question


def test_no_two_stand_at_the_same_place_of_the_set_up() -> None:
    places = [sheet.role.place for sheet in ALL if sheet.role.place is not None]
    assert len(set(places)) == len(places)


def test_what_is_mounted_comes_before_the_relief_and_how_long_it_lasts_comes_last() -> None:
    placed = sorted((sheet.role.place, sheet.name) for sheet in ALL if sheet.role.place is not None)
    names = [name for _, name in placed]
    assert names[0] == "wheel-speed"
    assert names.index("unequal-spacing") < names.index("index-moves") < names.index("face-offset")
    assert names.index("face-offset") < names.index("setting-height") < names.index("relief-drop")
    assert names[-1] == calculation_doing(LASTING).name
