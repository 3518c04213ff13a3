"""Numbered and lettered drills: their sizes against printed lists, and where their names may be typed."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from geometry.sentences import Kind
from library.calc.answer import answer
from library.cards.model import Card, Tool
from library.cards.provenance import known_texts
from library.drills import drill_size
from library.units.read import read

# A cutting tool firm's technical reference, size equivalents, in inches.
PRINTED = {
    "#80": 0.0135, "#79": 0.0145, "#78": 0.0160, "#77": 0.0180, "#76": 0.0200, "#75": 0.0210, "#74": 0.0225, "#73": 0.0240,
    "#72": 0.0250, "#71": 0.0260, "#70": 0.0280, "#69": 0.0292, "#68": 0.0310, "#67": 0.0320, "#66": 0.0330, "#65": 0.0350,
    "#45": 0.0820, "#44": 0.0860, "#43": 0.0890, "#42": 0.0935, "#41": 0.0960, "#40": 0.0980, "#39": 0.0995, "#38": 0.1015,
    "#37": 0.1040, "#36": 0.1065, "#35": 0.1100, "#34": 0.1110, "#33": 0.1130, "#32": 0.1160, "#31": 0.1200, "#30": 0.1285,
    "#29": 0.1360, "#28": 0.1405, "#27": 0.1440, "#26": 0.1470, "#25": 0.1495, "#24": 0.1520, "#23": 0.1540, "#4": 0.2090,
    "#3": 0.2130, "#2": 0.2210, "#1": 0.2280, "A drill": 0.2340, "B drill": 0.2380, "C drill": 0.2420, "D drill": 0.2460,
    "E drill": 0.2500, "F drill": 0.2570, "G drill": 0.2610, "H drill": 0.2660, "I drill": 0.2720, "J drill": 0.2770,
    "K drill": 0.2810, "L drill": 0.2900, "M drill": 0.2950, "N drill": 0.3020, "O drill": 0.3160,
}  # fmt: skip
# A tap maker's table of tap drills, decimal equivalents.
OF_TAPS = {
    "#53": 0.0595, "#50": 0.0700, "#47": 0.0785, "#46": 0.0810, "#21": 0.1590, "#16": 0.1770, "#15": 0.1800, "#7": 0.2010,
    "letter Q": 0.3320, "letter S": 0.3480, "letter T": 0.3580, "letter U": 0.3680, "letter Y": 0.4040, "letter Z": 0.4130,
}  # fmt: skip


def inches(name: str) -> float:
    return read(drill_size(name), Kind.LENGTH, unit_wanted=True).number / 25.4


def test_a_drill_is_as_large_as_it_is_printed() -> None:
    for name, size in {**PRINTED, **OF_TAPS}.items():
        assert inches(name) == pytest.approx(size), name


def test_sizes_fall_with_the_number_and_rise_with_the_letter() -> None:
    numbers = [inches(f"No. {number}") for number in range(1, 81)]
    letters = [inches(f"letter {chr(65 + at)}") for at in range(26)]
    assert numbers == sorted(numbers, reverse=True)
    assert letters == sorted(letters)
    assert len(set(numbers + letters)) == 106
    assert numbers[0] < letters[0]


@pytest.mark.parametrize(
    "name", ["7", "F", "#0", "#81", "#10-32", "No. 10-24 UNC", "", "letter", "M12", "drill"]
)
def test_what_is_no_numbered_or_lettered_drill_has_no_size(name: str) -> None:
    assert drill_size(name) == ""


@pytest.mark.parametrize(
    ("key", "name", "size"), [("diameter", "#7", 5.1054), ("drilled_diameter", "letter F", 6.5278)]
)
def test_a_drill_is_named_where_a_length_is_asked_for(key: str, name: str, size: float) -> None:
    found = answer(calculation("screw-thread"), {"diameter": "5/16-18 UNC", key: name})
    assert [issue for issue in found.issues if not issue.missing] == []
    assert found.inputs[key].value == pytest.approx(size)


def test_a_thread_with_a_number_stays_a_thread() -> None:
    found = answer(calculation("screw-thread"), {"diameter": "#10-32 UNF"})
    assert found.inputs["diameter"].value == pytest.approx(4.826)


def test_a_card_knows_the_size_of_a_numbered_drill() -> None:
    known = {one.key: one.text for one in known_texts(Card(tool=Tool(size="No. 7")), None, None)}
    assert known["diameter"] == "0.2010 in"
