"""Detect an edit conflict: fields that were saved by somebody else after a person began to change them."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from library.editing import locate
from library.editing.changes import SetTable, SetText, SetValue
from library.editing.merging import Conflict
from library.editing.steps import same
from library.editing.typed_tables import as_typed, as_written, laid_over, lines_of
from library.sanitize import sanitize


def concurrent_edits(
    change: SetValue | SetText | SetTable,
    began: Mapping[str, object],
    shop: Path,
    shipped: Path | None = None,
) -> dict[str, Conflict]:
    """The fields that a person is about to change and that the files no longer hold as he found them.

    Between looking at a change and saving it, saving itself compares the file. This is for the time before:
    a form may stand open for an hour, or come back as a draft after a week.

    Args:
        change: what the person wants.
        began: what stood there when he began, by field of the value; for a text, by its key; for a table, by line of its form.
        shop: the shop's folder.
        shipped: the folder of the shipped data, if there is any.

    Returns:
        A conflict for each field that both changed, to something else; the others need no question.

    Raises:
        EditRefused: when the entry stands where it cannot be read.
    """
    now = _now(change, shop, shipped)
    if now is None:
        return {}
    if isinstance(change, SetTable):
        return _of_a_table(change, began, now)
    wanted = change.fields if isinstance(change, SetValue) else {change.key: change.value}
    found = {}
    for field in wanted:
        if field == "bands":
            continue  # No form shows them: they go with the number that is changed.
        base, mine, theirs = (_plain(side.get(field)) for side in (began, wanted, now))
        if not same(theirs, base) and not same(theirs, mine):
            key = f"{change.key} {field}" if isinstance(change, SetValue) else field
            found[field] = Conflict("entry", change.entry, key, base, mine, theirs)
    return found


def _of_a_table(
    change: SetTable, began: Mapping[str, object], now: Mapping[str, object]
) -> dict[str, Conflict]:
    """The lines of a form that a person changed and that the file no longer holds as he found them."""
    texts = {line: text for line, text in began.items() if isinstance(text, str)}
    before, theirs = as_written(change.array, texts), as_typed(change.array, now)
    laid = {key: laid_over(before.get(key), one) for key, one in change.fields.items()}
    mine = as_typed(change.array, {key: one for key, one in laid.items() if one is not None})
    found = {}
    for key in change.fields:
        for line in lines_of(change.array, key):
            base, own, other = (_plain(side.get(line, "")) for side in (began, mine, theirs))
            if own != base and other not in (base, own):
                found[line] = Conflict(change.array, change.id, line, base, own, other)
    return found


def _now(
    change: SetValue | SetText | SetTable, shop: Path, shipped: Path | None
) -> Mapping[str, object] | None:
    """What the files hold now, by field; nothing where the table is gone."""
    array, name = ("entry", change.entry) if not isinstance(change, SetTable) else (change.array, change.id)
    parts = [locate.find(folder, array, name) for folder in (shipped, shop) if folder is not None]
    tables = [part.table for part in parts if part is not None]
    if not tables:
        return None
    if isinstance(change, SetTable):
        return {key: one for table in tables for key, one in table.items()}
    value = next((table[change.key] for table in reversed(tables) if change.key in table), None)
    if value is None and isinstance(change, SetValue) and change.rule:
        value = locate.of_rule(change.rule, change.key, shop, shipped)
    if isinstance(change, SetText):
        return {change.key: value}
    return value if isinstance(value, Mapping) else {} if value is None else {"usual": value}


def _plain(value: object) -> object:
    """An empty text or list is the same as none, and a text is what the person saw of it."""
    if isinstance(value, str):
        return sanitize(value, lines=True) or None
    return [_plain(one) for one in value] or None if isinstance(value, list | tuple) else value
