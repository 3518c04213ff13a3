"""Measurements in from a table, records out to one, cards as plain data, and cards as the fields of a form."""

from __future__ import annotations

import csv
import io
import json
import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.book.model import Book
from library.cards.as_data import card_data, history_data, plan_data
from library.cards.editing import CardEditRefused
from library.cards.forms import as_fields, changed_fields, with_fields
from library.cards.history import history
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Tool, Wanted
from library.cards.planning import plan
from library.cards.safe_cells import guarded, unguarded
from library.cards.tables import RECORD, import_measurements, measurements, records
from library.units.system import INCH, METRIC

CARDS = {"2026-11-25-01": Card(id="2026-11-25-01"), "2026-11-25-02": Card(id="2026-11-25-02")}
HEAD = "card,when,quantity,flute,reading\n"


def rows(text: str) -> list[list[str]]:
    return list(csv.reader(io.StringIO(text, newline="")))


def test_readings_go_to_their_card_their_quantity_and_their_flute() -> None:
    text = HEAD + (
        "2026-11-25-01,after,drop,2,0.30 mm\n"
        "2026-11-25-01,after,drop,1,0.28 mm\n"
        "2026-11-25-02,received,diameter,,11.97 mm\n"
    )
    found = import_measurements(text, CARDS)
    assert found.problems == ()
    assert found.readings == 3
    assert found.cards["2026-11-25-01"].after["drop"].readings == ("0.28 mm", "0.30 mm")
    assert found.cards["2026-11-25-02"].received == {"diameter": ("11.97 mm",)}


def test_other_flutes_and_tolerances_keep_what_they_have() -> None:
    card = Card(id="a", after={"drop": Inspection(("1 mm", "2 mm", "3 mm"), "2 mm", "0.1 mm")})
    found = import_measurements(HEAD + "a,after,drop,2,2.5 mm\n", {"a": card})
    assert found.cards["a"].after["drop"] == Inspection(("1 mm", "2.5 mm", "3 mm"), "2 mm", "0.1 mm")


def test_a_flute_that_nobody_measured_stays_a_gap() -> None:
    found = import_measurements(HEAD + "2026-11-25-01,received,drop,3,0.2 mm\n", CARDS)
    assert found.cards["2026-11-25-01"].received["drop"] == ("", "", "0.2 mm")


@pytest.mark.parametrize("sign", [",", ";", "\t"])
def test_columns_may_stand_in_any_order_parted_as_the_spreadsheet_likes(sign: str) -> None:
    head = sign.join(["\ufeffreading", "Flute", "QUANTITY", "note", "when", "card"])
    line = sign.join(["0.28 mm", "1", "drop", "by Ann", "after", "2026-11-25-01"])
    found = import_measurements(f"{head}\r\n{line}\r\n\r\n", CARDS)
    assert found.cards["2026-11-25-01"].after["drop"].readings == ("0.28 mm",)


@pytest.mark.parametrize(
    ("line", "needles"),
    [
        ("2026-01-01-01,after,drop,1,0.28 mm", ["Line 2", "no card '2026-01-01-01'"]),
        ("2026-11-25-01,before,drop,1,0.28 mm", ["when is 'before'", "received or after"]),
        ("2026-11-25-01,after,dorp,1,0.28 mm", ["no quantity 'dorp'", "drop"]),
        ("2026-11-25-01,after,drop,one,0.28 mm", ["flute is 'one'", "1 to 60"]),
        ("2026-11-25-01,after,drop,0,0.28 mm", ["flute is '0'"]),
        ("2026-11-25-01,after,drop,99,0.28 mm", ["flute is '99'"]),
        ("2026-11-25-01,after,drop,1,", ["the reading is empty"]),
        (f"2026-11-25-01,after,drop,1,{'9' * 700}", ["longer than 600"]),
        ("2026-11-25-01,after", ["no quantity ''"]),
    ],
)
def test_every_row_that_cannot_be_used_is_told_and_then_nothing_is_taken(
    line: str, needles: list[str]
) -> None:
    found = import_measurements(f"{HEAD}{line}\n2026-11-25-02,after,drop,1,0.3 mm\n", CARDS)
    assert found.cards == {}
    assert len(found.problems) == 1
    for needle in needles:
        assert needle in found.problems[0]


@pytest.mark.parametrize(
    ("text", "needle"),
    [
        ("", "empty"),
        ("\n\n", "empty"),
        ("card,reading\n", "no column when and no column quantity"),
        (HEAD + '"open,after,drop,1,0.3 mm\n', "cannot be read"),
        (HEAD + "x\n" * 20_001, "20000"),
    ],
)
def test_a_table_that_is_none_is_told(text: str, needle: str) -> None:
    (problem,) = import_measurements(text, CARDS).problems
    assert needle in problem


@given(st.text(max_size=300))
def test_no_text_breaks_the_import(text: str) -> None:
    for one in (text, HEAD + text):
        found = import_measurements(one, CARDS)
        assert found.problems or set(found.cards) <= set(CARDS)


READING = st.text(
    st.characters(min_codepoint=32, max_codepoint=0x2FF, exclude_categories=["C", "Z"]),
    min_size=1,
    max_size=12,
)


@given(st.lists(READING.filter(lambda one: ";" not in one and "," not in one), min_size=1, max_size=5))
def test_what_is_printed_as_a_table_can_be_read_back_from_it(readings: list[str]) -> None:
    card = Card(id="a", received={"drop": tuple(readings)}, after={"diameter": Inspection(tuple(readings))})
    found = import_measurements(measurements([card]), {"a": Card(id="a")})
    assert found.problems == ()
    assert found.cards["a"] == card


