"""A rule says once what holds for many tools, and an entry takes from the nearest one what it does not say itself."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.book import fetching
from library.book.model import Book, Value
from library.book.opening import open_book
from library.calc.wording import remarks
from tests.library.book.small_books import the_index

pytestmark = pytest.mark.usefixtures("nothing_shipped")

TOP = """\
schema = 1

[[family]]
id = "awl"
title = "Awls"
kind = "tap"

[[material]]
id = "horn"
title = "Horn"
iso_513 = "N"

[[material]]
id = "bone"
title = "Bone"
iso_513 = "N"

[[material]]
id = "flint"
title = "Flint"
iso_513 = "H"
"""
RULE = """
[[rule]]
id = "{name}"
title = "{name} awls"
family = "awl"
{more}
flutes = {{ usual = {flutes}, source = "shop" }}
"""
ENTRY = """
[[entry]]
id = "{name}"
family = "awl"
title = "{title}"
{more}
"""


def rule(name: str, flutes: object = 4, more: str = "") -> str:
    return RULE.format(name=name, flutes=flutes, more=more)


def awl(name: str, more: str = "", title: str = "An awl") -> str:
    return ENTRY.format(name=name, title=title, more=more)


def book_of(folder: Path, *tables: str) -> Book:
    folder.mkdir(exist_ok=True)
    (folder / "awls.toml").write_text(TOP + "".join(tables))
    return open_book(folder)


def flutes(book: Book, name: str = "plain") -> str:
    found = book.entries[name].values.get("flutes")
    if found is None:
        return "nothing"
    return "unread" if found.unread else found.usual.text if found.usual else ""


def told(book: Book) -> list[str]:
    return [str(one).partition(": ")[2] for one in book.findings]


def test_an_entry_takes_what_it_does_not_say_itself_and_tells_which_rule_gave_it(tmp_path: Path) -> None:
    book = book_of(tmp_path, awl("plain"), awl("own", 'flutes = { usual = 2, source = "shop" }'), rule("all"))
    assert (flutes(book), flutes(book, "own"), told(book)) == ("4", "2", [])
    value = book.entries["plain"].values["flutes"]
    assert value.by_rule is not None
    assert value.by_rule.in_words == "by the rule for all awls"
    line = (tmp_path / "awls.toml").read_text().splitlines().index(
        'flutes = { usual = 4, source = "shop" }'
    ) + 1
    assert value.place.line == line
    assert f"By the rule for all awls (awls.toml, line {line})." in remarks(book, value)
    assert book.entries["own"].values["flutes"].by_rule is None


@pytest.mark.parametrize(
    ("more", "fitting"),
    [
        ('when = ["sewing awl"]', "4"),
        ('when = "Sewing-awl"', "4"),
        ('when = ["sew"]', "nothing"),
        ('when = ["long", "cobbler"]', "4"),
        ('except = ["sewing awl"]', "nothing"),
        ('except = ["sewing-horn"]', "nothing"),
        ('except = ["long"]', "4"),
        ('work_material = "horn"', "4"),
        ('work_material = ["bone", "flint"]', "nothing"),
        ('iso_513 = "N"', "4"),
        ('iso_513 = ["H", "K"]', "nothing"),
        ('work_material = "horn"\nwhen = ["long"]', "nothing"),
    ],
)
def test_a_rule_is_for_the_tools_that_it_says(tmp_path: Path, more: str, fitting: str) -> None:
    entry = awl("sewing-horn", 'work_material = "horn"\nsynonyms = ["cobbler awl"]', "Sewing awl")
    book = book_of(tmp_path, entry, rule("some", more=more))
    assert (flutes(book, "sewing-horn"), told(book)) == (fitting, [])


def test_the_rule_that_says_most_about_the_tool_is_taken(tmp_path: Path) -> None:
    rules = [
        rule("all", 1),
        rule("group", 2, 'iso_513 = "N"'),
        rule("material", 3, 'work_material = "horn"'),
        rule("name", 4, 'when = ["sewing"]'),
        rule("both", 5, 'when = ["sewing"]\nwork_material = "horn"'),
    ]
    tools = [
        awl("flint", 'work_material = "flint"'),
        awl("bone", 'work_material = "bone"'),
        awl("horn", 'work_material = "horn"'),
        awl("sewing", 'work_material = "bone"', "Sewing awl"),
        awl("sewing-horn", 'work_material = "horn"', "Sewing awl"),
    ]
    for order in (rules, rules[::-1]):
        book = book_of(tmp_path, *order, *tools)
        names = ("flint", "bone", "horn", "sewing", "sewing-horn")
        assert [flutes(book, name) for name in names] == ["1", "2", "3", "4", "5"]
        assert told(book) == []


def test_two_rules_that_say_equally_much_are_told_of_once_and_only_where_a_tool_has_both(
    tmp_path: Path,
) -> None:
    pair = [rule("one", 1, 'when = ["sewing"]'), rule("other", 2, 'when = ["curved"]')]
    apart = [awl("a", title="Sewing awl"), awl("b", title="Curved awl")]
    assert told(book_of(tmp_path, *pair, *apart)) == []
    both = [awl(name, title="Curved sewing awl") for name in ("c", "d")]
    book = book_of(tmp_path, *pair, *apart, *both)
    (found,) = told(book)
    assert found.startswith(
        "other.flutes: 'Curved sewing awl' has flutes from this rule and from 'one' (awls.toml, line "
    )
    assert flutes(book, "c") == "1"
    own = [awl("e", 'flutes = { usual = 9, source = "shop" }', "Curved sewing awl")]
    assert told(book_of(tmp_path, *pair, *apart, *own)) == []
    nearer = rule("nearer", 3, 'when = ["sewing"]\nwork_material = "horn"')
    horn = awl("f", 'work_material = "horn"', "Curved sewing awl")
    assert told(book_of(tmp_path, *pair, *apart, horn, nearer)) == []


SHIPPED = TOP + rule("all", 4).replace('"shop"', '"common practice"') + awl("plain")


@pytest.fixture
def two_layers(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """In place of the shipped data an awl whose flutes come by a rule; the shop's folder beside it."""
    from library.book import opening

    shipped, shop = tmp_path / "shipped", tmp_path / "shop"
    shipped.mkdir()
    shop.mkdir()
    (shipped / "awls.toml").write_text(SHIPPED)
    monkeypatch.setattr(opening, "SHIPPED", shipped)
    monkeypatch.setattr(fetching, "SETTLED", 0.0)
    return shop


