"""Random files, each with one random change: the new text must mean what it must, and all other lines must stay.

    python tests/long_edit_run.py 20000 [first seed]

The files are written the way people and odd tools write TOML: any layout that the format allows. A change may be
refused; it must never be made wrongly. What a change must lead to is worked out here on plain data, and
which lines may change is known because the file is put together from pieces that know whose they are.
"""

from __future__ import annotations

import random
import re
import sys
import tempfile
import time
import tomllib
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from library.editing import changes as ask
from library.editing.changes import Change
from library.editing.document import EditRefused
from library.editing.planning import plan

QUANTITIES = ("rake_angle", "relief_angle", "land_width", "point_angle", "x-mine")
LONG_TEXTS = ('"""one\n[[entry]]\n# no\nid = "e1" """', "'''x\n\n]'''")
SHORT_TEXTS = ('"a # b"', "'[[entry]]'", '"= \\"q\\""', '"é \\u00e9"', '""', "''")
NUMBERS = ("3", "0x1F", "1_000", "2.50", "-0.0", "nan", "inf", "true", "1979-05-27", "07:32:00")
SCALARS = (*LONG_TEXTS, *SHORT_TEXTS, *NUMBERS)
MARK = b"\xef\xbb\xbf"
FIELDS = ("low", "usual", "high", "source", "place", "note")


@dataclass
class Made:
    """A file being made: its lines, and for each the entry and key that it belongs to."""

    chance: random.Random
    lines: list[tuple[str, str, str]] = field(default_factory=list)
    count: int = 0

    def add(self, text: str, entry: str = "", key: str = "") -> None:
        self.lines += [(line, entry, key) for line in text.split("\n")]

    def remark(self) -> str:
        self.count += 1
        return f"# remark {self.count}{self.chance.choice(['', ' [[entry]]', ' x = 1', ' {', chr(34) * 3])}"

    def maybe(self, share: float, text: str) -> str:
        return text if self.chance.random() < share else ""

    def gap(self) -> None:
        while self.chance.random() < 0.3:
            self.add(self.chance.choice(["", "", "  ", "\t", self.remark(), "  " + self.remark()]))

    def pad(self) -> str:
        return self.chance.choice(["", " ", " ", "  ", "\t"])

    def name(self, key: str) -> str:
        return self.chance.choice([key, key, key, f'"{key}"', f"'{key}'"])

    def pair(self, name: str, value: str, entry: str, key: str) -> None:
        behind = self.maybe(0.3, self.pad() + self.remark())
        self.add(f"{self.maybe(0.2, '  ')}{name}{self.pad()}={self.pad()}{value}{behind}", entry, key)

    def scalar(self) -> str:
        return self.chance.choice(SCALARS)

    def array(self, items: list[str]) -> str:
        if self.chance.random() < 0.5:
            return f"[{', '.join(items)}{self.maybe(0.2, ',') * bool(items)}]"
        lines = "".join(f"  {item}, {self.maybe(0.3, self.remark())}\n" for item in items)
        return f"[\n{lines}{self.maybe(0.2, self.remark())}\n]"

    def inline(self, names: Iterable[str]) -> str:
        parts = [f"{self.name(name)}{self.pad()}={self.pad()}{self.scalar()}" for name in names]
        if self.chance.random() < 0.1:
            parts.append("also = " + self.array(["{ usual = 1, source = 'x' }"] * self.chance.randint(0, 2)))
        if self.chance.random() < 0.1:
            parts.append("x-a.b = 1, x-a.c = 2")
        pad = self.pad()
        return "{" + pad + ", ".join(parts) + pad + "}"

    def some_fields(self) -> list[str]:
        return self.chance.sample(FIELDS, self.chance.randint(1, 4))


def make(chance: random.Random) -> Made:
    """A file with some entries and families."""
    made = Made(chance)
    made.gap()
    if chance.random() < 0.8:
        made.pair("schema", "1", "", "schema")
    entries = [f"e{number}" for number in range(chance.randint(1, 4))]
    if chance.random() < 0.04:
        rake = made.inline(made.some_fields())
        rows = [f'{{ id = "{entry}", family = "f0", rake_angle = {rake} }}' for entry in entries]
        made.pair("entry", made.array(rows), "", "*")
        return made
    for entry in entries:
        if chance.random() < 0.2:
            made.gap()
            made.add(f"[[{made.pad()}family{made.pad()}]]")
            made.pair("id", f'"f{made.count}-{entry}"', "", "")
            made.pair("title", made.scalar(), "", "")
        make_entry(made, entry)
    if chance.random() < 0.2:
        made.gap()
        made.add('[x-shop."own key"]')
        made.pair("entry", made.scalar(), "", "")
    made.gap()
    return made


