"""The table of promises in DEVELOPERS.md names tests that are there, are collected, and run in the fast suite too."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
TABLE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").partition("## What is promised")[2]
ROWS = [line.strip("| ").split(" | ") for line in TABLE.splitlines() if line.startswith("| ")][1:]
PROMISES = {row[0]: re.findall("`([^`]+)`", row[1]) for row in ROWS}

WHOLE_SUITE = 100
"""Files of which tests were collected, from which on nothing but the whole suite was asked for."""


def functions_of(path: str) -> list[ast.FunctionDef | ast.AsyncFunctionDef]:
    """The tests of a file by their names, as pytest finds them; none where the file itself is one of the long ones."""
    module = ast.parse((ROOT / path).read_text(encoding="utf-8"))
    functions = [one for one in module.body if isinstance(one, ast.FunctionDef | ast.AsyncFunctionDef)]
    return [one for one in functions if one.name.startswith("test_")]


def is_long(path: str) -> bool:
    """Whether all of a file, or each of its tests, waits for the depth stage."""
    text = (ROOT / path).read_text(encoding="utf-8")
    marked = [
        any(ast.unparse(mark) == "pytest.mark.depth" for mark in one.decorator_list)
        for one in functions_of(path)
    ]
    return "\npytestmark = pytest.mark.depth" in text or all(marked)


def test_there_are_ten_promises_each_with_what_is_counted() -> None:
    assert len(PROMISES) == 10
    assert all(len(row) == 3 and len(row[2]) > 20 for row in ROWS)


@pytest.mark.parametrize("promise", PROMISES)
def test_a_promise_names_tests_that_are_there_and_one_that_is_never_left_out(promise: str) -> None:
    paths = PROMISES[promise]
    for path in paths:
        assert re.fullmatch(r"tests/(?:[a-z_]+/)*test_[a-z0-9_]+\.py", path), "pytest would not look into it"
        assert functions_of(path), path
    assert not all(is_long(path) for path in paths)


def test_all_of_them_are_collected(request: pytest.FixtureRequest) -> None:
    collected = {item.path for item in request.session.items}
    if len(collected) < WHOLE_SUITE:
        pytest.skip("only a part of the suite was asked for")
    promised = {ROOT / path for paths in PROMISES.values() for path in paths if not is_long(path)}
    assert promised - collected == set()
