"""Finding, comparing, counting, the glossary, the doctor, completion and the manual page."""

from __future__ import annotations

import argparse
import json
import shutil
import subprocess
from pathlib import Path

import pytest

from tui.commands.arguments import COMMANDS
from tui.commands.parser import build
from tui.main import main

MANUAL = Path(__file__).resolve().parents[3] / "tui" / "man" / "heelclear.1"


def printed(capsys: pytest.CaptureFixture[str], *words: str, code: int = 0) -> str:
    assert main(words) == code
    return capsys.readouterr().out


def test_the_gun_tap_is_found_as_a_spiral_point_tap(capsys: pytest.CaptureFixture[str]) -> None:
    found = json.loads(printed(capsys, "find", "gun", "tap", "--json"))
    listed = json.loads(printed(capsys, "list", "--family", "tap", "--json"))
    spiral_point = [entry for entry in listed if entry["title"].startswith("Spiral-point")]
    assert spiral_point
    assert {entry["id"] for entry in spiral_point} <= {entry["id"] for entry in found}
    assert not {entry["id"] for entry in found} & {"tap-hand-plain-steel", "tap-hand-brass-free-cutting"}


def test_a_range_of_a_quantity_narrows_the_search(capsys: pytest.CaptureFixture[str]) -> None:
    all_taps = {entry["id"] for entry in json.loads(printed(capsys, "find", "tap", "--json"))}
    keen = {entry["id"] for entry in json.loads(printed(capsys, "find", "tap", "rake>8", "--json"))}
    assert keen
    assert keen < all_taps


def test_nothing_found_ends_with_1_and_nonsense_with_2(capsys: pytest.CaptureFixture[str]) -> None:
    assert "Nothing in the book" in printed(capsys, "find", "unobtainium", code=1)
    assert main(["find", "wobble>3"]) == 2
    assert main(["find", "tap", "rake>"]) == 2
    assert "wobble" in capsys.readouterr().err


def test_entries_are_set_side_by_side(capsys: pytest.CaptureFixture[str]) -> None:
    taps = json.loads(printed(capsys, "list", "--family", "tap", "--json"))[:2]
    first, second = (entry["id"] for entry in taps)
    text = printed(capsys, "compare", first, second)
    assert all(word in text for entry in taps for word in entry["title"].split())
    found = json.loads(printed(capsys, "compare", first, second, "--json"))
    assert found["ids"] == [first, second]
    assert all(len(line["values"]) == 2 for line in found["lines"])
    assert main(["compare", first]) == 2
    assert main(["compare", first, "no-such-entry"]) == 2


def test_counts_add_up(capsys: pytest.CaptureFixture[str]) -> None:
    counted = json.loads(printed(capsys, "list", "--counts", "--json"))
    entries = json.loads(printed(capsys, "list", "--json"))
    assert counted["in all"]["entries"] == len(entries) == sum(counted["entries by family"].values())
    assert counted["in all"]["values"] == sum(counted["values by kind of source"].values())
    assert counted["values by kind of source"]["missing"] == 0


def test_the_glossary_explains_a_word(capsys: pytest.CaptureFixture[str]) -> None:
    text = printed(capsys, "glossary", "land width")
    assert "land_width" in text
    assert "caliper" not in printed(capsys, "glossary", "threads per inch")
    assert main(["glossary", "flobble"]) == 1


def test_the_doctor_tells_versions_folders_and_the_terminal(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TERM", "xterm-256color")
    facts = json.loads(printed(capsys, "doctor", "--json"))["facts"]
    assert {"heelclear", "python", "textual", "terminal", "encoding", "TERM", "shop's book", "state"} <= set(
        facts
    )
    monkeypatch.setenv("TERM", "dumb")
    assert "plain commands" in printed(capsys, "doctor", code=1)


def test_a_shell_gets_its_completion(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    script = tmp_path / "completion.bash"
    script.write_text(printed(capsys, "completion", "bash"), encoding="utf-8")
    bash = shutil.which("bash")
    if bash is None:
        pytest.skip("bash is not installed")
    assert subprocess.run([bash, "-n", str(script)], check=False).returncode == 0


def test_the_manual_page_knows_every_command_and_every_option() -> None:
    text = MANUAL.read_text(encoding="utf-8").replace("\\-", "-")
    for command in COMMANDS:
        assert f"\n\\fB{command}\\fR" in text, command
    for parser in _parsers(build()):
        for option in (
            string for action in parser._actions for string in action.option_strings if string[:2] == "--"
        ):
            assert option in text, (parser.prog, option)


def _parsers(parser: argparse.ArgumentParser) -> list[argparse.ArgumentParser]:
    found = [parser]
    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            found += action.choices.values()
    return found


def test_a_mistaken_word_of_the_command_line_cannot_steer_the_terminal(
    capsys: pytest.CaptureFixture[str],
) -> None:
    for words in (["list", "\x1b]52;c;aGk=\x07"], ["paths", "\u202e"], ["list", "x" * 100_000]):
        with pytest.raises(SystemExit) as ended:
            main(words)
        assert ended.value.code == 2
        said = capsys.readouterr().err
        assert "not understood" in said
        assert said.replace("\n", "").isprintable()
        assert len(said) < 1000


def test_the_glossary_has_the_heel_and_other_names(capsys: pytest.CaptureFixture[str]) -> None:
    assert printed(capsys, "glossary", "heel").splitlines()[2] == "  Heel"
    assert "  Rake\n" in printed(capsys, "glossary", "hook")
    assert "Also: hook, hook angle, top rake." in printed(capsys, "glossary", "hook")
    told = json.loads(printed(capsys, "glossary", "hook", "--json"))
    assert {"rake", "rake_angle"} <= {one["key"] for one in told}


def test_the_book_is_found_by_other_names_too(capsys: pytest.CaptureFixture[str]) -> None:
    assert "tap-hand-plain-steel" in printed(capsys, "find", "backing off hand tap")
    assert printed(capsys, "find", "hook>14", "--json") == printed(capsys, "find", "rake_angle>14", "--json")
    assert main(["find", "travel of a cam"]) == 1
    assert "heelclear glossary throw" in capsys.readouterr().out
