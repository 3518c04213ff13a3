"""Several programs write on one job card at the same time, each by ``heelclear card-set``.

    python card_setting_run.py BOOK ID SAVES PLACE PLACE ...

One program for each place; each writes its place as often as asked, the number of the save as the text. Prints what
came of every save: a line ``PLACE CODE`` each.
"""

from __future__ import annotations

import io
import os
import sys
from contextlib import redirect_stderr, redirect_stdout

from tui.main import main


def write(book: str, card_id: str, saves: int, place: str) -> bytes:
    """Write one place so many times; gives the exit codes, one character each."""
    codes = b""
    for number in range(1, saves + 1):
        words = ["--library", book, "card-set", card_id, f"{place}={number}"]
        with redirect_stdout(io.StringIO()), redirect_stderr(io.StringIO()):
            codes += str(main(words)).encode()
    return codes


def child(book: str, card_id: str, saves: int, place: str, gate: int) -> tuple[int, int]:
    """Start a process that writes as soon as the gate is open; gives its number and the pipe on which it tells."""
    reading, writing = os.pipe()
    number = os.fork()
    if number == 0:
        try:
            os.read(gate, 1)
            os.write(writing, write(book, card_id, saves, place))
            os._exit(0)
        finally:
            os._exit(1)
    os.close(writing)
    return number, reading


def run(book: str, card_id: str, saves: int, places: list[str]) -> int:
    """Start all of them, let them go at once, and wait for every one."""
    with redirect_stdout(io.StringIO()):
        main(["--library", book, "card", card_id])  # So that what each of them needs is loaded once.
    gate, opener = os.pipe()
    children = [child(book, card_id, saves, place, gate) for place in places]
    os.write(opener, b"." * len(children))
    failed = sum(os.waitpid(number, 0)[1] != 0 for number, _ in children)
    for place, (_, pipe) in zip(places, children, strict=True):
        for code in os.read(pipe, saves + 1).decode():
            print(place, code)
    return failed


if __name__ == "__main__":
    sys.exit(run(sys.argv[1], sys.argv[2], int(sys.argv[3]), sys.argv[4:]))
