"""Random files with one random change each: a few, many on the server, and twenty thousand by hand."""

from __future__ import annotations

import random
import re
import subprocess
import sys
from pathlib import Path

import pytest


@pytest.mark.parametrize("count", [120, pytest.param(3000, marks=pytest.mark.depth)])
def test_random_changes_of_random_files_are_right_or_refused(count: int) -> None:
    script = Path(__file__).parents[2] / "long_edit_run.py"
    first = random.randrange(10_000_000)
    command = [sys.executable, str(script), str(count), str(first)]
    done = subprocess.run(command, capture_output=True, text=True, timeout=900, check=False)
    assert done.returncode == 0, f"first seed {first}\n{done.stdout}{done.stderr}"
    told = re.search(r"(\d+) made, (\d+) refused, (\d+) wrong", done.stdout)
    assert told is not None, done.stdout
    made, _, wrong = (int(number) for number in told.groups())
    assert wrong == 0
    assert made >= count // 2
