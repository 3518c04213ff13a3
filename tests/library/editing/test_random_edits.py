"""Six hundred random files with one random change each; twenty thousand by hand."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path


def test_random_changes_of_random_files_are_right_or_refused() -> None:
    script = Path(__file__).parents[2] / "long_edit_run.py"
    done = subprocess.run(
        [sys.executable, str(script), "600"], capture_output=True, text=True, timeout=300, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
    told = re.search(r"(\d+) made, (\d+) refused, (\d+) wrong", done.stdout)
    assert told is not None, done.stdout
    made, _, wrong = (int(number) for number in told.groups())
    assert wrong == 0
    assert made >= 500
