"""The commands that show the book: list, show, check, paths and new-book."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path

import pytest

from library.history.trust import is_trusted
from tui.main import main


def printed(capsys: pytest.CaptureFixture[str], *words: str, code: int = 0) -> str:
    assert main(words) == code
    return capsys.readouterr().out


def families_of(entries: list[dict[str, str]]) -> list[str]:
    return list(dict.fromkeys(entry["family"] for entry in entries))


def test_the_entries_of_one_family_are_listed_and_no_others(capsys: pytest.CaptureFixture[str]) -> None:
    every = json.loads(printed(capsys, "list", "--json"))
    listed = []
    for family in families_of(every):
        entries = json.loads(printed(capsys, "list", "--family", family, "--json"))
        assert families_of(entries) == [family]
        listed += entries
    assert sorted(entry["id"] for entry in listed) == sorted(entry["id"] for entry in every)


def test_a_family_is_found_by_its_plural_and_its_title_too(capsys: pytest.CaptureFixture[str]) -> None:
    by_id = printed(capsys, "list", "--family", "step-drill")
    assert printed(capsys, "list", "--family", "Step drills") == by_id
    assert printed(capsys, "list", "--family", "step-drills") == by_id


def test_an_unknown_family_is_refused_with_the_known_ones(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["list", "--family", "wombat"]) == 2
    error = capsys.readouterr().err
    assert "wombat" in error
    assert "tap" in error


def test_an_entry_is_shown_with_its_sources_and_cautions_in_full_where_that_is_asked_for(
    capsys: pytest.CaptureFixture[str],
) -> None:
    first_of = {one["family"]: one["id"] for one in reversed(json.loads(printed(capsys, "list", "--json")))}
    for first in first_of.values():
        text = printed(capsys, "show", first, "--sources", "--cautions")
        shown = json.loads(printed(capsys, "show", first, "--json"))
        assert shown["values"]
        for value in shown["values"].values():
            assert value["source"]["kind"] != "missing"
        assert text.count("Source: ") >= len(shown["values"])
        assert text.index("Before you grind") > 0
        assert shown["cautions"][-1]["key"] == "defer"


def test_an_unknown_entry_is_refused_with_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    first = json.loads(printed(capsys, "list", "--json"))[0]["id"]
    assert main(["show", f"{first}x"]) == 2
    assert f"Did you mean {first}?" in capsys.readouterr().err


def test_the_shipped_book_has_no_problem(capsys: pytest.CaptureFixture[str]) -> None:
    assert "No problem found" in printed(capsys, "check")
    assert json.loads(printed(capsys, "check", "--json")) == []


def test_a_problem_is_found_with_file_line_column_and_what_to_do(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    (tmp_path / "ours.toml").write_text(
        'schema = 1\n\n[[entry]]\nid = "ours"\nfamily = "tap"\ntitle = "Ours"\n'
        'rake_angle = { usual = "5 mm", source = "shop" }\n',
        encoding="utf-8",
    )
    text = printed(capsys, "check", str(tmp_path), code=1)
    assert f"{tmp_path / 'ours.toml'}:7:" in text
    assert "ours.rake_angle" in text
    (finding,) = json.loads(printed(capsys, "check", str(tmp_path), "--json", code=1))
    assert (finding["line"], finding["where"]) == (7, "ours.rake_angle.usual")


def test_a_folder_that_is_not_there_is_refused(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert main(["check", str(tmp_path / "nowhere")]) == 2
    assert "nowhere" in capsys.readouterr().err


def test_paths_say_why_each_folder_is_used(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert str(tmp_path) in printed(capsys, "paths", "--library", str(tmp_path))
    monkeypatch.setenv("HEELCLEAR_LIBRARY", str(tmp_path / "set"))
    found = json.loads(printed(capsys, "paths", "--json"))
    assert found["shop"]["path"] == str(tmp_path / "set")
    assert "HEELCLEAR_LIBRARY" in found["shop"]["why"]


def test_a_new_book_is_begun_and_has_no_problem(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    folder = tmp_path / "book"
    printed(capsys, "new-book", str(folder))
    assert {path.name for path in folder.iterdir()} >= {".gitignore", ".gitattributes"}
    assert list(folder.glob("*.toml"))
    assert "No problem found" in printed(capsys, "check", str(folder))
    assert main(["new-book", str(folder)]) == 2


@pytest.mark.parametrize(
    ("words", "first"),
    [
        (("jobber",), "twist-drill-jobber-plain-steel"),
        (("counters",), "countersink-"),
        (("machine", "reamer", "plain"), "reamer-machine-plain-steel"),
        (("1/2-13", "stainless"), "tap-"),
        (("tears", "thread"), "tap-"),
    ],
)
def test_the_likeliest_entry_is_found_first(
    words: tuple[str, ...], first: str, capsys: pytest.CaptureFixture[str]
) -> None:
    lines = printed(capsys, "find", *words).splitlines()
    assert next(line for line in lines if "  " in line.strip() and "-" in line.split()[0]).startswith(first)
    assert json.loads(printed(capsys, "find", *words, "--json"))[0]["id"].startswith(first)


def test_a_book_is_trusted_and_no_more_by_a_command(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    assert main(["trust", str(tmp_path)]) == 2
    assert "no git work tree" in capsys.readouterr().err
    subprocess.run(["git", "init", "-q", str(tmp_path)], check=True)
    subprocess.run(["git", "config", "gpg.program", "x"], cwd=tmp_path, check=True)
    assert "names these programs: gpg.program" in printed(capsys, "trust", str(tmp_path))
    assert is_trusted(tmp_path)
    assert "is not trusted any more" in printed(capsys, "trust", "--withdraw", "--library", str(tmp_path))
    assert not is_trusted(tmp_path)


@pytest.mark.parametrize(
    "words", [["squeals"], ["chatter"], ["burns"], ["infeed", "tap"], ["wheel", "carbide"]]
)
def test_what_is_found_of_grinding_has_its_cautions_in_two_lines(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    lines = printed(capsys, "find", *words).splitlines()
    warned = [
        at for at, line in enumerate(lines) if line.startswith("CAUTION  goggles | no gloves | guard on")
    ]
    assert len(warned) == 1
    assert lines[warned[0] + 1].endswith("show ID --cautions")
    # Within what a screen of 24 lines shows at the end.
    assert len(lines) - warned[0] < 24


def test_what_is_found_of_a_tool_alone_has_none(capsys: pytest.CaptureFixture[str]) -> None:
    assert "CAUTION" not in printed(capsys, "find", "gun", "tap")
