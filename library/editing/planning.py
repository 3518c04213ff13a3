"""Work out the plan of a change: which file it goes to, and what would be written there."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from library.book.values import KEYS
from library.editing import locate
from library.editing.changes import (
    AddEntry,
    AddFamily,
    Change,
    CopyEntry,
    RemoveEntry,
    RemoveValue,
    RenameEntry,
    SetTable,
    SetText,
    SetValue,
)
from library.editing.document import EditRefused
from library.editing.plan import Plan, replanned
from library.editing.steps import AddTable, DropKey, DropTable, SetKey, Step
from library.editing.typed_tables import laid_over
from library.editing.wording import told, words
from library.errors import named
from library.files.safe_write import read_for_change
from library.sanitize import sanitize

OVERRIDES = "changes.toml"
"""The shop's file for what it changes of shipped entries."""


def plan(change: Change, shop: Path, shipped: Path | None = None) -> Plan:
    """Work out what saving a change would write, without writing anything.

    Args:
        change: what the person asked for.
        shop: the shop's folder, which need not be there yet.
        shipped: the folder of the shipped data, if there is any.

    Returns:
        The plan, proved: the new text means what it must, and all other lines are as they were.

    Raises:
        EditRefused: when the change cannot be made.
        SaveError: when the file cannot be read.
    """
    return _Planner(shop, shipped).plan(change)


