"""The cards whose sheets are printed: the records of the yard, those jobs begun again, and one for every other family."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

from library.book.model import Book
from library.book.opening import open_book
from library.cards.close import finished
from library.cards.editing import edited
from library.cards.job import Job, work_out
from library.cards.model import Card
from library.cards.starting import again, from_entry
from library.cards.store import load

FACETED = "twist-drill-jobber-plain-steel"
"""Of a drill whose point is ground in four facets."""


RECORDS = (
    "2025-10-14-01",
    "2026-03-11-01",
    "2026-04-22-01",
    "2026-06-02-01",
    "2026-08-17-01",
    "2026-11-20-01",
)


POINT = """received.land_width=2 mm
received.drop=0.30 mm, 0.32 mm
wanted.lip_relief_angle=10 deg
wanted.point_angle=118 deg
wanted.relief_form=flat
settings.feed-clearance.inner_diameter=1.5 mm
settings.feed-clearance.feed=0.1 mm
after.drop.tolerance=0.03 mm
"""
"""What is the same on every drill whose point is ground flat."""


COMMON = """
machine=grey-grinder
wheel=white-cup-100
wrong=Dull; the corners are rounded.
tool.work_material=plain-steel
tool.belongs_to=slip crane
received.land_measured_as=arc
settings.wheel-speed.rotational_speed=3600 rpm
"""


OTHERS = {
    "reamer-hand-plain-steel": """
tool.name=R-16
tool.size=16 mm
tool.flutes=6
received.diameter=16.01 mm
received.land_width=1.2 mm
received.drop=0.05 mm, 0.06 mm, 0.05 mm, 0.05 mm, 0.06 mm, 0.05 mm
wanted.land_relief_angle=6 deg
wanted.relief_form=flat
settings.size-loss.stock_per_sharpening=0.02 mm
after.drop.tolerance=0.01 mm
after.diameter.wanted=16.00 mm
after.diameter.tolerance=+0.012 -0 mm
""",
    "counterbore-plain-steel": """
tool.name=B-18
tool.size=18 mm
tool.flutes=3
received.diameter=18 mm
received.land_width=1.2 mm
received.drop=0.10 mm, 0.11 mm, 0.10 mm
wanted.end_relief_angle=7 deg
wanted.relief_form=flat
settings.size-loss.stock_per_sharpening=0.1 mm
after.drop.tolerance=0.02 mm
""",
    "centre-drill-work-4-to-6": """
tool.name=Z-6
tool.size=6.3 mm
tool.flutes=2
received.diameter=6.3 mm
received.land_width=1.5 mm
received.drop=0.20 mm, 0.22 mm
wanted.cone_relief_angle=8 deg
wanted.included_angle=60 deg
settings.cone-relief.diameter=6.3 mm, 2.5 mm
settings.size-loss.stock_per_sharpening=0.1 mm
after.drop.tolerance=0.02 mm
""",
    "subland-drill-countersink-plain-steel": """
tool.name=U-66-12
tool.size=6.6 mm, 12 mm
tool.flutes=2
received.diameter=12 mm
received.land_width=2 mm
received.drop=0.20 mm, 0.22 mm
wanted.land_relief_angle=7.5 deg
settings.step-relief.diameter=6.6 mm, 12 mm
settings.step-relief.radial_throw=2.5 mm
settings.step-relief.axial_throw=2.5 mm
settings.step-relief.feed=0.15 mm
settings.feed-clearance.inner_diameter=1.6 mm
after.drop.tolerance=0.02 mm
""",
    "stub-drill-plain-steel": """
tool.name=D-8-S
tool.size=8 mm
tool.flutes=2
received.diameter=8 mm
"""
    + POINT,
    "spotting-drill-120-any": """
tool.name=D-10-P
tool.size=10 mm
tool.flutes=2
received.diameter=10 mm
"""
    + POINT,
    "left-hand-drill-plain-steel": """
tool.name=D-6-L
tool.size=6 mm
tool.flutes=2
received.diameter=6 mm
"""
    + POINT,
    "spade-drill-plain-steel": """
tool.name=D-32-B
tool.size=32 mm
tool.flutes=2
received.diameter=32 mm
"""
    + POINT,
    "masonry-drill-masonry": """
tool.name=D-10-M
tool.size=10 mm
tool.flutes=2
received.diameter=10 mm
"""
    + POINT,
    "carbide-drill-plain-steel": """
tool.name=D-6-C
tool.size=6 mm
tool.flutes=2
received.diameter=6 mm
"""
    + POINT,
    "twist-drill-jobber-plain-steel": """
tool.name=D-125-1
tool.size=12.5 mm
tool.flutes=2
received.diameter=12.48 mm
received.web_thickness=2.1 mm
received.land_width=6 mm
received.drop=1.10 mm, 1.20 mm
wanted.lip_relief_angle=12 deg
wanted.second_lip_relief_angle=32 deg
wanted.point_angle=118 deg
wanted.relief_method=work-head
settings.feed-clearance.feed=0.1 mm
after.drop.tolerance=0.03 mm
""",
    "end-mill-plain-steel": """
tool.name=E-12-4
tool.size=12 mm
tool.flutes=4
received.diameter=12 mm
received.land_width=1.2 mm
received.drop=0.10 mm, 0.10 mm, 0.10 mm, 0.10 mm
wanted.end_relief_angle=7 deg
wanted.relief_form=flat
settings.size-loss.stock_per_sharpening=0.1 mm
settings.end-teeth.dish_angle=1 deg
after.drop.tolerance=0.02 mm
""",
    "slot-drill-plain-steel": """
