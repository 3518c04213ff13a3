"""A book with a name of before is told the new one, and nothing is read under the old."""

from __future__ import annotations

from pathlib import Path

import pytest

from geometry.calculations import calculation_names
from geometry.quantities import QUANTITIES
from library.book.opening import open_book
from library.book.retired import RETIRED
from library.cards.check_files import card_findings

ENTRY = """schema = 1

[[entry]]
id = "old-tap"
title = "Old tap"
family = "tap"
work_material = "steel"
{line}
"""

MACHINE = """schema = 1

[[machine]]
id = "old-grinder"
title = "Old grinder"
{line}
"""

WHEEL = """schema = 1

[[wheel]]
id = "old-wheel"
title = "Old wheel"
shape = "{shape}"
"""

CARD = """schema = 1

[[card]]
id = "2026-01-02-01"

[card.settings.{name}]
typed = {{ {key} = "1 mm" }}
"""


@pytest.mark.parametrize(
    ("text", "new"),
    [
        (ENTRY.format(line='relief_style = { usual = "flat", source = "shop" }'), "relief_form"),
        (ENTRY.format(line='relief_form = { usual = "progressive", source = "shop" }'), "eccentric"),
        (MACHINE.format(line='cam_lifts = ["1 mm"]'), "cam_throws"),
        (MACHINE.format(line='cam_per = "tooth"'), "throw_per"),
        (MACHINE.format(line='[machine.dials.head]\ndivision = "0.01 mm"'), "graduations"),
        (
            MACHINE.format(line='[machine.graduations.head]\ndivision = "0.01 mm"\nsets = ["offset"]'),
            "wheel_head_height",
        ),
        (
            MACHINE.format(line='[machine.graduations.dial]\ndivision = "0.01 mm"\nreads = ["axial_travel"]'),
            "lead_over_land",
        ),
        (WHEEL.format(shape="cup"), "type-6-straight-cup"),
        (WHEEL.format(shape="straight"), "type-1-straight"),
    ],
)
def test_a_file_with_an_old_name_is_told_the_new_one(tmp_path: Path, text: str, new: str) -> None:
    (tmp_path / "old.toml").write_text(text)
    told = [f"{one.wrong} {one.fix}" for one in open_book(tmp_path, afresh=True).findings]
    assert any(f"It is called {new}" in one for one in told), told


@pytest.mark.parametrize(
    ("name", "key", "new"),
    [
        ("clearance-offset", "relief_angle", "setting-height"),
        ("tap-axial-relief", "pitch", "lead-over-land"),
        ("cone-relief", "radial_cam", "radial_throw"),
    ],
)
def test_a_card_with_an_old_name_is_told_the_new_one(tmp_path: Path, name: str, key: str, new: str) -> None:
    folder = tmp_path / "cards" / "2026"
    folder.mkdir(parents=True)
    (folder / "2026-01-02-01.toml").write_text(CARD.format(name=name, key=key))
    told = [f"{one.wrong} {one.fix}" for one in card_findings(tmp_path)]
    assert any(f"It is called {new}" in one for one in told), told


def test_no_retired_name_is_still_in_use() -> None:
    words = {word for row in QUANTITIES.values() for word in row.choices}
    assert not RETIRED.keys() & {*QUANTITIES, *calculation_names(), *words}
