"""From a card to its file and back, whatever stands on it."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import fields, replace
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculations import calculation_names
from geometry.quantities import QUANTITIES
from library.cards.model import SCHEMA, Card, Inspection, Setting, Tool, Wanted
from library.cards.quick_row import quick_row
from library.cards.rows import row_of
from library.cards.store import from_bytes
from library.cards.writing import as_table, as_toml
from library.editing.document import EditRefused
from library.editing.plan import with_table
from tests.examples import OVER_ALL

_SIGNS = st.characters(exclude_categories=["Cs"])
LINE = st.text(_SIGNS.filter(lambda sign: sign not in "\r\n"), max_size=60)
LINES = st.lists(LINE, max_size=6).map("\n".join)
KEYS = st.sampled_from(sorted(QUANTITIES))
DAYS = st.dates(date(1980, 1, 1), date(2999, 12, 31))
EXTRA_KEYS = st.text("abcdefghijklmnopqrstuvwxyz-", min_size=1, max_size=8).map(lambda word: f"x-{word}")
EXTRA_VALUES = st.recursive(
    st.booleans() | st.integers(-(2**60), 2**60) | st.floats(allow_nan=False) | LINE | DAYS,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(EXTRA_KEYS, inner, max_size=3),
    max_leaves=6,
)


def full(strategy: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    """Texts that are not empty; an empty one is not written."""
    return strategy.filter(bool)


TOOLS = st.builds(Tool, *(LINE for _ in range(7)))
READINGS = st.lists(LINE, max_size=5).map(tuple)
TYPED = st.dictionaries(KEYS, full(LINE), max_size=3)
PARTS: dict[str, st.SearchStrategy[object]] = {
    "id": st.dates(date(2000, 1, 1), date(2099, 12, 31)).map(lambda day: f"{day.isoformat()}-01"),
    "status": st.sampled_from(["draft", "done"]),
    "started": st.none() | DAYS,
    "finished": st.none() | DAYS,
    "family": LINE,
    "entry": LINE,
    "again": LINE,
    "units": st.sampled_from(["mm", "in"]),
    "machine": LINE,
    "wheel": LINE,
    "tool": TOOLS,
    "wrong": LINES,
    "received": st.dictionaries(KEYS, READINGS, max_size=4),
    "wanted": st.dictionaries(KEYS, st.builds(Wanted, LINE, LINE, LINE, LINE), max_size=4),
    "settings": st.dictionaries(
        st.sampled_from(calculation_names()),
        st.builds(Setting, TYPED, TYPED, st.booleans(), TYPED),
        max_size=3,
    ),
    "after": st.dictionaries(KEYS, st.builds(Inspection, READINGS, LINE, LINE, LINE), max_size=4),
    "notes": LINES,
    "minutes": LINE,
    "result": LINE,
    "remarks": LINE,
    "chosen": TYPED,
    "extra": st.dictionaries(EXTRA_KEYS, EXTRA_VALUES, max_size=3),
}
CARDS = st.builds(Card, **PARTS)
"""Any card that a person could make, sensible or not."""


def read(text: str, name: str = "2026-11-25-01") -> Card:
    return from_bytes(text.encode(), Path(f"{name}.toml")).card


def test_the_cards_of_this_test_have_everything_that_a_card_has() -> None:
    assert set(PARTS) == {one.name for one in fields(Card)} - {"schema"}


@given(CARDS)
def test_every_card_reads_back_as_it_was_written_is_plain_toml_and_a_glance_shows_what_the_whole_does(
    card: Card,
) -> None:
    text = as_toml(card)
    again = read(text, card.id)
    assert again == card
    assert as_toml(again) == text
    plain = tomllib.loads(text)
    assert plain["schema"] == 1
    assert [one["id"] for one in plain["card"]] == [card.id]
    assert max(len(line.encode()) for line in text.split("\n")) <= 4096
    found = quick_row(text.encode(), Path(f"{card.id}.toml"))
    assert found in (None, row_of(again))
    if card.tool != Tool() and "[" not in card.notes + card.wrong and not card.extra:
        assert found is not None


def test_a_card_with_all_that_this_program_writes_is_told_by_its_head_alone() -> None:
    card = Card(
        id="2026-11-25-01",
        status="done",
        tool=Tool("T-14"),
        received={"drop": ("0.2 mm",)},
        wanted={"relief_angle": Wanted("8 deg")},
        settings={"wheel-speed": Setting({"rotational_speed": "3600 rpm"})},
        after={"drop": Inspection(("0.4 mm",))},
        remarks="Left proud at the heel.",
        chosen={"surface": "chamfer"},
        extra={"x-rack": {"shelf": "3"}},
    )
    empty = Card()
    tables = [one.name for one in fields(Card) if isinstance(getattr(empty, one.name), Mapping)]
    assert all(getattr(card, name) for name in tables), "a card has a new part: give it here too"
    found = quick_row(as_toml(card).encode(), Path(f"{card.id}.toml"))
    assert found == row_of(card)
    assert "left proud at the heel" in found.text


def test_a_file_that_a_person_put_in_another_order_is_read_whole() -> None:
    text = 'schema = 1\n[[card]]\nid = "a"\n[card.received]\ndrop = "1 mm"\n[card.tool]\nname = "T-14"\n'
    assert quick_row(text.encode(), Path("a.toml")) is None
    assert from_bytes(text.encode(), Path("a.toml")).card.tool.name == "T-14"
    for odd in (
        "[card]\n",
        "[[card]]\ntool = 3\n",
        "[[card]]\nresult = 3\n",
        "[[card]]\n[[card]]\n",
        "x",
        "a = 1",
    ):
        assert quick_row(f"schema = 1\n{odd}".encode(), Path("a.toml")) is None


def test_a_card_looks_as_a_person_would_write_it(job: Card) -> None:
    assert as_toml(job).startswith(
        """schema = 1

