"""A value is judged while it is typed by the very reader that will read it from its file."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.quantities import QUANTITIES
from geometry.sentences import Kind
from library.book.model import Book, Source, Value
from library.book.opening import open_book
from library.editing.changes import SetValue
from library.editing.checking import FIELDS, as_it_stands, as_written, complaints
from library.editing.planning import plan
from library.editing.saving import save
from library.issue import Place

BOOK = Book({}, sources={"handbook": Source("handbook", "Handbook")})


def told(key: str, **texts: str) -> dict[str, str]:
    return complaints(BOOK, "gun-tap", "tap", key, texts)


def test_a_sound_value_has_nothing_against_it() -> None:
    assert told("rake_angle", low="3 deg", usual="5 deg", high="8 deg", source="shop") == {}
    assert told("relief_form", usual="eccentric", source="common practice") == {}
    assert told("flutes", usual="4", source="from memory") == {}
    assert told("land_width", usual="0.25 D", source="handbook", place="table 3") == {}


@pytest.mark.parametrize(
    ("key", "texts", "field", "words"),
    [
        ("rake_angle", {"usual": "5", "source": "shop"}, "usual", "'5' has no unit"),
        ("rake_angle", {"usual": "5 mm", "source": "shop"}, "usual", "deg"),
        ("rake_angle", {"low": "6 deg", "high": "5 deg", "source": "shop"}, "high", "less than low"),
        ("rake_angle", {"usual": "5 deg"}, "", "This value has no source."),
        (
            "rake_angle",
            {"usual": "5 deg", "source": "handbok", "place": "p. 1"},
            "source",
            "Did you mean 'handbook'?",
        ),
        ("rake_angle", {"usual": "5 deg", "source": "handbook"}, "source", "without a place in it"),
        ("rake_angle", {"source": "shop"}, "", "neither low, usual nor high"),
        ("flutes", {"usual": "four", "source": "shop"}, "usual", "four"),
        ("flutes", {"usual": "2.5", "source": "shop"}, "usual", "2.5"),
        ("relief_form", {"usual": "wavy", "source": "shop"}, "usual", "wavy"),
        ("rake_angle", {"usual": "400 deg", "source": "shop"}, "usual", "400 deg"),
    ],
)
def test_what_is_wrong_is_told_at_its_field(key: str, texts: dict[str, str], field: str, words: str) -> None:
    found = told(key, **texts)
    assert list(found) == [field]
    assert words in found[field]


def test_a_count_and_a_ratio_are_written_as_bare_numbers_and_measures_as_text() -> None:
    assert as_written("flutes", {"usual": " 4 ", "source": "shop"}) == {"usual": 4, "source": "shop"}
    assert as_written("flutes", {"usual": "2.5"}) == {"usual": 2.5}
    for odd in ("inf", "nan", "1_000", "\u0663", "9" * 400, "1e3", "."):
        assert as_written("flutes", {"usual": odd}) == {"usual": odd}
    assert as_written("rake_angle", {"usual": "5 deg", "low": "", "note": "  "}) == {"usual": "5 deg"}


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    folder = tmp_path / "shop"
    folder.mkdir()
    (folder / "taps.toml").write_text(
        'schema = 1\n[[entry]]\nid = "our-tap"\nfamily = "tap"\ntitle = "Our tap"\n'
        'rake_angle = { usual = "5", low = "3 deg", source = "shop", note = "odd\\u200b" }\nflutes = 4\n'
    )
    return folder


KEYS = ("rake_angle", "flutes", "land_width", "relief_form", "pitch")
words = st.sampled_from(
    ["", "5", "5 deg", "8 deg", "1/8 in", "0.25 D", "2 mm", "eccentric", "flat", "4", "4.5", "-3 deg", "shop",
     "handbook", "common practice", "nan", "1e9 mm", "\u0663", "x" * 300]
)  # fmt: skip


@given(st.sampled_from(KEYS), st.dictionaries(st.sampled_from(FIELDS), words, min_size=1))
def test_whatever_is_accepted_here_is_accepted_when_it_is_read_from_its_file(
    key: str, texts: dict[str, str]
) -> None:
    import tempfile

    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "a.toml").write_text(
            'schema = 1\n[[source]]\nid = "handbook"\ntitle = "Handbook"\n'
            '[[entry]]\nid = "our-tap"\nfamily = "tap"\ntitle = "Our tap"\n'
        )
        book = open_book(folder)
        said = complaints(book, "our-tap", "tap", key, texts)
        written = as_written(key, texts)
        if not written:
            return
        save(plan(SetValue("our-tap", key, written), folder))
        findings = [str(one) for one in open_book(folder).findings if one.where.startswith("our-tap")]
        assert bool(findings) == bool(said), (findings, said)


def test_the_kinds_that_are_written_bare_are_counts_ratios_and_percentages() -> None:
    for row in QUANTITIES.values():
        written = as_written(row.key, {"usual": "4"})["usual"]
        assert isinstance(written, int) == (row.kind in {Kind.COUNT, Kind.RATIO, Kind.PERCENT}), row.key


def test_a_value_with_a_mistake_is_shown_as_it_stands_in_its_file(shop: Path) -> None:
    value = open_book(shop).entries["our-tap"].values["rake_angle"]
    found = as_it_stands(value, "our-tap")
    assert found["usual"] == "5"
    assert found["low"] == "3 deg"
    assert "\u200b" not in found["note"]


def test_a_short_value_stands_as_the_usual_one(shop: Path) -> None:
    value = open_book(shop).entries["our-tap"].values["flutes"]
    assert as_it_stands(value, "our-tap") == {"usual": "4"}


def test_a_file_that_is_gone_or_cannot_be_read_gives_nothing(shop: Path) -> None:
    value = open_book(shop).entries["our-tap"].values["flutes"]
    (shop / "taps.toml").write_text("schema = ")
    assert as_it_stands(value, "our-tap") == {}
    assert as_it_stands(Value("flutes", place=Place(shop / "gone.toml")), "our-tap") == {}
