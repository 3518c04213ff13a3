"""Geometry stands alone: a fresh interpreter that loads all of it has loaded nothing of anyone else's."""

from __future__ import annotations

import subprocess
import sys

LOAD_ALL = """
import sys
from geometry.evaluate import run
from geometry.calculations import calculation, calculation_names
assert [calculation(name) for name in calculation_names()]
print(*sorted({name.partition(".")[0] for name in sys.modules}))
"""


def test_a_fresh_interpreter_has_loaded_geometry_and_the_standard_library_only() -> None:
    plain = subprocess.run(
        [sys.executable, "-c", "import sys; print(*sys.modules)"], check=True, capture_output=True, text=True
    )
    before = {name.partition(".")[0] for name in plain.stdout.split()}
    loaded = subprocess.run([sys.executable, "-c", LOAD_ALL], check=True, capture_output=True, text=True)
    added = set(loaded.stdout.split()) - before - set(sys.stdlib_module_names)
    assert added == {"geometry"}
