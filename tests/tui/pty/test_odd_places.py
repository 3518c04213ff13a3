"""The screens with book, home and current folder in an odd place: they open, and nothing of its name is obeyed."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from library.demo import lay_out

Open = Callable[..., Any]


@pytest.mark.depth
def test_the_screens_open_in_the_oddest_place(
    terminal: Open, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    place = tmp_path / os.fsdecode(b'-r $(x) ; it\'s "q"\n\x1b]0;owned\x07\xff%s')
    place.mkdir()
    lay_out(place / "book")
    monkeypatch.chdir(place)
    homes = {name: str(place) for name in ("HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME", "XDG_CONFIG_HOME")}
    opened = terminal("--library", "book", columns=100, afresh=True, **homes)
    opened.wait_for("203 of 203")
    opened.press("f3")
    opened.wait_for("T-12-3")
    opened.press("f9")
    opened.press("f6")
    opened.wait_for("The shop's book")
    assert b"owned\x07" not in opened.written
    assert b"Traceback" not in opened.written
