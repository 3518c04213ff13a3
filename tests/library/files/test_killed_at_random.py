"""kill -9 at random moments, a few here and two hundred on the server."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest


def run(rounds: int, way: str) -> list[str]:
    script = Path(__file__).with_name("killing_run.py")
    done = subprocess.run(
        [sys.executable, str(script), str(rounds), way],
        capture_output=True,
        text=True,
        timeout=600,
        check=False,
    )
    assert "killed" in done.stdout, done.stderr
    print(done.stdout)
    return done.stdout.split()


@pytest.mark.parametrize("rounds", [40, pytest.param(200, marks=pytest.mark.depth)])
def test_kills_tear_no_file(rounds: int) -> None:
    told = run(rounds, "safely")
    assert told[:4] == [str(rounds), "killed,", "0", "torn,"]
    assert told[-2:] == [".lock", "taps.toml"], "what the killed programs left goes with the next save"
    assert int(told[4]) == rounds, "each program had saved something of its own"


def test_the_same_kills_do_tear_a_file_that_is_written_plainly() -> None:
    told = run(40, "plainly")
    assert int(told[2]) > 0
