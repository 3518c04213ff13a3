"""Every command and saver that writes, stopped at each call that changes the disk, and what is left looked at each time.

    python every_call_run.py kill|full|once|names [NAME ...]

``kill`` kills the program at the call, ``full`` lets the disk be full from the call on, ``once`` at that call alone.
By the variable ``HEELCLEAR_EVERY`` only each so many calls are stopped at, each way beginning with another one.
Prints a line for each way of writing, with the number of calls, and one for each thing that is wrong.
"""

from __future__ import annotations

import io
import os
import shutil
import signal
import sys
import tempfile
import tomllib
import traceback
from collections.abc import Callable, Mapping
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path

from library.book import fetching
from library.book.folders import cache_folder
from library.demo import lay_out
from tests.tui.commands.stopping import Stopping
from tests.tui.commands.ways_of_writing import COLD, WAYS, YARD, command


def in_a_child(work: Callable[[], int]) -> tuple[int, str]:
    """The exit code of some work, or minus the signal that killed it, and what it said."""
    with tempfile.TemporaryFile() as said:
        child = os.fork()
        if child == 0:
            code = 70
            try:
                os.dup2(said.fileno(), 1)
                os.dup2(said.fileno(), 2)
                sys.stdout, sys.stderr = (os.fdopen(one, "w", closefd=False) for one in (1, 2))
                code = work()
            except SystemExit as leaving:
                code = int(leaving.code or 0)
            except BaseException:
                traceback.print_exc()
            finally:
                sys.stdout.flush()
                sys.stderr.flush()
                os._exit(code)
        code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        said.seek(0)
        return code, said.read().decode()


def held() -> dict[str, bytes]:
    """Text of every file of the person's home but git's, the caches and the locks."""
    found = {}
    for path in Path().rglob("*"):
        if not path.is_file() or {".git", ".cache"} & set(path.parts):
            continue
        if path.name != ".lock" and path.suffix != ".running":
            found[str(path)] = path.read_bytes()
    return found


def left_over() -> list[str]:
    """Names of files and folders that are only there while something is written."""
    marks = (".saving", ".laying", ".placing", ".writing")
    return [str(path) for path in Path().rglob("*") if path.name.endswith(marks)]


