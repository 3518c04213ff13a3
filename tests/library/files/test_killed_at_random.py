"""kill -9 at two hundred random moments."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path


def run(rounds: int, way: str) -> list[str]:
    script = Path(__file__).with_name("killing_run.py")
    done = subprocess.run(
        [sys.executable, str(script), str(rounds), way],
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    assert "killed" in done.stdout, done.stderr
    print(done.stdout)
    return done.stdout.split()


def test_two_hundred_kills_tear_no_file() -> None:
    told = run(200, "safely")
    assert told[:4] == ["200", "killed,", "0", "torn,"]
    assert told[-2:] == [".lock", "taps.toml"], "what the killed programs left goes with the next save"
    assert int(told[4]) == 200, "each program had saved something of its own"


def test_the_same_kills_do_tear_a_file_that_is_written_plainly() -> None:
    told = run(40, "plainly")
    assert int(told[2]) > 0
