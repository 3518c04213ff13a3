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


PALETTES = {
    "xterm": {0: "000000", 1: "cd0000", 10: "00ff00", 15: "ffffff"},
    "VGA": {0: "000000", 1: "aa0000", 10: "55ff55", 15: "ffffff"},
    "Windows": {0: "0c0c0c", 1: "c50f1f", 10: "16c60c", 15: "f2f2f2"},
    "Tango": {0: "2e3436", 1: "cc0000", 10: "8ae234", 15: "eeeeec"},
}
"""The colours of usual terminals by their number, as their documents list them."""

READABLE = 4.5
"""The contrast of text that WCAG 2.1 asks for, success criterion 1.4.3."""


def luminance(colour: str) -> float:
    """Relative luminance, WCAG 2.1."""
    parts = [int(colour[place : place + 2], 16) / 255 for place in (0, 2, 4)]
    red, green, blue = (
        part / 12.92 if part <= 0.03928 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


@pytest.mark.parametrize("palette", PALETTES)
def test_a_colour_reads_on_its_own_ground_whatever_the_terminal_has(palette: str) -> None:
    colours = PALETTES[palette]
    for role, style in theme(colour=True).styles.items():
        if style.color is None:
            continue
        assert style.bgcolor is not None, role
        both = sorted(luminance(colours[one.number or 0]) for one in (style.color, style.bgcolor))
        assert (both[1] + 0.05) / (both[0] + 0.05) >= READABLE, role


def test_a_state_stands_out_by_its_ground_and_what_is_secondary_is_dim() -> None:
    styles = theme(colour=False).styles
    assert all(styles[role].reverse and styles[role].bold for role in ("stop", "watch"))
    assert styles["quiet"].dim
    assert not styles["plain"].dim


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