[[card]]
id = "2026-11-25-01"
status = "draft"
started = 2026-11-25
family = "tap"
units = "mm"
machine = "window-grinder"
wheel = "cup-60"
wrong = \"\"\"
Chips at two teeth.
Squeals.\"\"\"
minutes = "25"
notes = "Went well."

[card.tool]
name = "T-14"
"""
    )
    assert """
[card.received]
diameter = "11.97 mm"
land_width = "3.2 mm"
land_measured_as = "chord"
drop = [
    "0.20 mm",
    "0.21 mm",
    "0.19 mm",
    "0.20 mm",
]
""" in as_toml(job)


def test_keys_that_nobody_knows_stay_in_their_own_place() -> None:
    text = """schema = 1
[[card]]
id = "2026-11-25-01"
colour = "blue"
[card.tool]
name = "T-14"
bought = 2019
[card.received]
drop = 0.28
[card.after.drop]
readings = "0.3 mm"
who = ["Ann", "Ben"]
[card.plan]
next = "spring"
"""
    card = read(text)
    assert card.tool.name == "T-14"
    assert card.extra == {
        "colour": "blue",
        "tool": {"bought": 2019},
        "received": {"drop": 0.28},
        "after": {"drop": {"who": ["Ann", "Ben"]}},
        "plan": {"next": "spring"},
    }
    again = tomllib.loads(as_toml(card))["card"][0]
    assert again["tool"] == {"name": "T-14", "bought": 2019}
    assert again["after"] == {"drop": {"readings": "0.3 mm", "who": ["Ann", "Ben"]}}
    assert again["received"] == {"drop": 0.28}
    assert again["plan"] == {"next": "spring"}
    # What a person then writes in its place covers it.
    fixed = replace(card, received={"drop": ("0.28 mm",)})
    assert tomllib.loads(as_toml(fixed))["card"][0]["received"] == {"drop": "0.28 mm"}


@pytest.mark.parametrize(
    ("line", "needles"),
    [
        ("[card.received]\ndrop = 0.28", ["received.drop", "0.28 has no unit", '"0.28 mm"']),
        ('[card.received]\nrelief_angel = "8 deg"', ["received.relief_angel", "no quantity", "relief_angle"]),
        ("[card.tool]\nname = 14", ["tool.name", "a text is wanted", "quotes"]),
        ("[card.wanted]\nrake_angle = 3", ["wanted.rake_angle", "a table is wanted"]),
    ],
)
def test_what_is_odd_in_a_card_is_told_and_kept(line: str, needles: list[str]) -> None:
    text = f'schema = 1\n[[card]]\nid = "2026-11-25-01"\n{line}\n'
    opened = from_bytes(text.encode(), Path("2026-11-25-01.toml"))
    for needle in needles:
        assert needle in " ".join(map(str, opened.findings))
    before, after = tomllib.loads(text)["card"], tomllib.loads(as_toml(opened.card))["card"]
    del after[0]["status"], after[0]["units"]
    assert after == before


@pytest.mark.parametrize(
    ("line", "needles"),
    [
        ("started = 25", ["started", "a day is wanted"]),
        ("started = 2026-11-25T08:00:00", ["started", "a day is wanted"]),
        ('status = "half"', ["status", "draft or done"]),
        ('resutl = "good"', ["no key 'resutl'", "Did you mean result?"]),
        ('notes = "\\u0007"', ["bell"]),
        ("tool = 3", ["a table is wanted", "[card.tool]"]),
    ],
)
def test_the_keys_of_the_card_itself_are_held_to_their_kinds(line: str, needles: list[str]) -> None:
    text = f'schema = 1\n[[card]]\nid = "2026-11-25-01"\n{line}\n'
    opened = from_bytes(text.encode(), Path("2026-11-25-01.toml"))
    said = " ".join(map(str, opened.findings))
    for needle in needles:
        assert needle in said
    assert "2026-11-25-01.toml:4:" in said
    key, _, value = line.partition(" = ")
    assert tomllib.loads(as_toml(opened.card))["card"][0][key] == tomllib.loads(f"v = {value}")["v"]


def test_a_card_of_a_newer_program_is_read_and_never_written_over() -> None:
    text = f'schema = {SCHEMA + 1}\n[[card]]\nid = "2026-11-25-01"\nlaser = "yes"\n'
    opened = from_bytes(text.encode(), Path("2026-11-25-01.toml"))
    assert opened.card.id == "2026-11-25-01"
    assert "newer" in opened.read_only
    assert f"schema {SCHEMA + 1}" in opened.read_only


def test_a_broken_line_costs_that_line_and_makes_the_card_read_only() -> None:
    text = 'schema = 1\n[[card]]\nid = "2026-11-25-01"\nfamily = "tap\nresult = "good"\n'
    opened = from_bytes(text.encode(), Path("2026-11-25-01.toml"))
    assert opened.card.result == "good"
    assert opened.findings
    assert "Fix its file" in opened.read_only


def test_a_day_in_quotes_is_a_day() -> None:
    assert read('schema = 1\n[[card]]\nid = "a"\nstarted = "2026-11-25"\n', "a").started == date(2026, 11, 25)


def with_remarks(text: str) -> str:
    """The file of a card as somebody leaves it who wrote a remark behind each heading and at the end."""
    lines = [f"{line}  # {number}" if line.startswith("[") and line.endswith("]") else line
             for number, line in enumerate(text.split("\n"))]  # fmt: skip
    return "\n".join(["# by hand", *lines, "# the end"])


def as_typed(card: Card) -> Card:
    """The card without settings and inspections of which nothing is left, which no form leaves on a card."""
    settings = {name: replace(one, typed=one.typed or {"diameter": "1 mm"}, recorded=one.recorded or {"pitch": "1 mm"},
                              filled=one.filled or {"flutes": "4"})
                for name, one in card.settings.items()}  # fmt: skip
    return replace(
        card, settings=settings, after={key: one for key, one in card.after.items() if one != Inspection()}
    )


@OVER_ALL  # it makes two cards
@given(CARDS.map(as_typed), CARDS.map(as_typed))
def test_a_card_that_somebody_wrote_in_is_changed_in_place_to_any_other(before: Card, after: Card) -> None:
    path = Path(f"{before.id}.toml")
    raw = with_remarks(as_toml(before)).encode()
    opened = from_bytes(raw, path)
    if opened.card != before:
        return  # A remark fell inside a text.
    wanted = replace(after, id=before.id)
    try:
        changed = with_table(path, raw, "card", as_table(wanted))
    except EditRefused as refused:
        # A key of the shop's own that is a table of its own and shall be something else is left to the editor, in words.
        tables = {
            key for key, one in before.extra.items() if isinstance(one, dict | list) and key in after.extra
        }
        of_tables = ("is written in several places", "would be empty; remove it instead") if tables else ()
        assert any(one in refused.sentence for one in ("longer than", *of_tables))
        return
    assert from_bytes(changed, path).card == wanted
    text = changed.decode()
    assert text.startswith("# by hand\nschema = 1\n")
    assert text.endswith("# the end")


def test_a_table_of_the_shop_s_own_that_shall_be_a_list_is_left_to_the_editor(job: Card) -> None:
    before = replace(job, extra={"x-n": {"x-a": True, "x-b": False}})
    raw = as_toml(before).encode()
    path = Path(f"{before.id}.toml")
    assert from_bytes(raw, path).card.extra == before.extra
    with pytest.raises(EditRefused, match="is written in several places"):
        with_table(path, raw, "card", as_table(replace(before, extra={"x-n": []})))
