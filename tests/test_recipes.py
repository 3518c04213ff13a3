"""The recipes of DEVELOPERS.md, carried out as they stand in a copy of the checkout: each in two files at most, and green.

A block of a recipe begins with the file that it belongs to: a new one, or one that it is put at the end of, or at the
end of the last table in it, before the bracket that closes that, or before a line of it.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")

_RECIPE = re.compile(r"^### (?P<title>.+)\n(?P<text>(?:(?!^##).*\n)*)", re.MULTILINE)
_BLOCK = re.compile(
    r"^```(?:python|toml)\n# (?P<file>[^\n,]+)(?:, (?P<place>[^\n]+))?\n(?P<text>.*?)^```\n",
    re.DOTALL | re.MULTILINE,
)
_RUN = re.compile(r"`pytest (?P<tests>[^`]+)`")
PROFILE = "HEELCLEAR_TEST_PROFILE"
_WRITE = re.compile(r"`python (tests/\w+\.py)`")


@dataclass(frozen=True)
class Block:
    """A piece of text and the file that it goes into.

    Attributes:
        file: from the top of the checkout.
        place: ``at the end``, ``at the end of the table``, or ``before`` a line; empty where the file is new.
        text: what is written.
    """

    file: str
    place: str
    text: str

    def put_into(self, before: str) -> str:
        """The text of the file with this block in it."""
        if self.place == "at the end of the table":
            table, bracket, rest = before.rpartition("\n)")
            return f"{table}\n{self.text.rstrip()}{bracket}{rest}"
        if self.place.startswith("before "):
            line = self.place.removeprefix("before ").strip("`")
            assert before.count(f"\n{line}\n") == 1, f"{line!r} is not once in {self.file}"
            return before.replace(f"\n{line}\n", f"\n{self.text}{line}\n")
        return f"{before}\n{self.text}" if before else self.text


@dataclass(frozen=True)
class Recipe:
    """One recipe.

    Attributes:
        title: as its heading.
        lines: its numbered lines.
        blocks: what it writes.
        writers: what it says to write anew, and by which file.
        tests: what it says to run.
    """

    title: str
    lines: tuple[str, ...]
    blocks: tuple[Block, ...]
    writers: tuple[str, ...]
    tests: tuple[str, ...]


def recipes() -> Iterator[Recipe]:
    for found in _RECIPE.finditer(DEVELOPERS.partition("## Recipes")[2]):
        blocks = tuple(
            Block(one["file"], one["place"] or "", one["text"]) for one in _BLOCK.finditer(found["text"])
        )
        prose = _BLOCK.sub("", found["text"])
        lines = tuple(line for line in prose.splitlines() if re.match(r"\d\. ", line))
        (told,) = _RUN.findall(found["text"])
        writers = tuple(_WRITE.findall(found["text"]))
        yield Recipe(found["title"], lines, blocks, writers, tuple(told.split()))


RECIPES = tuple(recipes())


def carry_out(recipe: Recipe, folder: Path) -> None:
    for block in recipe.blocks:
        path = folder / block.file
        assert path.exists() == bool(block.place), f"{block.file}: there already, or not there"
        path.parent.mkdir(parents=True, exist_ok=True)
        before = path.read_text(encoding="utf-8") if block.place else ""
        path.write_text(block.put_into(before), encoding="utf-8")
    for writer in recipe.writers:
        run_python(folder, writer).check_returncode()


def copied(folder: Path) -> Path:
    """A copy of the checkout, without what git does not keep."""
    shutil.copytree(
        ROOT,
        folder,
        ignore=shutil.ignore_patterns(
            ".git", ".venv*", "*_cache", ".hypothesis", "__pycache__", "build", "dist"
        ),
    )
    return folder


def run_tests(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    return run_python(folder, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", *words)


def run_python(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, *words],
        cwd=folder,
        # At the length of the suite, whatever the run that this one is a part of has.
        env={key: text for key, text in os.environ.items() if key != PROFILE} | {"PYTHONPATH": str(folder)},
        capture_output=True,
        text=True,
        check=False,
    )


def test_there_is_a_recipe_for_everything_that_is_added_often() -> None:
    titles = " ".join(recipe.title.lower() for recipe in RECIPES)
    for thing in ("calculation", "quantity", "family", "caution", "action", "screen"):
        assert thing in titles


@pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.title)
def test_a_recipe_has_at_most_five_lines_and_writes_at_most_two_files(recipe: Recipe) -> None:
    assert 1 <= len(recipe.lines) <= 5
    assert 1 <= len({block.file for block in recipe.blocks}) <= 2
    assert recipe.tests


@pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.title)
def test_the_tests_and_writers_that_it_names_are_there(recipe: Recipe) -> None:
    written = {block.file for block in recipe.blocks}
    for path in (*recipe.tests, *recipe.writers):
        assert (ROOT / path).exists() or path in written, path


@pytest.mark.depth
def test_all_of_them_carried_out_together_leave_every_test_green_that_they_name(tmp_path: Path) -> None:
    folder = copied(tmp_path / "checkout")
    for recipe in RECIPES:
        carry_out(recipe, folder)
    named = dict.fromkeys(path for recipe in RECIPES for path in recipe.tests)
    done = run_tests(folder, "-n", "2", "-m", "not depth", *named)
    assert done.returncode == 0, done.stdout[-4000:]
    assert "[100%]" in done.stdout
