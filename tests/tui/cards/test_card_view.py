"""The parts of the card's page alone: readings in one line, rows, units, and what the calculator hands over."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculations import calculation
from library.book.model import Book
from library.book.opening import open_book
from library.cards.bare_numbers import in_other_units
from library.cards.learn import Lesson
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.cards.reading_units import with_the_last_unit
from library.units.system import INCH, METRIC
from tui.keys import with_keys
from tui.screens.cards.closing import taught
from tui.view.card_form import CardForm
from tui.view.card_from_calculator import with_typed
from tui.view.card_list_page import CardListPage
from tui.view.card_page import CardPage
from tui.view.card_readings import in_short
from tui.view.card_steps import STEPS
from tui.view.lines import text_of

EMPTY = Book({})

NUMBERS = st.decimals(min_value=0, max_value=99, places=3).map(str)
UNITS = st.sampled_from(["mm", "in", "thou", "um"])
READINGS = st.lists(st.one_of(st.builds("{} {}".format, NUMBERS, UNITS), st.just("")), max_size=6).map(tuple)


@given(READINGS)
def test_readings_in_short_are_read_back_as_they_were(readings: tuple[str, ...]) -> None:
    from library.cards.editing import readings_of

    again = readings_of(with_the_last_unit("drop", in_short("drop", readings)))
    if any(readings):
        assert again == readings
    else:
        assert not any(again)


@given(st.text(max_size=40))
def test_whatever_is_typed_as_readings_is_never_an_error_and_never_shorter(text: str) -> None:
    assert len(with_the_last_unit("drop", text)) >= len(text.strip()) or ";" in with_the_last_unit(
        "drop", text
    )


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("0.2, 0.21 mm", "0.2 mm; 0.21 mm"),
        ("1/8, 3/16 in", "1/8 in; 3/16 in"),
        ("5 deg, 6 deg 30 min", "5 deg, 6 deg 30 min"),
        ("0.2 mm, 8 thou", "0.2 mm; 8 thou"),
        ("0.2, wide mm", "0.2, wide mm"),
        ("0,2 mm", "0,2 mm"),
    ],
)
def test_one_unit_serves_every_reading_before_it(typed: str, read: str) -> None:
    key = "relief_angle" if "deg" in typed else "drop"
    assert with_the_last_unit(key, typed) == read


def test_a_line_that_was_written_in_stays_where_it_is_when_it_is_emptied() -> None:
    form = CardForm(EMPTY, Card(family="tap"))
    form.open("received", "helix_angle")
    form.type("15 deg")
    form.move(-1)
    form.move(1)
    ways = [row.way for row in form.rows]
    form.clear()
    assert [row.way for row in form.rows] == ways
    assert form.row.way == "received.helix_angle"


def test_the_reading_of_the_last_step_and_of_none_goes_nowhere() -> None:
    form = CardForm(EMPTY, Card())
    for _ in range(20):
        form.change_step(1)
    assert form.step == len(STEPS) - 1
    while form.go_on():
        pass
    assert form.step == len(STEPS) - 1
    form.change_step(-20)
    assert form.step == len(STEPS) - 1


def test_enter_goes_through_every_step_of_an_empty_card_and_ends() -> None:
    form = CardForm(EMPTY, Card())
    seen = {form.step}
    for _ in range(200):
        if not form.go_on():
            break
        seen.add(form.step)
    assert seen == set(range(len(STEPS)))


def test_a_tool_of_an_unknown_kind_without_an_entry_can_still_be_given_values() -> None:
    form = CardForm(EMPTY, Card(family="hob", entry="a-hob"))
    form.go_to("wanted")
    assert [row.way for row in form.rows] == [
        "wanted.surface",
        "wanted.relief_method",
        "wanted.indicator_points",
    ]
    form.type("x")
    assert form.card == Card(family="hob", entry="a-hob")
    form.open("wanted", "rake_angle")
    form.type("3 deg")
    assert form.card.wanted["rake_angle"].value == "3 deg"


def test_choices_turn_with_the_arrows_and_by_their_first_letter() -> None:
    form = CardForm(EMPTY, Card(family="tap"))
    form.go_to("received.land_measured_as")
    form.type("c")
    assert form.card.received["land_measured_as"] == ("chord",)
    form.edit("left")
    assert form.card.received["land_measured_as"] == ("arc",)
    form.edit("delete")
    assert "land_measured_as" not in form.card.received


def test_what_the_book_gave_gives_way_to_the_first_character_and_comes_back_when_emptied() -> None:
    card = Card(family="tap", wanted={"relief_angle": Wanted("6 deg", "6 deg", "shop")})
    form = CardForm(EMPTY, card)
    form.go_to("wanted.relief_angle")
    form.type("8")
    assert form.card.wanted["relief_angle"].value == "8"
    form.type(" deg")
    assert form.card.wanted["relief_angle"].value == "8 deg"
    for _ in range(5):
        form.edit("backspace")
    assert form.card.wanted["relief_angle"] == Wanted("6 deg", "6 deg", "shop")


def test_what_was_known_is_taken_over_with_an_arrow_to_change_a_part_of_it() -> None:
    form = CardForm(EMPTY, Card(family="tap", tool=Tool(thread="M12")))
    form.go_to("received.diameter")
    assert form.row.default == "12 mm"
    form.edit("right")
    assert form.card.received["diameter"] == ("12 mm",)


@pytest.mark.parametrize("notes", ["", "one", "one\ntwo", "one\n\nthree", "\nsecond"])
def test_notes_have_a_line_each_and_one_to_go_on(notes: str) -> None:
    form = CardForm(EMPTY, Card(notes=notes))
    form.go_to("notes")
    lines = [row.text for row in form.rows if row.section == "notes"]
    assert "\n".join(lines).rstrip("\n") == notes
    assert lines[-1] == ""


def test_only_what_was_typed_without_a_unit_is_given_one_when_the_unit_changes() -> None:
    typed = {"land_width": "3.2", "diameter": "1/2 in", "relief_angle": "8", "drop": "nonsense"}
    changed = in_other_units(Card(units="mm", settings={"relief-drop": Setting(typed)}))
    assert changed.units == "in"
    assert changed.settings["relief-drop"].typed == typed | {"land_width": "3.2 mm", "relief_angle": "8 deg"}
    assert in_other_units(changed).settings == changed.settings


def test_several_diameters_keep_their_meaning_too() -> None:
    card = Card(units="in", settings={"step-relief": Setting({"diameter": "1/4, 1/2"})})
    assert in_other_units(card).settings["step-relief"].typed["diameter"] == "1/4, 1/2 in"


def test_the_calculator_hands_over_each_text_to_its_place_with_its_unit() -> None:
    card = Card(family="tap", wanted={"relief_angle": Wanted("6 deg", "6 deg")})
    texts = {
        "diameter": ".75",
        "land_width": "0.2",
        "relief_angle": "8",
        "starts": "2",
        "threads_per_inch": "10",
    }
    card = with_typed(card, "tap", calculation("lead-over-land"), texts, INCH)
    assert card.received == {"diameter": (".75 in",), "land_width": ("0.2 in",)}
    assert card.wanted["relief_angle"].value == "8 deg"
    assert card.settings["lead-over-land"].typed == {"starts": "2", "threads_per_inch": "10"}
    nonsense = with_typed(Card(family="tap"), "tap", calculation("relief-drop"), {"diameter": "wide"}, METRIC)
    assert nonsense.received == {"diameter": ("wide",)}


def test_a_step_with_a_problem_is_marked_with_the_worst_of_it() -> None:
    card = Card(family="tap", tool=Tool(flutes="four"), machine="gone", minutes="long")
    form = CardForm(EMPTY, card)
    assert form.fault_steps() == {0: "stop", 5: "stop"}
    form.take(EMPTY, replace(card, tool=Tool(), minutes=""))
    assert form.fault_steps() == {0: "watch"}


def test_the_page_is_as_high_as_it_is_asked_to_be() -> None:
    form = CardForm(EMPTY, Card(family="tap", after={"drop": Inspection(("0.2 mm",))}))
    page = CardPage(form)
    for height in (1, 3, 9, 18, 22, 60):
        for width in (1, 20, 59, 80, 200):
            for step in range(len(STEPS)):
                form.change_step(-1 if step == 0 else 1)
                assert len(page.draw(width, height)) >= min(height, 3)


def test_a_key_is_told_in_place_of_its_action() -> None:
    page = CardPage(CardForm(EMPTY, Card()), keys={"change": "Ctrl+K"}.get)  # type: ignore[arg-type]
    page.form.go_to("family")
    assert "Ctrl+K lists them" in "\n".join(map(text_of, page.draw(80, 22)))
    assert with_keys("nothing here", str.upper) == "nothing here"


def test_the_relief_of_the_surface_that_is_ground_stands_right_under_it() -> None:
    wanted = {
        key: Wanted("9 deg", "9 deg", "shop")
        for key in ("rake_angle", "land_relief_angle", "lip_relief_angle")
    }
    form = CardForm(EMPTY, Card(family="twist-drill", wanted=wanted))
    form.go_to("wanted.surface")
    for surface in ("lip", "land"):
        form.put(surface)
        assert [row.key for row in form.rows][:3] == ["surface", "relief_method", f"{surface}_relief_angle"]
        assert form.row.key == "surface"


def test_what_the_book_gave_gives_way_to_typing_also_after_a_key_that_edits_nothing() -> None:
    form = CardForm(EMPTY, Card(family="tap", wanted={"rake_angle": Wanted("9 deg", "9 deg", "shop")}))
    form.go_to("wanted.rake_angle")
    form.edit("f9")
    form.type("7")
    form.type("5")
    assert form.card.wanted["rake_angle"].value == "75"


def test_at_the_end_it_is_said_what_would_be_written_into_the_book() -> None:
    one = Lesson("a-tap", "rake_angle", "7 deg", "", "")
    assert taught([one], "F8") == (
        " F8 writes its rake angle of 7 deg into the shop's book, once you have seen what would change."
    )
    assert taught([one, replace(one, key="land_width")], "F8").startswith(
        " F8 writes the 2 values that the book has"
    )
    assert taught([], "F8") == ""


@pytest.mark.parametrize("key", ["home", "end", "left"])
def test_a_cursor_that_was_moved_in_what_the_book_gave_changes_a_part_of_it(key: str) -> None:
    form = CardForm(EMPTY, Card(family="tap", wanted={"rake_angle": Wanted("9 deg", "9 deg", "shop")}))
    form.go_to("wanted.rake_angle")
    form.edit(key)
    form.type("1")
    assert form.card.wanted["rake_angle"].value == {"home": "19 deg", "end": "9 deg1", "left": "9 deg1"}[key]


def test_words_that_are_no_trouble_of_the_book_say_so_in_a_quiet_line() -> None:
    form = CardForm(open_book(), Card(family="step-drill"))
    form.go_to("wrong#0")
    page = CardPage(form, keys=lambda action: "F6" if action == "change" else "")

    def shown() -> str:
        return " ".join(" ".join(text_of(one).split("│")[-1] for one in page.draw(80, 22)).split())

    form.type("Oil on it")
    assert "The book knows no trouble of such tools by these words; F6 on their line lists" in shown()
    form.clear()
    form.type("Squeals")
    assert "The book knows no trouble" not in shown()
    assert 'Squeals: taken for "Binds"' in shown()
    form.clear()
    form.type("Burns")
    assert "Burns Look at the drop behind the edge" in shown()


def test_a_list_of_cards_that_could_not_be_read_is_not_called_empty() -> None:
    page = CardListPage(None)
    page.fill((), "The cards were not read. Ask whoever owns them.")
    told = "\n".join(text_of(one) for one in page.draw(80, 20))
    assert "The cards were not read." in told
    assert "There is no card yet" not in told
    page.fill(())
    assert "There is no card yet" in "\n".join(text_of(one) for one in page.draw(80, 20))
