"""Looks: colour is never the only sign, and without colour there is none."""

from __future__ import annotations

import pytest

from tui import terminal
from tui.theme import theme
from tui.view.lines import Role

STATES: tuple[Role, ...] = ("pass", "watch", "stop", "chosen", "cursor")


def test_without_colour_no_role_has_any() -> None:
    assert all(style.color is None and style.bgcolor is None for style in theme(colour=False).styles.values())


def test_with_and_without_colour_the_same_roles_have_a_style() -> None:
    assert theme(colour=True).styles.keys() == theme(colour=False).styles.keys()


def test_only_the_sixteen_colours_of_the_terminal_are_used() -> None:
    for style in theme(colour=True).styles.values():
        assert style.color is None or (style.color.number is not None and style.color.number < 16)


@pytest.mark.parametrize("role", STATES)
def test_what_must_stand_out_does_so_without_colour(role: Role) -> None:
    style = theme(colour=False).styles[role]
    assert style.bold or style.reverse


@pytest.mark.parametrize(
    ("variables", "unicode"),
    [
        ({"LANG": "en_GB.UTF-8"}, True),
        ({"LANG": "de_DE.utf8"}, True),
        ({"LANG": "C.UTF-8", "LC_CTYPE": "C.UTF-8"}, True),
        ({"LC_ALL": "C", "LANG": "en_GB.UTF-8"}, False),
        ({"LANG": "C", "LC_CTYPE": "C.UTF-8"}, False),
        ({"LC_CTYPE": "C.UTF-8"}, False),
        ({"LANG": "de_DE@euro"}, False),
        ({"LC_CTYPE": "fr_FR.UTF-8@latin", "LANG": "C"}, True),
        ({}, False),
    ],
)
def test_what_the_locale_says_of_unicode(variables: dict[str, str], unicode: bool) -> None:
    assert terminal.has_unicode(variables, "utf-8") is unicode
    assert not terminal.has_unicode(variables, "latin-1")


@pytest.mark.parametrize("term", ["dumb", "unknown", ""])
def test_a_terminal_that_cannot_move_its_cursor_is_refused_in_a_sentence(term: str) -> None:
    assert "heelclear list" in terminal.refusal({"TERM": term}, is_terminal=True)
    assert "heelclear calc" in terminal.refusal({"TERM": "xterm"}, is_terminal=False)
