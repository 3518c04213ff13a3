"""A command that only reads changes nothing in the book, not even when a file was last read; and nothing that stands in the book steers the terminal."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from library.book import opening
from tests.examples import every_third_at_once
from tests.folder_pictures import Snapshot, snapshot
from tui.commands.arguments import COMMANDS
from tui.main import main

CARD = "2026-11-25-01"

READING: dict[str, list[list[str]]] = {
    "show": [["poisoned"], ["poisoned", "--sources", "--cautions"], ["poisoned", "--json"]],
    "list": [[], ["--json"]],
    "compare": [["poisoned", "plain"]],
    "cards": [[], ["--csv"], ["--readings"], ["--json"], ["--tool", "T-1"]],
    "glossary": [["land"]],
    "calc": [
        [],
        ["relief-drop", "--entry", "poisoned", "diameter=12mm", "land_width=2mm", "relief_angle=6deg"],
    ],
    "card": [[CARD], [CARD, "--json"]],
    "paths": [[]],
    "card-plan": [[CARD, CARD]],
    "check": [[]],
    "doctor": [[]],
    "card-learn": [[CARD]],
    "find": [["poisoned"], ["plug", "brass"]],
    "completion": [["bash"]],
}
WRITING = {"card-new", "card-set", "card-import", "demo", "new-book", "trust"}

SHIPPED = """
schema = 1
[[family]]
id = "tap"
title = "Taps"
kind = "tap"
what = "Tools that cut a thread."
[[entry]]
id = "plain"
family = "tap"
title = "Plain tap"
rake_angle = { usual = "4 deg", source = "common practice" }
"""
POISON = r"\u001b]52;c;aGk=\u0007\u001b[31m\u009b2J\u202e[/bold] [red]"
BOOK = f"""
schema = 1
[[entry]]
id = "poisoned"
family = "tap"
title = "Tap {POISON}"
work_material = "brass {POISON}"
synonyms = ["plug {POISON}"]
cautions = ["eyes {POISON}"]
chamfer_relief_angle = {{ usual = "4 deg", source = "shop", note = "{POISON}" }}
rake_angle = {{ usual = "5 {POISON}", source = "hand {POISON}", place = "{POISON}" }}
notes = "A {POISON}"
"odd {POISON}" = 3
[[wheel]]
id = "poisoned-wheel"
title = "{POISON}"
[[machine]]
id = "poisoned-machine"
title = "{POISON}"
"""
JOB = f"""
schema = 1
[[card]]
id = "{CARD}"
status = "draft"
family = "tap"
entry = "poisoned"
machine = "poisoned-machine"
wheel = "poisoned-wheel"
wrong = "{POISON}"
minutes = "{POISON}"
result = "{POISON}"
notes = "{POISON}"
"odd {POISON}" = 3
[card.tool]
name = "T-1"
size = "12 {POISON}"
marks = "{POISON}"
[card.received]
land_width = "2 {POISON}"
[card.wanted.rake_angle]
value = "5 deg"
book = "4 deg"
source = "{POISON}"
reason = "{POISON}"
"""
SHOWS_POISON = {"list", "find", "show", "compare", "cards", "card", "check"}
STEERING = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u200b-\u200f\u202a-\u202e\u2066-\u2069]")


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A poisoned book with a poisoned card, a poisoned file name, and a file of which nothing can be read."""
    folder = tmp_path_factory.mktemp("reading")
    (folder / "cards" / "2026").mkdir(parents=True)
    (folder / "cards" / "2026" / f"{CARD}.toml").write_text(JOB, encoding="utf-8")
    (folder / "own\x1b]0;x\x07\u202e.toml").write_text(BOOK, encoding="utf-8")
    (folder / "broken.toml").write_bytes(b"\xff\x1b]0;x\x07 = = [\n")
    return folder


@pytest.fixture(scope="module")
def before(shop: Path) -> Snapshot:
    """How the book stands before anything was read of it."""
    snapshot([shop])
    return snapshot([shop])


@pytest.fixture(scope="module")
def few_shipped(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """In place of the shipped data one entry, which is read sooner."""
    folder = tmp_path_factory.mktemp("few")
    (folder / "taps.toml").write_text(SHIPPED)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(opening, "SHIPPED", folder)
        yield


def test_every_command_is_known_to_write_or_not_to() -> None:
    assert set(READING) | WRITING == set(COMMANDS)


@pytest.mark.usefixtures("few_shipped")
@pytest.mark.parametrize("name", every_third_at_once(READING))
def test_the_book_is_as_it_was_and_what_is_printed_is_text(
    name: str, shop: Path, before: Snapshot, capfd: pytest.CaptureFixture[str]
) -> None:
    for words in READING[name]:
        main(["--library", str(shop), name, *words])
        out, err = capfd.readouterr()
        assert out, words
        assert not STEERING.search(out.replace("\r\n", "\n") + err), words
        assert snapshot([shop]) == before
        assert "[/bold]" in out or name not in SHOWS_POISON, "the poison was not shown at all"
