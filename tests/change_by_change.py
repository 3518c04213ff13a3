"""Show what the suite notices: make single changes to the source, one at a time, and run the tests over each.

    python tests/change_by_change.py --stages near --json before.json

The changes come from ``tests/changes_to_try.py``, or from the file of an earlier run, and are made in a copy of the
checkout, never in the checkout itself. Over each change first the tests that mirror the changed file run, then those
of its folder and of ``tests/published``, and for ``--stages all`` everything else, until the first test fails or does
not end. A test that fails without the change as well finds nothing. To compare two suites, give the second run
``--changes before.json``; to go on with what was not found, ``--from before.json``.
"""

from __future__ import annotations

import argparse
import json
import os
import re
import shlex
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from typing import Any

HERE = Path(__file__).resolve().parent
LEFT_BEHIND = shutil.ignore_patterns(
    ".git", ".venv*", "__pycache__", ".hypothesis", "*_cache", "build", "dist"
)
PYTEST = (
    *(sys.executable, "-m", "pytest", "-x", "-q", "-n", "0", "--tb=short"),
    *("-p", "no:cacheprovider", "-p", "tests_told"),
)
TELLING = """
import os
def _tell(word, name):
    with open(os.environ["TESTS_TOLD"], "a") as file:
        print(word, name, file=file)
def pytest_runtest_logstart(nodeid):
    _tell("begun", nodeid)
def pytest_runtest_logreport(report):
    if report.failed:
        _tell("failed", report.nodeid)
def pytest_collectreport(report):
    if report.failed:
        _tell("failed", report.nodeid)
"""
"""A plugin of pytest: which test has begun and which has failed, without reading what pytest prints."""

Change = dict[str, Any]
"""One change as ``tests/changes_to_try.py`` writes it, and what came of it."""

NO_TESTS = 5
"""What pytest returns where it found nothing to run."""


