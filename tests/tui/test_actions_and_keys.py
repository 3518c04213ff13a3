"""The registry of actions: complete, reachable by keys that arrive everywhere, and open to the user's own keys."""

from __future__ import annotations

import pytest

from tui import screens
from tui.actions import ACTIONS, EVERYWHERE, SAFE_KEYS, Action, Where, action, actions_of
from tui.keys import Keymap, keymap
from tui.screens import OPENED_BY_A_KEY, SCREENS
from tui.screens.base_screen import BaseScreen, method_of
from tui.screens.book import BookScreen


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


@pytest.mark.parametrize("where", EVERYWHERE)
def test_each_screen_has_a_method_for_each_of_its_actions(where: Where) -> None:
    screen = screen_of(where)
    assert where == screen.WHERE
    for one in actions_of(where):
        assert one.opens or callable(getattr(screen, method_of(one), None)), f"{where} cannot {one.id}"


@pytest.mark.parametrize("where", EVERYWHERE)
def test_no_method_is_without_an_action(where: Where) -> None:
    known = {method_of(one) for one in ACTIONS}
    methods = {name for name in dir(screen_of(where)) if name.startswith("do_")}
    assert methods <= known


@pytest.mark.parametrize("where", EVERYWHERE)
def test_no_key_means_two_things_on_one_screen(where: Where) -> None:
    keys = [key for one in actions_of(where) for key in one.keys]
    assert len(keys) == len(set(keys))


@pytest.mark.parametrize("one", ACTIONS, ids=lambda one: one.id)
def test_each_action_has_a_key_that_arrives_everywhere_or_stands_in_the_list_of_actions(one: Action) -> None:
    listed = all(
        any(a.id == "actions" for a in actions_of(where)) for where in ("book", "entry", "calculator")
    )
    assert SAFE_KEYS & set(one.keys) or (listed and {"book", "entry", "calculator"} <= set(one.where))


@pytest.mark.parametrize("where", EVERYWHERE)
def test_whatever_escape_does_another_key_does_too(where: Where) -> None:
    by_escape = Keymap().action(where, "escape")
    assert by_escape is not None
    others = [key for one in actions_of(where) if one.title == by_escape.title for key in one.keys]
    assert SAFE_KEYS & set(others) - {"escape"}


def test_each_action_is_explained_in_a_sentence() -> None:
    for one in ACTIONS:
        assert one.help.endswith("."), one.id
        assert len(one.help) > 15, one.id


def test_letters_and_digits_are_never_keys_of_actions_because_every_main_screen_takes_typing() -> None:
    for one in ACTIONS:
        assert not [key for key in one.keys if len(key) == 1 and key.isalnum()]


def test_own_keys_replace_the_usual_ones() -> None:
    own = keymap({"calculate": ("f3",), "glossary": ("ctrl+y",)})
    assert own.action("book", "f2") is None
    found = own.action("book", "ctrl+y")
    assert found is not None
    assert found.id == "glossary"


def test_a_clash_is_reported_and_the_usual_key_stays() -> None:
    own = keymap({"calculate": ("f5",)})
    assert own.problems == ("F5 for calculate already means units in book; calculate keeps F2.",)
    found = own.action("book", "f2")
    assert found is not None
    assert found.id == "calculate"


def test_the_same_key_on_two_screens_is_no_clash() -> None:
    assert keymap({"keep": ("f2",)}).problems == ()
    assert action("look").keys == ("f2",)


def test_an_unknown_action_is_reported_with_the_nearest_name() -> None:
    assert keymap({"calcluate": ("f3",)}).problems == (
        "There is no action calcluate; did you mean calculate?",
    )
