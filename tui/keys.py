"""Which key does what on which screen: the registry's keys, the user's own in their place, and sentences that name a key."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from itertools import product

from tui.actions import ACTIONS, Action, Where, action, actions_of
from tui.meanings import MEANINGS, Meaning

_SHOWN = {
    "enter": "Enter",
    "escape": "Esc",
    "pageup": "PgUp",
    "pagedown": "PgDn",
    "tab": "Tab",
    "shift+tab": "Shift+Tab",
    "up": "Up",
    "down": "Down",
    "left": "Left",
    "right": "Right",
    "home": "Home",
    "end": "End",
}


def shown_key(key: str) -> str:
    """A key as it is written for a person.

    Example:
        >>> shown_key("ctrl+u"), shown_key("f2"), shown_key("pageup")
        ('Ctrl+U', 'F2', 'PgUp')
    """
    if key in _SHOWN:
        return _SHOWN[key]
    if key.startswith("ctrl+"):
        return f"Ctrl+{key[5:].upper()}"
    return key.upper() if key[:1] == "f" and key[1:].isdigit() else key


@dataclass(frozen=True)
class Keymap:
    """The keys in force.

    Attributes:
        own: the user's keys by the id of a meaning, or of an action that has no key; they replace the usual ones.
        problems: what could not be taken of the user's keys, as sentences.

    Example:
        >>> Keymap().action("book", "f2").id
        'calculate'
    """

    own: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    problems: tuple[str, ...] = ()
    _by_key: dict[Where, dict[str, Action]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )
    _means: dict[str, Meaning] = field(default_factory=dict, init=False, repr=False, compare=False)

    def keys(self, name: str) -> tuple[str, ...]:
        """The keys of a meaning or an action, the one to show first; none where it stands only in the menu."""
        return self.own.get(name) or _usual(name)

    def action(self, where: Where, key: str) -> Action | None:
        """What a key does on a screen, or nothing."""
        if where not in self._by_key:
            self._by_key[where] = {pressed: one for one in actions_of(where) for pressed in self.keys(one.id)}
        return self._by_key[where].get(key)

    def meaning(self, key: str) -> Meaning | None:
        """What a key means everywhere, or nothing."""
        if not self._means:
            self._means.update({pressed: one for one in MEANINGS.values() for pressed in self.keys(one.id)})
        return self._means.get(key)

    def told(self, name: str) -> str:
        """How an action is done, as a person writes it: its key, or its place in the menu.

        Example:
            >>> Keymap().told("save"), Keymap().told("again")
            ('Ctrl+R', 'F8 "the same job again"')
        """
        keys = self.keys(name)
        return shown_key(keys[0]) if keys else f'{self.told("menu")} "{action(name).title}"'


def keymap(own: Mapping[str, tuple[str, ...]]) -> Keymap:
    """The usual keys with the user's own in place.

    Args:
        own: keys by the id of a meaning, or of an action that stands only in the menu.

    Example:
        >>> keymap({"calculate": ("ctrl+y",), "clculate": ("f3",)}).problems
        ('There is no action clculate; did you mean calculate?',)
    """
    taken: dict[str, tuple[str, ...]] = {}
    problems: list[str] = []
    known = _names()
    for name, keys in own.items():
        if name in known:
            taken[name] = keys
            continue
        near = get_close_matches(name, known, n=1)
        problems.append(f"There is no action {name}" + (f"; did you mean {near[0]}?" if near else "."))
    while clash := next(_clashes(taken), None):
        name, said = clash
        del taken[name]
        problems.append(said)
    return Keymap(taken, tuple(problems))


def _names() -> tuple[str, ...]:
    """Everything that can have a key."""
    return tuple(dict.fromkeys([*MEANINGS, *(one.id for one in ACTIONS)]))


def _usual(name: str) -> tuple[str, ...]:
    return MEANINGS[name].keys if name in MEANINGS else ()


def _clashes(own: Mapping[str, tuple[str, ...]]) -> Iterator[tuple[str, str]]:
    """The user's keys that already mean something else, with a sentence for each."""
    current = Keymap(own)
    for wanted, other in product(own, _names()):
        doubled = [key for key in own[wanted] if key in current.keys(other)]
        if wanted != other and doubled:
            usual = _usual(wanted)
            keeps = f"keeps {shown_key(usual[0])}" if usual else "stays in the menu"
            yield wanted, f"{shown_key(doubled[0])} for {wanted} already means {other}; {wanted} {keeps}."


Keys = Callable[[str], str]
"""Gives the key of an action by its id, as a person reads it."""

_NAMED = re.compile(r"\{([a-z-]+)\}")


def no_keys(action: str) -> str:
    """Stands in where there is no keyboard: the id of the action itself."""
    return action


def with_keys(sentence: str, keys: Keys) -> str:
    """The sentence with the key of each action in place of its id in braces.

    Example:
        >>> with_keys("{change} lists them.", {"change": "F6"}.__getitem__)
        'F6 lists them.'
    """
    return _NAMED.sub(lambda found: keys(found[1]), sentence)
