"""The commands for tools of a family that only the shop's own book has: list, calc, cards and their sheet."""

from __future__ import annotations

import json
import math
from pathlib import Path

import pytest

from tests.library.shop_texts import OWN_FAMILIES
from tui.main import main

pytestmark = pytest.mark.depth
"""It takes long, and the server runs it."""

RECEIVED = ("received.diameter=30 mm", "received.land_width=4 mm", "received.land_measured_as=arc")


@pytest.fixture
def run(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Run:
    (tmp_path / "families.toml").write_text(OWN_FAMILIES)
    return Run(tmp_path, capsys)


class Run:
    """Commands in the shop's own book."""

    def __init__(self, shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self.shop = shop
        self._capsys = capsys

    def __call__(self, *words: str) -> str:
        code = main(["--library", str(self.shop), *words])
        printed = self._capsys.readouterr()
        assert (code, printed.err) == (0, "")
        return printed.out


def test_the_book_is_good_and_lists_them(run: Run) -> None:
    assert "No problem found" in run("check")
    assert run("list", "--family", "flat drills").split()[0] == "flat-cast-iron"


def test_a_calculation_is_filled_from_their_entry(run: Run) -> None:
    outputs = json.loads(run("calc", "drill-point", "--entry", "flat-cast-iron", "diameter=30mm", "--json"))[
        "outputs"
    ]
    # Derived: the point is as long as half the diameter over the tangent of half its angle.
    assert outputs["point_length"]["value"] == pytest.approx(15 / math.tan(math.radians(59)), rel=1e-6)
    outputs = json.loads(
        run("calc", "cone-relief", "--entry", "burr-bronze", "diameter=30mm", "land_width=4mm", "--json")
    )["outputs"]
    # Derived: square to the cone an even cam falls by the land times the tangent of the relief.
    assert outputs["square_drop"]["value"] == pytest.approx(4 * math.tan(math.radians(8)), rel=1e-6)


def test_a_calculation_names_them_among_the_families_it_serves(run: Run) -> None:
    served = {one["name"]: one["families"] for one in json.loads(run("calc", "--json"))}
    assert {"flat-drill", "twist-drill"} < set(served["drill-point"])
    assert "valve-burr" not in served["drill-point"]
    assert "valve-burr" in json.loads(run("calc", "cone-relief", "--help", "--json"))["families"]


@pytest.mark.parametrize(
    ("entry", "said"),
    [
        ("flat-cast-iron", ("Family: Flat drills", "Half point angle 59.00 deg", "Surface ground: lip")),
        # Derived: square to the cone 4 mm fall by 4 tan 8 = 0.5622 mm, toward the axis by that over cos 45.
        ("burr-bronze", ("Family: Valve burrs", "Surface ground: cone", " 0.795 ")),
    ],
)
def test_a_card_and_its_sheet_are_made_for_them(run: Run, entry: str, said: tuple[str, ...]) -> None:
    card = run("card-new", "--entry", entry, "tool.name=S-1", *RECEIVED).split()[0]
    sheet = run("card", card)
    # How wide the columns are hangs on the longest of what is set.
    assert all(one in " ".join(sheet.split()) for one in said), sheet
    assert "wheel maker's rating" in sheet
    assert "<svg" in run("card", card, "--format", "html")
