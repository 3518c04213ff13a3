"""The calculator's page: complete at 80x24, usable at 60x20, and no warning out of sight without a word."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation, calculation_names
from geometry.sentences import Kind
from library.book.model import Book, Citation, Entry, Measure, Value
from library.book.opening import open_book
from library.calc.answer import answer
from library.equipment.model import Graduation, Machine
from library.pages.answer import answer_page
from library.pages.as_text import as_text
from library.units.system import INCH, METRIC
from tests.each import each
from tests.tui.view.whole_page import whole
from tui.view.calculator_page import CalculatorPage
from tui.view.form import Form
from tui.view.lines import text_of, width_of
from tui.view.text_line import TextLine


def page(book: Book, sheet: str, **typed: str) -> CalculatorPage:
    form = Form(calculation(sheet), None, {key: TextLine.ending(text) for key, text in typed.items()})
    form.take(answer(form.sheet, form.texts(), book=book))
    return CalculatorPage(form)


@pytest.mark.parametrize("size", [(80, 22), (60, 18), (200, 58), (20, 5)])
@each("sheet", calculation_names())
def test_every_calculation_fits_every_size(book: Book, sheet: str, size: tuple[int, int]) -> None:
    width, height = size
    lines = whole(page(book, sheet), width, height)
    assert len(lines) == height
    if width >= 60:
        assert max(map(width_of, lines)) <= width


def test_a_heel_that_stands_proud_is_a_stop_in_words(book: Book) -> None:
    proud = page(book, "relief-drop", diameter="12", relief_angle="8", land_width="2", relief_form="flat")
    drawn = whole(proud, 80, 40)
    text = "\n".join(map(text_of, drawn))
    assert "STOP" in text
    assert "-0.055 mm" in text  # D 12, 8 degrees, arc 2.0: the flat heel stands 0.05485 proud; derived


def test_a_value_of_the_book_in_hand_says_where_it_came_from_and_a_typed_one_how_it_is_measured(
    book: Book,
) -> None:
    entry = Entry(
        "yard-tap",
        "tap",
        "Yard tap",
        values={
            "land_width": Value(
                "land_width", usual=Measure("0.25 D", 0.25, per_diameter=True), citation=Citation("shop")
            ),
            "relief_form": Value(
                "relief_form", usual=Measure("eccentric", word="eccentric"), citation=Citation("shop")
            ),
        },
    )
    form = Form(calculation("relief-drop"), entry, {"diameter": TextLine.ending("12")})

    def foot(key: str) -> str:
        form.take(answer(form.sheet, form.texts(), entry=entry, book=book))
        form.focus = key
        return " ".join(text_of(line).strip() for line in whole(CalculatorPage(form, book=book), 80, 22)[-4:])

    assert "3.000 mm here, 0.25 D. Source:" in foot("land_width")
    assert "Left and Right change it. eccentric." in foot("relief_form")
    form.typed["land_width"] = TextLine.ending("3.2")
    assert "Source:" not in foot("land_width")
    assert "caliper" in foot("land_width")


def test_a_warning_below_the_part_in_sight_is_named_at_its_edge(book: Book) -> None:
    proud = page(book, "relief-drop", diameter="12", relief_angle="8", land_width="2", relief_form="flat")
    shown = whole(proud, 60, 14)
    assert any("with a STOP" in text_of(line) for line in shown)
    assert not any(text_of(line).startswith("STOP") for line in shown)


def test_the_end_of_a_long_answer_can_be_reached_from_the_first_field(book: Book) -> None:
    made = page(
        book,
        "relief-facets",
        diameter="12",
        body_diameter="13",
        land_width="7",
        relief_angle="11",
        primary_land="1",
        least_gap="0.1",
    )
    made.form.focus = "diameter"
    made.scroll_to_field()
    assert any("more line" in text_of(line) for line in whole(made, 80, 22))
    assert not any("outermost" in text_of(line) for line in whole(made, 80, 22))
    for _ in range(10):
        made.view.scroll(made.view.height - 1)
        shown = whole(made, 80, 22)
    assert not any("more line" in text_of(line) for line in shown)
    made.scroll_to_field()
    assert any(text_of(line).startswith("> Diameter") for line in whole(made, 80, 22))


def test_what_is_wrong_names_the_fields_as_they_stand_on_the_screen(book: Book) -> None:
    def wrong(sheet: str, **typed: str) -> str:
        drawn = whole(page(book, sheet, **typed), 80, 30)
        return " ".join(" ".join(map(text_of, drawn)).split())

    assert "FIX Relief of the land is 80.00 deg; it can be" in wrong("relief-drop", relief_angle="80")
    twice = {"diameter": "12", "pitch": "1.75", "threads_per_inch": "10"}
    assert "Give only one of pitch or threads per inch" in wrong("lead-over-land", **twice)


def test_the_same_answer_is_shown_in_inches(book: Book) -> None:
    drawn = whole(page(book, "relief-drop", diameter="12", relief_angle="8", land_width="2"), 80, 40, INCH)
    assert any("0.0111 in" in text_of(line) for line in drawn)  # 0.28108 mm / 25.4; derived


def test_each_value_says_in_a_word_who_gave_it(book: Book) -> None:
    drawn = [text_of(line) for line in whole(page(book, "relief-drop", diameter="12"), 80, 40)]
    marks = {line[2:23].strip(): line[37:44].strip() for line in drawn[:12]}
    assert marks["Diameter"] == "typed"
    assert marks["Relief of the land,"] == "needed"  # its title goes on in the next line
    assert marks["Land measured as"] == "default"


def test_what_is_still_needed_is_asked_for_with_its_alternatives(book: Book) -> None:
    drawn = [text_of(line) for line in whole(page(book, "wheel-speed"), 80, 40)]
    assert drawn[0].startswith(" OPEN ")
    assert "rotational speed or surface speed" in " ".join(" ".join(drawn[:3]).split())


def test_an_answer_that_is_kept_has_every_input_with_its_unit_and_as_it_was_typed(book: Book) -> None:
    made = page(book, "relief-drop", diameter="12", relief_angle="8", land_width="1/8 in +/- 0.002")
    assert made.form.answer is not None
    lines = [
        " ".join(line.split()) for line in as_text(answer_page(made.form.answer, book, METRIC)).splitlines()
    ]
    assert "Diameter 12.000 mm typed: 12" in lines
    assert "Land width 3.175 mm typed: 1/8 in +/- 0.002" in lines
    assert "Relief form eccentric default" in lines


def test_an_answer_that_is_kept_says_of_a_value_that_nobody_typed_whose_it_is(book: Book) -> None:
    made = page(book, "relief-drop", diameter="12", relief_angle="8", land_width="2")
    assert made.form.answer is not None
    whose = {"diameter": "nominal", "land_width": "kept", "relief_angle": ""}
    told = as_text(answer_page(made.form.answer, book, METRIC, whose=whose))
    lines = [" ".join(line.split()) for line in told.splitlines()]
    assert "Diameter 12.000 mm nominal: 12" in lines
    assert "Land width 2.000 mm kept: 2" in lines
    assert any(line.endswith("8.00 deg typed: 8") for line in lines)


def test_only_readings_that_are_told_in_divisions_name_whose_they_are(book: Book) -> None:
    shown = page(book, "relief-drop", diameter="12", land_relief_angle="7", land_width="2", surface="land")
    dial = Graduation("dial", "dial", Measure("0.01 mm", 0.01), Kind.LENGTH, reads=("drop", "heel_drop"))
    for machine, told in (
        (Machine("grey", "The grey grinder"), False),
        (Machine("grey", "The grey grinder", graduations={"dial": dial}), True),
    ):
        shown.machine = machine
        text = "\n".join(map(text_of, whole(shown, 110, 60)))
        assert "READ" in text
        assert ("div of The grey grinder" in text) is told


def test_under_found_stands_the_relief_of_the_form_that_was_told_then_the_other_with_an_if(
    book: Book,
) -> None:
    # A flat of 8 deg on 12 mm reads .0220 at 1.5 mm round the circle and .0578 half way; derived:
    # r - r cos(8 deg) / cos(turn - 8 deg). As an even cam the .0220 would be atan(.0220 / 1.5), .84 deg.
    read = page(book, "measured-tool", surface="land", diameter="12", land_width="1.5", drop="0.0220",
                second_land_width="0.75", second_drop="0.0578")  # fmt: skip
    drawn = [text_of(line) for line in whole(read, 80, 20)]
    right = [one.partition("│")[2].strip() for one in drawn if "│" in one]
    at = right.index("FOUND")
    assert "land" in right[at + 1]
    assert "8.00 deg" in " ".join(right[at + 1 : at + 3])
    at = next(place for place, one in enumerate(right) if "if eccentric" in one) - 2
    assert right[at + 2].split() == ["Relief", "if", "eccentric", "0.84", "deg"]
    assert not [one for one in right if "if flat " in one]
    # The heads of the columns of readings say the form alone; what is read stands once, under them.
    assert "indicator" not in " ".join(right[at + 3 : right.index("indicator at the axis")])


@pytest.mark.parametrize("size", [(80, 22), (160, 46)])
def test_what_is_set_for_a_left_hand_tool_says_so_in_sight(size: tuple[int, int]) -> None:
    shipped = open_book()

    def drawn(entry: str) -> str:
        form = Form(calculation("point-setup"), shipped.entries[entry], {"diameter": TextLine.ending("8 mm")})
        form.take(answer(form.sheet, form.texts(), entry=shipped.entries[entry], book=shipped))
        return "\n".join(map(text_of, whole(CalculatorPage(form, book=shipped), *size)))

    assert "SET, LEFT-HAND" in drawn("left-hand-drill-plain-steel")
    right = drawn("twist-drill-jobber-plain-steel")
    assert "SET" in right
    assert "LEFT" not in right
