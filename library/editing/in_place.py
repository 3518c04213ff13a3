"""Apply one step to the text of a file as splices that touch only the lines that belong to it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from library.editing import writing
from library.editing.document import Data, Document, EditRefused
from library.editing.rewriting import rewritten
from library.editing.steps import TOP, AddTable, DropTable, SetKey, Step, applied, number_of, same
from library.sanitize import sanitize
from library.toml.layout import Layout
from library.toml.scanner import KeyPath, Statement

_BLANK_LINES = re.compile(r"(?:[ \t]*\r?\n)*(?:[ \t]+\Z)?")


@dataclass(frozen=True)
class Splice:
    """A piece of the old text, and what stands in its place.

    Attributes:
        start: offset of the first character that goes.
        end: offset behind the last one; the same as ``start`` where something is put in.
        text: what comes instead.
    """

    start: int
    end: int
    text: str


def spliced(text: str, splices: list[Splice]) -> str:
    """The text with every splice in it.

    Example:
        >>> spliced("one two", [Splice(0, 3, "1"), Splice(4, 7, "2")])
        '1 2'
    """
    parts: list[str] = []
    at = 0
    for splice in sorted(splices, key=lambda one: (one.start, one.end)):
        parts += [text[at : splice.start], splice.text]
        at = splice.end
    return "".join([*parts, text[at:]])


def splices_for(document: Document, step: Step) -> list[Splice]:
    """What has to change in the document's text so that the step is done.

    Args:
        document: the file as it is.
        step: what to do.

    Returns:
        Splices that do not overlap.

    Raises:
        EditRefused: when the step does not fit, or a remark would be lost.
    """
    return _last_line_ended(document, _Worker(document).splices(step))


def splices_for_table(
    document: Document, path: KeyPath, table: Mapping[str, object], new: Data
) -> list[Splice]:
    """What has to change in the document's text so that a table has exactly these keys.

    Args:
        document: the file as it is.
        path: to the table.
        table: what it shall hold.
        new: the whole of the data afterwards.

    Returns:
        Splices that do not overlap.

    Raises:
        EditRefused: when a remark would be lost.
    """
    return _last_line_ended(document, _Worker(document).set(path, table, new))


def _last_line_ended(document: Document, splices: list[Splice]) -> list[Splice]:
    """Where the last line has no line end, the first splice behind it brings one."""
    end = len(document.text)
    first = next((number for number, splice in enumerate(splices) if splice.start == end), None)
    if first is not None and end and not document.text.endswith("\n"):
        splices[first] = Splice(end, end, document.line_end + splices[first].text)
    return splices


def _at_the_end(document: Document, block: str) -> Splice:
    end = len(document.text)
    gap = document.line_end if document.text.strip() else ""
    return Splice(end, end, gap + block.replace("\n", document.line_end))


class _Worker:
    """Finds the splices for one step in one document."""

    def __init__(self, document: Document) -> None:
        self.document = document
        self.text = document.text
        self.layout = Layout(document.text)

    def splices(self, step: Step) -> list[Splice]:
        new = applied(self.document.data, step)
        if isinstance(step, AddTable):
            return [self._added(step, new)]
        path: KeyPath = (
            () if step.array == TOP else (step.array, number_of(self.document.data, step.array, step.id))
        )
        if isinstance(step, DropTable):
            return self.drop(path, new)
        if isinstance(step, SetKey):
            return self.set((*path, step.key), step.value, new)
        return self.drop((*path, step.key), new)

    def _added(self, step: AddTable, new: Data) -> Splice:
        """A new table at the end; or inside the list, where all of its kind are written as one list."""
        listed = self.layout.pair((step.array,))
        if listed is not None:
            return self._rewritten(listed, self.document.data[step.array], new[step.array])
        return _at_the_end(self.document, writing.table(step.array, step.content))

    def set(self, path: KeyPath, value: object, new: Data) -> list[Splice]:
        """Give the value at ``path``; ``new`` is the whole of the data afterwards."""
        old = _value_at(self.document.data, path)
        if same(old, value):
            return []
        pair = self.layout.pair(path)
        if pair is not None:
            return [self._rewritten(pair, old, value)]
        cover = self.layout.covering(path)
        if cover is not None:
            return [
                self._rewritten(cover, _value_at(self.document.data, cover.path), _value_at(new, cover.path))
            ]
        if not self.layout.below(path):
            return self._inserted(path, value)
        if isinstance(old, dict) and isinstance(value, Mapping):
            return self._set_each(path, old, value, new)
        if isinstance(old, list) and isinstance(value, list) and self._is_tables(path, old, value):
            return self._set_tables(path, old, value, new)
        raise EditRefused(
            f"{_spoken(self.document.data, path)} in {self.document.name} is written in several places, which cannot be changed safely; "
            "change it in your editor."
        )

    def _set_each(self, path: KeyPath, old: Data, value: Mapping[str, object], new: Data) -> list[Splice]:
        """A table that is spread over several statements: each of its keys by itself."""
        if not value and not any(one.is_header and one.path == path for one in self.layout.statements):
            raise EditRefused(
                f"{_spoken(self.document.data, path)} in {self.document.name} would be empty; remove it instead."
            )
        splices = []
        for key in old:
            if key not in value:
                splices += self.drop((*path, key), new)
        for key, item in value.items():
            splices += self.set((*path, key), item, new)
        return splices

    def _is_tables(self, path: KeyPath, old: list[Data], value: list[object]) -> bool:
        """Whether a list stands as tables with a header each, and shall hold tables only."""
        headers = [one for one in self.layout.statements if one.is_header and one.path[:-1] == path]
        return bool(value) and len(headers) == len(old) and all(isinstance(one, Mapping) for one in value)

    def _set_tables(
        self, path: KeyPath, old: list[Data], value: list[Mapping[str, object]], new: Data
    ) -> list[Splice]:
        """A list of tables under a header each: each by itself; those that are too many go, new ones come last."""
        splices = [
            splice for number in range(len(value), len(old)) for splice in self.drop((*path, number), new)
        ]
        for number, table in enumerate(value[: len(old)]):
            splices += self._set_each((*path, number), old[number], table, new)
        end = self.layout.below(path)[-1].end
        header = f"\n[[{writing.dotted([str(key) for key in path if not isinstance(key, int)])}]]\n"
        for table in value[len(old) :]:
            written = header + "".join(writing.pair([key], one) for key, one in table.items())
            splices.append(Splice(end, end, self._with_line_ends(written)))
        return splices

    def _rewritten(self, pair: Statement, old: object, value: object) -> Splice:
        start, end = pair.value
        text = rewritten(self.text[start:end], old, value)
        if text is None:
            line = self.text.count("\n", 0, start) + 1
            raise EditRefused(
                f"{_spoken(self.document.data, pair.path)} in {self.document.name}, line {line}, has remarks inside it that would be lost; "
                "change it in your editor."
            )
        return Splice(start, end, self._with_line_ends(text))

    def _with_line_ends(self, text: str) -> str:
        return text.replace("\r\n", "\n").replace("\n", self.document.line_end)

    def _inserted(self, path: KeyPath, value: object) -> list[Splice]:
        """A new line for a key that is nowhere yet: below its table's last line that it may stand under.

        A table of tables gets a line for each key of its own, as no line holds all of it.
        """
        if isinstance(value, Mapping) and any(isinstance(one, Mapping) and one for one in value.values()):
            return [splice for key, one in value.items() for splice in self._inserted((*path, key), one)]
        tables = (path[:length] for length in range(len(path) - 1, -1, -1))
        anchor = next(filter(None, map(self._anchor, tables)), None)
        base = anchor.header if anchor else ()
        keys = [str(key) for key in path[len(base) :]]
        at = anchor.end if anchor else self._top()
        indent = _indent(self.text[anchor.start : anchor.end]) if anchor else ""
        return [Splice(at, at, self._with_line_ends(indent + writing.pair(keys, value)))]

    def _anchor(self, table: KeyPath) -> Statement | None:
        """The statement after which a new key of the table goes: its last value with a range, else its last."""
        under = [
            one
            for one in self.layout.statements
            if one.header == table[: len(one.header)]
            and (one.path[:-1] if not one.is_header else one.path)[: len(table)] == table
        ]
        if not under:
            return None
        deepest = max(len(one.header) for one in under)
        under = [one for one in under if len(one.header) == deepest]
        ranges = [one for one in under if not one.is_header and self.text[one.value[0]] == "{"]
        return (ranges or under)[-1]

    def _top(self) -> int:
        """Where a key above the first table goes: before the first header, and at the end if there is none."""
        header = next((one for one in self.layout.statements if one.is_header), None)
        return header.start if header else len(self.text)

    def drop(self, path: KeyPath, new: Data) -> list[Splice]:
        """Take out what is at ``path``; ``new`` is the whole of the data afterwards."""
        runs = self._runs(path)
        if runs:
            return [self._gone(run) for run in runs]
        cover = self.layout.covering(path)
        if cover is None:
            raise EditRefused(
                f"{_spoken(self.document.data, path)} is not in {self.document.name} any more; look at the book again."
            )
        value = _value_at(new, cover.path)
        if value is None:
            return [self._gone([cover])]
        return [self._rewritten(cover, _value_at(self.document.data, cover.path), value)]

    def _runs(self, path: KeyPath) -> list[list[Statement]]:
        """The statements that make up what is at ``path``, those that follow each other together."""
        runs: list[list[Statement]] = []
        within = False
        for statement in self.layout.statements:
            if not statement.is_below(path):
                within = False
            elif within:
                runs[-1].append(statement)
            else:
                within = True
                runs.append([statement])
        return runs

    def _gone(self, run: list[Statement]) -> Splice:
        """The lines from the first statement to the last; a whole table takes the blank lines behind it along."""
        start, end = run[0].start, run[-1].end
        if run[0].is_header:
            found = _BLANK_LINES.match(self.text, end)
            end = found.end() if found else end
            if end == len(self.text):
                start = _before_blank_lines(self.text, start)
        return Splice(start, end, "")


def _before_blank_lines(text: str, at: int) -> int:
    while at > 0:
        line = text.rfind("\n", 0, at - 1) + 1
        if text[line:at].strip():
            break
        at = line
    return at


def _indent(line: str) -> str:
    return line[: len(line) - len(line.lstrip(" \t"))]


def _value_at(data: object, path: KeyPath) -> object:
    for key in path:
        if isinstance(data, dict):
            data = data.get(str(key))
        elif isinstance(data, list) and isinstance(key, int) and key < len(data):
            data = data[key]
        else:
            return None
    return data


def _spoken(data: Data, path: KeyPath) -> str:
    """A path as a person says it: the key, and the id of its table."""
    table = _value_at(data, path[:2])
    name = table.get("id") if isinstance(table, dict) else None
    keys = ".".join(str(key) for key in (path[2:] if name else path))
    told = f"{keys.replace('_', ' ')} of '{name}'" if name and keys else f"'{name}'" if name else keys
    return sanitize(told)
