"""Promises of the project as a whole: commands, packages, and what a clean interpreter loads."""

from __future__ import annotations

import importlib.metadata
import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")


def test_the_server_calls_the_test_command_of_the_readme_word_for_word() -> None:
    commands = re.findall(r"```sh\n(python3 -m venv .*)\n```", README)
    assert len(commands) == 2, "the README has one command to run and one to test"
    assert commands[1] in (ROOT / ".ci" / "run").read_text(encoding="utf-8").splitlines()
    assert commands[1].endswith("-m pytest")


def test_the_readme_tells_the_whole_job_in_one_paragraph_at_the_top() -> None:
    title, paragraph, *_ = README.split("\n\n")
    assert title == "# Heelclear"
    assert "\n" not in paragraph.strip()
    for word in (
        "taps",
        "drills",
        "countersinks",
        "reamers",
        "TOML",
        "indicator",
        "heel",
        "cautions",
        "record",
    ):
        assert word in paragraph


@pytest.mark.parametrize("package", ["geometry", "library", "tui"])
def test_each_package_comes_from_this_distribution(package: str) -> None:
    installed = importlib.metadata.distribution("heelclear").read_text("direct_url.json")
    assert installed is not None
    home = Path(json.loads(installed)["url"].removeprefix("file://"))
    found = __import__(package).__file__
    assert found is not None
    assert Path(found).resolve().parent == home.resolve() / package


def test_constraints_name_exact_versions_and_no_address() -> None:
    lines = (ROOT / "constraints.txt").read_text(encoding="utf-8").splitlines()
    assert lines
    for line in lines:
        assert re.fullmatch(r"[A-Za-z0-9._-]+==[0-9][A-Za-z0-9.+!]*", line), line


def loaded_by(statement: str) -> set[str]:
    """The top-level modules that a clean interpreter has after a statement."""
    code = f"import sys; {statement}; print(*sorted({{n.partition('.')[0] for n in sys.modules}}))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    return set(done.stdout.split())


def test_geometry_loads_nothing_but_the_standard_library() -> None:
    loaded = loaded_by(
        "from geometry.calculations import calculation, calculation_names; [calculation(n) for n in calculation_names()]; "
        "import geometry.evaluate"
    )
    assert "geometry" in loaded
    foreign = loaded - set(sys.stdlib_module_names) - {"geometry"}
    # What the interpreter itself loads at start (editable installs) is not geometry's doing.
    assert foreign <= loaded_by("pass") | {"geometry"}


@pytest.mark.parametrize(
    ("statement", "absent"),
    [
        (
            "import library.units.read, library.calc.answer",
            {"pint", "tomlkit", "tomli_w", "textual", "rich", "tui"},
        ),
        ("import library.book.opening", {"pint", "tomlkit", "tomli_w", "textual", "rich", "tui"}),
        ("import tui.commands.calc, tui.commands.list", {"pint", "tomlkit", "textual", "rich"}),
        ("import tui.commands.parser as p; p.build()", {"library", "geometry", "textual", "rich", "shtab"}),
    ],
)
def test_a_clean_interpreter_does_not_load_what_is_not_needed(statement: str, absent: set[str]) -> None:
    assert not loaded_by(statement) & absent


@pytest.mark.parametrize("word", ["--version", "--help"])
def test_version_and_help_load_nothing_heavy(word: str) -> None:
    heavy = {
        "pint",
        "textual",
        "rich",
        "tomlkit",
        "tomllib",
        "geometry",
        "library",
        "platformdirs",
        "asyncio",
    }
    statement = (
        "import contextlib, io\n"
        "import tui.main\n"
        "with contextlib.redirect_stdout(io.StringIO()), contextlib.suppress(SystemExit):\n"
        f"    tui.main.main([{word!r}])\n"
    )
    code = f"import sys\n{statement}print(*sorted({{n.partition('.')[0] for n in sys.modules}}))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert not set(done.stdout.split()) & heavy


def test_no_text_of_the_project_names_a_path_of_a_machine_or_the_host_of_a_registry() -> None:
    tracked = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False
    ).stdout.split()
    if not tracked:
        pytest.skip("not a git checkout")
    address = re.compile(
        r"https?://[a-z.]*(pyp" + r"i|npm" + r"js|deb" + r"ian)|index" + r"-url|/wor" + r"k/", re.IGNORECASE
    )
    for name in tracked:
        path = ROOT / name
        if path.is_file() and (text := path.read_bytes().decode("utf-8", "ignore")):
            assert not address.search(text), name