@pytest.mark.parametrize("text", ["=1+1", "+1", "-0.05 mm", "@x", "\tx", "\rx"])
def test_no_cell_is_a_formula(text: str) -> None:
    assert guarded(text) == f"'{text}"
    assert unguarded(guarded(text)) == text


def test_what_is_no_formula_stays_as_it_is() -> None:
    for text in ("8 deg", "'quoted'", "", "a=b"):
        assert guarded(text) == text
        assert unguarded(text) == text


def test_records_have_a_row_for_each_card_and_no_formula(job: Card) -> None:
    bad = replace(
        job, tool=replace(job.tool, name='=HYPERLINK("x")', marks="@cmd"), notes="-1\nsecond line \x1b[2J"
    )
    table = rows(records([job, bad]))
    assert table[0] == list(RECORD)
    first, second = (dict(zip(RECORD, row, strict=True)) for row in table[1:])
    assert first["card"] == job.id
    assert first["begun"] == "2026-11-25"
    assert first["received"].startswith("diameter 11.97 mm; land_width 3.2 mm")
    assert first["after"] == "drop 0.45 mm, 0.45 mm, 0.44 mm, 0.46 mm"
    assert second["tool"] == '\'=HYPERLINK("x")'
    assert second["marks"] == "'@cmd"
    assert second["notes"].startswith("'-1\nsecond line")
    assert "\x1b" not in records([bad])


@pytest.mark.parametrize(
    ("counted", "wanted", "told"),
    [("6", Wanted("3", "3"), "6"), ("", Wanted("3", "3"), "3"), ("6", Wanted("4", "3", reason="two gone"), "4"),
     ("many", Wanted("3", "3"), "3")],
)  # fmt: skip
def test_records_want_the_flutes_that_were_counted_where_nobody_wants_others(
    job: Card, counted: str, wanted: Wanted, told: str
) -> None:
    card = replace(job, tool=replace(job.tool, flutes=counted), wanted={"flutes": wanted})
    heading, row = rows(records([card]))
    assert dict(zip(heading, row, strict=True))["wanted"] == f"flutes {told}"


def test_a_card_as_data_holds_what_was_typed_and_what_follows(book: Book, job: Card) -> None:
    found: dict[str, Any] = json.loads(json.dumps(card_data(work_out(job, book), METRIC), allow_nan=False))
    assert found["card"]["started"] == "2026-11-25"
    assert found["card"]["received"]["drop"] == ["0.20 mm", "0.21 mm", "0.19 mm", "0.20 mm"]
    sheets = {one["calculation"]: one for one in found["calculations"]}
    # pi 11.97 tan 8 degrees, unrounded.
    assert sheets["relief-drop"]["outputs"]["throw_per_turn"] == {
        "value": pytest.approx(math.pi * 11.97 * math.tan(math.radians(8))),
        "unit": "mm",
    }
    assert sheets["relief-drop"]["inputs"]["diameter"]["from"] == "measured"
    assert "setting-height" not in sheets
    assert found["inspection"][0]["flutes"][0] == {
        "flute": 1, "reading": "0.45 mm", "value": 0.45, "wanted": 0.455, "state": "pass", "off": ""}  # fmt: skip
    # The arc tangent of the drop over the arc of the land.
    expected = math.degrees(math.atan(0.20 / (11.97 * math.asin(3.2 / 11.97))))
    assert found["relief_received"][0]["degrees"]["eccentric"] == pytest.approx(expected)
    assert found["problems"] == []
    assert found["cautions"][-1]["key"] == "defer"
    inches = card_data(work_out(job, book), INCH)
    assert inches["inspection"][0]["unit"] == "in"
    assert inches["inspection"][0]["flutes"][0]["value"] == pytest.approx(0.45 / 25.4)


def test_histories_and_plans_are_plain_data_too(book: Book, job: Card) -> None:
    life = json.loads(json.dumps(history_data(history("T-14", [job], book), INCH), allow_nan=False))
    assert life["cards"][0]["before"] == pytest.approx(11.97 / 25.4)
    assert (life["sharpenings_left"], life["unit"]) == (None, "in")
    assert life["cards"][0]["status"] == job.status
    batch = json.loads(
        json.dumps(plan_data(plan([job, replace(job, id="2")], book, METRIC)), allow_nan=False)
    )
    assert [one["id"] for one in batch["cards"]] == [job.id, "2"]
    assert batch["cards"][1]["changes"] == []
    assert {"calculation", "key", "title", "value", "graduation", "cost", "stopped"} == set(batch["stays"][0])


def test_a_card_is_the_fields_of_a_form_and_back(job: Card) -> None:
    fields = as_fields(job)
    assert fields["received.drop"] == "0.20 mm; 0.21 mm; 0.19 mm; 0.20 mm"
    assert fields["settings.wheel-speed.rotational_speed"] == "2800 rpm"
    assert fields["wanted.thread_relief_angle.reason"] == "it tore in bronze"
    blank = replace(
        Card(),
        id=job.id,
        started=job.started,
        wanted={key: replace(one, value=one.book, reason="") for key, one in job.wanted.items()},
    )
    assert with_fields(blank, fields) == job


def test_what_changed_on_a_form_is_told_field_by_field(job: Card) -> None:
    after = with_fields(job, {"tool.marks": "", "received.drop": "0.2 mm", "notes": "new"})
    assert changed_fields(job, after) == {"tool.marks": "", "received.drop": "0.2 mm", "notes": "new"}
    assert with_fields(job, changed_fields(job, after)) == after


def test_a_field_that_no_card_has_is_refused() -> None:
    with pytest.raises(CardEditRefused):
        with_fields(Card(tool=Tool("T-14")), {"tool.name": "T-15", "tool.colour": "red"})
