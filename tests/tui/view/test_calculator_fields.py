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


def test_a_list_of_throws_goes_on_below_each_with_its_unit() -> None:
    lines = shown(filled("cam-choice", cam_throws="0.5 mm, 1 mm, 1.6 mm"), "cam_throws")
    # Beside a name of 21 cells: 2 for what is in hand and a blank, then 12 for the value.
    assert [one[24:36].strip() for one in lines] == ["0.5 mm,", "1 mm, 1.6 mm"]
    many = shown(
        filled("cam-choice", cam_throws="1 mm, 2 mm, 3 mm, 4 mm, 5 mm, 6 mm, 7 mm, 8 mm"), "cam_throws"
    )
    assert len(many) == 3
    assert "…" in many[-1]


def test_a_range_of_the_book_stands_whole_where_the_word_behind_it_leaves_room() -> None:
    ends = [Measure(text, read(text, Kind.LENGTH).number) for text in ("0.2 mm", "0.3 mm")]
    value = Value("margin_width", low=ends[0], high=ends[1], citation=Citation("common practice"))
    form = filled("circular-land", Entry("r-12", "reamer", "Reamer", values={"margin_width": value}))
    (line,) = shown(form, "margin_width")
    assert "0.2 to 0.3 mm needed" in line
