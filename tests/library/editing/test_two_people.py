"""Several programs and a person with an editor at the same file: no save that was confirmed is lost."""

from __future__ import annotations

import re
import subprocess
import sys
import tempfile
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule

from library.editing import changes as ask
from library.editing.document import EditRefused
from library.editing.merging import Choice, Side
from library.editing.plan import Plan
from library.editing.planning import plan
from library.editing.saving import Conflicts, Done, save, undone
from library.files.disk import Disk


@pytest.mark.parametrize(
    ("processes", "updates", "keys"),
    [
        (4, 25, "same"),
        (4, 10, "own"),
        *(pytest.param(4, *many, marks=pytest.mark.depth) for many in [(200, "same"), (50, "own")]),
    ],
)
def test_of_many_updates_by_four_programs_none_is_lost(processes: int, updates: int, keys: str) -> None:
    script = Path(__file__).with_name("counting_run.py")
    command = [sys.executable, str(script), str(processes), str(updates), keys]
    done = subprocess.run(command, capture_output=True, text=True, timeout=240, check=False)
    told = re.search(r"(\d+) failed, (\d+) conflicts, counted (\d+)", done.stdout)
    assert told, done.stderr
    failed, conflicts, counted = map(int, told.groups())
    assert (failed, counted) == (0, processes * updates)
    if keys == "own":
        assert conflicts == 0, "programs with a value each do not meet"
    elif updates >= 200:
        assert conflicts > 0, (
            "programs that share a value meet each other, if they only go on for long enough"
        )


class UnhurriedDisk(Disk):
    """A disk on which somebody else gets a turn while the new text is being written."""

    def __init__(self, turn: Callable[[], None]) -> None:
        self._turn: Callable[[], None] | None = turn

    def write(self, descriptor: int, data: bytes | memoryview) -> int:
        written = super().write(descriptor, data)
        turn, self._turn = self._turn, None
        if turn is not None:
            turn()
        return written

    def fsync(self, descriptor: int) -> None:
        """Not waited for: it is not the power that fails here."""


ENTRIES = ("one", "two")
KEYS = ("rake_angle", "relief_angle", "x-mine")
programs = st.sampled_from([0, 1])
entries = st.sampled_from(ENTRIES)
keys = st.sampled_from(KEYS)
sides = st.sampled_from(["mine", "theirs"])


