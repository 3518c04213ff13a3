"""A small invented book and one job for each family, so that a stored page does not change with the shipped data."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from library.book.model import Book, Caution, Citation, Family, Material
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.job import work_out
from library.cards.model import Card, Tool, Wanted
from library.setup_sheet.sheets import setup_sheet
from tests.library.shop_texts import CUP, grinder

SHOP = grinder('["2800 rpm"]', 'cam_throws = ["1 mm", "1.35 mm", "5 mm"]', '["wheel_head_height"]') + CUP

SET_UP = """
[[setup]]
id = "tap-thread-land"
title = "Thread land of a tap"
family = "tap"
surface = "thread-land"
methods = ["cam"]
hold = { text = "Between centres.", source = "shop" }
set = { text = "Fit the cam {chosen_throw}, high at the edge. This stays off the paper.", source = "common practice" }
feed = { text = "Take {0.02 mm} a pass.", source = "common practice" }
read = { text = "The heel falls by the drop {heel_drop}.", source = "common practice" }
"""

FAMILIES = {
    "tap": "Taps",
    "countersink": "Countersinks",
    "step-drill": "Step drills",
    "twist-drill": "Twist drills",
    "reamer": "Reamers",
    "counterbore": "Counterbores",
    "centre-drill": "Centre drills",
    "subland-drill": "Subland drills",
}

SURFACES = {
    "tap": ("chamfer", "thread-land"),
    "countersink": ("cone",),
    "step-drill": ("shoulder", "land", "lip"),
    "twist-drill": ("lip", "land"),
    "reamer": ("bevel", "land"),
    "counterbore": ("end", "land"),
    "centre-drill": ("cone", "lip", "land"),
    "subland-drill": ("shoulder", "land", "lip"),
}

CAUTIONS = {
    "wheel-rating": "Never run a wheel faster than its marking: it can burst. Measure the spindle.",
    "eyes": "Wear goggles whenever the wheel turns. Law in some places.",
    "defer": "The wheel maker's rating, the machine's manual, local rules and a trained person come first.",
}

COMMON = """
tool.name=No. 7
tool.flutes=4
tool.belongs_to=the slip
wrong=Dull.
received.diameter=12 mm
received.land_width=2 mm
received.land_measured_as=arc
settings.wheel-speed.rotational_speed=2800 rpm
"""

OWN = {
    "tap": """
wanted.thread_relief_angle=8 deg
tool.thread=M12 x 1.75
received.drop=0.20 mm, 0.21 mm, 0.19 mm, 0.20 mm
wanted.rake_angle=5 deg
settings.tap-chamfer.chamfer_threads=4
settings.size-loss.stock_per_sharpening=0.2 mm
settings.size-loss.least_diameter=11.8 mm
after.drop=0.28 mm, 0.29 mm, 0.30 mm, 0.31 mm
after.drop.tolerance=0.02 mm
notes=Two passes.
minutes=25
""",
    "countersink": "wanted.cone_relief_angle=8 deg\nsettings.cone-relief.diameter=12 mm, 4 mm\nwanted.included_angle=90 deg\nwanted.relief_form=eccentric",
    "step-drill": """
wanted.land_relief_angle=8 deg
tool.flutes=2
settings.step-relief.diameter=6 mm, 8 mm, 12 mm
settings.step-relief.included_angle=90 deg
settings.step-relief.radial_throw=5 mm
settings.step-relief.axial_throw=1 mm
settings.step-relief.feed=0.1 mm
""",
    "twist-drill": """
wanted.land_relief_angle=8 deg
wanted.relief_form=flat
tool.flutes=2
received.body_diameter=13 mm
received.land_width=4.5 mm
settings.relief-facets.primary_land=0.8 mm
settings.relief-facets.least_gap=0.05 mm
wanted.point_angle=118 deg
""",
    "reamer": "wanted.land_relief_angle=8 deg\nwanted.relief_form=flat\nreceived.land_width=1 mm\nreceived.helix_angle=10 deg",
    "counterbore": "wanted.land_relief_angle=8 deg\nwanted.relief_form=flat\nreceived.land_width=1.2 mm",
    "centre-drill": "tool.flutes=2\nwanted.cone_relief_angle=8 deg\nwanted.included_angle=60 deg",
    "subland-drill": "tool.flutes=2\nwanted.land_relief_angle=8 deg\nwanted.relief_form=eccentric",
}


@pytest.fixture(scope="session")
def sheet_book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    folder = tmp_path_factory.mktemp("shop")
    (folder / "machines.toml").write_text(SHOP)
    (folder / "setups.toml").write_text(SET_UP)
    more = open_book(folder).more
    own = {name: one for name, one in more["setup"].items() if name == "tap-thread-land"}
    return Book(
        {},
        {
            name: Family(name, title, kind=name, surfaces=SURFACES[name], cautions=("wheel-rating", "eyes"))
            for name, title in FAMILIES.items()
        },
        {"bronze": Material("bronze", "Bronze")},
        {
            name: Caution(name, name.title(), text, Citation("common practice"))
            for name, text in CAUTIONS.items()
        },
        more={"machine": more["machine"], "wheel": more["wheel"], "setup": own},
    )


def card_of(family: str) -> Card:
    """The job of a family, its texts as they would be typed."""
    card = Card(
        id="2026-11-25-01",
        started=date(2026, 11, 25),
        family=family,
        machine="window-grinder",
        wheel="cup-60",
        tool=Tool(work_material="bronze"),
        wanted={"relief_form": Wanted("eccentric", "eccentric", "common practice, no source")},
    )
    for line in f"{COMMON}{OWN[family]}".strip().splitlines():
        way, _, text = line.partition("=")
        if way.strip():
            card = edited(card, way.strip(), text.strip())
    return card


@pytest.fixture(params=sorted(FAMILIES))
def family(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture
def family_card(family: str) -> Card:
    return card_of(family)


@pytest.fixture
def tap_card() -> Card:
    return card_of("tap")


@pytest.fixture
def reamer_card() -> Card:
    return card_of("reamer")


PAGES = Path(__file__).parent / "pages"
"""The stored pages; run the tests with HEELCLEAR_REWRITE_PAGES=1 to write them anew, and read what has changed."""


@pytest.fixture
def stored() -> Path:
    return PAGES


def sheet(card: Card, book: Book, form: str = "text") -> str:
    """The sheet of a card that is worked out with a book."""
    return setup_sheet(work_out(card, book), form)