tool.name=E-10-2
tool.size=10 mm
tool.flutes=2
received.diameter=10 mm
received.land_width=1.2 mm
received.drop=0.10 mm, 0.10 mm
wanted.end_relief_angle=7 deg
wanted.relief_form=flat
settings.size-loss.stock_per_sharpening=0.1 mm
settings.end-teeth.dish_angle=1 deg
after.drop.tolerance=0.02 mm
""",
    # Four lands that are not alike: each of their heels has its own row under the places on the way.
    "tap-hand-plain-steel": """
tool.name=T-12-U
tool.thread=M12
tool.flutes=4
received.diameter=11.98 mm
received.land_width=3.2 mm, 3.2 mm, 3.1 mm, 3.0 mm
received.drop=0.20 mm, 0.21 mm, 0.20 mm, 0.20 mm
wanted.rake_angle=8 deg
settings.size-loss.stock_per_sharpening=0.2 mm
after.drop.tolerance=0.02 mm
""",
    # Two tables with six boxes in each row, and a tool with more flutes than boxes.
    "reamer-machine-plain-steel": """
tool.name=R-20-6
tool.size=20 mm
tool.flutes=6
received.diameter=20.01 mm
received.land_width=2 mm
received.drop=0.10 mm, 0.11 mm, 0.10 mm, 0.10 mm, 0.11 mm, 0.10 mm
after.drop.tolerance=0.01 mm
""",
    "reamer-hand-large-plain-steel": """
tool.name=R-30-8
tool.size=30 mm
tool.flutes=8
received.diameter=30.01 mm
received.land_width=2 mm
received.drop=0.10 mm, 0.11 mm, 0.10 mm, 0.10 mm, 0.11 mm, 0.10 mm, 0.10 mm, 0.10 mm
wanted.land_relief_angle=6 deg
wanted.relief_form=flat
settings.size-loss.stock_per_sharpening=0.02 mm
after.drop.tolerance=0.01 mm
""",
    "tap-hand-alloy-steel": """
tool.name=T-30-6
tool.thread=M30
tool.flutes=6
received.diameter=30 mm
received.land_width=6 mm
received.drop=0.40 mm, 0.41 mm, 0.40 mm, 0.40 mm, 0.41 mm, 0.40 mm
wanted.rake_angle=8 deg
settings.size-loss.stock_per_sharpening=0.2 mm
after.drop.tolerance=0.02 mm
""",
    # Lands that differ and no tolerance: what each flute shall read stands in one long line.
    "tap-hand-bottoming-plain-steel": """
tool.name=T-16-B
tool.thread=M16
tool.flutes=6
received.land_width=1.6 mm, 1.6 mm, 1.7 mm, 1.6 mm, 1.6 mm, 1.7 mm
received.drop=0.2 mm
""",
    "insert-tap-plug-plain-steel": """
tool.name=T-8-I
tool.flutes=4
received.diameter=9.6 mm
received.land_width=2.4 mm
received.drop=0.20 mm, 0.21 mm, 0.19 mm, 0.20 mm
wanted.chamfer_relief_angle=6 deg
wanted.relief_form=eccentric
settings.tap-chamfer.pitch=1.25 mm
settings.size-loss.stock_per_sharpening=0.2 mm
after.drop.tolerance=0.02 mm
""",
    "left-hand-tap-plain-steel": """
tool.name=T-12-L
tool.thread=M12 LH
tool.flutes=4
received.diameter=12 mm
received.land_width=3 mm
received.drop=0.20 mm, 0.21 mm, 0.19 mm, 0.20 mm
wanted.chamfer_relief_angle=6 deg
wanted.relief_form=eccentric
settings.size-loss.stock_per_sharpening=0.2 mm
after.drop.tolerance=0.02 mm
""",
    "acme-tap-plain-steel": """
tool.name=T-25-A
tool.flutes=4
received.diameter=1 in
received.land_width=5 mm
received.drop=0.20 mm, 0.21 mm, 0.19 mm, 0.20 mm
wanted.chamfer_relief_angle=6 deg
wanted.relief_form=eccentric
settings.tap-chamfer.threads_per_inch=5 tpi
settings.size-loss.stock_per_sharpening=0.2 mm
after.drop.tolerance=0.02 mm
""",
}
"""Cards for the families of which the yard has none, with sizes as they come to a bench; common practice, no source."""


def other(book: Book, name: str) -> Card:
    card = replace(from_entry(book, book.entries[name]), id="2026-11-25-01", started=date(2026, 11, 25))
    card = replace(card, family=book.entries[name].family, entry=name)
    for line in f"{COMMON}{OTHERS.get(name, '')}".split("\n"):
        way, _, text = line.partition("=")
        card = edited(card, way, text) if way else card
    return card


def jobs(yard: Path, book: Book) -> dict[str, Job]:
    """Each record of the yard, the same job begun again and measured, and a card for each other family.

    A family that was added since has one for its first tool, without sizes.
    """
    cards: dict[str, Card] = {}
    for name in RECORDS:
        record = load(yard, name).card
        cards[name] = record
        cards[f"{name} again"] = replace(again(record, book), id="2026-11-25-01", received=record.received)
    cards |= {name: other(book, name) for name in OTHERS}
    drilled = edited(cards[FACETED], "after.drop", "1.83 mm, 1.82 mm")
    cards[f"{FACETED}, closed"] = finished(work_out(drilled, book), date(2026, 11, 26))
    here = {card.family for card in cards.values()}
    first = {row.family: row.id for row in reversed(list(book.rows)) if row.layer == "shipped"}
    cards |= {
        first[family]: other(book, first[family]) for family in open_book().families if family not in here
    }
    return {name: work_out(card, book) for name, card in cards.items()}
