"""A card worked out: what fills each calculation, what is set, and what the readings say. Numbers by hand; derived."""

from __future__ import annotations

import math
import re
from dataclasses import replace

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.inspecting import received_reliefs, reliefs_after, verdicts
from library.cards.job import Job, work_out
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.cards.settings_lines import setting_lines
from library.cards.setup_order import calculations_of
from library.units.show import say
from library.units.system import INCH, METRIC


def value(job: Job, sheet: str, key: str) -> float:
    step = job.step(sheet)
    assert step is not None
    assert step.answer.result is not None
    return step.answer.result.outputs[key]


def test_every_calculation_is_filled_from_what_is_known_and_says_from_where(book: Book, job: Card) -> None:
    found = work_out(job, book)
    step = found.step("relief-drop")
    assert step is not None
    assert {key: who for key, who in step.provenance.items() if key != "throw_per"} == {
        "surface": "default",
        "diameter": "measured",
        "land_width": "measured",
        "land_measured_as": "measured",
        "relief_angle": "wanted",
        "relief_form": "wanted",
        "flutes": "tool",
    }
    # A chord of 3.2 on 11.97 turns 2 asin(3.2 / 11.97); the drop is R theta tan 8 degrees.
    turned = 2 * math.asin(3.2 / 11.97)
    assert value(found, "relief-drop", "heel_drop") == pytest.approx(
        11.97 / 2 * turned * math.tan(math.radians(8))
    )
    # The lead of M12 is its pitch of 1.75.
    assert value(found, "lead-over-land", "lead_over_land") == pytest.approx(1.75 * turned / (2 * math.pi))
    # A cup wheel takes half the tool's diameter times the sine of the relief.
    flat = work_out(edited(job, "wanted.relief_form", "flat"), book)
    assert value(flat, "setting-height", "tooth_rest_height") == pytest.approx(
        11.97 / 2 * math.sin(math.radians(8))
    )
    index = found.step("index-moves")
    assert index is not None
    assert index.provenance["index_ratio"] == "machine"
    assert index.provenance["plate_holes"] == "machine"
    assert index.provenance["flutes"] == "tool"


def test_what_is_typed_into_a_calculation_wins_there_and_only_there(book: Book, job: Card) -> None:
    card = edited(job, "settings.relief-drop.land_width", "2 mm")
    found = work_out(card, book)
    step, other = found.step("relief-drop"), found.step("lead-over-land")
    assert step is not None
    assert other is not None
    assert (step.provenance["land_width"], step.answer.inputs["land_width"].value) == ("typed", 2.0)
    assert (other.provenance["land_width"], other.answer.inputs["land_width"].value) == ("measured", 3.2)


def test_a_measured_angle_never_takes_the_place_of_the_wanted_one(book: Book, job: Card) -> None:
    card = edited(edited(job, "received.thread_relief_angle", "3 deg"), "wanted.relief_form", "flat")
    assert value(work_out(card, book), "setting-height", "tooth_rest_height") == pytest.approx(
        0.832951, abs=1e-6
    )
    # Of a quantity that nobody recommends the measured value is what there is.
    helix = edited(edited(job, "received.helix_angle", "15 deg"), "wanted.relief_method", "inclined-wheel")
    step = work_out(helix, book).step("wheel-tilt")
    assert step is not None
    assert step.provenance["helix_angle"] == "measured"


def test_a_width_from_the_book_gives_way_to_the_measured_one_but_not_one_a_person_decided_on(
    book: Book, job: Card
) -> None:
    from_book = replace(job, wanted={**job.wanted, "land_width": Wanted("0.25 D", "0.25 D")})
    assert work_out(from_book, book).step("relief-drop").answer.inputs["land_width"].value == 3.2  # type: ignore[union-attr]
    decided = replace(job, wanted={**job.wanted, "land_width": Wanted("2 mm", "0.25 D", "", "narrowed")})
    assert work_out(decided, book).step("relief-drop").answer.inputs["land_width"].value == 2.0  # type: ignore[union-attr]
    share = replace(from_book, received={"diameter": ("20 mm",)})
    assert work_out(share, book).step("relief-drop").answer.inputs["land_width"].value == 5.0  # type: ignore[union-attr]


def test_the_greatest_of_several_readings_is_taken_where_one_is_wanted(book: Book, job: Card) -> None:
    card = edited(job, "received.land_width", "3.0 mm, 3.2 mm, 3.1 mm, 3.0 mm")
    assert work_out(card, book).step("relief-drop").answer.inputs["land_width"].value == 3.2  # type: ignore[union-attr]


def test_numbers_typed_without_a_unit_have_the_unit_of_the_card(book: Book) -> None:
    card = Card(family="tap", units="in", settings={"relief-drop": Setting({
        "surface": "thread-land", "diameter": "0.5", "relief_angle": "7", "land_width": ".08"})})  # fmt: skip
    # 0.080 tan 7 degrees is 0.00982 in.
    assert value(work_out(card, book), "relief-drop", "heel_drop") / 25.4 == pytest.approx(0.009823, abs=1e-6)


