"""Recording, pulling and pushing, stopped at each call of git and of the program: nothing torn, lost or stuck.

Ways, what is looked at and the table are in ``every_sharing_run.py``.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from tests.tui.commands.every_system_call import can_be_looked_at
from tests.tui.commands.ways_of_sharing import WAYS

pytestmark = pytest.mark.depth

ROW = re.compile(r"(?P<name>.+): \d+ calls, stopped at (?P<times>\d+) of (?P<tried>\d+), 0 wrong")

EVERY = os.environ.get("HEELCLEAR_EVERY", "53")
"""Calls from one at which a way is stopped to the next; all of them, in each way of stopping, take an hour."""

HOW = ["all", "git", "program", "full", "once"] if "HEELCLEAR_EVERY" in os.environ else ["turn"]


def test_whether_it_can_be_done_here_is_told_at_once_whatever_else_runs() -> None:
    with subprocess.Popen([sys.executable, "-c", "input()"], stdin=subprocess.PIPE) as beside:
        try:
            can_be_looked_at()
            assert beside.poll() is None, "it was not waited for"
        finally:
            beside.communicate(b"\n")


@pytest.mark.timeout(7200 if "HEELCLEAR_EVERY" in os.environ else 600)
@pytest.mark.parametrize("how", HOW)
def test_every_way_of_sharing_leaves_a_whole_book_and_goes_on_wherever_it_is_stopped(how: str) -> None:
    reason = can_be_looked_at()
    if reason:
        pytest.skip(f"git cannot be looked at call by call here: {reason}")
    done = subprocess.run(
        [sys.executable, str(Path(__file__).with_name("every_sharing_run.py")), how],
        capture_output=True,
        text=True,
        check=False,
        env={"PATH": os.environ["PATH"], "PYTHONPATH": str(Path(__file__).parents[3]), "HEELCLEAR_EVERY": EVERY},
    )  # fmt: skip
    print(done.stdout)
    assert done.returncode == 0, done.stdout + done.stderr
    told = [row for row in map(ROW.fullmatch, done.stdout.splitlines()) if row]
    assert {row["name"] for row in told} == set(WAYS)
    assert all(int(row["tried"]) for row in told)
    if how == "all":
        assert all(row["tried"] == row["times"] for row in told), "it was stopped at each call"
