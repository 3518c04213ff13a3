"""``heelclear calc ... --thread`` takes diameter, pitch and starts from the tables."""

from __future__ import annotations

import json

import pytest

from tui.main import main


def answered(capsys: pytest.CaptureFixture[str], *words: str) -> float:
    assert main([*words, "--json"]) == 0
    value: float = json.loads(capsys.readouterr().out)["outputs"]["lead_over_land"]["value"]
    return value


def test_a_thread_gives_the_same_as_typing_its_size(capsys: pytest.CaptureFixture[str]) -> None:
    land = ("land_width=3.2mm", "land_measured_as=arc")
    chosen = answered(capsys, "calc", "lead-over-land", *land, "--thread", "M12")
    assert chosen == answered(capsys, "calc", "lead-over-land", *land, "diameter=12mm", "pitch=1.75mm")


def test_common_practice_three_quarter_ten_with_a_land_of_200_thou(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """Common practice, no source: 0.0085 in over a land of 0.200 in taken as an arc."""
    land = ("land_width=0.200in", "land_measured_as=arc")
    travel = answered(capsys, "calc", "lead-over-land", *land, "--thread", "3/4-10 UNC")
    assert travel / 25.4 == pytest.approx(0.0085, abs=0.00005)


def test_what_is_typed_beats_the_thread(capsys: pytest.CaptureFixture[str]) -> None:
    land = ("land_width=3.2mm", "land_measured_as=arc")
    fine = answered(capsys, "calc", "lead-over-land", *land, "pitch=1.5mm", "--thread", "M12")
    assert fine == answered(capsys, "calc", "lead-over-land", *land, "diameter=12mm", "pitch=1.5mm")


@pytest.mark.parametrize(
    ("sheet", "thread", "sentence"),
    [
        ("lead-over-land", "1/4-20", "Write which"),
        ("lead-over-land", "M12.5", "no thread"),
        ("wheel-speed", "M12", "asks for nothing that a thread gives"),
    ],
)
def test_a_thread_that_helps_nothing_gets_a_sentence(
    capsys: pytest.CaptureFixture[str], sheet: str, thread: str, sentence: str
) -> None:
    assert main(["calc", sheet, "--thread", thread]) == 2
    assert sentence in capsys.readouterr().err
