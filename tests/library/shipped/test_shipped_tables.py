"""The shipped book hangs together: ids are unique, and what is named is there."""

from __future__ import annotations

import re
import tomllib
from collections import Counter
from math import pi
from pathlib import Path
from typing import Any

import pytest

from geometry.calculation import AT_THE_WHEEL
from geometry.calculations import calculation, calculation_names
from library.calc.cautions import LAST_WORD

Table = dict[str, Any]
Tables = dict[str, list[Table]]


def test_every_file_says_which_schema_it_follows(shipped_files: list[Path]) -> None:
    for file in shipped_files:
        assert tomllib.loads(file.read_text(encoding="utf-8"))["schema"] == 1, file.name


@pytest.mark.parametrize(
    "kind",
    [
        "entry",
        "family",
        "material",
        "caution",
        "source",
        "rule",
        "setup",
        "recommended_wheel",
        "unsuited_wheel",
        "symptom",
    ],
)
def test_ids_are_unique_and_well_formed(tables: Tables, kind: str) -> None:
    ids = [row["id"] for row in tables[kind]]
    assert [name for name, times in Counter(ids).items() if times > 1] == []
    assert [name for name in ids if not re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", name)] == []


def test_every_family_material_and_caution_that_is_named_exists(tables: Tables) -> None:
    ids = {kind: {row["id"] for row in tables[kind]} for kind in ("family", "material", "caution")}
    for entry in tables["entry"]:
        assert entry["family"] in ids["family"], entry["id"]
        assert entry["work_material"] in ids["material"], entry["id"]
    for rule in tables["rule"]:
        families = rule["family"] if isinstance(rule["family"], list) else [rule["family"]]
        assert set(families) <= ids["family"], rule["id"]
    for kind in ("entry", "family", "material"):
        for row in tables[kind]:
            assert set(row.get("cautions", ())) <= ids["caution"], row["id"]


def test_no_entry_and_no_family_is_without_cautions(tables: Tables) -> None:
    for row in tables["entry"] + tables["family"]:
        assert "eyes" in row["cautions"], row["id"]
        assert row["cautions"][-1] == "defer", row["id"]


def test_the_cautions_that_calculations_and_readers_count_on_are_there(tables: Tables) -> None:
    """Those that the program names itself; every table's own are looked up above."""
    sheets = [calculation(name) for name in calculation_names()]
    named = {key for sheet in sheets for key in (*sheet.cautions, *sheet.cautions_before)}
    assert {*named, *AT_THE_WHEEL, LAST_WORD} <= {caution["id"] for caution in tables["caution"]}


def test_every_caution_has_words_of_its_own_that_are_read_at_arms_length(tables: Tables) -> None:
    words = [caution["words"] for caution in tables["caution"]]
    assert len(set(words)) == len(words)
    assert all(3 <= len(one) <= 22 and "|" not in one and one.isascii() for one in words)


def test_most_families_have_entries_over_several_materials(tables: Tables) -> None:
    """Another family may begin with one entry."""
    materials: dict[str, list[str]] = {}
    for entry in tables["entry"]:
        materials.setdefault(entry["family"], []).append(entry["work_material"])
    assert sum(len(one) >= 5 for one in materials.values()) >= 8
    assert sum(len(one) >= 6 and len(set(one)) >= 4 for one in materials.values()) >= 4


def test_there_are_fifteen_materials_or_more(tables: Tables) -> None:
    assert len(tables["material"]) >= 15


def test_iso_letters_are_those_of_the_standard(tables: Tables) -> None:
    assert {material.get("iso_513", "") for material in tables["material"]} <= set("PMKNSH") | {""}


def test_a_family_answers_what_a_newcomer_asks(tables: Tables) -> None:
    for family in tables["family"]:
        for question in (
            "what",
            "recognise",
            "ground",
            "never_ground",
            "usual_relief",
            "fails",
            "order",
            "check_after",
        ):
            assert family.get(question, "").strip(), (family["id"], question)


def test_a_material_that_can_hurt_carries_its_own_caution(tables: Tables) -> None:
    cautions = {material["id"]: material.get("cautions", []) for material in tables["material"]}
    assert cautions["magnesium"] == ["magnesium-fire", "one-metal-collector"]
    assert cautions["titanium"] == ["titanium-fire", "one-metal-collector"]
    assert cautions["aluminium-wrought"] == cautions["aluminium-cast"] == ["aluminium-dust"]
    assert cautions["beryllium-copper"] == ["beryllium-copper"]


def test_the_tap_entries_tell_what_makes_a_tap_cut(tables: Tables) -> None:
    taps = [entry for entry in tables["entry"] if entry["family"] == "tap" and "forming" not in entry["id"]]
    (rule,) = [row for row in tables["rule"] if row["id"] == "tap"]
    assert rule["relief_form"]["usual"] == "eccentric"
    assert rule["relief_form"]["source"] == "common practice"
    assert not [tap["id"] for tap in taps if "relief_form" in tap]
    words = " ".join(tap["notes"] for tap in taps)
    assert "Relieved eccentrically on the chamfer" in words
    assert "not needed for cutting" in words
    # Derived: 2 mm times 4.2 mm over the circumference of 16 mm; an eleventh of an inch times 0.165 in over that of 5/8 in.
    assert f"{2 * 4.2 / (pi * 16):.3f} mm" in words
    assert f"{0.165 / 11 / (pi * 0.625):.4f} in" in words


# What the bench knows and no book that was read says; every sentence stands where its tool is explained.
@pytest.mark.parametrize(
    ("family", "words"),
    [
        ("tap", "A tap cuts because its chamfer falls toward the axis behind the edge"),
        ("tap", "it adds nothing to the cutting"),
        ("tap", "has a lead of 0.167 mm over the land"),
        ("tap", "so taps are made, and so they are kept"),
        ("countersink", "along the radius, along the axis, or in part along each"),
        ("countersink", "A flat relief serves too where its heel clears"),
        ("countersink", "leaves more metal under the edge"),
        ("step-drill", "flats may be ground one behind the other, each steeper than the one before"),
        ("step-drill", "a single cam for all diameters"),
        ("twist-drill", "with flats one behind the other, each steeper than the one before"),
        ("countersink", "zero the indicator at the edge, and compare the drop at the heel"),
    ],
)
def test_the_trades_own_knowledge_is_written_down(tables: Tables, family: str, words: str) -> None:
    (found,) = (row for row in tables["family"] if row["id"] == family)
    assert words in " ".join(str(text) for text in found.values())