def test_every_family_has_its_calculations_in_the_order_of_the_set_up(book: Book) -> None:
    for family in (*book.families.values(), None):
        names = [sheet.name for sheet in calculations_of(family)]
        assert names[0] == "wheel-speed"
        assert set(names[1 : names.index("index-moves")]) <= {"vee-reading", "unequal-spacing"}
        assert len(set(names)) == len(names)
        last = [name for name in names if name in {"face-offset", "relief-drop", "size-loss"}]
        assert last == [name for name in ("face-offset", "relief-drop", "size-loss") if name in last]


def test_a_card_with_nothing_on_it_is_worked_out_without_a_complaint(book: Book) -> None:
    found = work_out(Card(), book)
    assert [step.sheet.name for step in found.steps] == ["wheel-speed", "index-moves"]
    assert all(trouble.missing for step in found.steps for trouble in step.answer.issues)


def test_settings_are_told_in_the_machines_graduations(book: Book, job: Card) -> None:
    flat = work_out(edited(job, "wanted.relief_form", "flat"), book)
    lines = {line.title: line for line in setting_lines(flat, METRIC)}
    # 5.985 sin 8 degrees is 0.83295 mm: 83 divisions; 0.83 is asin(0.83 / 5.985) = 7.9714 degrees.
    assert lines["Tooth rest height"].value == "0.833 mm"
    assert lines["Tooth rest height"].graduation == "83 divisions of 0.01 mm, tooth rest down"
    assert lines["Tooth rest height"].cost == "rounding takes 0.029 deg off the relief angle"
    # Forty turns over four flutes; a tooth rest holds the tooth as well as the index does, and never with it.
    assert lines["Index"].graduation == "10 turns; only where no tooth rest holds the tooth"
    # It is read on the way and set nowhere.
    assert "Lead over the land" not in lines
    assert lines["Rotational speed"].value == "2800 rpm"
    inches = {line.title: line.value for line in setting_lines(flat, INCH)}
    assert inches["Tooth rest height"] == "0.0328 in"


def test_a_calculation_that_is_left_out_sets_nothing(book: Book, job: Card) -> None:
    card = edited(edited(job, "wanted.relief_form", "flat"), "settings.setting-height", "skip")
    assert "Tooth rest height" not in {line.title for line in setting_lines(work_out(card, book), METRIC)}


def test_index_moves_stay_on_the_plates_that_the_shop_has(book: Book, job: Card) -> None:
    seven = edited(job, "tool.flutes", "7")
    lines = {line.title: line.graduation for line in setting_lines(work_out(seven, book), METRIC)}
    # 40 / 7 is 5 turns and 15/21; of 15, 16, 18 and 21 holes only 21 is a multiple of seven.
    assert lines["Index"] == "5 turns and 15 holes on the circle of 21"
    eleven = setting_lines(work_out(edited(job, "tool.flutes", "11"), book), METRIC)
    moves = [line for line in eleven if line.title.startswith("Index, edge")]
    assert len(moves) == 11
    assert {re.findall(r"circle of (\d+)", line.graduation)[0] for line in moves} <= {"15", "16", "18", "21"}


def test_the_machine_and_the_wheel_stop_what_they_cannot_do(book: Book, job: Card) -> None:
    fast = edited(job, "settings.wheel-speed.rotational_speed", "4200 rpm")
    said = [
        say(check.sentence)
        for step in work_out(fast, book).steps
        for check in step.checks
        if check.state == "stop"
    ]
    # 20 m/s on 100 mm is 3819.7 rpm.
    assert any("must not run at 4200 rpm" in one and "Change to 2800 rpm." in one for one in said)
    steep = edited(edited(job, "received.helix_angle", "65 deg"), "wanted.land_relief_angle", "10 deg")
    steep = edited(steep, "wanted.relief_method", "inclined-wheel")
    said = [
        say(check.sentence)
        for step in work_out(steep, book).steps
        for check in step.checks
        if check.state == "stop"
    ]
    # atan(tan 10 tan 65) is 20.71 degrees; atan(tan 15 / tan 65) is 7.121 degrees.
    assert any(
        "the wheel head goes only to 15.00 deg. Lower the relief angle to 7.12 deg" in one for one in said
    )
    wide = edited(edited(job, "tool.flutes", "1"), "received.diameter", "12 mm")
    said = [
        say(check.sentence)
        for step in work_out(wide, book).steps
        for check in step.checks
        if check.state == "stop"
    ]
    # pi 12 tan 8 degrees is 5.298 mm, and the largest cam is set to 2 mm: atan(2 / (12 pi)) is 3.0367 degrees.
    assert any(
        "the largest cam at hand has 2.000 mm. Lower the relief angle to 3.03 deg" in one for one in said
    )