def make_entry(made: Made, entry: str) -> None:
    chance = made.chance
    made.gap()
    header = f"[[{made.pad()}{made.name('entry')}{made.pad()}]]"
    made.add(header + made.maybe(0.2, " " + made.remark()), entry, "")
    keys = ["id", "family", *chance.sample(["title", "notes", "cautions", *QUANTITIES], chance.randint(0, 6))]
    if chance.random() < 0.2:
        chance.shuffle(keys)
    later = [key for key in keys if not make_value(made, entry, key)]
    for key in later:
        made.gap()
        brackets = made.maybe(0.2, "[") if key == "x-mine" else ""
        way = f"{made.pad()}entry{made.pad()}.{made.pad()}{made.name(key)}{made.pad()}"
        made.add(f"[{brackets}{way}]{']' * len(brackets)}", entry, key)
        for name in made.some_fields() if chance.random() < 0.95 else []:
            made.gap()
            made.pair(made.name(name), made.scalar(), entry, key)


def make_value(made: Made, entry: str, key: str) -> bool:
    """Write one key in one of the ways there are; false when it is to be a table below the entry."""
    chance = made.chance
    made.gap()
    layout = chance.choice(["inline", "inline", "bare", "dotted", "table"])
    name, value = made.name(key), made.scalar()
    if key in {"id", "family"}:
        value = f'"{entry if key == "id" else "f0"}"'
    elif key == "cautions":
        value = made.array([f'"c{number}"' for number in range(chance.randint(0, 3))])
    elif key in QUANTITIES and layout == "table":
        return False
    elif key in QUANTITIES and layout == "dotted":
        for field_name in made.some_fields():
            made.pair(
                f"{made.name(key)}{made.pad()}.{made.pad()}{made.name(field_name)}", made.scalar(), entry, key
            )
            made.gap()
        return True
    elif key in QUANTITIES and layout == "inline":
        value = made.inline(made.some_fields())
    made.pair(name, value, entry, key)
    return True


def choose(chance: random.Random, data: dict[str, Any]) -> Change:
    table = chance.choice(data["entry"])
    entry = table["id"]
    held = [key for key in QUANTITIES if key in table]
    key = chance.choice(held if held and chance.random() < 0.7 else QUANTITIES)
    text = chance.choice(["plain", "two\nlines\n", 'quote " and \\ and """', "é # no", "", "a\rb"])
    fields: dict[str, object] = {
        name: chance.choice(["5 deg", "0.25 D", 7, 2.5, text, None])
        for name in chance.sample(FIELDS, chance.randint(1, 3))
    }
    changes: list[Change] = [
        *[ask.SetValue(entry, key, fields)] * 8,
        *[ask.RemoveValue(entry, key)] * 3,
        ask.SetText(entry, chance.choice(["title", "notes"]), text),
        ask.SetText(entry, "cautions", chance.sample(["c0", "c1", "c2", "c3"], chance.randint(0, 4))),
        ask.AddEntry("new", "f0", text, {"rake_angle": {"usual": "5 deg", "note": text}, "notes": text}),
        ask.CopyEntry(entry, "new", text),
        ask.RenameEntry(entry, "new"),
        ask.RemoveEntry(entry),
        ask.AddFamily("new", text),
    ]
    return chance.choice(changes)


def expected(data: dict[str, Any], change: Change) -> dict[str, Any]:
    """The data after the change, on plain dictionaries; the data given are used up."""
    if isinstance(change, ask.AddFamily):
        data.setdefault("family", []).append({"id": "new", "title": change.title})
        return data
    if isinstance(change, ask.AddEntry):
        data["entry"] += [{"id": "new", "family": "f0", "title": change.title, **change.content}]
        return data
    if isinstance(change, ask.SetTable):
        raise TypeError("the long run changes entries and families")
    table = next(entry for entry in data["entry"] if entry["id"] == change.entry)
    if isinstance(change, ask.CopyEntry):
        data["entry"].append({**table, "id": "new", "title": change.title})
    elif isinstance(change, ask.RenameEntry):
        table["id"] = "new"
    elif isinstance(change, ask.RemoveEntry):
        data["entry"] = [entry for entry in data["entry"] if entry is not table]
        if not data["entry"]:
            del data["entry"]
    elif isinstance(change, ask.RemoveValue):
        del table[change.key]
    elif isinstance(change, ask.SetText):
        table[change.key] = change.value
    else:
        old = table.get(change.key, {})
        merged = {**(old if isinstance(old, dict) else {"usual": old}), **change.fields}
        table[change.key] = {name: value for name, value in merged.items() if value is not None}
    return data