class TwoProgramsAndAHandEditor(RuleBasedStateMachine):
    """What was confirmed is remembered in ``model``; after each step the file must say the same."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = tempfile.TemporaryDirectory()
        self.file = Path(self.folder.name) / "book.toml"
        self.file.write_text("".join(f'[[entry]]\nid = "{name}"\n# end of {name}\n' for name in ENTRIES))
        self.model: dict[tuple[str, str], str] = {}
        self.remarks: list[str] = [f"# end of {name}" for name in ENTRIES]
        self.pending: list[tuple[Plan, str, str, str | None] | None] = [None, None]
        self.last: list[tuple[Done, str, str, str | None, str | None] | None] = [None, None]
        self.count = 0
        self.broken: bytes | None = None

    def teardown(self) -> None:
        self.folder.cleanup()

    def fresh(self) -> str:
        self.count += 1
        return f"{self.count} deg"

    @precondition(lambda self: self.broken is None)
    @rule(program=programs, entry=entries, key=keys, remove=st.booleans())
    def looks_and_types(self, program: int, entry: str, key: str, remove: bool) -> None:
        remove = remove and (entry, key) in self.model
        value = None if remove else self.fresh()
        change = ask.RemoveValue(entry, key) if remove else ask.SetValue(entry, key, {"usual": value})
        self.pending[program] = (plan(change, self.file.parent), entry, key, value)

    @precondition(lambda self: any(self.pending))
    @rule(program=programs, side=sides, meanwhile=st.booleans(), entry=entries, key=keys)
    def saves(self, program: int, side: Side, meanwhile: bool, entry: str, key: str) -> None:
        waiting = self.pending[program]
        if waiting is None:
            return
        disk = UnhurriedDisk((lambda: self.edits_by_hand(entry, key)) if meanwhile else lambda: None)
        made, where, what, value = waiting
        result = self.saved(made, where, what, value, side, disk)
        self.pending[program] = None
        if result is not None:
            done, before = result
            self.last[program] = (done, where, what, before, value)

    def saved(
        self, made: Plan, entry: str, key: str, value: str | None, side: Side, disk: Disk
    ) -> tuple[Done, str | None] | None:
        """Save, answering each question with ``side``; remembers what was confirmed."""
        choices: list[Choice] = []
        while True:
            try:
                result = save(made, choices, disk)
            except EditRefused:
                assert self.broken is not None, "only a mistake in the file is a reason to refuse"
                return None
            if isinstance(result, Done):
                break
            choices = self.answers(result, entry, key, side)
        before = self.model.get((entry, key))
        if choices and side == "theirs":
            return None
        self.remember(entry, key, value)
        return result, before

    def answers(self, asked: Conflicts, entry: str, key: str, side: Side) -> list[Choice]:
        (conflict,) = asked.conflicts
        assert (conflict.id, conflict.key) == (entry, key)
        theirs: Any = conflict.theirs
        assert (theirs and theirs["usual"]) == self.model.get((entry, key)), (
            "the question shows what is there"
        )
        return [Choice(conflict, side)]

    def remember(self, entry: str, key: str, value: str | None) -> None:
        if value is None:
            self.model.pop((entry, key), None)
        else:
            self.model[(entry, key)] = value

    @precondition(lambda self: self.broken is None)
    @rule(program=programs, side=sides)
    def takes_back(self, program: int, side: Side) -> None:
        last, self.last[program] = self.last[program], None
        if last is not None:
            done, entry, key, before, value = last
            if before == value:
                # It took away what somebody else had taken away by then: it changed nothing, and nothing comes back.
                before = self.model.get((entry, key))
            self.saved(undone(done), entry, key, before, side, UnhurriedDisk(lambda: None))

    @precondition(lambda self: self.broken is None)
    @rule(entry=entries, key=keys)
    def edits_by_hand(self, entry: str, key: str) -> None:
        value, remark = self.fresh(), f"# by hand {self.count}"
        lines = [line for line in self.file.read_text().split("\n") if line]
        at = lines.index(f"# end of {entry}")
        start = lines.index(f'id = "{entry}"')
        old = next((number for number in range(start, at) if lines[number].startswith(f"{key} ")), at)
        lines[old : old + (old < at)] = [f'{key} = {{ usual = "{value}" }}']
        self.file.write_text("\n".join([remark, *lines]) + "\n")
        self.remarks.append(remark)
        self.model[(entry, key)] = value

    @precondition(lambda self: self.broken is None)
    @rule()
    def breaks_the_file_by_hand(self) -> None:
        self.broken = self.file.read_bytes()
        self.file.write_bytes(self.broken + b"half a line\n")

    @precondition(lambda self: self.broken is not None)
    @rule()
    def fixes_the_file_by_hand(self) -> None:
        assert self.broken is not None
        assert self.file.read_bytes() == self.broken + b"half a line\n", "a broken file is left alone"
        self.file.write_bytes(self.broken)
        self.broken = None

    @invariant()
    def the_file_says_what_was_confirmed(self) -> None:
        if self.broken is None:
            text = self.file.read_text()
            found = {
                (entry["id"], key): value["usual"]
                for entry in tomllib.loads(text)["entry"]
                for key, value in entry.items()
                if key != "id"
            }
            assert found == self.model
            assert [remark for remark in self.remarks if remark not in text.split("\n")] == []


TestTwoProgramsAndAHandEditor = TwoProgramsAndAHandEditor.TestCase
TestTwoProgramsAndAHandEditor.settings = settings(stateful_step_count=25)
