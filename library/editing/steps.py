"""The four elementary edits of a file of tables, and what each does to the data.

Nothing here looks at text. What is computed here is what the changed text must mean, so it is kept
apart from the code that changes the text.
"""

from __future__ import annotations

import math
import struct
from collections.abc import Mapping
from dataclasses import dataclass

from library.editing.document import Data, EditRefused

TOP = ""
"""The name of the array, and of the table, for keys that stand above the first table."""


@dataclass(frozen=True)
class SetKey:
    """Give one key of one table a value, new or instead of another.

    Attributes:
        array: the kind of table, such as ``entry``.
        id: which of them.
        key: the key.
        value: strings, numbers, lists and tables, as TOML has them.
    """

    array: str
    id: str
    key: str
    value: object


@dataclass(frozen=True)
class DropKey:
    """Take one key out of one table."""

    array: str
    id: str
    key: str


@dataclass(frozen=True)
class AddTable:
    """Add one table at the end; its content holds its ``id``."""

    array: str
    content: Mapping[str, object]

    @property
    def id(self) -> str:
        """The id of the new table."""
        return str(self.content["id"])


@dataclass(frozen=True)
class DropTable:
    """Take one table out."""

    array: str
    id: str


Step = SetKey | DropKey | AddTable | DropTable


def applied(data: Data, step: Step) -> Data:
    """The data after the step; the data given stay as they are.

    Raises:
        EditRefused: when the step does not fit: no such table, or two of them.

    Example:
        >>> applied({"entry": [{"id": "a"}]}, SetKey("entry", "a", "title", "A tap"))
        {'entry': [{'id': 'a', 'title': 'A tap'}]}
    """
    if isinstance(step, AddTable):
        if numbers(data, step.array, step.id):
            raise EditRefused(f"There is a {step.array} '{step.id}' already; choose another id.")
        return data | {step.array: [*tables(data, step.array), dict(step.content)]}
    if step.array == TOP:
        return _with(data, step)
    number = number_of(data, step.array, step.id)
    old = tables(data, step.array)
    new = [] if isinstance(step, DropTable) else [_with(old[number], step)]
    rest = [*old[:number], *new, *old[number + 1 :]]
    return data | {step.array: rest} if rest else {key: data[key] for key in data if key != step.array}


def _with(table: Data, step: SetKey | DropKey | DropTable) -> Data:
    if isinstance(step, SetKey):
        return table | {step.key: step.value}
    return {key: value for key, value in table.items() if not isinstance(step, DropKey) or key != step.key}


def tables(data: Mapping[str, object], array: str) -> list[Data]:
    """The tables of one kind; none where the key is missing or something else."""
    found = data.get(array, [])
    return found if isinstance(found, list) and all(isinstance(one, dict) for one in found) else []


def numbers(data: Mapping[str, object], array: str, name: str) -> list[int]:
    """Which of the tables have that id, counted from 0."""
    return [number for number, table in enumerate(tables(data, array)) if table.get("id") == name]


def number_of(data: Mapping[str, object], array: str, name: str) -> int:
    """Which table has that id.

    Raises:
        EditRefused: when none has, or more than one.
    """
    found = numbers(data, array, name)
    if len(found) == 1:
        return found[0]
    if found:
        raise EditRefused(
            f"There are {len(found)} tables [[{array}]] with the id '{name}' in one file; give all but one another id "
            "in your editor, then try again."
        )
    raise EditRefused(f"There is no {array} '{name}' any more; look at the book again.")


def same(one: object, other: object) -> bool:
    """Whether two pieces of data are the same in the strict sense: 1 is neither 1.0 nor true, and nan is nan.

    Example:
        >>> same({"a": [1]}, {"a": [1]}), same(1, 1.0), same(1, True), same(math.nan, math.nan)
        (True, False, False, True)
    """
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        return one.keys() == other.keys() and all(same(one[key], other[key]) for key in one)
    if isinstance(one, list | tuple) and isinstance(other, list | tuple):
        return len(one) == len(other) and all(map(same, one, other))
    if type(one) is not type(other):
        return False
    if isinstance(one, float) and isinstance(other, float):
        return struct.pack("d", one) == struct.pack("d", other) or (math.isnan(one) and math.isnan(other))
    return one == other
