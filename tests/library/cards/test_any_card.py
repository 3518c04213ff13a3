"""Whatever stands on a card, it is worked out, judged, printed and planned without an error."""

from __future__ import annotations

import json
import math
import tomllib
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from geometry.calculations import calculation, calculation_names
from library.book.folders import shipped_folder
from library.book.model import Book
from library.cards.as_data import card_data
from library.cards.editing import edited
from library.cards.history import history, may_last, sharpenings_left
from library.cards.inspecting import received_reliefs, reliefs_after, verdicts
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card
from library.cards.planning import plan
from library.cards.tables import measurements, records
from library.setup_sheet.sheets import FORMATS, setup_sheet
from library.units.system import INCH, METRIC

LENGTHS = st.floats(0.001, 300).map(lambda size: f"{size:.4g} mm") | st.sampled_from(
    [
        "0 mm",
        "1/8 in",
        "40 thou",
        "3.2",
        "1e30 mm",
        "1e-30 mm",
        "0.25 D",
        "-2 mm",
        "12 mm +/- 0.1",
        "3 +/- 0.1 in",
        "6,5 mm",
        "2 mm +/- 1e99 mm",
    ]
)
ANGLES = st.floats(0, 89).map(lambda angle: f"{angle:.4g} deg") | st.sampled_from(
    ["0 deg", "3 deg 30 min", "8", "-5 deg", "90 deg"]
)
COUNTS = st.sampled_from(["1", "2", "3", "4", "7", "60", "0", "four", "2.5", "3 +/- 1", "40 +/- 0.5"])
OTHERS = st.sampled_from(
    [
        "",
        " ",
        "-",
        "chord",
        "arc",
        "flat",
        "eccentric",
        "type-6-straight-cup",
        "type-1-straight",
        "2800 rpm",
        "20 m/s",
        "10 tpi",
        "1:16",
        "face",
    ]
)
TEXTS = st.one_of(LENGTHS, LENGTHS, ANGLES, COUNTS, OTHERS, st.text(max_size=10))
ONE_OR_MORE = TEXTS | st.lists(TEXTS, min_size=2, max_size=5).map("; ".join)
QUANTITIES_USED = sorted({field.key for name in calculation_names() for field in calculation(name).inputs})
WAYS = st.one_of(
    st.sampled_from(["tool.flutes", "tool.size", "tool.thread", "minutes", "result", "notes", "wrong"]),
    st.sampled_from(QUANTITIES_USED).map(lambda key: f"received.{key}"),
    st.sampled_from(QUANTITIES_USED).map(lambda key: f"wanted.{key}"),
    st.sampled_from(["drop", "heel_drop", "diameter", "land_width", "relief_angle", "relief_form"]).flatmap(
        lambda key: st.sampled_from([f"after.{key}", f"after.{key}.wanted", f"after.{key}.tolerance"])
    ),
    st.sampled_from(calculation_names()).flatmap(
        lambda name: st.sampled_from([f"settings.{name}.{field.key}" for field in calculation(name).inputs])
    ),
)
SHIPPED_FAMILIES = tomllib.loads((shipped_folder() / "families.toml").read_text(encoding="utf-8"))["family"]
FAMILIES = st.sampled_from([*(one["id"] for one in SHIPPED_FAMILIES), "", "no-such"])
EDITS = st.lists(st.tuples(WAYS, ONE_OR_MORE), max_size=14)


def card_of(family: str, units: str, wheel: str, edits: list[tuple[str, str]]) -> Card:
    card = Card(id="2026-11-25-01", family=family, units=units, machine="window-grinder", wheel=wheel)
    for way, text in edits:
        card = edited(card, way, text)
    return card


def no_number_is_strange(value: Any) -> bool:
    if isinstance(value, dict):
        return all(map(no_number_is_strange, value.values()))
    if isinstance(value, list):
        return all(map(no_number_is_strange, value))
    return not isinstance(value, float) or math.isfinite(value)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
@given(FAMILIES, st.sampled_from(["mm", "in", ""]), st.sampled_from(["cup-60", "dish-80", "", "gone"]), EDITS)
def test_no_card_breaks_anything(
    book: Book, family: str, units: str, wheel: str, edits: list[tuple[str, str]]
) -> None:
    card = card_of(family, units, wheel, edits)
    job = work_out(card, book)
    for problem in issues_of(job):
        assert problem.text.endswith((".", "?"))
        edited(card, problem.way, "")
    received_reliefs(job)
    reliefs_after(job)
    verdicts(job)
    assert no_number_is_strange(json.loads(json.dumps(card_data(job, INCH), allow_nan=False)))
    for form in FORMATS:
        page = setup_sheet(job, form, METRIC)
        if form == "text":
            assert page.isascii()
            assert max(map(len, page.splitlines())) <= 80
    lived = history("T", [card], book)
    assert may_last(card) or lived.left is None
    assert lived.left == sharpenings_left(job)
    records([card])
    measurements([card])


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
@given(st.lists(st.tuples(FAMILIES, EDITS), max_size=4))
def test_a_plan_has_every_card_once_and_never_more_changes_than_as_given(
    book: Book, jobs: list[tuple[str, list[tuple[str, str]]]]
) -> None:
    cards = [card_of(family, "mm", "cup-60", edits) for family, edits in jobs]
    cards = [Card(**{**vars(card), "id": str(number)}) for number, card in enumerate(cards)]
    found = plan(cards, book, METRIC)
    assert sorted(turn.card.id for turn in found.turns) == [card.id for card in cards]
    assert found.changes <= found.changes_as_given
