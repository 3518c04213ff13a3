"""Changing one thing on a card."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.cards.editing import LONGEST_LINE, CardEditRefused, edited, readings_of
from library.cards.model import Card, Inspection, Setting, Wanted


@pytest.mark.parametrize(
    ("way", "text", "found"),
    [
        ("family", "tap", lambda card: card.family == "tap"),
        ("notes", "one\r\ntwo", lambda card: card.notes == "one\ntwo"),
        ("tool.flutes", " 4 ", lambda card: card.tool.flutes == "4"),
        ("received.drop", "0.2 mm; 0.3 mm", lambda card: card.received == {"drop": ("0.2 mm", "0.3 mm")}),
        ("received.drop", "", lambda card: card.received == {}),
        ("wanted.rake_angle", "5 deg", lambda card: card.wanted == {"rake_angle": Wanted("5 deg")}),
        ("wanted.rake_angle.reason", "soft", lambda card: card.wanted["rake_angle"].reason == "soft"),
        ("settings.relief-drop.land_width", "3 mm", lambda card: card.settings == {
            "relief-drop": Setting({"land_width": "3 mm"})}),
        ("settings.relief-drop", "skip", lambda card: card.settings["relief-drop"].skipped),
        ("after.drop", "0.2 mm", lambda card: card.after == {"drop": Inspection(("0.2 mm",))}),
        ("after.drop.tolerance", "0.02 mm", lambda card: card.after["drop"].tolerance == "0.02 mm"),
        ("after.drop.wanted", "0.28 mm", lambda card: card.after["drop"].wanted == "0.28 mm"),
    ],
)  # fmt: skip
def test_a_text_goes_to_the_place_it_was_meant_for(way: str, text: str, found: object) -> None:
    assert callable(found)
    assert found(edited(Card(), way, text))


def test_an_empty_text_takes_away_what_stood_there() -> None:
    card = edited(edited(Card(), "settings.relief-drop.land_width", "3 mm"), "after.drop", "0.2 mm")
    card = edited(edited(card, "settings.relief-drop.land_width", ""), "after.drop", "")
    assert card == Card()


def test_taking_a_changed_value_away_brings_the_books_back() -> None:
    card = Card(wanted={"rake_angle": Wanted("5 deg", "5 deg", "shop")})
    changed = edited(edited(card, "wanted.rake_angle", "7 deg"), "wanted.rake_angle.reason", "softer")
    assert changed.wanted["rake_angle"].changed
    assert edited(changed, "wanted.rake_angle", "") == card


@pytest.mark.parametrize(
    ("way", "needle"),
    [
        ("notse", "notes"),
        ("tool.flute", "tool.flutes"),
        ("received.relief_angel", "received.relief_angle"),
        ("after.drop.tolerence", "after.drop.tolerance"),
        ("settings.relief-drip.land_width", "settings.relief-drop"),
        ("settings.relief-drop.land_with", "land_width"),
        ("status", ""),
        ("extra.x", ""),
        ("received", ""),
        ("tool.name.more", "tool.name"),
    ],
)
def test_a_place_that_no_card_has_is_refused_with_the_nearest_one(way: str, needle: str) -> None:
    with pytest.raises(CardEditRefused, match="no place") as caught:
        edited(Card(), way, "x")
    assert needle in str(caught.value)


def test_a_line_too_long_to_be_written_is_refused_and_a_long_note_is_folded() -> None:
    with pytest.raises(CardEditRefused, match="601 characters"):
        edited(Card(), "result", "x" * (LONGEST_LINE + 1))
    note = "one two three " * 200
    folded = edited(Card(), "notes", note).notes
    assert max(map(len, folded.split("\n"))) <= LONGEST_LINE
    assert folded.replace("\n", "") == note


@given(
    st.lists(
        st.sampled_from(["0.28 mm", "1/8 in", "3 deg 30 min", "0,28 mm", "40 thou"]), min_size=2, max_size=6
    )
)
def test_readings_of_several_flutes_are_parted_and_a_decimal_comma_is_left_for_a_complaint(
    parts: list[str],
) -> None:
    assert readings_of(", ".join(parts)) == tuple(parts)
    assert readings_of("; ".join(parts)) == tuple(parts)


def test_a_gap_between_two_readings_stays_a_gap() -> None:
    assert readings_of("0.28 mm, , 0.3 mm") == ("0.28 mm", "", "0.3 mm")
    assert readings_of("  ") == ()
