"""A shop whose book is under git, and a second machine that shares it."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

TAPS = """\
# Taps of this shop.
schema = 1

[[entry]]
id = "gun-tap"
family = "tap"
title = "Gun tap"
rake_angle = { usual = "4 deg", source = "shop" }  # May
relief_angle = { usual = "3 deg", source = "shop" }

[[entry]]
id = "hand-tap"
family = "tap"
title = "Hand tap"
"""


def git(folder: Path, *arguments: str, check: bool = True) -> str:
    done = subprocess.run(["git", *arguments], cwd=folder, capture_output=True, text=True, check=False)
    assert done.returncode == 0 or not check, done.stderr
    return done.stdout.removesuffix("\n")


@pytest.fixture(autouse=True)
def somebody(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("GIT_CONFIG_NOSYSTEM", "1")
    for role in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{role}_NAME", "Ann Grinder")
        monkeypatch.setenv(f"GIT_{role}_EMAIL", "ann@shop.example")


@pytest.fixture
def run_git() -> object:
    return git


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """A book with one commit, in a folder below the top of the work tree."""
    top = tmp_path / "here"
    (top / "book").mkdir(parents=True)
    git(top, "init", "-q", "-b", "main", ".")
    (top / "book" / "taps.toml").write_text(TAPS)
    (top / ".gitignore").write_text(".lock\n")
    (top / "readme.txt").write_text("one\n\n\n\n\ntwo\n")
    git(top, "add", ".")
    git(top, "commit", "-q", "-m", "Begin")
    return top / "book"


@pytest.fixture
def shared(shop: Path, tmp_path: Path) -> tuple[Path, Path]:
    """Two machines that share the book by a bare copy."""
    git(tmp_path, "clone", "-q", "--bare", str(shop.parent), "shared.git")
    git(shop, "remote", "add", "origin", str(tmp_path / "shared.git"))
    git(shop, "fetch", "-q", "origin")
    git(shop, "branch", "-q", "--set-upstream-to", "origin/main")
    git(tmp_path, "clone", "-q", str(tmp_path / "shared.git"), "there")
    return shop, tmp_path / "there" / "book"
