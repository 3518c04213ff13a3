"""A book, a home and a current folder in odd places: every command answers in sentences, and prints nothing raw."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

from library.book.folders import VARIABLE
from library.cards.store import load
from library.demo import lay_out
from library.editing import changes as ask
from library.history.entry_history import history
from library.history.git import GitRefused
from library.history.sharing import push
from tests.each import each
from tests.library.history.two_machines import change, pulled, tree_of
from tui.main import main
from tui.services.editor import command_for

ALL_AT_ONCE = os.fsdecode(b'-r $(x) ; it\'s "q"\n\x1b[2J\xff%s')
PLACES = {
    "plain": "plain",
    "line break": "a\nb\r",
    "quotes": 'it\'s "q" $(touch x) ;&|',
    "dash": "-rf",
    "option": "--units",
    "bytes": os.fsdecode(b"\xff\xfe\xe9"),
    "escape": "e\x1b]0;x\x07\x9b2J",
    "colons": "a:b=c%41?#",
    "longest name": "n" * 255,
    "longest path": "/".join("d" * 200 for _ in range(18)),
    "all at once": ALL_AT_ONCE,
}
CARD = "2026-03-11-01"
READ = (
    "list --family tap",
    "find tap bronze",
    "show ferry-ramp-hinge-tap --sources",
    "compare ferry-ramp-hinge-tap tap-hand-plain-steel",
    "calc relief-drop diameter=12mm relief_angle=8deg land_width=2mm relief_form=flat",
    "glossary land",
    "check",
    "cards",
    "cards --tool T-12-3",
    "cards --csv",
    f"card {CARD}",
    f"card {CARD} --format html",
    "card-plan 2026-03-11-01 2026-04-22-01",
    f"card-learn {CARD}",
    "paths",
    "doctor",
    "completion bash",
)
WRITE = (
    "card-new --entry ferry-ramp-hinge-tap",
    f"card-set {CARD} --reopen minutes=3",
    "trust",
    "trust --withdraw",
    "new-book NEW",
    "demo DEMO",
)
FEW = ("check", "cards", f"card {CARD}", "doctor", *WRITE)
RAW = re.compile(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\ud800-\udfff]")


@pytest.fixture
def back() -> Iterator[None]:
    """The current folder is the old one afterwards."""
    here = os.getcwd()
    yield
    os.chdir(here)


def laid(top: Path, name: str) -> Path:
    """A folder in that place with the demonstration book in it, entered step by step, for its path may be of any length."""
    shutil.rmtree(top, ignore_errors=True)
    top.mkdir()
    place = top / PLACES[name]
    place.mkdir(parents=True)
    lay_out(place / "book")
    subprocess.run(["git", "init", "-q", "."], cwd=place / "book", check=True)
    return place


def answered(words: list[str], capfd: pytest.CaptureFixture[str]) -> str:
    """What a command printed; it ended by itself, in text that is safe."""
    code = main(words)
    out, err = capfd.readouterr()
    told = out.replace("\r\n", "\n") + err
    assert code in {0, 1}, f"{words[2:]}: {code}: {told[:300]}"
    assert "Traceback" not in told
    assert not RAW.search(told), f"{words[2:]}: {RAW.search(told)}"
    return told


def walked(place: Path, commands: tuple[str, ...], capfd: pytest.CaptureFixture[str]) -> None:
    for command in commands:
        words = command.replace("NEW", "\0").replace("DEMO", "\1").split(" ")
        words = [str(place / "new") if w == "\0" else str(place / "demo") if w == "\1" else w for w in words]
        answered(["--library", str(place / "book"), *words], capfd)
    assert load(place / "book", CARD).card.minutes == "3"
    assert (place / "new").is_dir()
    assert (place / "demo" / "cards").is_dir()


@pytest.mark.depth
def test_a_book_in_the_oddest_place_of_all(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str], back: None
) -> None:
    place = laid(tmp_path / "top", "all at once")
    monkeypatch.setenv("HOME", str(place))
    os.chdir(place)
    walked(place, FEW, capfd)


@pytest.mark.depth
@each("name", PLACES)
def test_every_command_with_book_home_and_current_folder_in_every_odd_place(
    name: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capfd: pytest.CaptureFixture[str],
    back: None,
) -> None:
    place = laid(tmp_path / "top", name)
    for variable in ("HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"):
        monkeypatch.setenv(variable, str(place))
    os.chdir(place)
    walked(place, (*READ, *WRITE), capfd)
    # The same named by the variable, from beside it, and as the current folder.
    plain = re.sub(r"[^ -~]", "", str(place))
    for words, named in ((["--library=book"], ""), (["--library", "."], ""), ([], str(place / "book"))):
        os.chdir(place / "book" if "." in words else place)
        monkeypatch.setenv(VARIABLE, named)
        told = answered([*words, "cards"], capfd)
        assert CARD in told
        assert plain[:40] in re.sub(r"[^ -~]", "", answered([*words, "paths"], capfd))
    os.chdir(place.parent)
    monkeypatch.delenv(VARIABLE)
    assert CARD in answered([f"--library={place.name}/book", "cards"], capfd)


@each("name", PLACES)
def test_an_editor_gets_the_path_as_one_word_that_is_no_option(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir("/")
    for editor in ("vi", "nano", "code", "hx", "some-other"):
        words = command_for([editor], Path(PLACES[name]) / "taps.toml", 7)
        (path,) = [word for word in words if "taps.toml" in word]
        assert path.removesuffix(":7") == f"/{PLACES[name]}/taps.toml"


@pytest.mark.depth
@each("name", PLACES)
def test_a_book_is_recorded_sent_and_fetched_in_every_odd_place(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for role in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{role}_NAME", "Ann Grinder")
        monkeypatch.setenv(f"GIT_{role}_EMAIL", "ann@shop.example")
    place = laid(tmp_path / "top", name)
    here, copy, there = place / "book", place / "shared", place / "there"

    def git(*words: str) -> None:
        subprocess.run(["git", *words], cwd=here, check=True, capture_output=True)

    git("add", ".")
    git("commit", "-q", "-m", "Begin")
    git("clone", "-q", "--bare", "--", str(here), str(copy))
    git("remote", "add", "origin", str(copy))
    git("clone", "-q", "--", str(copy), str(there))
    change(here, ask.SetValue("ferry-ramp-hinge-tap", "rake_angle", {"usual": "9 deg"}))
    push(tree_of(here))
    assert pulled(there).commits == 1
    assert history(tree_of(there), "ferry-ramp-hinge-tap")[0].message.startswith("ferry-ramp-hinge-tap: rake")
    hook = copy / "hooks" / "post-receive"
    hook.parent.mkdir(exist_ok=True)
    hook.write_text("#!/bin/sh\n")
    hook.chmod(0o755)
    with pytest.raises(GitRefused, match="Nothing was sent") as refused:
        push(tree_of(here))
    assert not RAW.search(refused.value.sentence)
