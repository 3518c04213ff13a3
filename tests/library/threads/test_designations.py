"""A thread's name tells its hand, its starts and its class, whoever is asked for it by that name."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from geometry.calculations import calculation
from library.book.opening import open_book
from library.calc.answer import answer
from library.search.sizes import taken_apart as search_of
from library.shop_threads.laying import own_threads
from library.threads import NotChosen, all_threads, choose, find_threads, finding


@pytest.mark.parametrize(
    ("asked", "title", "starts", "hand", "of"),
    [
        ("M16 LH", "M16 x 2 LH", 1, "left", ""),
        ("m16 - left hand", "M16 x 2 LH", 1, "left", ""),
        ("Tr 20 x 4 LH", "Tr 20 x 4 LH", 1, "left", ""),
        ("Tr 20 x 8 P4", "Tr 20 x 8 P4", 2, "", ""),
        ("tr20x8(p4)lh", "Tr 20 x 8 P4 LH", 2, "left", ""),
        ("Tr 40 x 14 (P7) LH - 7H", "Tr 40 x 14 P7 LH", 2, "left", ""),
        ("Tr 20 x 4, two starts", "Tr 20 x 8 P4", 2, "", ""),
        ("M16 x Ph6 P2 (three starts)", "M16 x Ph6 P2", 3, "", ""),
        ("1-0.2P-0.4L-ACME", "1-5 Acme, 2 starts", 2, "", ""),
        ("1/2-10 Acme-2G-LH", "1/2-10 Acme LH", 1, "left", ""),
        ("5/8-11 UNC-2B-LH", "5/8-11 UNC LH", 1, "left", "2B"),
        ("M12-6H", "M12 x 1.75", 1, "", "6H"),
        ("M12 6G LH", "M12 x 1.75 LH", 1, "left", "6G"),
        # Of a screw and not of a nut.
        ("M12-5g6g", "M12 x 1.75", 1, "", ""),
        ("5/8-11 UNC-2A", "5/8-11 UNC", 1, "", ""),
    ],
)  # fmt: skip
def test_a_name_tells_hand_starts_and_class(asked: str, title: str, starts: int, hand: str, of: str) -> None:
    (found,) = find_threads(asked)
    assert (found.title, found.starts, found.hand, found.thread_class) == (title, starts, hand, of)
    again = find_threads(title)[0]
    assert (again.title, again.starts, again.hand) == (title, starts, hand)


def test_a_name_that_two_threads_share_gives_both_left_handed() -> None:
    assert [one.title for one in find_threads("1/4-20 LH")] == ["1/4-20 UNC LH", "1/4-20 BSW LH"]


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        ("Tr 20 x 8 P3", "A lead of 8 is not a whole number of times a pitch of 3."),
        ("Tr 20 x 4 P8", "A lead of 4 is not a whole number of times a pitch of 8."),
        ("Tr 20 x 8 P0", "A lead of 8 is not a whole number of times a pitch of 0."),
        ("M16 x Ph6 P2, 2 starts", "A lead of 6 is not 2 times a pitch of 2."),
        ("Tr 21 x 8 P4 LH", "There is no thread 'Tr 21 x 8 P4 LH' in the tables. Did you mean"),
        ("LH", "There is no thread 'LH' in the tables."),
        ("1-1/3-12 UN", "There is no thread '1-1/3-12 UN' in the tables. Did you mean 1-1/8-12 UNF"),
    ],
)
def test_what_cannot_be_gets_a_sentence(asked: str, sentence: str) -> None:
    with pytest.raises(NotChosen) as caught:
        choose(asked)
    assert str(caught.value).startswith(sentence)


# A British transmission parts supplier's specifications of trapezoidal screws: diameter x lead (pitch), starts, lead angle
# on the pitch diameter in degrees and minutes.
@pytest.mark.parametrize(
    ("name", "starts", "degrees", "minutes"),
    [
        ("Tr 10 x 4 (P2)", 2, 8, 3),
        ("Tr 12 x 6 (P3)", 2, 10, 19),
        ("Tr 14 x 6 (P3)", 2, 8, 41),
        ("Tr 16 x 8 (P4)", 2, 10, 19),
        ("Tr 18 x 8 (P4)", 2, 9, 2),
        ("Tr 20 x 8 (P4)", 2, 8, 3),
        ("Tr 20 x 20 (P5)", 4, 20, 0),
    ],
)  # fmt: skip
def test_threads_of_several_starts_climb_as_the_supplier_prints(
    name: str, starts: int, degrees: int, minutes: int
) -> None:
    (row,) = find_threads(name)
    assert row.starts == starts
    lead = float(row.pitch.removesuffix(" mm")) * row.starts
    climbs = math.degrees(math.atan(lead / (math.pi * float(row.pitch_diameter.removesuffix(" mm")))))
    assert climbs == pytest.approx(degrees + minutes / 60, abs=1 / 60)


def test_every_row_of_several_starts_is_called_by_its_lead() -> None:
    rows = [one for one in all_threads().values() if one.series.id == "metric-trapezoidal-starts"]
    assert len(rows) == 12
    for row in rows:
        lead = row.starts * float(row.pitch.removesuffix(" mm"))
        assert (
            row.title == f"Tr {row.diameter.removesuffix(' mm')} x {lead:g} P{row.pitch.removesuffix(' mm')}"
        )


@pytest.mark.parametrize("name", ["screw-thread", "lead-over-land"])
def test_a_calculation_takes_lead_and_hand_from_the_name_and_tells_them(name: str) -> None:
    land = {"land_width": "4 mm"} if name == "lead-over-land" else {}
    found = answer(calculation(name), {"diameter": "Tr 20 x 8 P4 LH", **land})
    assert found.issues == ()
    assert (found.inputs["starts"].value, found.inputs["hand"].value) == (2.0, "left")
    assert found.result is not None
    assert found.result.outputs["lead"] == pytest.approx(8.0)
    assert any("anticlockwise" in str(check) for check in found.result.checks)


def test_a_right_hand_thread_says_nothing_of_its_hand() -> None:
    found = answer(calculation("screw-thread"), {"diameter": "M16"})
    assert found.result is not None
    assert not any("clockwise" in str(check) for check in found.result.checks)


OWN = """schema = 1

