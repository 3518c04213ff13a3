"""Output that cannot be written: a full disk is told by the exit code, a reader that stopped is no fault."""

from __future__ import annotations

import shlex
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

pytestmark = pytest.mark.depth
"""It takes long, and the server runs it."""

COMMAND = [sys.executable, "-m", "tui", "list"]
SHORT = [["--version"], ["list", "--help"], ["paths"], ["list", "--json"]]
"""Output that fits into one buffer is refused only when it is sent, at the end."""


@pytest.fixture(autouse=True)
def output_in_a_buffer(monkeypatch: pytest.MonkeyPatch) -> None:
    """As in a shop; a developer's shell may ask Python for another way."""
    monkeypatch.delenv("PYTHONUNBUFFERED", raising=False)


@pytest.mark.parametrize("words", SHORT, ids=" ".join)
def test_a_full_disk_is_told_by_the_exit_code_and_a_sentence(words: list[str]) -> None:
    full = Path("/dev/full")
    if not full.exists():
        pytest.skip("this system has no /dev/full")
    with full.open("w") as out:
        done = subprocess.run([*COMMAND[:3], *words], stdout=out, stderr=subprocess.PIPE, check=False)
    assert done.returncode == 1
    assert (
        done.stderr == b"This could not be finished: the disk is full. Make room on it, then do it again.\n"
    )


@pytest.mark.parametrize("words", SHORT, ids=" ".join)
def test_a_reader_that_stops_is_no_fault(words: list[str]) -> None:
    writer = subprocess.Popen([*COMMAND[:3], *words], stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    assert writer.stdout is not None
    assert writer.stderr is not None
    writer.stdout.close()
    complaint = writer.stderr.read()
    assert writer.wait() == 141
    assert complaint == b""
    writer.stderr.close()


@pytest.mark.parametrize(
    "words", [*SHORT[::3], ["doctor", "--json"], ["show", "no-such-entry"]], ids=" ".join
)
def test_output_that_was_closed_before_the_start_is_no_fault(words: list[str]) -> None:
    script = f"exec {shlex.join([*COMMAND[:3], *words])} >&- 2>{{}}"
    with tempfile.NamedTemporaryFile() as complaint:
        subprocess.run(["/bin/sh", "-c", script.format(complaint.name)], check=False)
        assert b"Traceback" not in complaint.read()
    assert subprocess.run(["/bin/sh", "-c", script.format("&-")], check=False).returncode in {0, 1, 2}