def canonical(data: Any) -> Any:
    """Data as text that tells 1 from 1.0 and from true, whatever the order of keys."""
    if isinstance(data, dict):
        return sorted((key, canonical(value)) for key, value in data.items())
    return [canonical(item) for item in data] if isinstance(data, list) else repr(data)


def complaint(made: Made, raw: bytes, after: bytes, change: Change, wanted: dict[str, Any]) -> str:
    """What is wrong with the new text; nothing when it is right."""
    if raw[:3] == MARK and after[:3] != MARK:
        return "the byte order mark is lost"
    old, new = (text.removeprefix(MARK).decode() for text in (raw, after))
    if canonical(tomllib.loads(new)) != canonical(wanted):
        return "it means something else"
    key = "id" if isinstance(change, ask.RenameEntry) else getattr(change, "key", "")
    entry = "none" if isinstance(change, ask.CopyEntry) else getattr(change, "entry", "none")
    mine = [
        (owner != "" and owner == entry and (of == key or isinstance(change, ask.RemoveEntry))) or of == "*"
        for _, owner, of in made.lines
    ]
    line_end = "\r\n" if "\r\n" in old else "\n"
    lines = new.split(line_end)
    kept = [line for line, is_mine in zip(old.split(line_end), mine, strict=True) if not is_mine]
    if isinstance(change, ask.RemoveEntry | ask.RemoveValue):
        inside = inner_remarks(made, mine)
        lines = [line for line in lines if line.strip() and line not in inside]
        kept = [line for line in kept if line.strip() and line not in inside]
    left = iter(lines)
    lost = [line for line in kept if line not in left]
    if lost:
        return f"other lines are lost: {lost[:3]}"
    if isinstance(change, ask.SetValue | ask.SetText) and None not in getattr(change, "fields", {}).values():
        owned = "\n".join(line for (line, _, _), is_mine in zip(made.lines, mine, strict=True) if is_mine)
        gone = [number for number in re.findall(r"# remark \d+\b", owned) if number not in new]
        if gone or len(lines) > len(made.lines) + 12:
            return f"remarks are lost, or too many lines are new: {gone}"
    return ""


def inner_remarks(made: Made, mine: list[bool]) -> set[str]:
    """Remarks between the first and the last line of what is removed; they go along."""
    lines = [line for line, _, _ in made.lines]
    last = len(mine) - mine[::-1].index(True) if True in mine else 0
    return {line for line in lines[mine.index(True) if last else 0 : last] if line.lstrip().startswith("#")}


def one(seed: int, folder: Path) -> tuple[str, str]:
    """One random file and change: ``made``, ``refused`` or ``wrong``, and what is to be said of it."""
    chance = random.Random(seed)
    made = make(chance)
    line_end = chance.choice(["\n", "\n", "\r\n"])
    text = line_end.join(line for line, _, _ in made.lines)
    raw = chance.choice([b"", b"", b"", MARK]) + text.encode()
    data = tomllib.loads(text)
    change = choose(chance, data)
    file = folder / "file.toml"
    file.write_bytes(raw)
    try:
        after = plan(change, folder).after
    except EditRefused as refused:
        return "refused", refused.sentence
    assert after is not None
    if isinstance(change, ask.AddFamily) and "family" not in data:
        raw, made, data = b"schema = 1\n", Made(chance, [("schema = 1", "", ""), ("", "", "")]), {"schema": 1}
    wrong = complaint(made, raw, after, change, expected(data, change))
    return ("wrong", f"seed {seed}: {wrong}\n{change}\n{raw!r}\n{after!r}") if wrong else ("made", "")


def main(count: int, first: int = 0) -> int:
    told: dict[str, list[str]] = {"made": [], "refused": [], "wrong": []}
    start = time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(first, first + count):
            result, text = one(seed, Path(folder))
            told[result].append(text)
    print("\n".join(told["wrong"][:5]))
    results = ", ".join(f"{len(told[key])} {key}" for key in told)
    print(f"{count} changes: {results}; {time.monotonic() - start:.0f} s")
    if "-v" in sys.argv:
        print("\n".join(sorted(set(told["refused"]))))
    return 1 if told["wrong"] else 0


if __name__ == "__main__":
    sys.exit(main(*(int(argument) for argument in sys.argv[1:] if argument != "-v")))