[[thread]]
id = "m16"
tap_drill = "14.1 mm"
source = "shop"

[[thread]]
id = "tr-20-8-p4"
tap_drill = "16.4 mm"
source = "shop"

[[thread]]
id = "gate"
title = "Gate 32"
diameter = "32 mm"
pitch = "6 mm"
thread_form = "trapezoidal"
source = "shop"
"""


def test_the_shops_own_threads_are_found_with_hand_and_starts_too(tmp_path: Path) -> None:
    (tmp_path / "threads.toml").write_text(OWN)
    book = open_book(tmp_path)
    assert book.findings == ()
    own = own_threads(book)
    drills = [choose(name, own).tap_drill for name in ("M16 LH", "M16-6H", "Tr 20x8(P4) LH")]
    assert drills == ["14.1 mm", "14.1 mm", "16.4 mm"]
    gate = choose("Gate 32, 3 starts LH", own)
    assert (gate.starts, gate.hand, gate.is_own) == (3, "left", True)
    found = answer(
        calculation("lead-over-land"), {"diameter": "gate 32 2 starts", "land_width": "4 mm"}, book=book
    )
    assert found.result is not None
    assert found.result.outputs["lead"] == pytest.approx(12.0)


@pytest.mark.parametrize(
    ("asked", "size"),
    [
        ("tap tr 20 x 8 p4 lh", "Tr 20 x 8 P4 LH"),
        ("tr20x8(p4)", "Tr20x8(P4)"),
        ("bronze tap Tr 20", "Tr 20"),
        ("tap m16-lh", "M16-LH"),
        ("tap m16-6h lh", "M16-6H LH"),
        ("5/8-11 unc lh", "5/8-11 UNC LH"),
    ],
)
def test_a_search_takes_hand_and_lead_along_with_the_size(asked: str, size: str) -> None:
    found = search_of(asked).size
    assert found is not None
    assert (found.text, found.is_thread) == (size, True)
    assert len(find_threads(found.text)) == 1


@pytest.mark.parametrize(
    ("asked", "title"),
    [
        ("1-1/2-12 UN", "1-1/2-12 UNF"),
        ("1 8-UN", "1-8 UNC"),
        ("3/4 16-UN", "3/4-16 UNF"),
        ("1-5/8 12-UN", "1-5/8-12 UN"),
    ],
)
def test_a_size_of_a_constant_pitch_series_that_is_coarse_or_fine_is_found_there(
    asked: str, title: str
) -> None:
    assert [one.title for one in find_threads(asked)] == [title]


def test_a_thread_in_inches_that_is_not_there_is_told_as_a_thread() -> None:
    found = answer(calculation("screw-thread"), {"diameter": "1-1/3-12 UN"})
    assert "There is no thread '1-1/3-12 UN'" in found.issues[0].text


@pytest.mark.parametrize("size", ["", "10 mm", "1/2 in", "1-1/4 in", ".5 in", "8.7mm"])
def test_the_size_of_a_plain_tool_is_no_thread_and_has_no_table_read(
    monkeypatch: pytest.MonkeyPatch, size: str
) -> None:
    def read() -> None:
        raise AssertionError("a table was read")

    monkeypatch.setattr(finding, "_by_name", read)
    assert finding.find_threads(size) == ()


def test_no_thread_of_the_tables_is_called_by_a_length_with_its_unit() -> None:
    assert not [name for name in finding._by_name() if name.endswith(("mm", "in"))]
