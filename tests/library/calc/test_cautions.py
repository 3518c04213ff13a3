"""Which cautions belong to what is ground, and in which order."""

from __future__ import annotations

from typing import get_args

from geometry.calculations import calculation, calculation_names
from library.book.model import Book, Caution, Entry, Family, Material
from library.book.opening import open_book
from library.calc.cautions import BELONGS_TO, Doing, by_danger, cautions_for, cautions_of_all, of_what_is_done

INDEXING = calculation("index-moves")
SPEED = calculation("wheel-speed")
ORDER = ("wheel-rating", "ring-test", "fire", "eyes", "hands", "dust", "sharp-edges", "defer")
BOOK = Book(
    {},
    families={"tap": Family("tap", "Taps", cautions=("defer", "dust", "hands", "wheel-rating"))},
    materials={"magnesium": Material("magnesium", "Magnesium", cautions=("fire",))},
    cautions={name: Caution(name, name, f"Mind the {name}.") for name in ORDER},
)


def names(found: tuple[Caution, ...]) -> list[str]:
    return [one.id for one in found]


def test_those_of_a_tool_stand_as_the_book_has_them_the_most_dangerous_first() -> None:
    entry = Entry("one", "tap", "One", "magnesium", cautions=("eyes",))
    assert names(cautions_for(None, entry, BOOK)) == [
        "wheel-rating",
        "fire",
        "eyes",
        "hands",
        "dust",
        "defer",
    ]


def test_the_work_in_hand_comes_before_what_all_tools_of_the_family_have() -> None:
    assert INDEXING.cautions == ("hands", "lifting", "sharp-edges")
    entry = Entry("one", "tap", "One", "magnesium", cautions=("dust",))
    found = names(cautions_for(INDEXING, entry, BOOK))
    assert found == ["fire", "hands", "sharp-edges", "wheel-rating", "dust", "defer"]


def test_several_entries_have_each_caution_once() -> None:
    one, other = Entry("one", "tap", "One"), Entry("two", "tap", "Two", cautions=("eyes",))
    found = cautions_of_all([one, other], BOOK)
    assert names(found) == ["wheel-rating", "eyes", "hands", "dust", "defer"]


def test_every_shipped_caution_belongs_to_something() -> None:
    book = open_book()
    used = {key for one in book.entries.values() for key in one.cautions}
    used |= {key for one in book.families.values() for key in one.cautions}
    used |= {key for one in book.materials.values() for key in one.cautions}
    used |= {key for name in calculation_names() for key in calculation(name).cautions}
    used |= {key for name in calculation_names() for key in calculation(name).cautions_before}
    used |= {key for key, one in book.cautions.items() if one.tool_materials or one.abrasives}
    assert set(book.cautions) <= used


def test_the_speed_of_a_wheel_has_the_cautions_of_mounting_and_dressing_it() -> None:
    assert {"mounting", "dressing"} <= set(names(cautions_for(SPEED, None, open_book())))


def test_what_is_done_brings_its_own_cautions_to_the_front_and_leaves_none_out() -> None:
    book = open_book()
    jobber = book.entries["twist-drill-jobber-plain-steel"]
    found = {one.id for one in (*cautions_for(SPEED, None, book), *cautions_for(None, jobber, book))}
    once = tuple(by_danger(found, book))
    ordered = {doing: names(of_what_is_done(once, doing)) for doing in get_args(Doing)}
    assert ordered["mounting"][:4] == ["wheel-rating", "ring-test", "mounting", "wheel-change"]
    assert ordered["handling"][:3] == ["eyes", "hands", "sharp-edges"]
    assert ordered["grinding"][:2] == ["eyes", "hands"]
    assert set(ordered["grinding"][2:6]) == {"guard-and-rest", "stand-aside", "dust", "burning"}
    for one in ordered.values():
        assert sorted(one) == sorted(names(once))
        assert one[-1] == "defer"


def test_the_dust_of_a_carbide_tool_stands_before_all_others_while_it_is_ground() -> None:
    book = open_book()
    found = cautions_for(None, book.entries["masonry-drill-masonry"], book)
    assert names(of_what_is_done(found, "grinding"))[0] == "carbide-dust"
    assert "carbide-dust" in names(of_what_is_done(found, "handling"))[:4]


def test_every_name_of_what_is_done_is_a_caution_of_the_book() -> None:
    # A name that is misspelt would leave its caution at the end without a word.
    assert set(BELONGS_TO) <= set(open_book().cautions)
