"""Rules: what holds for many tools is said once, and an entry takes from the nearest rule what it does not say itself.

A rule names the families that it is for, and may say which of their tools, by words of their names and by what they cut.
Of several that give the same quantity the one that says most about the tool is taken; of the shop's and the shipped ones the
shop's. What an entry says itself goes before every rule.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field, replace
from typing import NamedTuple, cast

from library.book.model import ByRule, Entry, Layer, Value
from library.book.search_text import plain
from library.issue import NOWHERE, Place

Words = tuple[str, ...]


@dataclass(frozen=True)
class Rule:
    """Values that hold for many entries.

    Attributes:
        id: its name in other files.
        title: the tools that it is for, as it is said behind "the rule for".
        family: ids of the families that it is for.
        when: words in the names of the entries that it is for; nothing where it is for all of them.
        leaves_out: words in the names of entries that it is not for.
        work_material: what the entries cut that it is for; nothing where that does not matter.
        iso_513: letters of the groups of what they cut; nothing where that does not matter.
        values: by quantity.
        extra: the shop's own keys beginning with ``x-``, untouched.
        layer: the highest layer that has a part of it.
        place: where it begins in that layer's file.
    """

    id: str
    title: str
    family: Words = ()
    when: Words | None = None
    leaves_out: Words = ()
    work_material: Words | None = None
    iso_513: Words | None = None
    values: Mapping[str, Value] = field(default_factory=dict)
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shipped"
    place: Place = NOWHERE


class Scope(NamedTuple):
    """What a rule is for and what it gives, as far as that is known without its numbers.

    Attributes:
        id: of the rule.
        family: as in ``Rule``, and so are the next four.
        gives: the layer of each value by its quantity.
    """

    id: str
    family: Words
    when: Words | None
    leaves_out: Words
    work_material: Words | None
    iso_513: Words | None
    gives: Mapping[str, Layer]

    @property
    def rank(self) -> int:
        """How much it says about the tools that it is for; a name says more than a material, that more than a group.

        Example:
            >>> steel = Scope("a", ("tap",), None, (), ("plain-steel",), None, {})
            >>> steel.rank, steel._replace(when=("hand tap",)).rank
            (2, 6)
        """
        said = (self.iso_513, self.work_material, self.when)
        return sum(1 << at for at, one in enumerate(said) if one is not None)


def scope_of(rule: Rule) -> Scope:
    """What is known of a rule without its numbers."""
    gives = {key: value.layer for key, value in rule.values.items()}
    return Scope(rule.id, rule.family, rule.when, rule.leaves_out, rule.work_material, rule.iso_513, gives)


def scope_text(rule: Rule) -> str:
    """The same as one line, to be kept in a row of the list.

    Example:
        >>> scope_text(Rule("a", "taps", ("tap",)))
        '[["tap"], null, [], null, null, {}]'
    """
    return json.dumps(scope_of(rule)[1:])


def scope_in(name: str, text: str) -> Scope | None:
    """What ``scope_text`` wrote of a rule; nothing where that is not what stands there.

    Example:
        >>> scope_in("a", '[["tap"], null, [], null, null, {}]').family
        ('tap',)
    """
    with suppress(ValueError, TypeError):
        family, when, leaves_out, material, group, gives = json.loads(text)
        some = (None if one is None else tuple(map(str, one)) for one in (when, material, group))
        first, second, third = some
        return Scope(name, tuple(family), first, tuple(leaves_out), second, third, dict(gives))
    return None


class Rules:
    """The rules of a book, ready to be laid under its entries.

    Args:
        scopes: of all rules, in the order of the book.
        groups: the letter of ISO 513 by the id of a work material.
        load: gives the values of a rule by its id; none where it is gone.
    """

    def __init__(
        self,
        scopes: Iterable[Scope],
        groups: Mapping[str, str],
        load: Callable[[str], Rule | None],
    ) -> None:
        self._groups = groups
        self._load = load
        self._of: dict[str, list[Scope]] = {}
        for scope in scopes:
            for family in dict.fromkeys(scope.family):
                self._of.setdefault(family, []).append(scope)

    def over(self, entry: Entry) -> Entry:
        """An entry with what the rules give it beside its own values.

        Quantities that a rule gives stand behind the others, in the order of the rules, whoever gave them in the end:
        where the shop puts a value of its own there, it stays where it was.

        Args:
            entry: as it was read.
        """
        fitting = self.fitting(entry)
        if not fitting:
            return entry
        keys = dict.fromkeys(key for scope in fitting for key in scope.gives)
        values = {key: value for key, value in entry.values.items() if key not in keys}
        for key in keys:
            found = self._with(entry.values.get(key), key, fitting)
            if found is not None:
                values[key] = found
        return replace(entry, values=values)

    def fitting(self, entry: Entry) -> list[Scope]:
        """The rules that are for an entry, in the order of the book; none where nobody can tell."""
        own = self._of.get(entry.family, ())
        if not own or entry.unruled:
            return []
        return list(_fitting(own, entry, self._groups.get(entry.work_material, "")))

    def _with(self, own: Value | None, key: str, fitting: Sequence[Scope]) -> Value | None:
        if own is not None and (own.layer == "shipped" or own.replaces is not None):
            return own
        shop, shipped = (self._given(nearest(fitting, key, layer), key) for layer in _LAYERS)
        given = replace(shop, replaces=shop.replaces or shipped) if shop is not None else shipped
        return given if own is None else replace(own, replaces=given)

    def _given(self, scope: Scope | None, key: str) -> Value | None:
        rule = self._load(scope.id) if scope is not None else None
        value = rule.values.get(key) if rule is not None else None
        return replace(value, by_rule=ByRule(rule.id, rule.title)) if rule and value else None


_LAYERS: tuple[Layer, ...] = ("shop", "shipped")


def _fitting(scopes: Iterable[Scope], entry: Entry, group: str) -> Iterator[Scope]:
    names = f" {plain(' '.join((entry.title, entry.id, *entry.synonyms)))} "

    def is_named(words: Words) -> bool:
        return any(f" {plain(word)} " in names for word in words)

    for scope in scopes:
        if (
            (scope.work_material is None or entry.work_material in scope.work_material)
            and (scope.iso_513 is None or group in scope.iso_513)
            and (scope.when is None or is_named(scope.when))
            and not is_named(scope.leaves_out)
        ):
            yield scope


def nearest(fitting: Sequence[Scope], key: str, layer: Layer) -> Scope | None:
    """Of the rules that are for an entry the one that says most about it and gives a quantity in a layer.

    Of two that say equally much the first is taken, and ``heelclear check`` tells of them.
    """
    giving = [scope for scope in fitting if scope.gives.get(key) == layer]
    return max(giving, key=lambda scope: scope.rank, default=None)


def rules_from(
    rows: Iterable[tuple[str, str]], groups: Mapping[str, str], make: Callable[[str], object]
) -> Rules:
    """The rules of a book as its list has them, whose values are read when an entry wants them.

    Args:
        rows: id and scope, as ``scope_text`` writes it, of each rule.
        groups: the letter of ISO 513 by the id of a work material.
        make: the rule of an id; raises ``KeyError`` where it is gone.
    """
    scopes = [scope for name, text in rows if (scope := scope_in(name, text)) is not None]

    def load(name: str) -> Rule | None:
        with suppress(KeyError):
            return cast(Rule, make(name))
        return None

    return Rules(scopes, groups, load)
