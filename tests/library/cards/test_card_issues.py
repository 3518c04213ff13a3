"""What does not add up on a card: each gets its sentence, and the card stays a draft."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from geometry.sentences import Kind
from library.book.model import Book
from library.cards.close import NotFinished, differs, finished, reopened
from library.cards.editing import edited
from library.cards.issues import issues_of, keeps_open
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Setting
from library.cards.time_spent import minutes
from library.issue import Issue
from library.units.read import UnitError
from library.units.show import say, show

DAY = date(2026, 11, 26)


def told(card: Card, book: Book) -> tuple[Issue, ...]:
    return issues_of(work_out(card, book))


def test_a_card_in_order_has_no_problem(book: Book, job: Card) -> None:
    assert told(job, book) == ()


@pytest.mark.parametrize(
    ("way", "text", "place", "flute", "sentence"),
    [
        (
            "received.land_width", "3/16", "received.land_width", 0,
            "Land width: '3/16' has no unit; write it as 3.2 mm, 1/8 in or 40 thou.",
        ),
        (
            "after.drop", "0.45 mm; 1/64; 0.44 mm; 0.46 mm", "after.drop", 2,
            "Indicator drop, flute 2: '1/64' has no unit; write it as 3.2 mm, 1/8 in or 40 thou.",
        ),
        (
            "after.drop", "0.45 mm, , 0.44 mm, 0.46 mm", "after.drop", 2,
            "Indicator drop: flute 2 of 4 has no reading. Measure it, such as 3.2 mm, 1/8 in or 40 thou.",
        ),
        (
            "after.drop", "0.45 mm, 0.45 mm, 0.44 mm", "after.drop", 4,
            "Indicator drop: flute 4 of 4 has no reading. Measure it, such as 3.2 mm, 1/8 in or 40 thou.",
        ),
        (
            "received.drop", "0.2 mm, 0.2 mm, 0.2 mm, 0.2 mm, 0.2 mm", "received.drop", 0,
            "Indicator drop: there are 5 readings and 4 flutes. Correct the flutes, or take a reading away.",
        ),
        (
            # 11.97 sin(180 / 4) is 8.4641 mm straight across.
            "received.land_width", "9 mm", "received.land_width", 0,
            "Land width: 9 mm does not fit. With 4 flutes on 11.970 mm the edges stand 8.46 mm apart straight across. "
            "Measure one land from its edge to its heel again, or correct the flutes.",
        ),
        (
            "tool.flutes", "four", "tool.flutes", 0,
            "'four' is no number of flutes; count them: 1 to 60.",
        ),
        (
            "wanted.rake_angle", "5 mm", "wanted.rake_angle", 0,
            "Rake angle: '5 mm' is given as a length; an angle is wanted, such as 8 deg or 3 deg 30 min.",
        ),
        (
            "after.drop.tolerance", "a little", "after.drop.tolerance", 0,
            "Tolerance of the indicator drop: 'a little' does not begin with a number, such as 3.2 mm, 1/8 in or 40 thou.",
        ),
        (
            "minutes", "a while", "minutes", 0,
            "'a while' is no time spent; write it as 25 min or 1 h 20 min.",
        ),
        (
            "after.drop", "0.45 mm, 0.45 mm, 0.50 mm, 0.46 mm", "after.drop", 3,
            "Indicator drop, flute 3: 0.50 mm is 0.025 mm over the tolerance. The heel lies too deep: set less and grind the "
            "whole land again, or say in the result what becomes of the tool.",
        ),
    ],
)  # fmt: skip
def test_each_mistake_has_its_sentence_and_keeps_the_card_a_draft(
    book: Book, job: Card, way: str, text: str, place: str, flute: int, sentence: str
) -> None:
    found = told(edited(job, way, text), book)
    assert (place, sentence, "error", flute) in [
        (one.way, one.text, one.severity, one.flute) for one in found
    ]


def test_the_land_is_held_against_the_arc_between_two_edges_where_it_was_measured_as_an_arc(
    book: Book, job: Card
) -> None:
    arc = edited(edited(job, "received.land_measured_as", "arc"), "received.land_width", "9.5 mm")
    # pi 11.97 / 4 is 9.4012 mm.
    assert any("the edges stand 9.40 mm apart." in one.text for one in told(arc, book))
    assert not any(
        "does not fit" in one.text for one in told(edited(arc, "received.land_width", "9.4 mm"), book)
    )


def test_one_reading_before_grinding_stands_for_the_whole_tool_and_one_after_does_not(
    book: Book, job: Card
) -> None:
    assert told(edited(job, "received.drop", "0.2 mm"), book) == ()
    after = told(edited(job, "after.drop", "0.45 mm"), book)
    assert [one.flute for one in after] == [2]


def test_a_size_below_its_limit_says_that_the_tool_is_now_under_size(book: Book, job: Card) -> None:
    card = replace(job, after={"diameter": Inspection(("11.92 mm",), "11.97 mm", "+0 -0.03 mm")})
    (only,) = told(card, book)
    assert only.state == "stop"
    assert only.text == (
        "The tool is now under size: 11.92 mm is less than the 11.940 mm it must have. Measure it again; if it is so, "
        "grind it down to another size or scrap it, and say so in the result."
    )
    # With the result said, the card may be closed.
    scrapped = replace(card, result="Scrapped")
    assert keeps_open(work_out(scrapped, book)) == ()
    assert told(scrapped, book)[0].state == "watch"


def test_the_least_diameter_of_size_loss_is_a_limit_too(book: Book, job: Card) -> None:
    card = replace(job, settings={**job.settings, "size-loss": Setting({"least_diameter": "11.95 mm"})},
                   after={"diameter": Inspection(("11.96 mm", "11.94 mm"))})  # fmt: skip
    (only,) = told(card, book)
    assert only.flute == 2
    assert "now under size: 11.94 mm" in only.text


def test_a_value_changed_without_a_reason_is_only_a_remark(book: Book, job: Card) -> None:
    (only,) = told(edited(job, "wanted.thread_relief_angle.reason", ""), book)
    assert (only.way, only.state) == ("wanted.thread_relief_angle.reason", "watch")
    assert "from the book's 6 deg to 8 deg" in only.text


def test_names_that_the_book_does_not_have_are_told_and_do_not_keep_the_card_open(
    book: Book, job: Card
) -> None:
    card = replace(job, machine="old-one", wheel="none", entry="gone")
    found = told(card, book)
    assert {one.way for one in found} >= {"machine", "wheel", "entry"}
    assert {one.state for one in found} == {"watch"}
    assert any("it has window-grinder" in one.text for one in found)


def test_a_stop_of_the_machine_keeps_the_card_open_until_the_calculation_is_left_out(
    book: Book, job: Card
) -> None:
    card = edited(edited(job, "received.helix_angle", "65 deg"), "wanted.relief_method", "inclined-wheel")
    card = edited(edited(card, "wanted.land_relief_angle", "10 deg"), "after.drop", "")
    assert any(
        one.way == "settings.wheel-tilt" and "goes only to 15.00 deg" in one.text for one in told(card, book)
    )
    with pytest.raises(NotFinished):
        finished(work_out(card, book), DAY)
    left_out = edited(card, "settings.wheel-tilt", "skip")
    assert finished(work_out(left_out, book), DAY).done


def test_a_card_with_a_problem_is_not_closed_and_says_all_of_them(book: Book, job: Card) -> None:
    card = edited(edited(job, "received.land_width", "3/16"), "minutes", "a while")
    with pytest.raises(NotFinished) as caught:
        finished(work_out(card, book), DAY)
    assert {one.way for one in caught.value.issues} == {"received.land_width", "minutes"}


def test_a_closed_card_holds_what_was_answered_and_can_be_opened_again(book: Book, job: Card) -> None:
    done = finished(work_out(job, book), DAY)
    assert (done.status, done.finished) == ("done", DAY)
    # 11.97 asin(3.2 / 11.97) tan 8 degrees.
    assert done.settings["relief-drop"].recorded["heel_drop"] == "0.455 mm"
    assert done.settings["wheel-speed"].typed == {"rotational_speed": "2800 rpm"}
    assert differs(work_out(done, book)) == ()
    assert reopened(done) == job


def test_a_record_shows_where_todays_program_answers_otherwise(book: Book, job: Card) -> None:
    done = finished(work_out(job, book), DAY)
    old = replace(done.settings["relief-drop"], recorded={"heel_drop": "0.460 mm"})
    card = replace(done, settings={**done.settings, "relief-drop": old})
    assert differs(work_out(card, book)) == (("relief-drop", "heel_drop", "0.460 mm", "0.455 mm"),)


def test_a_speed_is_recorded_as_its_sentence_says_it_and_older_records_still_agree(
    book: Book, job: Card
) -> None:
    done = finished(work_out(job, book), DAY)
    speed = done.settings["wheel-speed"]
    step = work_out(done, book).step("wheel-speed")
    assert step is not None
    assert step.answer.result is not None
    (said,) = (say(check.sentence) for check in step.answer.result.checks if check.state == "pass")
    assert f"runs at {speed.recorded['surface_speed']}," in said
    # By hand: the record of an older program had the nearest hundredth, one less than the safe one.
    nearest = show(step.answer.result.outputs["surface_speed"], Kind.SPEED)
    assert nearest != speed.recorded["surface_speed"]
    older = replace(speed, recorded={**speed.recorded, "surface_speed": nearest})
    assert differs(work_out(replace(done, settings={**done.settings, "wheel-speed": older}), book)) == ()


@pytest.mark.parametrize(
    ("text", "found"),
    [("25", 25), ("25 min", 25), ("1 h", 60), ("1h20min", 80), ("1 h 20", 80), ("1.5 h", 90), ("0", 0)],
)
def test_time_is_read_as_people_write_it(text: str, found: float) -> None:
    assert minutes(text) == found


@pytest.mark.parametrize("text", ["", "-5", "soon", "5 s", "h", "1e9", "nan", "inf"])
def test_what_is_no_time_is_refused(text: str) -> None:
    if text:
        with pytest.raises(UnitError):
            minutes(text)
    else:
        assert minutes(text) == 0
