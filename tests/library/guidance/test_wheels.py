"""The wheels that the book recommends, and what it says against the wheel at hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.book.tool_materials import TOOL_MATERIALS, stamped, tool_material
from library.cards.editing import edited
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card
from library.equipment.abrasives import called
from library.equipment.model import Wheel
from library.guidance.model import recommended_wheels
from library.guidance.wheels import Ground, against, recommended_for
from library.setup_sheet.sheets import setup_sheet


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def wheel(abrasive: str, title: str = "Wheel 7", shape: str = "type-6-straight-cup") -> Wheel:
    return Wheel("seven", title, shape=shape, abrasive=abrasive)


def told(book: Book, one: Wheel, ground: Ground) -> list[tuple[str, bool]]:
    return [(found.rule.id, found.stops) for found in against(book, one, ground)]


# TM 1-1500-204-23-9, page 6-4: aluminium oxide for steel of every kind, silicon carbide for carbide.
@pytest.mark.parametrize(
    ("abrasive", "material", "rule"),
    [
        ("diamond", "hss", [("diamond-on-steel", False)]),
        ("diamond", "carbon-steel", [("diamond-on-steel", False)]),
        ("silicon-carbide", "cobalt-hss", [("silicon-carbide-on-steel", False)]),
        ("aluminium-oxide", "carbide", [("aluminium-oxide-on-carbide", True)]),
        ("cbn", "carbide", [("boron-nitride-on-carbide", False)]),
        ("aluminium-oxide", "hss", []),
        ("cbn", "hss", []),
        ("diamond", "carbide", []),
        ("silicon-carbide", "carbide", []),
        ("diamond", "", []),
        ("", "hss", []),
    ],
)
def test_a_wheel_that_does_not_go_with_the_tool_is_told_of_and_no_other(
    book: Book, abrasive: str, material: str, rule: list[tuple[str, bool]]
) -> None:
    assert told(book, wheel(abrasive), Ground(material)) == rule


def test_what_rests_on_a_name_alone_is_to_be_looked_at_and_stops_nothing(book: Book) -> None:
    white = wheel("", "White cup 100")
    assert told(book, white, Ground("carbide")) == [("aluminium-oxide-on-carbide", False)]
    (found,) = against(book, white, Ground("carbide"))
    said = found.said(white, Ground("carbide"))
    assert said.startswith("White cup 100 is of aluminium oxide by its name, and the tool is carbide. ")


# TM 1-1500-204-23-9, page 6-3, rule 6: only the face, unless the wheel is made for its side.
@pytest.mark.parametrize(
    ("shape", "method", "stops"),
    [
        ("type-1-straight", "tooth-rest-height", True),
        ("type-1-straight", "wheel-head-height", False),
        ("type-6-straight-cup", "tooth-rest-height", False),
        ("", "tooth-rest-height", False),
    ],
)
def test_the_side_of_a_straight_wheel_is_never_ground_on(
    book: Book, shape: str, method: str, stops: bool
) -> None:
    found = told(book, wheel("aluminium-oxide", shape=shape), Ground("hss", "bevel", method))
    assert (found == [("side-of-a-straight-wheel", True)]) is stops


@pytest.mark.parametrize(
    ("marks", "material"),
    [
        ("HSS-E 12.0", "cobalt-hss"),
        ("HSSCo5", "cobalt-hss"),
        ("M42 x 4.5", ""),
        ("HSS M42", "hss"),
        ("HSS", "hss"),
        ("VHM 8", "carbide"),
        ("hard metal 8.0", "carbide"),
        ("M12 x 1.75", ""),
        ("M2.5", ""),
        ("", ""),
    ],
)
def test_what_a_tool_is_made_of_is_read_off_its_shank(marks: str, material: str) -> None:
    assert stamped(marks) == material


def test_what_a_tool_is_made_of_is_as_stamped_then_as_its_entry_and_its_family_say(book: Book) -> None:
    tipped = book.entries["reamer-carbide-tipped"]
    assert tool_material(book, "reamer", tipped) == "carbide"
    assert tool_material(book, "reamer", tipped, "HSS") == "hss"
    assert tool_material(book, "reamer", None) == "hss"
    assert tool_material(book, "carbide-drill", None) == "carbide"
    assert tool_material(book, "gone", None) == ""


@pytest.mark.parametrize(
    ("name", "abrasive"),
    [("Pink dish", "aluminium-oxide"), ("CBN cup", "cbn"), ("Diamond, green holder", ""), ("Greenfield", "")],
)
def test_a_name_tells_the_abrasive_where_it_tells_of_one_alone(name: str, abrasive: str) -> None:
    assert called(name) == abrasive


def test_every_tool_material_has_wheels_for_the_relief_of_its_teeth_and_the_rating_goes_first(
    book: Book,
) -> None:
    for material in TOOL_MATERIALS:
        found = recommended_for(book, Ground(material, "land"))
        assert found, material
        for one in found:
            speed = one.lines["speed"].text
            assert "marking on the wheel" in speed, one.id
            assert {"abrasive", "grit", "grade", "bond", "shape", "infeed", "coolant", "dress"} <= set(
                one.lines
            )


def test_what_is_recommended_is_never_what_the_book_speaks_against(book: Book) -> None:
    for one in recommended_wheels(book).values():
        for abrasive in one.abrasives:
            for material in one.tool_materials:
                if one.id == "carbide-tipped-body":  # It grinds the steel behind the tip, and says so.
                    continue
                assert told(book, wheel(abrasive), Ground(material)) == [], one.id


def test_a_shop_may_soften_a_rule_or_add_one(tmp_path: Path) -> None:
    (tmp_path / "ours.toml").write_text(
        'schema = 1\n\n[[unsuited_wheel]]\nid = "diamond-on-steel"\nstate = "stop"\n\n'
        '[[unsuited_wheel]]\nid = "no-dish-for-carbon"\ntitle = "Dish"\nstate = "watch"\n'
        'tool_materials = ["carbon-steel"]\nshapes = ["type-12-dish"]\nwhy = { text = "Ours is cracked.", source = "shop" }\n'
    )
    book = open_book(tmp_path)
    assert book.findings == ()
    assert told(book, wheel("diamond"), Ground("hss")) == [("diamond-on-steel", True)]
    assert told(book, wheel("", shape="type-12-dish"), Ground("carbon-steel")) == [
        ("no-dish-for-carbon", False)
    ]


def test_card_and_sheet_tell_of_it_once_at_the_line_of_the_wheel(tmp_path: Path) -> None:
    (tmp_path / "wheels.toml").write_text(
        'schema = 1\n\n[[wheel]]\nid = "white"\ntitle = "White cup"\nshape = "type-6-straight-cup"\n'
        'diameter = "100 mm"\nabrasive = "aluminium-oxide"\nrated_speed = "25 m/s"\n'
    )
    book = open_book(tmp_path)
    card = Card(id="2026-11-25-01", started=date(2026, 11, 25), family="reamer", wheel="white")
    job = work_out(edited(card, "tool.marks", "VHM"), book)
    (issue,) = [one for one in issues_of(job) if one.way == "wheel"]
    assert issue.state == "stop"
    page = " ".join(setup_sheet(job).split())
    assert page.count("It does not cut carbide") == 1
    assert page.startswith("STOP: do not grind this")
    steel = work_out(replace(edited(card, "tool.marks", "HSS")), book)
    assert [one for one in issues_of(steel) if one.way == "wheel"] == []
