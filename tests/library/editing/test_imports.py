"""Reading a book loads no writer."""

from __future__ import annotations

import subprocess
import sys

import pytest


@pytest.mark.parametrize(
    "module",
    [
        "library.book.opening",
        "library.editing.planning",
        "library.editing.saving",
        "library.files.safe_write",
        "library.files.watching",
        "library.drafts.draft_store",
        "library.history.entry_history",
        "library.history.recording",
        "library.history.sharing",
    ],
)
def test_importing_what_saves_loads_neither_writer(module: str) -> None:
    code = f"import sys, {module}\nprint([name for name in ('tomlkit', 'tomli_w', 'pint') if name in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
