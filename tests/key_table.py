"""Write the tables of keys in ``tui/KEYS.md`` anew from the registry: every key, and what it does on which screen.

    python tests/key_table.py

A test holds that the document is what this writes.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

TOP = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(TOP))

from tui.actions import ACTIONS, EVERYWHERE, Action, on_screen  # noqa: E402
from tui.keys import shown_key  # noqa: E402
from tui.meanings import MEANINGS  # noqa: E402

DOCUMENT = TOP / "tui" / "KEYS.md"
BEGIN = "<!-- from here to the end written by tests/key_table.py -->"
"""Stands before what is written."""


def keys_of(keys: tuple[str, ...]) -> str:
    """Keys as they are written for a person."""
    return " ".join(map(shown_key, keys))


def meanings() -> Iterator[str]:
    """A row for each key: its one meaning."""
    yield from ("## Keys", "", "| keys | meaning | name | what it does |", "|---|---|---|---|")
    for one in MEANINGS.values():
        yield f"| {keys_of(one.keys)} | {one.title} | `{one.id}` | {one.help} |"


def by_screen() -> Iterator[str]:
    """A row for each screen, a column for each key."""
    keys = [shown_key(one.keys[0]) for one in MEANINGS.values()]
    yield from ("", "## Key by screen", "", "An x where the key does something on the screen.", "")
    yield f"| screen | {' | '.join(keys)} |"
    yield f"|---|{'---|' * len(keys)}"
    for where in EVERYWHERE:
        here = on_screen(where)
        yield f"| {where} | {' | '.join('x' if one in here else ' ' for one in MEANINGS)} |"


def deeds() -> Iterator[str]:
    """A row for each thing that can be done, with its key and its screens."""
    yield from ("", "## What exactly", "", "| key | screens | what it does |", "|---|---|---|")
    named = [one for name in MEANINGS for one in ACTIONS if one.id == name]
    for one in named:
        yield f"| {shown_key(one.keys[0])} | {screens_of(one)} | {one.help} |"
    yield from (
        "",
        "## Only in the menu",
        "",
        "| name | in the menu | screens | what it does |",
        "|---|---|---|---|",
    )
    for one in ACTIONS:
        if one.meaning is None:
            yield f"| `{one.id}` | {one.title} | {screens_of(one)} | {one.help} |"


def screens_of(one: Action) -> str:
    """The screens that do it, in words."""
    rest = [where for where in EVERYWHERE if where not in one.where]
    if not rest:
        return "all"
    if len(rest) <= 2:
        return f"all but {', '.join(rest)}"
    return ", ".join(one.where)


def tables() -> str:
    """All of it."""
    return "\n".join((*meanings(), *by_screen(), *deeds())) + "\n"


def document(before: str) -> str:
    """The document with its tables as the registry has them now."""
    return f"{before.partition(BEGIN)[0]}{BEGIN}\n\n{tables()}"


if __name__ == "__main__":
    DOCUMENT.write_text(document(DOCUMENT.read_text(encoding="utf-8")), encoding="utf-8")
