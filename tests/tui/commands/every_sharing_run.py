"""Recording, pulling and pushing, stopped at each call of the program and of git that changes the disk.

    python every_sharing_run.py all|git|program|full|once|turn [NAME ...]

``all`` kills the program and all that it has started at the call, ``git`` what made the call alone, ``program`` the
program alone, while git goes on; ``full`` lets the disk be full from the call on, ``once`` at that call alone; ``turn`` takes these in turn. By the
variable ``HEELCLEAR_EVERY`` only each so many calls are stopped at. Prints a line for each way, and one for each thing
that is wrong.
"""

from __future__ import annotations

import io
import os
import re
import shutil
import subprocess
import sys
import tempfile
import tomllib
from collections.abc import Callable
from contextlib import redirect_stderr, redirect_stdout
from functools import cache
from pathlib import Path

from tests.tui.commands.every_system_call import Stopped, Who, numbers
from tests.tui.commands.ways_of_sharing import BOOK, COPY, WAYS, git, lay
from tui.main import main

WHO: dict[str, Who] = {"all": "all", "git": "git", "program": "program"}
HOW = ("all", "git", "program", "full", "once")
CURES = 4
"""Locks that may be in the way, one after the other."""

LOCK = re.compile(r"remove (?:the file )?(\S+\.lock)\b")


def texts(folder: Path) -> dict[str, bytes]:
    """All files of a folder but those of git and the lock of the program."""
    found = (path for path in folder.rglob("*") if path.is_file() and ".git" not in path.parts)
    return {str(path.relative_to(folder)): path.read_bytes() for path in found if path.name != ".lock"}


def tree_of(folder: Path, name: str) -> str:
    return git(folder, "rev-parse", f"{name}^{{tree}}")


@cache
def checked(texts: frozenset[tuple[str, bytes]]) -> list[str]:
    """What ``check`` complains of in the book as it is, whose files are these; it reads all that is shipped, which takes long."""
    del texts
    said = io.StringIO()
    with redirect_stdout(said), redirect_stderr(said):
        code = main(["--library", str(BOOK), "check"])
    return [f"check: {said.getvalue().strip()[-300:]}"] if code else []


