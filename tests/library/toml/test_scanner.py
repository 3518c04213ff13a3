"""Every key of a document has a line and a column, and they are where the key is written."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.toml.scanner import KeyPath, positions

SHIPPED = Path(__file__).parents[3] / "library" / "shipped"

BARE = st.from_regex(r"[a-z0-9_-]{1,6}", fullmatch=True)
TEXTS = st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs")), max_size=8)
SPACES = st.sampled_from(["", " ", "\t", "  "])
BLANKS = st.sampled_from(["", " ", "\n", "\n\n  ", ' # it\'s """ not a string [[entry]]\n', "\r\n"])


def quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def scalars() -> st.SearchStrategy[str]:
    return st.one_of(
        st.integers(-999, 999).map(str),
        st.floats(allow_nan=False, allow_infinity=False, width=32).map(repr),
        st.sampled_from(
            ["true", "false", "1979-05-27 07:32:00Z", "1979-05-27", "07:32:00", "inf", "0x1F", "'it ] } #'"]
        ),
        TEXTS.map(quoted),
        TEXTS.map(lambda text: '"""\n' + quoted(text)[1:-1] + '\n[[entry]]\n"""'),
        st.just("'''\nthree ''quotes''\n[table]\nkey = 1'''''"),
    )


@st.composite
def inline_tables(draw: st.DrawFn, inner: st.SearchStrategy[str]) -> str:
    keys = draw(st.lists(BARE, unique=True, max_size=3))
    pairs = (f"{key}{draw(SPACES)}={draw(SPACES)}{draw(inner)}" for key in keys)
    return "{" + draw(SPACES) + f"{draw(SPACES)},{draw(SPACES)}".join(pairs) + draw(SPACES) + "}"


@st.composite
def arrays(draw: st.DrawFn, inner: st.SearchStrategy[str]) -> str:
    items = draw(st.lists(inner, max_size=3))
    between = f"{draw(BLANKS)},{draw(BLANKS)}"
    last = draw(st.sampled_from([",", ""])) if items else ""
    return "[" + draw(BLANKS) + between.join(items) + draw(BLANKS) + last + draw(BLANKS) + "]"


VALUES = st.recursive(scalars(), lambda inner: st.one_of(inline_tables(inner), arrays(inner)), max_leaves=5)


@st.composite
def documents(draw: st.DrawFn) -> str:
    lines: list[str] = []
    for number in range(draw(st.integers(1, 5))):
        header = draw(
            st.sampled_from(
                [
                    "",
                    "[t{n}]",
                    "[[entry]]",
                    "[[ entry ]] # again",
                    "[entry.s{n}]",
                    "[[entry.also]]",
                    '["quoted ] {n}"]',
                ]
            )
        )
        if header.startswith(("[entry.", "[[entry.")) and not any(
            "[[" in line and "entry" in line for line in lines
        ):
            header = "[[entry]]"
        lines.append(draw(SPACES) + header.replace("{n}", str(number)))
        for key in draw(st.lists(st.one_of(BARE, TEXTS.map(quoted)), unique=True, max_size=3)):
            dotted = key + draw(st.sampled_from(["", ".deep", ' . "er"'])) if draw(st.booleans()) else key
            lines.append(f"{draw(SPACES)}{dotted}{draw(SPACES)}={draw(SPACES)}{draw(VALUES)}{draw(SPACES)}")
        lines.append(draw(BLANKS))
    return draw(st.sampled_from(["\n", "\r\n"])).join(lines)


def every_way(data: object, base: KeyPath = ()) -> set[KeyPath]:
    found = {base} if base else set()
    if isinstance(data, dict):
        found |= {way for key, inner in data.items() for way in every_way(inner, (*base, key))}
    elif isinstance(data, list):
        found |= {way for number, inner in enumerate(data) for way in every_way(inner, (*base, number))}
    return found


def accepted(text: str) -> dict[str, object] | None:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        return None


def stands_there(text: str, way: KeyPath, line: int, column: int) -> bool:
    """Whether the key's own name is written at that place (a number in an array has none)."""
    rest = text.split("\n")[line - 1][column - 1 :]
    key = way[-1]
    if isinstance(key, int):
        return bool(rest.strip())
    if rest.startswith("["):
        return key in rest or quoted(key) in rest
    return rest.startswith((key, quoted(key), f"'{key}'"))


@given(documents())
def test_every_key_of_any_document_is_found_where_it_is_written(text: str) -> None:
    data = accepted(text)
    if data is None:
        return
    found = positions(text)
    assert set(found) == every_way(data)
    for way, (line, column) in found.items():
        assert stands_there(text, way, line, column), (way, line, column)


@pytest.mark.parametrize("file", sorted(SHIPPED.glob("*.toml")), ids=lambda file: file.stem)
def test_every_key_of_the_shipped_files_is_found(file: Path) -> None:
    text = file.read_bytes().decode()
    found = positions(text)
    assert set(found) == every_way(tomllib.loads(text))
    assert all(stands_there(text, way, *spot) for way, spot in found.items())


def test_a_key_below_an_array_of_tables_belongs_to_the_last_one() -> None:
    text = "[[entry]]\n[[entry]]\n[entry.rake]\n  low = 1\n"
    assert positions(text)["entry", 1, "rake", "low"] == (4, 3)


def test_columns_count_characters_and_not_bytes() -> None:
    assert positions('a = { "\N{DEGREE SIGN}\N{DEGREE SIGN}" = 1, b = 2 }')["a", "b"] == (1, 17)


def test_a_text_that_is_no_document_ends_and_does_not_hang() -> None:
    with pytest.raises((ValueError, IndexError)):
        positions('a = ["\\n')