class _Planner:
    def __init__(self, shop: Path, shipped: Path | None) -> None:
        self.shop = shop
        self.shipped = shipped

    def plan(self, change: Change) -> Plan:
        made: Plan
        match change:
            case SetValue():
                made = self._set_value(change)
            case SetText():
                made = self._set_text(change)
            case RemoveValue():
                made = self._remove_value(change)
            case AddEntry():
                made = self._add_entry(change)
            case CopyEntry():
                made = self._copy_entry(change)
            case RenameEntry():
                made = self._rename_entry(change)
            case RemoveEntry():
                made = self._remove_entry(change)
            case AddFamily():
                made = self._add_family(change)
            case SetTable():
                made = self._set_table(change)
        return made

    def _own(self, entry: str) -> locate.Found | None:
        return locate.find(self.shop, "entry", entry)

    def _shipped(self, array: str, name: str) -> Mapping[str, object] | None:
        found = locate.find(self.shipped, array, name) if self.shipped else None
        return found.table if found else None

    def _known(self, entry: str) -> tuple[locate.Found | None, Mapping[str, object] | None]:
        """The shop's own part of an entry, and the shipped one; one of them there must be."""
        own, shipped = self._own(entry), self._shipped("entry", entry)
        if own is None and shipped is None:
            raise EditRefused(f"There is no entry '{sanitize(entry)}' any more; look at the book again.")
        return own, shipped

    def _set_value(self, change: SetValue) -> Plan:
        own, shipped = self._known(change.entry)
        old = own.table.get(change.key) if own else None
        if old is None and shipped is not None:
            old = shipped.get(change.key)
        if old is None and change.rule:
            old = self._of_rule(change.rule, change.key)
        fields = dict(old) if isinstance(old, Mapping) else {} if old is None else {"usual": old}
        fields |= change.fields
        value = {key: fields[key] for key in _ordered(fields) if fields[key] is not None}
        if not value:
            raise EditRefused(f"{words(change.key)} would be empty; remove the value instead.")
        return self._set(own, change.entry, change.key, value)

    def _of_rule(self, rule: str, key: str) -> object:
        return locate.of_rule(rule, key, self.shop, self.shipped)

    def _set_text(self, change: SetText) -> Plan:
        if change.key == "id":
            raise EditRefused("An id is changed by renaming the entry.")
        own, _ = self._known(change.entry)
        return self._set(own, change.entry, change.key, change.value)

    def _set(self, own: locate.Found | None, entry: str, key: str, value: object) -> Plan:
        """Give a key its value: in the shop's own part of the entry, or in a new part that covers the shipped one."""
        sentence = f"{entry}: {words(key)} {told(value)}"
        if own:
            return self._in(own.path, own.raw, [SetKey("entry", entry, key, value)], sentence)
        path = self.shop / OVERRIDES
        return self._in(path, self._read(path), [AddTable("entry", {"id": entry, key: value})], sentence)

    def _remove_value(self, change: RemoveValue) -> Plan:
        own, shipped = self._known(change.entry)
        if own is None or change.key not in own.table:
            raise EditRefused(
                f"{words(change.key)} of '{sanitize(change.entry)}' stands in no file of the shop, so there is nothing to "
                "take back."
            )
        below = shipped is not None and change.key in shipped
        back = "back to shipped" if below else "back to the rule" if change.rule else "removed"
        told = f"{change.entry}: {words(change.key)} {back}"
        rest = own.table.keys() - {"id", change.key}
        step = (
            DropKey("entry", change.entry, change.key)
            if rest or not shipped
            else DropTable("entry", change.entry)
        )
        return self._in(own.path, own.raw, [step], told)

    def _add_entry(self, change: AddEntry) -> Plan:
        content = {"id": change.id, "family": change.family, "title": change.title} | dict(change.content)
        return self._add("entry", content, f"{change.id}: new entry", self._file_for(change.family))

    def _copy_entry(self, change: CopyEntry) -> Plan:
        own, shipped = self._known(change.entry)
        ruled = {key: self._of_rule(rule, key) for key, rule in change.rules.items()}
        content = (
            dict(shipped or {})
            | {key: value for key, value in ruled.items() if value is not None}
            | (own.table if own else {})
            | {"id": change.new_id, "title": change.title}
        )
        family = content.get("family")
        path = self._file_for(family if isinstance(family, str) else "entries")
        return self._add("entry", content, f"{change.new_id}: copied from {change.entry}", path)

    def _add_family(self, change: AddFamily) -> Plan:
        content = {"id": change.id, "title": change.title} | dict(change.content)
        path = locate.first_with(self.shop, "family") or self.shop / "families.toml"
        return self._add("family", content, f"{change.id}: new family", path)

    def _set_table(self, change: SetTable) -> Plan:
        """A table that is no entry: its changed keys in its own file, or a new table beside others of its kind.

        What came with the program is covered by a table with the changed keys alone.
        """
        array, name = change.array, change.id
        own = None if change.is_new else locate.find(self.shop, array, name)
        shipped = None if change.is_new else self._shipped(array, name)
        if change.is_new:
            self._require_free(array, name)
        elif own is None and shipped is None and not change.covers:
            raise EditRefused(
                f"There is no {words(array)} '{sanitize(name)}' in the shop's book any more; look at the list again."
            )
        below = shipped or {}
        there = own.table if own is not None else {}
        laid = {key: laid_over(there.get(key, below.get(key)), one) for key, one in change.fields.items()}
        told = f"{name}: {', '.join(words(key) for key in change.fields)}"
        if own is not None:
            steps: list[Step] = [
                SetKey(array, name, key, one) for key, one in laid.items() if one is not None
            ]
            steps += [DropKey(array, name, key) for key, one in laid.items() if one is None and key in there]
            return self._in(own.path, own.raw, steps, told)
        content = {"id": name} | {key: one for key, one in laid.items() if one is not None}
        path = locate.first_with(self.shop, array) or self.shop / f"{array.replace('_', '-')}s.toml"
        told = f"{name}: new {words(array)}" if change.is_new else told
        return self._in(
            path, self._read(path), [AddTable(array, content)] if content.keys() - {"id"} else [], told
        )

    def _add(self, array: str, content: dict[str, object], told: str, path: Path) -> Plan:
        self._require_free(array, str(content["id"]))
        return self._in(path, self._read(path), [AddTable(array, content)], told)

    def _rename_entry(self, change: RenameEntry) -> Plan:
        own, shipped = self._known(change.entry)
        if shipped is not None or own is None:
            raise EditRefused(
                f"'{sanitize(change.entry)}' came with the program and keeps its id; copy it under the new id instead."
            )
        self._require_free("entry", change.new_id)
        steps = [SetKey("entry", change.entry, "id", change.new_id)]
        told = f"{change.new_id}: renamed from {change.entry}"
        return self._in(own.path, own.raw, steps, told, (change.entry, change.new_id))

    def _remove_entry(self, change: RemoveEntry) -> Plan:
        own, shipped = self._known(change.entry)
        if own is None:
            raise EditRefused(f"'{sanitize(change.entry)}' came with the program and cannot be removed.")
        told = f"{change.entry}: {'all of it back to shipped' if shipped else 'removed'}"
        return self._in(own.path, own.raw, [DropTable("entry", change.entry)], told)

    def _require_free(self, array: str, name: str) -> None:
        if locate.find(self.shop, array, name) or self._shipped(array, name) is not None:
            raise EditRefused(f"There is a {words(array)} '{sanitize(name)}' already; choose another id.")

    def _file_for(self, family: str) -> Path:
        return locate.last_of_family(self.shop, family) or self.shop / f"{_file_name(family)}.toml"

    def _read(self, path: Path) -> bytes | None:
        return read_for_change(path, root=self.shop)

    def _in(
        self,
        path: Path,
        raw: bytes | None,
        steps: Sequence[Step],
        told: str,
        renamed: tuple[str, str] | None = None,
    ) -> Plan:
        try:
            after = replanned(path, raw, steps)
        except UnicodeEncodeError as error:
            raise EditRefused("The new text holds a sign that no file can hold; type it again.") from error
        where = named(path.relative_to(self.shop))
        made = ", a new file" if raw is None else ""
        sentence = f"{sanitize(told)} (in {where}{made})."
        return Plan(path, self.shop, raw, after, sentence, renamed)


def _file_name(family: str) -> str:
    """A family's id as a file name; whatever is no letter, digit or hyphen becomes a hyphen."""
    plain = "".join(sign if sign.isascii() and sign.isalnum() else "-" for sign in family)[:60].strip("-")
    return plain or "entries"


def _ordered(fields: Mapping[str, object]) -> list[str]:
    known = [key for key in KEYS if key in fields]
    return known + [key for key in fields if key not in KEYS]