class Run:
    """One way, stopped at each of its calls.

    Attributes:
        wrong: what was found, and ``cases`` how many of the stops it was found at.
        calls: how many calls there are.
        tried: at how many of them it was to be stopped.
        stopped: at how many it was.
    """

    def __init__(self, name: str, how: str, top: Path) -> None:
        self.name, self.how, self.top, self.way = name, how, top, WAYS[name]
        self.wrong: list[str] = []
        self.cases = self.tried = self.stopped = 0
        self._home()
        lay()
        self.way.before()
        os.chdir(top)
        shutil.rmtree(top / "ready", ignore_errors=True)
        shutil.copytree(top / "home", top / "ready", symlinks=True)
        self._home(top / "ready")
        self.before, self.head = texts(BOOK.parent), git(BOOK, "rev-parse", "HEAD")
        clean = Stopped(self.way.run, str(top / "home"))
        code = clean.run()
        assert code == 0, clean.said
        self.calls, self.steps = len(clean.steps), clean.steps
        self.after = texts(BOOK.parent)
        self.trees = tree_of(BOOK, "HEAD"), tree_of(COPY, "main")

    def _home(self, like: Path | None = None) -> None:
        """A home of its own, always under the same name."""
        home = self.top / "home"
        os.chdir(self.top)
        shutil.rmtree(home, ignore_errors=True)
        if like:
            shutil.copytree(like, home, symlinks=True)
        (home / "tmp").mkdir(parents=True, exist_ok=True)
        os.environ.update(HOME=str(home), TMPDIR=str(home / "tmp"))
        tempfile.tempdir = None
        os.chdir(home)

    def at_every_call(self) -> None:
        apart = int(os.environ.get("HEELCLEAR_EVERY", "1"))
        for number in numbers(self.calls, apart, list(WAYS).index(self.name)):
            self.tried += 1
            how = (
                HOW[(number // apart + list(WAYS).index(self.name)) % len(HOW)]
                if self.how == "turn"
                else self.how
            )
            self._home(self.top / "ready")
            one = Stopped(self.way.run, str(self.top / "home"), number, WHO.get(how), stays=how == "full")
            code = one.run()
            self.stopped += one.stopped
            killed = code < 0
            wrong = self._left() + ([] if killed else self._told(how, code, one.said))
            wrong += self._next()
            self.cases += bool(wrong)
            where = one.steps[number - 1] if len(one.steps) >= number else "not come to"
            self.wrong += [f"{self.name}, call {number} ({where}): {each}" for each in wrong]
            os.chdir(self.top)

    def _left(self) -> list[str]:
        """What is wrong with what was left there."""
        found = texts(BOOK.parent)
        wrong = [f"lost {name}" for name in self.before if name in self.after and name not in found]
        for name, raw in found.items():
            if name.endswith(".toml"):
                try:
                    tomllib.loads(raw.decode())
                except ValueError:
                    wrong.append(f"torn {name}")
            if Path(name).name.startswith(".heelclear-"):
                continue
            if raw not in [one[name] for one in (self.before, self.after) if name in one]:
                wrong.append(f"neither old nor new: {name}, {len(raw)} bytes")
        wrong += checked(frozenset(found.items()))
        for folder, name in ((BOOK, "HEAD"), (COPY, "main")):
            done = subprocess.run(
                ["git", "-C", str(folder), "fsck", "--no-dangling", "--no-progress"],
                capture_output=True, text=True, check=False,
            )  # fmt: skip
            if done.returncode:
                wrong.append(f"git's store of {folder}: {(done.stdout + done.stderr).strip()[:200]}")
            if name == "HEAD":
                within = ["git", "-C", str(folder), "merge-base", "--is-ancestor", self.head, "HEAD"]
                if subprocess.run(within, check=False, capture_output=True).returncode:
                    wrong.append("what was recorded before is no part of the branch any more")
        return wrong

    def _told(self, how: str, code: int, said: str) -> list[str]:
        if "Traceback" in said:
            return [f"traceback: {said.strip()[-400:]}"]
        if code and how in ("full", "once") and "Make room" not in said:
            return [f"said: {said.strip()[-400:]}"]
        if code == 0 and said.strip():
            return [f"said: {said.strip()[-400:]}"]
        return []

    def _next(self) -> list[str]:
        """What is wrong with the same done once more, after what the program says is to be done first."""
        code, said = self._cured(self.way.run)
        if code:
            return [f"the next run: {code} {said[-500:]}"]
        found = texts(BOOK.parent)
        wrong = [f"after the next run {name} is not as it should be"
                 for name in self.after.keys() | found.keys() if self.after.get(name) != found.get(name)]  # fmt: skip
        if (tree_of(BOOK, "HEAD"), tree_of(COPY, "main")) != self.trees:
            wrong.append("the next run did not record, join or send the same")
        if git(BOOK, "for-each-ref", "refs/heelclear"):
            wrong.append("a name of our own is left in git")
        left = [*Path("tmp").iterdir(), *Path("here").rglob(".heelclear-*")]
        return wrong + [f"left by the next run: {path}" for path in left] + self._goes_on()

    def _goes_on(self) -> list[str]:
        """Where a lock is left that the next run had no need of: what is wrong with a day's work after it."""
        if not [*Path("here/.git").rglob("*.lock"), *COPY.rglob("*.lock")]:
            return []
        (BOOK / "later.toml").write_text("schema = 1\n")
        told = [self._cured(WAYS[name].run) for name in ("record", "push")]
        return [f"later: {code} {said[-300:]}" for code, said in told if code]

    def _cured(self, work: Callable[[], int]) -> tuple[int, str]:
        """What comes of some work, done until no lock is in its way that it says is to be removed."""
        for _ in range(CURES):
            done = Stopped(work, str(self.top / "home"))
            code = done.run()
            locks = [path for name in LOCK.findall(done.said)
                     for path in (BOOK.parent / name, Path("here/.git") / name) if path.exists()]  # fmt: skip
            if code == 0 or not locks:
                break
            for path in locks:
                path.unlink(missing_ok=True)
        return code, done.said.strip()


def run(how: str, names: list[str]) -> int:
    for name in [one for one in os.environ if one.startswith(("XDG", "GIT", "HEELCLEAR"))]:
        if name != "HEELCLEAR_EVERY":
            del os.environ[name]
    os.environ["GIT_CONFIG_NOSYSTEM"] = "1"
    for name in ("GIT_AUTHOR_NAME", "GIT_AUTHOR_EMAIL", "GIT_COMMITTER_NAME", "GIT_COMMITTER_EMAIL"):
        os.environ[name] = "yard"
    bad = 0
    with tempfile.TemporaryDirectory() as top:
        os.environ["XDG_CACHE_HOME"] = str(Path(top) / "cache")
        for name in names or WAYS:
            one = Run(name, how, Path(top))
            one.at_every_call()
            bad += one.cases
            print(
                f"{name}: {one.calls} calls, stopped at {one.stopped} of {one.tried}, {one.cases} wrong",
                flush=True,
            )
            for line in one.wrong:
                print(f"    {line}", flush=True)
        os.chdir("/")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(run(sys.argv[1], sys.argv[2:]))
