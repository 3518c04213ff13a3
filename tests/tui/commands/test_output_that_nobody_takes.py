"""Output that cannot be written: a full disk is told by the exit code, a reader that stopped is no fault."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

COMMAND = [sys.executable, "-m", "tui", "list"]


def test_a_full_disk_is_told_by_the_exit_code() -> None:
    full = Path("/dev/full")
    if not full.exists():
        pytest.skip("this system has no /dev/full")
    with full.open("w") as out:
        done = subprocess.run(COMMAND, stdout=out, stderr=subprocess.PIPE, check=False)
    assert done.returncode != 0
    assert b"Traceback" not in done.stderr
    assert b"Exception ignored" not in done.stderr


def test_a_reader_that_stops_is_no_fault() -> None:
    writer = subprocess.Popen(COMMAND, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    assert writer.stdout is not None
    assert writer.stderr is not None
    writer.stdout.close()
    complaint = writer.stderr.read()
    assert writer.wait() in {1, 141}
    assert complaint == b""
    writer.stderr.close()
