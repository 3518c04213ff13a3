"""The tool that shows which changes the suite notices, tried on a checkout of one function and one test."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

TOOLS = Path(__file__).parent
WIDTHS = '''"""Widths; not < a bound."""
def narrower(width: float, bound: float, least: int = 3) -> bool:
    """Whether it is < the bound."""
    if least < 0:
        raise ValueError(f"{least - 1} < 0")
    return width < bound
'''
A_TEST = """from geometry.widths import narrower
def test_a_width_at_the_bound_is_not_narrower():
    assert not narrower(2.0, 2.0)
"""
RED_ANYWAY = """def test_that_is_red_anyway():
    raise AssertionError
"""
LIGHT = "--suite=-p no:hypothesispytest -p no:asyncio"
"""The invented tests need no plugins, which take longer to load than everything else here."""

AT_THE_BOUND = ("    return width < bound", "    return width <= bound")
BELOW_ZERO = ("    if least < 0:", "    if least <= 0:")


@pytest.fixture
def tree(tmp_path: Path) -> Path:
    """A checkout with a source, a test of it, and a test that fails whatever the source says."""
    for name, text in {
        "geometry/__init__.py": "",
        "geometry/widths.py": WIDTHS,
        "tests/geometry/test_first.py": RED_ANYWAY,
        "tests/geometry/test_widths.py": A_TEST,
    }.items():
        path = tmp_path / "tree" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    return tmp_path / "tree"


def printed(script: str, *words: str | Path) -> str:
    """What a tool prints."""
    command = [sys.executable, str(TOOLS / script), *map(str, words)]
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def as_a_change(before: str, after: str) -> dict[str, Any]:
    """A change of a line of the invented source."""
    line = WIDTHS.splitlines().index(before) + 1
    return {
        "kind": "bound",
        "file": "geometry/widths.py",
        "line": line,
        "before": before,
        "after": after,
        "occurrence": 0,
    }


@pytest.mark.depth
def test_it_names_the_test_that_finds_a_change_and_says_which_change_none_finds(
    tree: Path, tmp_path: Path
) -> None:
    changes, told = tmp_path / "changes.json", tmp_path / "told.json"
    gone = as_a_change(*BELOW_ZERO) | {"before": "    if most > 9:"}
    changes.write_text(json.dumps([as_a_change(*AT_THE_BOUND), as_a_change(*BELOW_ZERO), gone]))
    words = ("--tree", tree, "--changes", changes, "--json", told, "--stages", "near", LIGHT)
    text = printed("change_by_change.py", *words)
    finder = "tests/geometry/test_widths.py::test_a_width_at_the_bound_is_not_narrower"
    results = json.loads(told.read_text())["results"]
    assert [(result["found"], result["by"]) for result in results] == [
        (True, finder),
        (False, ""),
        (False, "the line is not there"),
    ]
    assert "geometry/__init__.py" in text.splitlines()[0]
    assert "1 of 3 changes found." in text
    assert "tests/geometry/test_first.py::test_that_is_red_anyway" in text.splitlines()[-1]
    assert (tree / "geometry" / "widths.py").read_text() == WIDTHS
    # Gone on with, what was found stays found and is not run again.
    again = printed("change_by_change.py", "--tree", tree, "--from", told, "--only", "1", LIGHT)
    assert "1 of 1 changes found." in again
    assert finder not in again


def test_the_changes_are_the_same_each_time_and_leave_words_and_messages_alone(tree: Path) -> None:
    words = ("--tree", tree, "--count", "99", "--seed", "4")
    text = printed("changes_to_try.py", *words)
    assert printed("changes_to_try.py", *words) == text
    made = {(change["before"], change["after"]) for change in json.loads(text)}
    assert {AT_THE_BOUND, BELOW_ZERO} <= made
    head = "def narrower(width: float, bound: float, least: int = 3) -> bool:"
    assert {before for before, _ in made} == {AT_THE_BOUND[0], BELOW_ZERO[0], head}
    assert (head, head.replace("3", "4")) in made