class Copy:
    """A copy of a checkout in which tests are run.

    Attributes:
        folder: of the copy.
        asked: more arguments for pytest.
        patience: seconds in which a test has to end.
        limit: seconds after which a stage is given up, which finds nothing.
        red: tests that fail without any change.
        green: tests that were run without any change and passed.
    """

    def __init__(self, tree: Path, temporary: Path, asked: list[str], patience: float, limit: float) -> None:
        self.folder = temporary / "checkout"
        self.asked = asked
        self.patience = patience
        self.limit = limit
        self.red: set[str] = set()
        self.green: set[str] = set()
        self.told = temporary / "told.txt"
        self.printed = temporary / "printed.txt"
        shutil.copytree(tree, self.folder, ignore=LEFT_BEHIND)
        (temporary / "tests_told.py").write_text(TELLING)
        paths = os.pathsep.join((str(self.folder), str(temporary)))
        self.environment = {**os.environ, "PYTHONPATH": paths, "TESTS_TOLD": str(self.told)}
        # Compiled files that go by what a source holds: two changes in one second can have the same size.
        rooms = [room for room in ("geometry", "library", "tui") if (self.folder / room).is_dir()]
        self.python("-m", "compileall", "-q", "--invalidation-mode", "checked-hash", *rooms)

    def python(self, *words: str) -> str:
        """What a Python that imports from the copy prints."""
        command = [sys.executable, *words]
        done = subprocess.run(command, cwd=self.folder, env=self.environment, capture_output=True, check=True)
        return done.stdout.decode().strip()

    def geometry(self) -> str:
        """Where ``geometry`` is imported from, which has to be the copy and no installed checkout."""
        found = self.python("-c", "import geometry; print(geometry.__file__)")
        if not Path(found).resolve().is_relative_to(self.folder.resolve()):
            raise SystemExit(f"The tests would import {found} and not the copy. Nothing was run.")
        return found

    def first_failure(self, what: list[str]) -> str:
        """The first test that fails or does not end, with how it went; empty when none does."""
        self.told.write_text("")
        shutil.rmtree(self.folder / ".hypothesis", ignore_errors=True)
        spared = [f"--deselect={name}" for name in sorted(self.red)]
        with self.printed.open("wb") as printed:
            running = subprocess.Popen(
                [*PYTEST, *self.asked, *spared, *what],
                cwd=self.folder,
                env=self.environment,
                stdout=printed,
                stderr=subprocess.STDOUT,
                start_new_session=True,
            )
            try:
                code = self.waited(running)
            finally:
                with suppress(ProcessLookupError):
                    os.killpg(running.pid, signal.SIGKILL)
                running.wait()
        if code in (0, NO_TESTS):
            return ""
        told = [line.split(" ", 1) for line in self.told.read_text().splitlines()]
        if code is None:
            return "did not end: " + (told[-1][1] if told else "collecting")
        return next((name for word, name in told if word == "failed"), "loading the tests")

    def waited(self, running: subprocess.Popen[bytes]) -> int | None:
        """What pytest returned, or nothing when no test began within the patience.

        Raises:
            TimeoutError: the stage takes longer than its limit.
        """
        begun = time.time()
        while time.time() - max(begun, self.told.stat().st_mtime) < self.patience:
            with suppress(subprocess.TimeoutExpired):
                return running.wait(timeout=0.2)
            if time.time() - begun > self.limit:
                raise TimeoutError
        return None

    def passes_unchanged(self, failure: str) -> bool:
        """Whether a failure goes away without the change; if not, its test is left out from now on."""
        name = failure.removeprefix("did not end: ")
        if "::" not in name:
            tests = [name] if (self.folder / name).is_file() else ["."]
            if self.first_failure(["--collect-only", *tests]):
                tail = self.printed.read_text(errors="replace")[-2000:]
                raise SystemExit(f"The tests cannot be collected, even without a change.\n{tail}")
        elif name not in self.green:
            if self.first_failure([name]):
                self.red.add(name)
                return False
            self.green.add(name)
        return True

    def tried(self, change: Change, stages: str) -> Change:
        """A change with what came of it."""
        path = self.folder / change["file"]
        original = path.read_text(encoding="utf-8") if path.is_file() else ""
        changed = applied(original, change)
        result = {**change, "found": changed is not None, "stage": "", "by": ""}
        if changed is None:
            return {**result, "by": "the line is not there"}
        begun = time.time()
        for stage, tests in self.stages(change["file"], stages):
            while True:
                path.write_text(changed, encoding="utf-8")
                try:
                    failure = self.first_failure(tests) if tests else ""
                except TimeoutError:
                    failure, result["by"] = "", f"given up after {self.limit:.0f} s"
                finally:
                    path.write_text(original, encoding="utf-8")
                if not failure or self.passes_unchanged(failure):
                    break
            if failure:
                return {**result, "stage": stage, "by": failure, "seconds": round(time.time() - begun)}
        return {**result, "found": False, "seconds": round(time.time() - begun)}

    def stages(self, file: str, wanted: str) -> Iterator[tuple[str, list[str]]]:
        """The tests for a changed file, those first that know it best; no file twice."""
        folder = Path(file).parent
        mirrored = Path("tests") / folder
        while not (self.folder / mirrored).is_dir() and mirrored.name:
            mirrored = mirrored.parent
        beside = self.files(str(mirrored), "test_*.py")
        known = re.compile(rf"\b{re.escape('.'.join(Path(file).with_suffix('').parts))}\b")
        near = [
            name
            for name in beside
            if Path(file).stem in Path(name).stem or known.search((self.folder / name).read_text())
        ]
        first = [file, *near]
        doctests = [name for name in self.files(str(folder), "*.py") if Path(name).parent == folder]
        second = [
            name
            for name in (*beside, *doctests, *self.files("tests/published", "test_*.py"))
            if name not in first
        ]
        if wanted in ("file", "near", "all"):
            yield "file", first
        if wanted in ("folder", "near", "all"):
            yield "folder", second
        if wanted in ("rest", "all"):
            every = [*self.files("tests", "test_*.py")]
            every += [name for room in ("geometry", "library", "tui") for name in self.files(room, "*.py")]
            yield "rest", [name for name in every if name not in first and name not in second]

    def files(self, folder: str, pattern: str) -> list[str]:
        """The files of a folder of the copy, in the order of their names."""
        found = sorted((self.folder / folder).rglob(pattern))
        return [path.relative_to(self.folder).as_posix() for path in found]


