"""Report the walk of one key: how many files and calls of the program it goes through, in the calculator and on a card.

    python tests/report_walks.py

A guide for whoever wonders where a key goes; nothing is asserted.
"""

from __future__ import annotations

import asyncio
import os
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path
from types import FrameType
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tests.tui.conftest import Hands

TOP = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(TOP))
ROOMS = tuple(str(TOP / room) + os.sep for room in ("geometry", "library", "tui"))


async def walked(hands: Hands, key: str) -> tuple[int, int, float]:
    """Files and calls of the program for one key, and the milliseconds of CPU of another one like it."""
    begin = time.process_time()
    await hands.press(key)
    spent = (time.process_time() - begin) * 1000
    files: Counter[str] = Counter()

    def count(frame: FrameType, event: str, _: object) -> None:
        if event == "call" and frame.f_code.co_filename.startswith(ROOMS):
            files[frame.f_code.co_filename] += 1

    sys.setprofile(count)
    await hands.press(key)
    sys.setprofile(None)
    return len(files), sum(files.values()), spent


async def walks(yard: Path, state: Path) -> None:
    from library.book.opening import open_book
    from tests.tui.conftest import started
    from tui.app import Heelclear
    from tui.session import Session

    async with started(Heelclear(Session(), lambda: open_book(yard), yard, state), yard) as hands:
        await hands.do("bronze", "<f2>", ".2")
        told = await walked(hands, "1")
        print("A digit in the calculator: {} files, {} calls, {:.1f} ms of CPU".format(*told))
        await hands.do(
            "<f9>", "<ctrl+u>", "bronze spi", "<ctrl+f>", "T-12-5", "<enter>", "M12", "<enter>", "<right>"
        )
        await hands.do("<enter>", "slip crane", "<enter>", "<enter>", "w", "<enter>", "Squeals", "<enter>")
        await hands.do("11.98 mm", "<enter>", "3.2, 3.2, 3.1 mm", "<enter>", "c", "<enter>", ".20, .2")
        told = await walked(hands, "1")
        print("A digit of a reading on a card: {} files, {} calls, {:.1f} ms of CPU".format(*told))


def main() -> None:
    """Lay out the demo in a folder of its own, and walk through it."""
    with tempfile.TemporaryDirectory() as temporary:
        home = Path(temporary)
        for name in ("DATA", "CONFIG", "STATE", "CACHE"):
            os.environ[f"XDG_{name}_HOME"] = str(home / name.lower())
        from library.demo import lay_out

        lay_out(home / "yard")
        asyncio.run(walks(home / "yard", home / "state"))


if __name__ == "__main__":
    main()
