"""The changes of a book that a person can ask for, as frozen objects."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class SetValue:
    """Change fields of one recommended value.

    Attributes:
        entry: the id of the entry.
        key: the quantity, such as ``relief_angle``.
        fields: what to change: ``low``, ``usual``, ``high``, ``source``, ``place``, ``note`` and the like, each as
            it shall stand in the file. A field that is ``None`` is taken out; one that is not named stays
            as it is in the shop's file or, where that has no such value, in the shipped one or in the rule.
        rule: the id of the rule that gives the value now; empty where none does.
    """

    entry: str
    key: str
    fields: Mapping[str, object]
    rule: str = ""


@dataclass(frozen=True)
class RemoveValue:
    """Take a value out of the shop's file: back to the shipped one or to that of a rule, where there is one.

    Attributes:
        entry: the id of the entry.
        key: the quantity.
        rule: the id of the rule that gives the value then; empty where none does.
    """

    entry: str
    key: str
    rule: str = ""


@dataclass(frozen=True)
class SetText:
    """Change a key of an entry that is no recommended value: title, notes, cautions, synonyms, x-keys.

    Attributes:
        entry: the id of the entry.
        key: the key.
        value: text, or a list of texts.
    """

    entry: str
    key: str
    value: object


@dataclass(frozen=True)
class AddEntry:
    """Add a new entry to the shop's book.

    Attributes:
        id: its id, which no entry may have yet.
        family: the id of its family; it also chooses the file.
        title: as shown.
        content: its other keys, each as it shall stand in the file.
    """

    id: str
    family: str
    title: str
    content: Mapping[str, object] = field(default_factory=dict)


@dataclass(frozen=True)
class CopyEntry:
    """Copy an entry, with all that both layers say of it, under a new id.

    Attributes:
        entry: the id of the one to copy.
        new_id: which no entry may have yet.
        title: of the copy.
        rules: the ids of the rules that give values of the entry, by quantity; the copy has these values itself, as
            a rule may go by the name.
    """

    entry: str
    new_id: str
    title: str
    rules: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class RenameEntry:
    """Give one of the shop's own entries another id."""

    entry: str
    new_id: str


@dataclass(frozen=True)
class RemoveEntry:
    """Take an entry out of the shop's book; of a shipped one only the shop's changes go."""

    entry: str


@dataclass(frozen=True)
class AddFamily:
    """Add a new family of tools.

    Attributes:
        id: its id, which no family may have yet.
        title: as shown, in the plural.
        content: its other keys: ``like``, ``kind``, ``surfaces``, ``what``, ``synonyms``, ``cautions`` and the texts.
    """

    id: str
    title: str
    content: Mapping[str, object] = field(default_factory=dict)


@dataclass(frozen=True)
class SetTable:
    """Change keys of a table that is no entry: a machine, a wheel, a set-up, a symptom, a thread; or add a new one.

    Attributes:
        array: the kind of table, such as ``machine``.
        id: which of them.
        fields: what to change, each as it shall stand in the file; a key that is ``None`` is taken out. Of a mapping,
            such as the graduations, what it holds is laid over what stands there.
        is_new: whether there is none of that id yet.
        covers: whether something that is in no book has that id, a standard thread, which the shop's table covers.
    """

    array: str
    id: str
    fields: Mapping[str, object]
    is_new: bool = False
    covers: bool = False


Change = (
    SetValue | RemoveValue | SetText | AddEntry | CopyEntry | RenameEntry | RemoveEntry | AddFamily | SetTable
)
