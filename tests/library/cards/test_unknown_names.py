"""A name on a card that is not known is kept, and told of with the known one that is most like it, wherever it stands."""

from __future__ import annotations

import tomllib
from dataclasses import fields
from pathlib import Path

import pytest

from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.cards.store import from_bytes
from library.cards.writing import as_toml

HEAD = 'schema = 1\n\n[[card]]\nid = "2026-11-25-01"\nstatus = "draft"\nunits = "mm"\n'
TOP = [one.name for one in fields(Card) if one.name not in {"id", "extra", "schema"}]


def misspelt(name: str) -> str:
    """The name with a letter in its middle struck twice."""
    middle = len(name) // 2
    return name[:middle] + name[middle - 1] + name[middle:]


PLACES = [
    *(("", name) for name in TOP),
    *(("tool", one.name) for one in fields(Tool)),
    *(("wanted.rake_angle", one.name) for one in fields(Wanted)),
    *(("after.drop", one.name) for one in fields(Inspection)),
    *(("settings.wheel-speed", one.name) for one in fields(Setting)),
    *((f"settings.wheel-speed.{part}", "surface_speed") for part in ("typed", "filled", "recorded")),
    *((part, "relief_method") for part in ("received", "wanted", "after", "chosen")),
    ("settings", "wheel-speed"),
]
"""Every table of a card, and each name in it that this program knows."""


@pytest.mark.parametrize(("table", "name"), PLACES, ids=lambda part: part or "card")
def test_a_misspelt_name_is_kept_and_told_of_with_the_right_one(table: str, name: str) -> None:
    wrong = misspelt(name)
    heading = f"\n[card.{table}]\n" if table else ""
    beside = 'value = "8 deg"\n' if table == "wanted.rake_angle" else ""
    value = (
        '{ value = "8 deg" }' if table == "wanted" else "{}" if table in {"after", "settings"} else '"1 mm"'
    )
    text = f"{HEAD}{heading}{beside}{wrong} = {value}\n"
    opened = from_bytes(text.encode(), Path("2026-11-25-01.toml"))
    way = ".".join(part for part in ("2026-11-25-01", table, wrong) if part)
    (told,) = [str(one) for one in opened.findings if one.way == way]
    assert f"'{wrong}'. Did you mean {name}?" in told
    assert f":{text.count(chr(10))}:1: " in told, "it names the line"
    assert tomllib.loads(as_toml(opened.card)) == tomllib.loads(text)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (f"shcema = 1\n{HEAD.partition('1')[2]}", "'shcema' stands above the card. Did you mean schema?"),
        (f'{HEAD}\n[[crad]]\nid = "b"\n', "The file of a card has no table 'crad'. Did you mean [[card]]?"),
        (
            f"{HEAD}\n[[wheel]]\n",
            "The file of a card has no table 'wheel'. It is kept; begin its name with x-",
        ),
    ],
)
def test_what_stands_beside_the_card_is_told_of(text: str, told: str) -> None:
    opened = from_bytes(text.encode(), Path("2026-11-25-01.toml"))
    assert told in " ".join(str(one) for one in opened.findings)


def test_names_of_the_shop_s_own_are_not_told_of() -> None:
    text = f"x-b = 1\n{HEAD}x-a = 1\n\n[card.tool]\nx-c = 1\n\n[card.x-d]\ny = 1\n\n[[x-e]]\nz = 1\n"
    assert from_bytes(text.encode(), Path("2026-11-25-01.toml")).findings == ()