def test_the_cautions_of_all_steps_stand_once_and_the_deferring_one_last(book: Book, job: Card) -> None:
    names = [caution.id for caution in work_out(job, book).cautions]
    assert len(set(names)) == len(names)
    assert names[-1] == "defer"
    assert {"wheel-rating", "eyes", "hands"} <= set(names)


def test_readings_as_received_become_angles_flute_by_flute(book: Book, job: Card) -> None:
    found = received_reliefs(work_out(job, book))
    arc = 11.97 * math.asin(3.2 / 11.97)
    # Eccentric: tan a = drop / arc.
    expected = [math.atan(drop / arc) for drop in (0.20, 0.21, 0.19, 0.20)]
    assert [one.flute for one in found] == [1, 2, 3, 4]
    assert [one.angles["eccentric"] for one in found] == pytest.approx(expected)


def test_without_a_style_both_are_told(book: Book, job: Card) -> None:
    card = replace(job, wanted={"surface": Wanted("thread-land")})
    assert set(received_reliefs(work_out(card, book))[0].angles) == {"eccentric", "flat"}


def test_a_reading_that_cannot_be_turned_into_an_angle_says_why(book: Book, job: Card) -> None:
    card = replace(job, received={**job.received, "drop": ("0.2 mm", "much"), "land_width": ()})
    found = received_reliefs(work_out(card, book))
    assert found[0].angles == {}
    assert found[0].trouble.startswith("Give land width")
    assert "much" in found[1].trouble


def test_after_grinding_each_flute_passes_or_fails_and_the_spread_is_told(book: Book, job: Card) -> None:
    card = replace(
        job, after={"drop": Inspection(("0.45 mm", "0.48 mm", "0.43 mm", "0.44 mm"), "", "0.02 mm")}
    )
    found = work_out(card, book)
    (verdict,) = verdicts(found)
    # Wanted is the heel drop of relief-drop, 11.97 asin(3.2 / 11.97) tan 8 degrees = 0.45527 mm, as the sheet shows it.
    assert verdict.wanted == pytest.approx(0.455, abs=1e-9)
    assert [mark.state for mark in verdict.marks] == ["pass", "stop", "stop", "pass"]
    assert verdict.marks[1].text_off == "0.005 mm over the tolerance"
    assert verdict.marks[2].text_off == "0.005 mm under the tolerance"
    assert verdict.spread == pytest.approx(0.05)
    assert verdict.state == "stop"
    angles = [one.angles["eccentric"] for one in reliefs_after(found)]
    assert angles[0] == pytest.approx(math.atan(0.45 / (11.97 * math.asin(3.2 / 11.97))))


def test_a_reading_exactly_at_its_limit_passes_in_millimetres_and_in_inches(book: Book, job: Card) -> None:
    metric = Inspection(("11.98 mm", "12.02 mm"), "12 mm", "0.02 mm")
    inch = Inspection(("0.499 in", "0.501 in"), "1/2 in", "1 thou")
    for inspection in (metric, inch):
        (verdict,) = verdicts(work_out(replace(job, after={"diameter": inspection}), book))
        assert [mark.state for mark in verdict.marks] == ["pass", "pass"]


def test_without_a_tolerance_nothing_passes_and_nothing_fails(book: Book, job: Card) -> None:
    (verdict,) = verdicts(work_out(replace(job, after={"drop": Inspection(("0.45 mm",))}), book))
    assert verdict.state == "watch"
    assert verdict.spread is None


def test_what_is_wanted_after_grinding_comes_from_the_inspection_then_from_the_card(
    book: Book, job: Card
) -> None:
    card = replace(job, after={"thread_relief_angle": Inspection(("8 deg",), "", "30 min")})
    (verdict,) = verdicts(work_out(card, book))
    assert verdict.wanted == pytest.approx(math.radians(8))
    card = replace(job, after={"thread_relief_angle": Inspection(("8 deg",), "7 deg", "30 min")})
    (verdict,) = verdicts(work_out(card, book))
    assert verdict.state == "stop"
    shares = replace(job, wanted={"land_width": Wanted("0.25 D")}, received={"diameter": ("12 mm",)},
                     after={"land_width": Inspection(("3 mm",), "", "0.1 mm")})  # fmt: skip
    (verdict,) = verdicts(work_out(shares, book))
    assert verdict.wanted == pytest.approx(3.0)


def test_a_tool_is_known_by_its_thread_where_nothing_was_measured(book: Book) -> None:
    card = Card(family="tap", tool=Tool(thread="3/4-10 UNC"), received={"land_width": ("0.2 in",)})
    # Common practice, no source: a 3/4-10 tap with a land of 0.200 in as an arc advances 0.0085 in.
    assert value(work_out(card, book), "lead-over-land", "lead_over_land") / 25.4 == pytest.approx(
        0.0085, abs=5e-5
    )
