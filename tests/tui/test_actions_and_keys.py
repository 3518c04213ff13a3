"""The registry of actions: complete, reachable by keys that arrive everywhere, and open to the user's own keys."""

from __future__ import annotations

import pytest

from tests.each import each
from tui import screens
from tui.actions import ACTIONS, EVERYWHERE, Action, Where, actions_of, on_screen
from tui.keys import Keymap, keymap
from tui.meanings import MEANINGS, SAFE_KEYS, Meaning
from tui.screens import OPENED_BY_A_KEY, SCREENS
from tui.screens.base_screen import BaseScreen, method_of
from tui.screens.book import BookScreen
from tui.view.bars import key_bar
from tui.view.lines import text_of


def screen_of(where: Where) -> type[BaseScreen]:
    """The class of a screen by its name in the registry."""
    return OF_THE_REGISTRY[where]


OF_THE_REGISTRY: dict[Where, type[BaseScreen]] = {
    found.WHERE: found
    for name in ("BookScreen", *SCREENS, *OPENED_BY_A_KEY)
    if isinstance(found := BookScreen if name == "BookScreen" else getattr(screens, name), type)
    and issubclass(found, BaseScreen)
}


def test_every_screen_of_the_registry_is_there_and_every_screen_is_in_the_registry() -> None:
    assert set(OF_THE_REGISTRY) == set(EVERYWHERE)


@each("where", EVERYWHERE)
def test_each_screen_has_a_method_for_each_of_its_actions(where: Where) -> None:
    screen = screen_of(where)
    assert where == screen.WHERE
    for one in actions_of(where):
        assert one.opens or callable(getattr(screen, method_of(one), None)), f"{where} cannot {one.id}"


@each("where", EVERYWHERE)
def test_no_method_is_without_an_action(where: Where) -> None:
    known = {method_of(one) for one in ACTIONS}
    methods = {name for name in dir(screen_of(where)) if name.startswith("do_")}
    assert methods <= known


@each("where", EVERYWHERE)
def test_no_screen_has_two_actions_of_one_meaning(where: Where) -> None:
    names = [one.id for one in actions_of(where)]
    assert len(names) == len(set(names))


def test_no_key_has_two_meanings() -> None:
    keys = [key for one in MEANINGS.values() for key in one.keys]
    assert len(keys) == len(set(keys))
    assert len(keys) > len(MEANINGS)


@each("one", MEANINGS.values(), lambda one: one.id)
def test_each_meaning_has_a_key_that_arrives_everywhere_and_is_done_somewhere(one: Meaning) -> None:
    assert SAFE_KEYS & set(one.keys) or one.id in ("suspend", "quit")  # The terminal's own keys for these.
    assert [action for action in ACTIONS if action.id == one.id], one.id


@each("one", ACTIONS, lambda one: one.id)
def test_each_action_has_the_keys_of_its_meaning_or_stands_in_the_menu(one: Action) -> None:
    if one.meaning is None:
        assert one.keys == ()
        assert all(
            any(other.id == "menu" for other in actions_of(where)) for where in one.where if where != "menu"
        )
    else:
        assert one.keys == one.meaning.keys


DEEDS = ("start-over", "drop-draft", "drop-old-drafts", "drop-all-drafts", "finish-card")
"""What throws away or writes over."""


@pytest.mark.parametrize("name", DEEDS)
def test_what_throws_away_or_writes_over_has_no_key_and_says_that_it_asks(name: str) -> None:
    deeds = [one for one in ACTIONS if one.id == name]
    assert deeds
    assert all(one.keys == () and "asks first" in one.help for one in deeds)


@each("where", EVERYWHERE)
def test_help_back_and_the_units_are_everywhere_and_whatever_escape_does_another_key_does_too(
    where: Where,
) -> None:
    here = on_screen(where)
    assert {"help", "units", "back"} <= set(here)
    assert Keymap().action(where, "escape") is Keymap().action(where, "f9") is here["back"]
    assert Keymap().action(where, "f1") is Keymap().action(where, "?") is here["help"]


@pytest.mark.parametrize("width", [80, 100, 120, 200])
@each("where", EVERYWHERE)
def test_the_last_line_names_the_same_keys_in_the_same_places_on_every_screen(
    where: Where, width: int
) -> None:
    told = text_of(key_bar(where, Keymap(), width))
    assert told == text_of(key_bar("book", Keymap(), width))
    if width == 80:
        assert told.rstrip() == (
            "?Help F2 Calc F3 Cards F4 Caution F5 mm/in F6 Change F7 Print F8 Menu F9 Back"
        )
    if width >= 100:
        assert told.rstrip() == (
            "? Help  F2 Calculate  F3 Cards  F4 Cautions  F5 mm/in  F6 Change  F7 Print  F8 Menu  F9 Back"
        )


def test_a_key_that_does_nothing_on_a_screen_is_dim_there() -> None:
    roles = {piece.text.strip(): piece.role for piece in key_bar("help", Keymap(), 80)}
    assert roles["F2"] == roles["Calc"] == "quiet"
    assert roles["F3"] == "key"
    assert roles["Cards"] == "plain"


@each("width", range(1, 81))
def test_a_narrow_last_line_leaves_whole_words_out_from_its_middle(width: int) -> None:
    told = text_of(key_bar("book", Keymap(), width))
    assert len(told) == width
    whole = text_of(key_bar("book", Keymap(), 80)).split(" F")
    left = ["?Help", *(f"F{one}" for one in told.split(" F")[1:])] if "?Help" in told else []
    assert all(one.strip() in {"?Help", *(f"F{word}".strip() for word in whole[1:])} for one in left)
    if width >= 24:
        assert "?Help" in told
        assert "F8 Menu" in told
    if width >= 7:
        assert "F9 Back" in told


def test_each_action_is_explained_in_a_sentence() -> None:
    for one in ACTIONS:
        assert one.help.endswith("."), one.id
        assert len(one.help) > 15, one.id


def test_letters_and_digits_are_never_keys_of_actions_because_every_main_screen_takes_typing() -> None:
    for one in ACTIONS:
        assert not [key for key in one.keys if len(key) == 1 and key.isalnum()]


def test_own_keys_replace_the_usual_ones_of_a_meaning_on_every_screen() -> None:
    own = keymap({"calculate": ("ctrl+b",), "glossary": ("ctrl+y",)})
    assert own.problems == ()
    for where in ("book", "entry", "calculator", "card"):
        assert own.action(where, "f2") is None
        found = own.action(where, "ctrl+b")
        assert found is not None
        assert found.id == "calculate"
    assert "Ctrl+B Calc" in text_of(key_bar("book", own, 90))
    found = own.action("help", "ctrl+y")
    assert found is not None
    assert found.id == "glossary"


def test_a_key_that_means_something_else_already_is_refused_and_said() -> None:
    own = keymap({"calculate": ("f4",), "glossary": ("f9",)})
    assert own.problems == (
        "F4 for calculate already means cautions; calculate keeps F2.",
        "F9 for glossary already means back; glossary stays in the menu.",
    )
    found = own.action("book", "f2")
    assert found is not None
    assert found.id == "calculate"


def test_two_meanings_may_change_places() -> None:
    own = keymap({"calculate": ("f5",), "units": ("f2",)})
    assert own.problems == ()
    found = own.action("book", "f5")
    assert found is not None
    assert found.id == "calculate"


def test_an_unknown_action_is_reported_with_the_nearest_name() -> None:
    assert keymap({"calcluate": ("f3",)}).problems == (
        "There is no action calcluate; did you mean calculate?",
    )
