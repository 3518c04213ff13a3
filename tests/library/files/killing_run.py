"""Kills a saving program at random moments and looks at the file each time.

Run by its test with the number of rounds and the way to save: ``safely``, or ``plainly`` for the control.
"""

from __future__ import annotations

import itertools
import os
import random
import signal
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from library.files.safe_write import ANYTHING, write_safely


def text(number: int) -> bytes:
    """A text of a few blocks that says what it is at every line, so that a torn one shows."""
    return b"".join(b"number = %d # line %d\n" % (number, line) for line in range(400))


def safely(file: Path, data: bytes) -> None:
    write_safely(file, data, root=file.parent, expected=ANYTHING)


def plainly(file: Path, data: bytes) -> None:
    with file.open("wb", buffering=512) as stream:
        for line in data.splitlines(keepends=True):
            stream.write(line)


def one_round(file: Path, save: Callable[[Path, bytes], None], first: int, chance: random.Random) -> bytes:
    """Start a program that saves without a pause, kill it a little after its first save, and read the file."""
    told, telling = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            for number in itertools.count(first):
                save(file, text(number))
                os.write(telling, b".")
        finally:
            os._exit(1)
    os.close(telling)
    os.read(told, 1)
    time.sleep(chance.uniform(0, 0.008))
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    os.close(told)
    return file.read_bytes()


def main(rounds: int, save: Callable[[Path, bytes], None]) -> int:
    chance = random.Random(rounds)
    torn = 0
    kept = set()
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "taps.toml"
        file.write_bytes(text(0))
        for count in range(1, rounds + 1):
            found = one_round(file, save, count * 1000, chance)
            whole = len(found) > 20 and found == text(int(found.split(b" ", 3)[2]))
            torn += not whole
            kept.add(found)
        safely(file, b"")
        left = sorted(path.name for path in Path(folder).iterdir())
    print(f"{rounds} killed, {torn} torn, {len(kept)} different texts found, left: {' '.join(left)}")
    return 1 if torn or left != [".lock", "taps.toml"] else 0


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]), {"safely": safely, "plainly": plainly}[sys.argv[2]]))
