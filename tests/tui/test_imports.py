"""What the first frame loads: a list of modules can be relied on where a clock cannot."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest

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
    "geometry.quantities geometry.running tui.screens.entry tui.screens.calculator library.pages.lines "
    "tui.view.form tui.figure"
)


@pytest.mark.parametrize("name", NOT_YET.split())
def test_opening_the_book_and_finding_in_it_does_not_load(name: str, loaded: set[str]) -> None:
    assert "tui.screens.book" in loaded
    assert name not in loaded


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
    "module", ["tui.view.book_page", "tui.changed_cells", "tui.keys", "tui.plain", "tui.terminal"]
)
def test_pages_and_keys_do_without_textual(module: str) -> None:
    code = f"import sys, {module}; assert 'textual' not in sys.modules"
    subprocess.run([sys.executable, "-c", code], check=True)
