"""The command ``heelclear calc`` on a terminal: no line wider than it, and the verdict and the answer in sight."""

from __future__ import annotations

from typing import Literal

import pytest

from geometry.calculations import calculation, calculation_names
from geometry.quantities import quantity
from library.calc.inputs import shown
from library.units.convert import to_geometry
from library.units.show import show_answer
from library.units.system import METRIC, Display
from tests.each import each
from tests.tui.commands.test_calc import data, run

A_SCREEN = 24
"""Lines of the smallest terminal that people have."""


def test_the_list_of_the_calculations_is_no_wider_than_the_terminal(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    _, out, _ = run(capsys, "calc")
    lines = out.splitlines()
    assert max(map(len, lines)) <= 80
    listed = lines[: lines.index("")]
    assert [line.split()[0] for line in listed if line[:1].isalpha()] == list(calculation_names())
    told = " ".join(out.split())
    assert all(" ".join(calculation(name).question.split()) in told for name in calculation_names())


def test_a_long_error_is_parted_between_words_on_a_terminal_and_stays_one_line_elsewhere(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    words = ["calc", "step-relief", "diameter=6mm, 8mm", "included_angle=90deg", "land_width=2mm"]
    _, _, piped = run(capsys, *words)
    assert max(map(len, piped.splitlines())) > 80
    monkeypatch.setattr("sys.stderr.isatty", lambda: True)
    _, _, shown_ = run(capsys, *words)
    assert max(map(len, shown_.splitlines())) <= 80
    assert shown_.split() == piped.split()


@pytest.mark.parametrize("count", [5, 8])
def test_many_steps_leave_the_verdict_and_the_answer_on_the_last_lines(
    count: int, capsys: pytest.CaptureFixture[str]
) -> None:
    sizes = ", ".join(f"{6 + 2 * step} mm" for step in range(count))
    wanted = ["included_angle=90deg", "flutes=2", "throw_per=tooth", "radial_throw=1.5mm"]
    limits = ["feed=0.1mm", "least_relief_angle=8deg", "shoulder_relief_angle=9deg"]
    code, out, _ = run(capsys, "calc", "step-relief", f"diameter={sizes}", *wanted, *limits)
    lines = out.splitlines()
    assert code == 0
    assert len(lines) > A_SCREEN
    left = "\n".join(lines[-A_SCREEN + 1 :])
    assert f"WATCH Step {count}, " in left
    assert f"WATCH Shoulder {count - 1} " in left
    assert "CAUTION  " in left
    assert lines[-1].startswith("Largest feed: ")
    assert f"Step {count} " in left


@pytest.mark.parametrize("units", ["mm", "in"])
@each("name", calculation_names())
def test_every_answer_is_seen_at_once_with_its_verdict_first_and_nothing_of_weight_lost(
    name: str, units: Literal["mm", "in"], capsys: pytest.CaptureFixture[str]
) -> None:
    sheet = calculation(name)
    words = [f"{key}={shown(key, value, METRIC)}" for key, value in sheet.sample.items()]
    words += ["--units", units]
    code, out, wrong = run(capsys, "calc", name, *words)
    assert (code, wrong) == (0, "")
    lines = out.splitlines()
    assert len(lines) <= A_SCREEN
    assert max(map(len, lines)) <= 80
    assert lines[0] == sheet.title
    heads = [place for place, line in enumerate(lines) if line.startswith("CAUTION ")]
    assert len(heads) == 1
    told = data(capsys, "calc", name, *words)
    states = {check["state"] for check in told["checks"]}
    worst = next((state for state in ("stop", "watch", "pass") if state in states), "")
    assert lines[1].startswith(worst.upper())
    squeezed = " ".join(out.split())
    for check in told["checks"]:
        if check["state"] in {"stop", "watch"}:
            assert " ".join(check["text"].split()) in squeezed
    for key, one in told["outputs"].items():
        row = quantity(key)
        value = to_geometry(one["value"], row.kind, one["unit"])
        said = show_answer(value, row, Display(units)).split(" ")[0]
        assert said in squeezed, key