def applied(text: str, change: Change) -> str | None:
    """A file's text with a change made in it, or nothing where it does not hold the line."""
    lines = text.split("\n")
    places = [place for place, line in enumerate(lines) if line == change["before"]]
    if len(places) <= change["occurrence"]:
        return None
    lines[places[change["occurrence"]]] = change["after"]
    return "\n".join(lines)


def wanted_changes(words: argparse.Namespace) -> list[Change]:
    """The changes asked for, each with its number in the list and with what is already known of it."""
    if words.left or words.changes:
        listed = json.loads((words.left or words.changes).read_text(encoding="utf-8"))
        changes = listed["results"] if isinstance(listed, dict) else listed
    else:
        command = [sys.executable, str(HERE / "changes_to_try.py"), "--tree", str(words.tree)]
        command += ["--count", str(words.count), "--seed", str(words.seed)]
        changes = json.loads(subprocess.run(command, capture_output=True, check=True).stdout)
    known = {} if words.left else {"found": False, "stage": "", "by": "not tried"}
    numbered = [{"number": place, **change, **known} for place, change in enumerate(changes, 1)]
    return [change for change in numbered if words.only in (None, change["number"])]


def row(result: Change) -> str:
    """A change and what came of it, in three lines."""
    came = f"found ({result['stage']}): {result['by']}" if result["found"] else "NOT FOUND " + result["by"]
    place = f"{result['number']:3} {result['file']}:{result['line']} ({result['kind']})"
    return f"{place}\n    {result['before'].strip()}\n -> {result['after'].strip()}\n    {came}"


def parser() -> argparse.ArgumentParser:
    """The words of the command line."""
    asked = argparse.ArgumentParser(
        description="Make single changes to a copy and see which test notices each."
    )
    asked.add_argument("--tree", type=Path, default=HERE.parent, help="checkout to copy (default: this one)")
    asked.add_argument("--count", type=int, default=60, help="how many changes (default: 60)")
    asked.add_argument("--seed", type=int, default=10, help="of the choice of changes (default: 10)")
    asked.add_argument("--only", type=int, metavar="K", help="only change number K")
    asked.add_argument(
        "--stages",
        choices=("file", "folder", "near", "rest", "all"),
        default="all",
        help="which tests to run",
    )
    asked.add_argument("--suite", default="--hypothesis-seed=0", help="more arguments for pytest, in quotes")
    asked.add_argument("--timeout", type=float, default=600, help="seconds for one test (default: 600)")
    asked.add_argument("--limit", type=float, default=3600, help="seconds for one stage (default: 3600)")
    asked.add_argument("--json", type=Path, metavar="FILE", help="write what came of each change here")
    asked.add_argument("--changes", type=Path, metavar="FILE", help="make the changes of this file")
    asked.add_argument(
        "--from", dest="left", type=Path, metavar="FILE", help="go on with those that it did not find"
    )
    return asked


def main() -> None:
    """Try each change, print what came of it, and count."""
    words = parser().parse_args()
    # Told to stop, it takes its copy and its tests with it.
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(1))
    results = wanted_changes(words)
    with tempfile.TemporaryDirectory(prefix="changes-") as temporary:
        copy = Copy(words.tree, Path(temporary), shlex.split(words.suite), words.timeout, words.limit)
        print(f"The tests import {copy.geometry()}", flush=True)
        for place, change in enumerate(results):
            if change["found"]:
                continue
            results[place] = copy.tried(change, words.stages)
            print(row(results[place]), flush=True)
            if words.json:
                told = {"stages": words.stages, "suite": words.suite, "results": results}
                words.json.write_text(json.dumps(told, indent=1) + "\n", encoding="utf-8")
    print(f"{sum(result['found'] for result in results)} of {len(results)} changes found.")
    for name in sorted(copy.red):
        print(f"Left out, because it fails without a change too: {name}")


if __name__ == "__main__":
    main()
