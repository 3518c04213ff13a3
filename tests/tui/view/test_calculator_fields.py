"""The column of values: what is too long for it stands there whole all the same."""

from __future__ import annotations

from geometry.calculation import Field
from geometry.calculations import calculation
from geometry.sentences import Kind
from library.book.model import Citation, Entry, Measure, Value
from library.calc.answer import answer
from library.units.read import read
from tui.view.calculator_fields import columns, field_lines
from tui.view.form import Form
from tui.view.lines import text_of, width_of
from tui.view.text_line import TextLine

NARROW = columns(80)


def shown(form: Form, key: str) -> list[str]:
    found = field_lines(form, Field(key), NARROW)
    assert width_of(found[0]) == NARROW.fields
    return [text_of(one) for one in found]


def filled(sheet: str, entry: Entry | None = None, **typed: str) -> Form:
    form = Form(calculation(sheet), entry, {key: TextLine.ending(text) for key, text in typed.items()})
    form.take(answer(form.sheet, form.texts(), entry=entry))
    form.focus = "diameter"
    return form


def test_a_list_of_throws_goes_on_below_with_its_unit_once() -> None:
    throws = "0.5 mm, 1 mm, 1.6 mm, 2.5 mm, 5 mm"
    lines = shown(filled("cam-choice", cam_throws=throws), "cam_throws")
    # Beside a name of 21 cells: 2 for what is in hand and a blank, then 12 for the value.
    assert [one[24:36].strip() for one in lines] == ["0.5, 1, 1.6,", "2.5, 5 mm"]
    mixed = shown(filled("cam-choice", cam_throws="20 thou, 1 mm, 1.6 mm"), "cam_throws")
    assert [one[24:36].strip() for one in mixed] == ["20 thou,", "1 mm, 1.6 mm"]
    many = shown(
        filled("cam-choice", cam_throws=", ".join(f"{one} mm" for one in range(1, 20))), "cam_throws"
    )
    assert len(many) == 3
    assert "…" in many[-1]


def test_a_range_of_the_book_stands_whole_where_the_word_behind_it_leaves_room() -> None:
    ends = [Measure(text, read(text, Kind.LENGTH).number) for text in ("0.2 mm", "0.3 mm")]
    value = Value("margin_width", low=ends[0], high=ends[1], citation=Citation("common practice"))
    form = filled("circular-land", Entry("r-12", "reamer", "Reamer", values={"margin_width": value}))
    (line,) = shown(form, "margin_width")
    assert "0.2 to 0.3 mm needed" in line


def test_the_relief_of_a_chamfer_that_the_book_has_is_offered_and_fills_nothing_by_itself() -> None:
    low, usual, high = (Measure(text, read(text, Kind.ANGLE).number) for text in ("4 deg", "6 deg", "8 deg"))
    value = Value(
        "chamfer_relief_angle", low=low, usual=usual, high=high, citation=Citation("common practice")
    )
    tap = Entry("t-12", "tap", "Tap", values={"chamfer_relief_angle": value})
    form = filled("tap-chamfer", tap, diameter="12 mm", pitch="1.75 mm", chamfer_threads="4")
    assert form.answer is not None
    assert "radial_chamfer_relief" not in form.answer.inputs
    assert "4 to 8 deg" in shown(form, "radial_chamfer_relief")[0]
    form.focus = "radial_chamfer_relief"
    taken = []
    for _ in range(3):
        form.edit("right")
        taken.append(form.in_hand.text)
    assert taken == ["4 deg", "6 deg", "8 deg"]
