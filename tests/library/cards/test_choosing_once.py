"""What is chosen once for a job: one surface, one method with only its steps, one cam. Numbers by hand; derived."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.inspecting import verdicts
from library.cards.issues import issues_of
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool, Wanted
from library.cards.settings_lines import setting_lines
from library.cards.shall_be import wanted_number
from library.pages.as_text import as_text
from library.pages.card_end import end_answers
from library.pages.page import Page, Section
from library.setup_sheet.sheets import setup_sheet
from library.units.show import say
from tests.library.cards.drawer import output, tap


def names(job: Job) -> set[str]:
    return {step.sheet.name for step in job.steps}


MADE_BY_HEIGHT = {"setting-height", "relief-facets"}


def test_an_eccentric_relief_is_made_by_a_cam_and_no_height_is_listed(drawer: Book) -> None:
    job = work_out(tap(), drawer)
    assert (job.choice.method, job.choice.surface) == ("cam", "chamfer")
    assert not names(job) & {*MADE_BY_HEIGHT, "wheel-tilt"}
    assert not any("height" in line.title.lower() for line in setting_lines(job, job.display))


@pytest.mark.parametrize(
    ("wheel", "method", "key"),
    [
        ("cup", "tooth-rest-height", "tooth_rest_height"),
        ("straight", "wheel-head-height", "wheel_head_height"),
    ],
)
def test_a_flat_relief_is_made_by_the_height_that_goes_with_the_wheel(
    drawer: Book, wheel: str, method: str, key: str
) -> None:
    job = work_out(replace(tap(relief_form="flat"), wheel=wheel), drawer)
    assert job.choice.method == method
    heights = {line.key for line in setting_lines(job, job.display) if line.key.endswith("_height")}
    assert heights == {key}
    assert not names(job) & {"cone-relief", "step-relief", "wheel-tilt"}
    assert not any("throw" in line.key for line in setting_lines(job, job.display))


def test_a_method_that_was_chosen_holds_and_brings_its_wheel_and_its_form(drawer: Book) -> None:
    job = work_out(
        replace(tap(relief_method="tooth-rest-height", chamfer_angle="0.001 deg"), wheel="straight"), drawer
    )
    # Under a cup the rest goes down by half the tool's diameter times the sine of the relief square to the axis.
    assert output(job, "setting-height", "tooth_rest_height") == pytest.approx(
        5.99 * math.sin(math.radians(6.5))
    )
    told = [one.text for one in issues_of(job) if one.way == "wanted.relief_method"]
    assert any("makes the relief flat, and eccentric is wanted" in one for one in told)
    (wheel,) = [one for one in issues_of(job) if one.way == "wheel"]
    assert wheel.state == "stop"
    assert wheel.text.startswith("Straight is a straight wheel (type 1). ")
    assert "its side" in wheel.text


def test_an_inclined_wheel_is_only_taken_when_it_was_chosen_or_there_is_no_cam(drawer: Book) -> None:
    helical = edited(tap(), "received.helix_angle", "20 deg")
    assert work_out(helical, drawer).choice.method == "cam"
    assert work_out(replace(helical, machine="bare"), drawer).choice.method == "inclined-wheel"
    chosen = work_out(edited(helical, "wanted.relief_method", "inclined-wheel"), drawer)
    assert "wheel-tilt" in names(chosen)
    assert not names(chosen) & {"setting-height", "cone-relief"}


def test_a_height_says_once_from_where_it_counts_and_its_direction_in_the_words_of_the_machine(
    drawer: Book,
) -> None:
    text = " ".join(setup_sheet(work_out(tap(relief_form="flat"), drawer)).split())
    assert text.count("rest screw lower") == 1
    assert text.count("below the tool axis") == 1  # lower than what: the words of the machine do not say
    assert "above the tool axis" not in text


def test_the_nearest_cam_of_the_drawer_is_taken_and_what_it_gives_is_watched(drawer: Book) -> None:
    job = work_out(tap(), drawer)
    step = job.step("relief-drop")
    assert step is not None
    # pi 11.98 tan 6.5 / 3 is 1.4294 mm from tooth to tooth; 1.6 gives atan(1.6 * 3 / (pi 11.98)) = 7.2691 degrees.
    assert step.provenance["chosen_throw"] == "machine"
    assert output(job, "relief-drop", "relief_angle") == pytest.approx(math.atan(1.6 * 3 / (math.pi * 11.98)))
    said = [(check.state, say(check.sentence)) for check in step.checks]
    assert any(state == "watch" and "7.27 deg" in text and "6.50 deg wanted" in text for state, text in said)
    assert not any(state == "pass" and "cam" in text for state, text in said)
    lines = {line.title: line for line in setting_lines(job, job.display)}
    assert lines["Throw of the cam"].value == "1.600 mm"
    assert lines["Throw of the cam"].graduation == "the cam of 1.6 mm out of the drawer, per tooth"
    assert lines["Throw of the cam"].cost == "gives 7.27 deg, 6.50 deg was wanted"


def test_after_grinding_is_judged_by_the_chosen_cam_beside_what_was_wanted(drawer: Book) -> None:
    job = work_out(tap(), drawer)
    turned = 2 * math.asin(3.2 / 11.98)
    # A third of a turn falls 1.6 mm; 6.5 degrees would fall R theta tan 6.5.
    assert wanted_number(job, "drop") == pytest.approx(1.6 * turned / (2 * math.pi / 3), abs=5e-4)
    (verdict,) = verdicts(job)
    assert [mark.state for mark in verdict.marks] == ["pass", "pass", "pass"]
    assert verdict.first_wanted == pytest.approx(5.99 * turned * math.tan(math.radians(6.5)))
    text = " ".join(setup_sheet(job).split())
    assert (
        "Judged by the cam of 1.6 mm: it gives 7.27 deg and reads 0.413 mm. 6.50 deg was wanted, which reads 0.369 mm."
        in text
    )
    relief = work_out(
        edited(
            edited(tap(), "after.chamfer_relief_angle", "7.3 deg"),
            "after.chamfer_relief_angle.tolerance",
            "0.1 deg",
        ),
        drawer,
    )
    assert {one.key: one.state for one in verdicts(relief)}["chamfer_relief_angle"] == "pass"


def test_a_cam_that_was_typed_wins_and_without_flutes_none_is_taken(drawer: Book) -> None:
    typed = work_out(edited(tap(), "settings.relief-drop.chosen_throw", "1 mm"), drawer)
    assert output(typed, "relief-drop", "relief_angle") == pytest.approx(math.atan(3 / (math.pi * 11.98)))
    unknown = work_out(replace(tap(), tool=Tool("T-1", thread="M12 x 1.75")), drawer)
    step = unknown.step("relief-drop")
    assert step is not None
    assert "chosen_throw" not in step.answer.inputs
    assert any("How many flutes" in say(check.sentence) for check in step.checks)


def test_the_surface_goes_to_every_calculation_that_serves_it_and_size_goes_by_the_thread(
    drawer: Book,
) -> None:
    job = work_out(edited(tap(), "settings.size-loss.stock_per_sharpening", "0.3 mm"), drawer)
    surfaces = {step.sheet.name: step.answer.surface for step in job.steps if step.answer.surface}
    assert surfaces["relief-drop"] == "chamfer"
    assert surfaces["size-loss"] == "thread-land"
    step = job.step("size-loss")
    assert step is not None
    assert step.answer.result is None
    assert [one.key for one in step.answer.issues if one.missing] == ["relief_angle"]
    with_thread = work_out(edited(job.card, "wanted.thread_relief_angle", "1 deg"), drawer)
    # 2 * 0.3 tan 1 degree.
    assert output(with_thread, "size-loss", "size_lost") == pytest.approx(
        0.6 * math.tan(math.radians(1)), rel=1e-3
    )


def test_a_chosen_surface_wins_over_the_first_of_the_family(drawer: Book) -> None:
    card = tap(thread_relief_angle="1 deg")
    assert work_out(card, drawer).choice.surface == "chamfer"
    chosen = work_out(edited(card, "wanted.surface", "thread-land"), drawer)
    assert output(chosen, "relief-drop", "throw_per_turn") == pytest.approx(
        math.pi * 11.98 * math.tan(math.radians(1))
    )


def test_a_card_without_a_machine_names_the_head_that_is_assumed(drawer: Book) -> None:
    text = " ".join(setup_sheet(work_out(replace(tap(), machine=""), drawer)).split())
    assert "an assumed head of 40 to 1" in text


def test_a_range_that_is_wanted_is_shown_as_a_range_and_fills_nothing(drawer: Book) -> None:
    card = tap()
    card = replace(card, wanted={**card.wanted, "chamfer_relief_angle": Wanted("5 to 9 deg", "5 to 9 deg", "from memory")},
                   after={})  # fmt: skip
    job = work_out(card, drawer)
    assert not any(one.way.startswith("wanted") for one in issues_of(job))
    step = job.step("relief-drop")
    assert step is not None
    assert step.answer.result is None
    shown = edited(card, "after.chamfer_relief_angle", "7 deg")
    assert "Chamfer relief: 5 to 9 deg" in setup_sheet(work_out(shown, drawer))


def test_a_sheet_with_a_stop_says_so_at_its_head_and_prints_no_number_in_that_box(drawer: Book) -> None:
    job = work_out(edited(tap(), "settings.wheel-speed.rotational_speed", "5000 rpm"), drawer)
    for form in ("text", "markdown", "html"):
        page = setup_sheet(job, form)
        head = page[: page.index("Set, in this order")]
        assert "STOP: do not grind this before" in head
        setting = next(line for line in page.splitlines() if "Rotational speed" in line and "STOP" in line)
        assert "5000" not in setting
    text = setup_sheet(job)
    assert text.index("STOP ") < text.index("Set, in this order")
    assert text.index("must not run at 5000 rpm") < text.index("Set, in this order")
    fine = setup_sheet(work_out(edited(tap(), "settings.wheel-speed.rotational_speed", "2800 rpm"), drawer))
    assert not fine.startswith("STOP")


def test_the_folder_of_the_drawer_has_no_slip(drawer: Book) -> None:
    assert [str(one) for one in drawer.findings if "drawer" in str(one.place.file)] == []


def test_a_body_that_is_to_become_smaller_is_ground_on_its_lands_until_a_person_says_otherwise(
    drawer: Book,
) -> None:
    drill = Card(
        id="2026-11-25-02",
        family="twist-drill",
        tool=Tool("D-1", size="8.7 mm", flutes="2"),
        wanted={"lip_relief_angle": Wanted("12 deg"), "land_relief_angle": Wanted("9 deg")},
    )
    assert work_out(drill, drawer).choice.surface == "lip"
    ground_down = edited(drill, "received.body_diameter", "9 mm")
    assert work_out(ground_down, drawer).choice.surface == "land"
    assert work_out(edited(ground_down, "wanted.surface", "lip"), drawer).choice.surface == "lip"


def test_at_the_end_a_cam_on_watch_is_told_in_plain_words(drawer: Book) -> None:
    card = edited(tap(), "after.drop", "0.413 mm, 0.414 mm, 0.412 mm")
    # As above: the cam of 1.6 mm from tooth to tooth gives 7.27 degrees.
    said = as_text(
        Page(
            "",
            tuple(Section("", tuple(filter(None, part))) for part in end_answers(work_out(card, drawer), "")),
        )
    )
    told = " ".join(said.split())
    assert "The cam of 1.6 mm gives 7.27 deg of relief where 6.50 deg was wanted." in told
    assert "Indicator drop of the heel for a relief" not in told
