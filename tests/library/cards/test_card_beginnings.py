"""How a card begins, and what is learned from it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from library.book.model import Book, Citation, Entry, Measure, Value
from library.book.opening import open_book
from library.cards.close import finished
from library.cards.editing import edited
from library.cards.job import work_out
from library.cards.learn import change_for, lessons
from library.cards.model import Card, Inspection, Tool, Wanted
from library.cards.starting import again, empty, found_with, from_entry, with_size
from library.cards.thread_names import of_thread
from library.editing.planning import plan
from library.editing.saving import save
from library.search.along import Along
from library.search.sizes import Size

ENTRY = Entry(
    "yard-tap",
    "tap",
    "Yard tap",
    "bronze",
    values={
        "chamfer_relief_angle": Value("chamfer_relief_angle", Measure("4 deg", 0.07), Measure("6 deg", 0.1), Measure("8 deg", 0.14),
                              Citation("from memory")),
        "rake_angle": Value("rake_angle", unread=True),
        "flutes": Value("flutes", high=Measure("4", 4.0), citation=Citation("shop")),
    },
)  # fmt: skip


def test_a_card_from_an_entry_keeps_the_books_values_and_sources_as_they_are_today(book: Book) -> None:
    card = from_entry(book, ENTRY)
    assert (card.family, card.entry, card.tool.work_material) == ("tap", "yard-tap", "bronze")
    assert card.wanted == {
        "chamfer_relief_angle": Wanted("6 deg", "6 deg", "from memory"),
        "flutes": Wanted("at most 4", "at most 4", "this shop"),
    }
    assert not card.wanted["chamfer_relief_angle"].changed


def test_the_class_of_a_hole_that_was_looked_for_stands_in_the_size_of_the_reamer(book: Book) -> None:
    card = with_size(replace(empty(book, "reamer"), tool=Tool("R7")), Size("12", tolerance="H8"))
    assert (card.tool.name, card.tool.size) == ("R7", "12 mm")
    step = work_out(card, book).step("reamer-size")
    assert step is not None
    found = {key: given.value for key, given in step.answer.inputs.items()}
    assert (found["hole_tolerance"], found["nominal_diameter"]) == ("H8", 12.0)


def test_the_number_of_flutes_that_was_looked_for_stands_on_the_card_of_the_tool(book: Book) -> None:
    card = found_with(from_entry(book, ENTRY), Along(Size("M12", is_thread=True), 4))
    assert (card.tool.flutes, card.tool.thread) == ("4", "M12")
    moves = work_out(card, book).step("index-moves")
    assert moves is not None
    assert (moves.answer.inputs["flutes"].value, moves.provenance["flutes"]) == (4.0, "tool")


def test_the_only_machine_goes_without_saying_and_one_of_two_wheels_does_not(book: Book) -> None:
    card = empty(book, "tap", "in")
    assert (card.machine, card.wheel, card.units) == ("window-grinder", "", "in")


def test_doing_it_again_keeps_the_job_and_empties_what_was_measured(book: Book, job: Card) -> None:
    done = replace(finished(work_out(job, book), date(2026, 11, 26)), result="good")
    card = again(done, book)
    assert (card.id, card.again, card.status, card.started, card.finished) == (
        "",
        job.id,
        "draft",
        None,
        None,
    )
    assert (card.tool, card.wanted, card.machine, card.wheel) == (
        job.tool,
        job.wanted,
        job.machine,
        job.wheel,
    )
    assert card.settings == job.settings
    assert card.received == {}
    assert card.after["drop"].readings == ()
    assert card.after["drop"].tolerance == "0.02 mm"
    assert (card.notes, card.minutes, card.result, card.wrong) == ("", "", "", "")


def test_a_tolerance_at_the_heel_stays_with_the_surface_that_it_was_for() -> None:
    book = open_book()
    drill = Card(
        id="2026-11-20-01",
        family="twist-drill",
        received={"body_diameter": ("9 mm",)},
        after={"drop": Inspection(("0.3 mm",), "", "0.01 mm"), "diameter": Inspection((), "", "0.03 mm")},
    )
    # A body that becomes smaller is ground on its lands; without it the drill is sharpened on its lips.
    assert [work_out(one, book).choice.surface for one in (drill, again(drill, book))] == ["land", "lip"]
    assert again(drill, book).after == {"diameter": Inspection((), "", "0.03 mm")}
    named = edited(drill, "wanted.surface", "land")
    assert again(named, book).after["drop"] == Inspection((), "", "0.01 mm")


def test_what_was_learned_goes_back_to_the_book_with_the_card_as_its_note(shop: Path, book: Book) -> None:
    entry = next(
        one for one in book.entries.values() if one.family == "tap" and "chamfer_relief_angle" in one.values
    )
    card = replace(from_entry(book, entry), id="2026-11-25-01")
    wanted = {
        **card.wanted,
        "chamfer_relief_angle": replace(
            card.wanted["chamfer_relief_angle"], value="11 deg", reason="tore in bronze."
        ),
    }
    (lesson,) = lessons(replace(card, wanted=wanted))
    assert (lesson.key, lesson.value, lesson.note) == (
        "chamfer_relief_angle",
        "11 deg",
        "tore in bronze; card 2026-11-25-01",
    )
    save(plan(change_for(lesson, book), shop, Path("library/shipped").resolve()))
    again_read = open_book(shop).entries[entry.id].values["chamfer_relief_angle"]
    assert again_read.usual is not None
    assert (again_read.usual.text, again_read.citation.label, again_read.note) == (
        "11 deg",
        "shop",
        lesson.note,
    )
    assert again_read.layer == "shop"
    assert [str(one) for one in open_book(shop).findings if one.place.file.is_relative_to(shop)] == []


def test_ends_of_the_shops_own_range_that_the_new_value_leaves_are_taken_out(book: Book) -> None:
    relief = replace(ENTRY.values["chamfer_relief_angle"], citation=Citation("shop"))
    entry = replace(ENTRY, values={"chamfer_relief_angle": relief})
    changed = replace(book, entries={"yard-tap": entry})

    def fields(value: str) -> object:
        (lesson,) = lessons(
            Card(id="a", entry="yard-tap", wanted={"chamfer_relief_angle": Wanted(value, "6 deg")})
        )
        return {key: one for key, one in change_for(lesson, changed).fields.items() if key in {"low", "high"}}

    assert fields("7 deg") == {}
    assert fields("9 deg") == {"high": None}
    assert fields("3 deg") == {"low": None}
    assert fields("0.1 D") == {"low": None, "high": None} or fields("0.1 D") == {}


def test_a_count_goes_back_as_a_count(book: Book) -> None:
    (lesson,) = lessons(Card(id="a", entry="yard-tap", wanted={"flutes": Wanted("3", "4")}))
    assert change_for(lesson, book).fields["usual"] == 3


def test_nothing_is_learned_without_an_entry_or_without_a_change() -> None:
    assert lessons(Card(id="a", wanted={"rake_angle": Wanted("5 deg")})) == ()
    assert (
        lessons(Card(id="a", entry="e", wanted={"rake_angle": Wanted("5 deg", "5 deg"), "pitch": Wanted("")}))
        == ()
    )


@pytest.mark.parametrize(
    ("name", "found"),
    [
        ("M12", {"diameter": "12 mm", "pitch": "1.75 mm"}),
        ("m12 x 1.25", {"diameter": "12 mm", "pitch": "1.25 mm"}),
        ("M13 x 1.1", {"diameter": "13 mm", "pitch": "1.1 mm"}),
        ("M12x1.75-6H", {"diameter": "12 mm", "pitch": "1.75 mm"}),
        ("3/4-10 UNC-2B", {"diameter": "3/4 in", "threads_per_inch": "10 tpi"}),
        ("3/4-11", {"diameter": "3/4 in", "threads_per_inch": "11"}),
        ("M20 x 2 LH", {"diameter": "20 mm", "pitch": "2 mm", "hand": "left"}),
        ("1/4-20", {"diameter": "1/4 in", "threads_per_inch": "20 tpi"}),
        ("M20 x 2 LH-6H", {"diameter": "20 mm", "pitch": "2 mm", "hand": "left"}),
        ("Tr 20 x 8 P4 LH", {"diameter": "20 mm", "pitch": "4 mm", "hand": "left"}),
        ("Tr 20 x 4", {"diameter": "20 mm", "pitch": "4 mm"}),
        ("2 BA", {"diameter": "4.7 mm", "pitch": "0.81 mm"}),
    ],
)  # fmt: skip
def test_the_name_of_a_thread_says_its_diameter_and_pitch(name: str, found: dict[str, str]) -> None:
    assert {
        key: text
        for key, text in of_thread(name).items()
        if key not in {"starts", "thread_form", "thread_taper", "thread_class"}
    } == found


@pytest.mark.parametrize("name", ["", "odd", "M", "x 1.75", "Sq 20 x 4"])
def test_a_name_that_is_not_understood_says_nothing(name: str) -> None:
    assert of_thread(name) == {}


def test_a_tool_has_a_title_for_a_list() -> None:
    assert Card(tool=Tool("T-14", "12 mm", "M12"), entry="yard-tap").title == "T-14, M12, yard-tap"
    assert Card().title == "an empty card"
