"""Which key does what on which screen: the registry's keys, the user's own in their place, and sentences that name a key."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from itertools import product

from tui.actions import ACTIONS, Action, Where, actions_of

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
        own: the user's keys by the id of an action; they replace that action's keys.
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

    def keys(self, action: Action) -> tuple[str, ...]:
        """The keys of an action, the one to show first."""
        return self.own.get(action.id, action.keys)

    def action(self, where: Where, key: str) -> Action | None:
        """What a key does on a screen, or nothing."""
        if where not in self._by_key:
            # Once for each screen; where two actions had the same key the first would have it.
            self._by_key[where] = {
                pressed: one for one in reversed(actions_of(where)) for pressed in self.keys(one)
            }
        return self._by_key[where].get(key)

    def first_key(self, action: Action) -> str:
        """The key to show for an action, as a person writes it."""
        return shown_key(self.keys(action)[0])


def keymap(own: Mapping[str, tuple[str, ...]]) -> Keymap:
    """The registry with the user's keys in place.

    A name that is no action, and a key that would then do two things on one screen, are left out and
    reported; the rest is taken.

    Args:
        own: keys by the id of an action.

    Example:
        >>> keymap({"calculate": ("ctrl+y",), "opne": ("f3",)}).problems
        ('There is no action opne; did you mean open?',)
    """
    taken: dict[str, tuple[str, ...]] = {}
    problems: list[str] = []
    known = {one.id: one for one in ACTIONS}
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


def _clashes(own: Mapping[str, tuple[str, ...]]) -> Iterator[tuple[str, str]]:
    """The user's keys that already mean something on the same screen, with a sentence for each."""
    current = Keymap(own)
    for wanted, other in product(ACTIONS, ACTIONS):
        shared = [where for where in wanted.where if where in other.where]
        doubled = [key for key in own.get(wanted.id, ()) if key in current.keys(other)]
        if wanted.id != other.id and shared and doubled:
            usual = shown_key(wanted.keys[0])
            yield (
                wanted.id,
                f"{shown_key(doubled[0])} for {wanted.id} already means {other.id} in {shared[0]}; "
                f"{wanted.id} keeps {usual}.",
            )


Keys = Callable[[str], str]
"""Gives the key of an action by its id, as a person reads it."""

_NAMED = re.compile(r"\{([a-z-]+)\}")


def no_keys(action: str) -> str:
    """Stands in where there is no keyboard: the id of the action itself."""
    return action


def with_keys(sentence: str, keys: Keys) -> str:
    """The sentence with the key of each action in place of its id in braces.

    Example:
        >>> with_keys("{more} lists them.", {"more": "F6"}.__getitem__)
        'F6 lists them.'
    """
    return _NAMED.sub(lambda found: keys(found[1]), sentence)
