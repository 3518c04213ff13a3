"""Kills a program that lays a book out at random moments, and looks at the folder each time.

Run by its test with the number of rounds.
"""

from __future__ import annotations

import os
import random
import signal
import sys
import tempfile
import time
from pathlib import Path

from library.book.starting import new_book
from library.demo import BOOK, lay_out
from library.files.staging import is_staging


def held(folder: Path) -> dict[str, bytes] | None:
    """Text of every file in a folder, or nothing where there is no folder."""
    if not folder.is_dir():
        return None
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def main(rounds: int) -> int:
    chance = random.Random(rounds)
    whole = {path.relative_to(BOOK).as_posix(): path.read_bytes() for path in BOOK.rglob("*.toml")}
    bad = killed = 0
    for _ in range(rounds):
        with tempfile.TemporaryDirectory() as top:
            folder = Path(top) / "yard"
            before: dict[str, bytes] | None = None
            if chance.random() < 0.5:
                folder.mkdir()
                before = {}
            child = os.fork()
            if child == 0:
                lay_out(folder)
                os._exit(0)
            time.sleep(chance.uniform(0, 0.1))
            os.kill(child, signal.SIGKILL)
            os.waitpid(child, 0)
            found = held(folder)
            killed += found != whole
            bad += found not in (before, whole)
            if found != whole:
                new_book(folder)
                bad += any(is_staging(path.name) for path in Path(top).iterdir())
    print(f"{rounds} rounds, {killed} killed before the end, {bad} bad")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1])))
