"""What the first frame loads: a list of modules can be relied on where a clock cannot."""

from __future__ import annotations

import ast
import os
import subprocess
import sys
from collections.abc import Iterator
from graphlib import TopologicalSorter
from importlib import import_module
from pathlib import Path

import pytest

import tui
from tests.each import each
from tui import later, screens

FIRST_FRAME = """
import argparse, asyncio, sys
from tui import start, terminal

async def look(app):
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.app.workers.wait_for_complete()
        await pilot.pause()
        await pilot.press("t", "a", "p", "down")

def run(app, **options):
    asyncio.run(look(app))
    print(*sorted(sys.modules))

terminal.refusal = lambda: ""
import tui.app
tui.app.Heelclear.run = run
start.run(argparse.Namespace(library=None, units="mm", ascii=False, figures=None, mouse=False))
"""
"""The program's own start, with its screen kept in memory."""


@pytest.fixture(scope="module")
def loaded(tmp_path_factory: pytest.TempPathFactory) -> set[str]:
    """The modules that are loaded after the first frame of a book that was opened before."""
    home = str(tmp_path_factory.mktemp("home"))
    environment = {"HOME": home, "PATH": os.environ["PATH"], "TERM": "xterm"}
    subprocess.run([sys.executable, "-m", "tui", "list"], env=environment, capture_output=True, check=True)
    done = subprocess.run(
        [sys.executable, "-c", FIRST_FRAME], env=environment, capture_output=True, text=True, check=True
    )
    return set(done.stdout.split())


NOT_YET = (
    "pint tomllib tomlkit tomli_w importlib.metadata email zipfile library.calc.answer geometry.calculations "
    "geometry.quantities geometry.evaluate tui.screens.entry tui.screens.calculator library.pages.lines "
    "tui.view.form tui.figure"
)


@pytest.mark.parametrize("name", NOT_YET.split())
def test_opening_the_book_and_finding_in_it_does_not_load(name: str, loaded: set[str]) -> None:
    assert "tui.screens.book" in loaded
    assert name not in loaded


@pytest.mark.parametrize(
    "words",
    [
        "show tap-hand-plain-steel",
        "find tap",
        "calc relief-drop diameter=1/2 relief_angle=8 land_width=.125 --units in",
    ],
)
def test_a_command_that_reads_usual_units_does_not_load_pint(words: str, tmp_path: Path) -> None:
    code = (
        "import sys\n"
        "from tui.main import main\n"
        f"code = main({words.split()!r})\n"
        "assert code == 0, code\n"
        "assert 'pint' not in sys.modules\n"
    )
    environment = {"HOME": str(tmp_path), "PATH": os.environ["PATH"]}
    done = subprocess.run(
        [sys.executable, "-c", code], env=environment, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr


def test_the_start_keeps_encryption_out_and_leaves_it_importable() -> None:
    code = (
        "import sys\n"
        "from tui.start import _without\n"
        "with _without('ssl'):\n"
        "    import asyncio\n"
        "assert 'ssl' not in sys.modules\n"
        "import ssl\n"
        "assert ssl.OPENSSL_VERSION\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True)


@pytest.mark.parametrize(
    "module", ["tui.view.book_page", "tui.changed_cells", "tui.keys", "tui.ascii_text", "tui.terminal"]
)
def test_pages_and_keys_do_without_textual(module: str) -> None:
    code = f"import sys, {module}; assert 'textual' not in sys.modules"
    subprocess.run([sys.executable, "-c", code], check=True)


TUI = Path(tui.__file__).parent
FILES = sorted(TUI.rglob("*.py"))
DOORS = {"later.py", "start.py", "screens/__init__.py", "commands/parser.py"}
"""The files that may load code late, as ``tui/doors.py`` names them."""


def imports_of(node: ast.AST) -> Iterator[tuple[str, str]]:
    """The module and the name of every import under a node, or the module alone."""
    for one in ast.walk(node):
        if isinstance(one, ast.ImportFrom):
            yield from ((one.module or "", name.name) for name in one.names)
        elif isinstance(one, ast.Import):
            yield from ((name.name, "") for name in one.names)


@each("file", FILES, lambda file: str(file.relative_to(TUI)))
def test_no_function_imports_anything(file: Path) -> None:
    tree = ast.parse(file.read_text(encoding="utf-8"))
    functions = [one for one in ast.walk(tree) if isinstance(one, ast.FunctionDef | ast.AsyncFunctionDef)]
    assert [found for one in functions for found in imports_of(one)] == []


def test_code_is_loaded_late_at_the_named_doors_and_nowhere_else() -> None:
    using: set[str] = set()
    for file in FILES:
        modules = {module for module, _ in imports_of(ast.parse(file.read_text(encoding="utf-8")))}
        if "tui.doors" in modules:
            using.add(file.relative_to(TUI).as_posix())
        assert "importlib" not in modules or file.name == "doors.py", file
    assert using == DOORS


@pytest.mark.parametrize(
    ("file", "table"), [("screens/__init__.py", screens.SCREENS | screens.PARTS), ("later.py", later.LATER)]
)
def test_a_table_of_what_is_loaded_late_says_the_same_to_the_program_and_to_its_types(
    file: str, table: dict[str, str]
) -> None:
    tree = ast.parse((TUI / file).read_text(encoding="utf-8"))
    (typed,) = (one for one in tree.body if isinstance(one, ast.If) and isinstance(one.test, ast.Name))
    assert {name: module for module, name in imports_of(typed)} == table
    for name, module in table.items():
        assert getattr(import_module(module), name) is getattr(import_module(_module_of(file)), name)


def test_no_files_of_the_screens_import_each_other_in_a_circle() -> None:
    modules = {_module_of(file.relative_to(TUI).as_posix()): file for file in FILES}
    graph: dict[str, set[str]] = {}
    for module, file in modules.items():
        tree = ast.parse(file.read_text(encoding="utf-8"))
        at_the_top = [one for one in tree.body if isinstance(one, ast.Import | ast.ImportFrom)]
        found = {name for one in at_the_top for pair in imports_of(one) for name in (pair[0], ".".join(pair))}
        graph[module] = (found & modules.keys()) - {module}
    assert len(graph) > 100
    TopologicalSorter(graph).prepare()  # Raises CycleError with the files of a circle.


def _module_of(file: str) -> str:
    return f"tui.{file.removesuffix('.py').replace('/', '.')}".removesuffix(".__init__")