class Run:
    """One way of writing, stopped at each of its calls.

    Attributes:
        wrong: what was found.
        calls: how many calls there are.
        tried: at how many of them it was to be stopped.
        stopped: at how many it was.
    """

    def __init__(self, name: str, how: str, top: Path) -> None:
        self.name, self.how, self.top = name, how, top
        self.way = WAYS[name]
        self.wrong: list[str] = []
        self.tried = self.stopped = 0
        self._home()
        lay_out(YARD)
        in_a_child(self._prepared)
        os.chdir(top)
        shutil.rmtree(top / "ready", ignore_errors=True)
        shutil.copytree(top / "home", top / "ready", symlinks=True)
        self._home(top / "ready")
        with redirect_stdout(io.StringIO()), redirect_stderr(io.StringIO()):
            self.way.run()  # So that what it needs is loaded once, and not in every child.
        self._home(top / "ready")
        self.before = held()
        counter = Stopping(0, kill=False)
        code, said = in_a_child(lambda: self._count(counter))
        assert code == (1 if name == "check" else 0), said
        self.calls = len(Path("calls").read_text().split())
        Path("calls").unlink()
        self.after = held()

    def _prepared(self) -> int:
        """What stands there before; the caches are filled but where they are looked at."""
        self.way.before()
        if self.name not in COLD:
            command("cards", "--csv")()
            command("list")()
        return 0

    def _count(self, counter: Stopping) -> int:
        real = os.open, os.write
        counter.begin()
        code = self.way.run()
        handle = real[0]("calls", os.O_WRONLY | os.O_CREAT)
        real[1](handle, " ".join(counter.steps).encode())
        return code

    def _home(self, like: Path | None = None) -> None:
        """A home of its own, always under the same name, empty or like another folder."""
        home = self.top / "home"
        os.chdir(self.top)
        shutil.rmtree(home, ignore_errors=True)
        if like:
            shutil.copytree(like, home, symlinks=True)
        else:
            (home / "tmp").mkdir(parents=True)
        os.environ.update(HOME=str(home), TMPDIR=str(home / "tmp"))
        tempfile.tempdir = None
        os.chdir(home)

    def at_every_call(self) -> None:
        apart = int(os.environ.get("HEELCLEAR_EVERY", "1"))
        begin = 1 + list(WAYS).index(self.name) % min(apart, self.calls)
        for number in range(begin, self.calls + 1, apart):
            self.tried += 1
            self._home(self.top / "ready")
            stopping = Stopping(number, kill=self.how == "kill", from_then_on=self.how == "full")

            def work(stopping: Stopping = stopping) -> int:
                stopping.begin()
                return self.way.run()

            code, said = in_a_child(work)
            self._look(f"{self.name}, call {number}", code, said)
            os.chdir(self.top)

    def _look(self, where: str, code: int, said: str) -> None:
        killed = code == -signal.SIGKILL
        self.stopped += killed or code != 0
        found = held()
        wrong = self._torn(found)
        if not killed:
            wrong += self._told(code, said)
            wrong += [f"left {name}" for name in left_over()]
        again, said_again = in_a_child(self.way.run)
        if "Traceback" in said_again or (again not in (0, 1) and not self._is_done(found)):
            wrong.append(f"the next run: {again} {said_again[-300:]}")
        wrong += self._torn(held())
        wrong += [f"left by the next run: {name}" for name in left_over()]
        self.wrong += [f"{where}: {one}" for one in wrong]

    def _is_done(self, found: Mapping[str, bytes]) -> bool:
        return (len(found) == len(self.after) and set(found) != set(self.before)) or found == self.after

    def _torn(self, found: Mapping[str, bytes]) -> list[str]:
        wrong = [f"lost {name}" for name in self.before if name in self.after and name not in found]
        for name, raw in found.items():
            if any(
                mark in name for mark in (".saving", ".laying", ".placing", "/tmp/", ".writing")
            ) or name.startswith("tmp/"):
                continue
            if name.endswith(".toml"):
                try:
                    tomllib.loads(raw.decode())
                except ValueError:
                    wrong.append(f"torn {name}, {len(raw)} bytes")
            known = [one[name] for one in (self.before, self.after) if name in one]
            if known and "cards" not in name and raw not in known:
                wrong.append(f"neither old nor new: {name}, {len(raw)} bytes")
        return wrong

    def _told(self, code: int, said: str) -> list[str]:
        wrong = []
        if "Traceback" in said:
            wrong.append(f"traceback: {said[-500:]}")
        elif code not in (0, 1) and ("Make room" not in said or "other folder" in said):
            wrong.append(f"said: {said.strip()[-300:]}")
        if code == 1 and self.name not in ("check",):
            wrong.append(f"ended with 1: {said.strip()[-300:]}")
        return wrong


def run(how: str, names: list[str]) -> int:
    if how == "names":
        print("\n".join(WAYS))
        return 0
    for name in [
        name for name in os.environ if name.startswith(("XDG", "HEELCLEAR")) and name != "HEELCLEAR_EVERY"
    ]:
        del os.environ[name]
    for name in ("GIT_AUTHOR_NAME", "GIT_AUTHOR_EMAIL", "GIT_COMMITTER_NAME", "GIT_COMMITTER_EMAIL"):
        os.environ[name] = "yard"
    fetching.SETTLED = 0.0  # The book is laid just now, and is taken as an old one.
    cache_folder()
    bad = 0
    with tempfile.TemporaryDirectory() as top:
        for name in names or WAYS:
            one = Run(name, how, Path(top))
            one.at_every_call()
            bad += len(one.wrong)
            print(
                f"{name}: {one.calls} calls, stopped at {one.stopped} of {one.tried}, {len(one.wrong)} wrong",
                flush=True,
            )
            for line in one.wrong:
                print(f"    {line}", flush=True)
        os.chdir("/")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(run(sys.argv[1], sys.argv[2:]))