def replaced(value: Value) -> str:
    below = value.replaces
    return "" if below is None or below.usual is None else below.usual.text


@pytest.mark.parametrize(
    ("written", "has", "covers"),
    [
        ("", "4", ""),
        ('[[rule]]\nid = "all"\nflutes = { usual = 5, source = "shop" }', "5", "4"),
        (rule("mine", 6), "6", "4"),
        ('[[entry]]\nid = "plain"\nflutes = { usual = 7, source = "shop" }', "7", "4"),
        ('[[entry]]\nid = "plain"\nflutes = { usual = "seven" }', "unread", "4"),
        ('[[entry]]\nid = "plain"\nflutes = seven', "unread", "4"),
        ('[[rule]]\nid = "all"\nflutes = seven', "unread", "4"),
        ('[[entry]]\nid = "plain"\ntitle = [[[', "nothing", ""),
        ('[[rule]]\nid = "all"\nwhen = [[[', "nothing", ""),
    ],
)  # fmt: skip
def test_the_shops_own_goes_before_what_is_shipped(
    two_layers: Path, written: str, has: str, covers: str
) -> None:
    (two_layers / "mine.toml").write_text(f"schema = 1\n{written}\n")
    book = open_book(two_layers)
    assert flutes(book) == has
    value = book.entries["plain"].values.get("flutes")
    assert (replaced(value) if value is not None else "") == covers


