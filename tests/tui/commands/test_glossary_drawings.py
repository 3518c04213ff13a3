"""The glossary on the command line draws what is asked for, and keeps the long list short."""

from __future__ import annotations

import pytest

from tui.figure.quantity_figures import FIGURES
from tui.main import main


def test_a_word_asked_for_is_drawn_too(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["glossary", "helix_angle"]) == 0
    text = capsys.readouterr().out
    assert all(line in text for line in FIGURES["helix_angle"])


def test_the_whole_list_is_without_drawings(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["glossary"]) == 0
    assert FIGURES["helix_angle"][1] not in capsys.readouterr().out
