"""Three-way merge of a file that two people changed: what each changed, key by key, and the conflicts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from library.editing.document import Data, EditRefused
from library.editing.steps import TOP, AddTable, DropKey, DropTable, SetKey, Step, same, tables
from library.editing.wording import told, words
from library.sanitize import sanitize

Side = Literal["mine", "theirs"]


@dataclass(frozen=True)
class Conflict:
    """One key that both changed, each to something else; a person has to choose.

    Attributes:
        array: the kind of table, such as ``entry``; empty for keys above the first table.
        id: which of them.
        key: the key; empty when one took the whole table out and the other changed it.
        base: what both began with; nothing when there was none.
        mine: what is about to be saved; nothing when it is to be taken out.
        theirs: what is in the file now; nothing when it was taken out.
    """

    array: str
    id: str
    key: str
    base: object
    mine: object
    theirs: object

    @property
    def sentence(self) -> str:
        """The three values, in words."""
        what = (
            f"{words(self.key)} of '{sanitize(self.id)}'"
            if self.key and self.id
            else words(self.key or self.id)
        )
        was, mine, theirs = (
            "nothing" if value is None else f"({sanitize(told(value))})"
            for value in (self.base, self.mine, self.theirs)
        )
        return f"Both of you changed {what}: it was {was}, yours here is {mine}, and somebody else saved {theirs}."


@dataclass(frozen=True)
class Choice:
    """A person's answer to one conflict; it holds only while the conflict is still the one that was shown."""

    conflict: Conflict
    side: Side


@dataclass(frozen=True)
class Merge:
    """What has to be done to their file so that it holds both people's changes.

    Attributes:
        steps: on their file, in order.
        conflicts: what is left to ask; until then neither side is changed there.
    """

    steps: tuple[Step, ...]
    conflicts: tuple[Conflict, ...]


def three_way(base: Data, mine: Data, theirs: Data, choices: Sequence[Choice] = ()) -> Merge:
    """Compare two changed states of a file with the one that both came from.

    Args:
        base: the data that both began with.
        mine: the data that are to be saved.
        theirs: the data that are in the file now.
        choices: answers to conflicts that were met before.

    Returns:
        The steps that bring my changes into their file, and the conflicts that no choice answers.

    Raises:
        EditRefused: when tables without an id, or with the same one, were changed, so that nobody can tell
            which is which.

    Example:
        >>> merge = three_way({"a": 1, "b": 1}, {"a": 2, "b": 1}, {"a": 1, "b": 3})
        >>> merge.steps, merge.conflicts
        ((SetKey(array='', id='', key='a', value=2),), ())
    """
    steps: list[Step] = []
    conflicts: list[Conflict] = []
    for found in _differences(base, mine, theirs):
        if not isinstance(found, Conflict):
            steps.append(found)
            continue
        side = next((choice.side for choice in choices if choice.conflict == found), None)
        if side is None:
            conflicts.append(found)
        elif side == "mine":
            steps.append(_mine(found))
    return Merge(tuple(steps), tuple(conflicts))


def changes_between(now: Data, wanted: Data) -> tuple[Step, ...]:
    """The steps that turn one state of a file into another; the order of tables does not count."""
    return three_way(now, wanted, now).steps


def _differences(base: Data, mine: Data, theirs: Data) -> Iterator[Step | Conflict]:
    arrays = [
        key for key in _keys(base, mine, theirs) if any(tables(data, key) for data in (base, mine, theirs))
    ]
    sides = [{key: data[key] for key in data if key not in arrays} for data in (base, mine, theirs)]
    yield from _by_key(TOP, "", *sides)
    for array in arrays:
        yield from _by_table(array, base, mine, theirs)


def _by_table(array: str, base: Data, mine: Data, theirs: Data) -> Iterator[Step | Conflict]:
    if same(mine.get(array), base.get(array)) or same(mine.get(array), theirs.get(array)):
        return
    named = [_named(array, data) for data in (base, mine, theirs)]
    for name in _keys(*named):
        yield from _one_table(array, name, *(side.get(name) for side in named))


def _one_table(
    array: str, name: str, base: Data | None, mine: Data | None, theirs: Data | None
) -> Iterator[Step | Conflict]:
    if same(mine, base) or same(mine, theirs):
        return
    if mine is not None and theirs is not None:
        yield from _by_key(array, name, base or {}, mine, theirs)
    elif mine is not None and base is None:
        yield AddTable(array, mine)
    elif mine is None and same(theirs, base):
        yield DropTable(array, name)
    else:
        yield Conflict(array, name, "", base, mine, theirs)


def _by_key(array: str, name: str, base: Data, mine: Data, theirs: Data) -> Iterator[Step | Conflict]:
    for key in _keys(base, mine, theirs):
        was, want, have = base.get(key), mine.get(key), theirs.get(key)
        if same(want, was) or same(want, have):
            continue
        conflict = Conflict(array, name, key, was, want, have)
        yield _mine(conflict) if same(have, was) else conflict


def _mine(conflict: Conflict) -> Step:
    """The step that makes my side of it hold."""
    array, name, key, mine = conflict.array, conflict.id, conflict.key, conflict.mine
    if key or array == TOP:
        return DropKey(array, name, key) if mine is None else SetKey(array, name, key, mine)
    return AddTable(array, mine) if isinstance(mine, dict) else DropTable(array, name)


def _named(array: str, data: Data) -> dict[str, Data]:
    found: dict[str, Data] = {}
    for table in tables(data, array):
        name = table.get("id")
        if not isinstance(name, str) or name in found:
            raise EditRefused(
                f"A [[{sanitize(array)}]] has no id, or one that another has too, so the two states of the file cannot be "
                "put together. Give each its own id in your editor, then try again."
            )
        found[name] = table
    return found


def _keys(*sides: Iterable[str]) -> list[str]:
    """The keys of all sides, each once, in order."""
    return list(dict.fromkeys(key for side in sides for key in side))