def test_a_changed_rule_is_taken_at_the_next_start_and_by_a_search_too(two_layers: Path) -> None:
    mine = two_layers / "mine.toml"
    (two_layers / "tools.toml").write_text("schema = 1\n" + awl("curved", 'work_material = "horn"'))

    def ranges(name: str) -> str:
        found = open_book(two_layers).rows
        return next(row.ranges for row in found if row.id == name)

    assert (ranges("plain"), ranges("curved")) == ("flutes=4:4", "flutes=4:4")
    mine.write_text("schema = 1\n" + rule("mine", 6, 'iso_513 = "N"'))
    assert (ranges("plain"), ranges("curved")) == ("flutes=4:4", "flutes=6:6")
    mine.write_text(mine.read_text() + '[[material]]\nid = "horn"\niso_513 = "K"\n')
    assert (ranges("plain"), ranges("curved")) == ("flutes=4:4", "flutes=4:4")
    assert flutes(open_book(two_layers), "curved") == "4"
    assert the_index().is_file()


@pytest.mark.parametrize(
    ("written", "says"),
    [
        ('family = "awll"', "all.family: There is no family 'awll' in the book. Did you mean 'awl'?"),
        ("", "all: This [[rule]] has no family."),
        ("family = 3", "all.family: This is 3; a text or a list of texts is wanted."),
        ("family = []", "all.family: This names nothing, so the rule is for no tool."),
        ('family = ["awl", 3]', "all.family.1: This is 3; a text is wanted."),
        (
            'family = "awl"\nwork_material = "hron"',
            "all.work_material: There is no material 'hron' in the book.",
        ),
        ('family = "awl"\niso_513 = ["Q"]', "all.iso_513: 'Q' is not one of P, M, K, N, S, H."),
        (
            'family = "awl"\nwhen = { a = 1 }',
            "all.when: This is {'a': 1}; a text or a list of texts is wanted.",
        ),
        ('family = "awl"\nexcept = 3', "all.except: This is 3; a text or a list of texts is wanted."),
        ('family = "awl"\nwehn = "a"', "all.wehn: [[rule]] has no key 'wehn'."),
        ('family = "awl"\nwhen = [[[[[[[[[[[[[[[[[["a"]]]]]]]]]]]]]]]]]]', "all.when"),
    ],
)
def test_what_is_wrong_with_a_rule_is_told_and_it_is_taken_for_no_more_tools_than_was_meant(
    tmp_path: Path, written: str, says: str
) -> None:
    body = rule("all").replace('family = "awl"\n', f"{written}\n")
    book = book_of(tmp_path, body, awl("plain"))
    assert any(one.startswith(says) for one in told(book)), told(book)
    assert flutes(book) == ("4" if "wehn" in written else "nothing")


def test_a_rule_that_gives_nothing_is_told_of(tmp_path: Path) -> None:
    book = book_of(tmp_path, '\n[[rule]]\nid = "all"\ntitle = "awls"\nfamily = "awl"\n')
    assert told(book) == [
        'all: This rule gives no value. Add one, such as flutes = { usual = 4, source = "shop" }.'
    ]


@pytest.mark.parametrize(
    "written", ["rule = 3", "rule = [1, 2]", "[rule]\nid = 3", "[[rule]]", "[[rule.flutes]]\nusual = 3"]
)
def test_a_rule_that_is_no_table_is_a_problem_and_the_rest_is_read(tmp_path: Path, written: str) -> None:
    (tmp_path / "own.toml").write_text(f"schema = 1\n{written}\n")
    (tmp_path / "rest.toml").write_text(TOP + awl("plain"))
    book = open_book(tmp_path)
    assert told(book)
    assert flutes(book) == "nothing"


def test_an_entry_whose_material_cannot_be_read_gets_nothing_by_a_rule(tmp_path: Path) -> None:
    rules = [rule("all", 1), rule("horn", 2, 'work_material = "horn"')]
    book = book_of(tmp_path, *rules, awl("plain", "work_material = horn"))
    assert flutes(book) == "nothing"
    assert len(told(book)) == 1
