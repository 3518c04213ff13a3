"""One whole job for the tests of cards."""

from __future__ import annotations

from datetime import date

import pytest

from library.cards.model import Card, Inspection, Setting, Tool, Wanted


@pytest.fixture
def job() -> Card:
    """A tap as it lies on the bench of an invented tool room."""
    return Card(
        id="2026-11-25-01",
        started=date(2026, 11, 25),
        family="tap",
        machine="window-grinder",
        wheel="cup-60",
        tool=Tool("T-14", "12 mm", "M12 x 1.75", "4", "HSS", "slipway winch", "plain-steel"),
        wrong="Chips at two teeth.\nSqueals.",
        received={
            "diameter": ("11.97 mm",),
            "land_width": ("3.2 mm",),
            "land_measured_as": ("chord",),
            "drop": ("0.20 mm", "0.21 mm", "0.19 mm", "0.20 mm"),
        },
        wanted={
            "relief_angle": Wanted("8 deg", "6 deg", "from memory", "it tore in bronze"),
            "relief_style": Wanted("progressive"),
        },
        settings={"clearance-offset": Setting({"wheel_diameter": "150 mm"})},
        after={"drop": Inspection(("0.45 mm", "0.45 mm", "0.44 mm", "0.46 mm"), "", "0.02 mm")},
        notes="Went well.",
        minutes="25",
    )
