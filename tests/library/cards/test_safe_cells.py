"""No cell of a table begins like a formula, however a spreadsheet parts it, and it is read back as it was."""

from __future__ import annotations

import csv
import io
import re
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.cards.editing import readings_of
from library.cards.model import Card, Inspection
from library.cards.safe_cells import always_guarded, guarded, unguarded
from library.cards.tables import import_measurements, measurements, written_records

# Common practice, no source: the signs that spreadsheets take, those of full width, and what they drop before them.
SIGNS = "=+-@\uff1d\uff0b\uff0d\uff20"
TEXTS = st.text(st.sampled_from([*SIGNS, *"\t\r\n,;\"' a5.\xa0"]), max_size=12)
NUMBER = re.compile(r"-\d+(\.\d+)?")


def _cells(text: str, sign: str, quoting: int) -> list[str]:
    """The cells as a spreadsheet has them that parts at a sign, with or without heed of quotes."""
    if quoting == csv.QUOTE_NONE:
        return [cell for line in re.split("\r\n|\r|\n", text) for cell in line.split(sign)]
    return [cell for row in csv.reader(io.StringIO(text, newline=""), delimiter=sign) for cell in row]


@given(st.lists(st.lists(TEXTS, min_size=3, max_size=3), max_size=3))
def test_no_way_of_parting_a_table_makes_a_cell_that_begins_like_a_formula(rows: list[list[str]]) -> None:
    text = written_records(rows)
    for sign in ",;\t":
        for quoting in (csv.QUOTE_MINIMAL, csv.QUOTE_NONE):
            for cell in _cells(text, sign, quoting):
                begins = cell.lstrip(" \xa0")
                assert not begins.startswith((*SIGNS, "\t", "\r")) or NUMBER.fullmatch(cell), (sign, cell)


@given(TEXTS)
def test_a_guarded_cell_is_read_back_as_it_was(text: str) -> None:
    assert unguarded(guarded(text)) == text
    assert unguarded(always_guarded(text)) == text
    assert NUMBER.fullmatch(guarded(text)) or not guarded(text).startswith((*SIGNS, "\t", "\r"))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("8 deg;=1+1", "8 deg;'=1+1"),
        ("runout 0.1 mm, -0.02 mm", "runout 0.1 mm, '-0.02 mm"),
        ("first line\n@second", "first line\n'@second"),
        ('x;"=1', "x;'\"=1"),
        ("\uff1d1", "'\uff1d1"),
        ("-0.25", "-0.25"),
        ("-0.25 mm", "'-0.25 mm"),
        ("6.5 mm +/- 0.1 mm; a=b", "6.5 mm +/- 0.1 mm; a=b"),
    ],
)
def test_an_apostrophe_stands_before_each_beginning_that_could_be_a_formula(text: str, expected: str) -> None:
    assert guarded(text) == expected


def test_every_cell_is_quoted_and_a_negative_number_alone_stays_a_number() -> None:
    text = measurements([Card(id="a", received={"rake_angle": ("-5",)})])
    assert text.split("\r\n")[1] == '"a","received","rake_angle","","-5"'


TYPED = st.text(st.sampled_from([*SIGNS, *",;\"' a5.\xa0\n"]), max_size=20)


@given(st.lists(TYPED.map(readings_of), min_size=1, max_size=2), st.booleans())
def test_readings_of_any_text_come_back_from_their_table(
    typed: list[tuple[str, ...]], is_alone: bool
) -> None:
    first, last = typed[0], typed[-1]
    if is_alone:
        # From a file a reading may hold what parts readings where they are typed.
        first = tuple(["; ".join(first)] if any(first) else [])
    card = Card(id="a", received={"drop": first}, after={"diameter": Inspection(last)})
    found = import_measurements(measurements([card]), {"a": Card(id="a")})
    assert found.problems == ()
    back = found.cards.get("a", Card(id="a"))
    assert _kept(back.received.get("drop", ())) == _kept(first)
    after = back.after.get("diameter", Inspection())
    assert _kept(after.readings) == _kept(last)
    assert replace(after, readings=()) == Inspection()


def _kept(readings: tuple[str, ...]) -> dict[int, str]:
    """The readings by flute as they are shown, without the gaps."""
    shown = {flute: reading.replace("\xa0", " ").strip() for flute, reading in enumerate(readings)}
    return {flute: reading for flute, reading in shown.items() if reading}
