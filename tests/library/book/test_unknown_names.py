"""A name that is not known is told of with the known one that is most like it, in every kind of table of a book."""

from __future__ import annotations

from pathlib import Path

import pytest

from geometry.quantities import QUANTITIES
from library.book.opening import open_book
from library.book.retired import OF_NO_SURFACE
from library.book.shapes import shapes
from library.book.values import KEYS
from library.guidance import told
from tests.each import each

pytestmark = pytest.mark.usefixtures("three_tables")

SOME_QUANTITIES = [key for key in QUANTITIES if key not in OF_NO_SURFACE][::30]
"""Looking for the like one among all of them takes long."""


def misspelt(name: str) -> str:
    """The name with a letter in its middle struck twice."""
    middle = len(name) // 2
    return name[:middle] + name[middle - 1] + name[middle:]


def findings(folder: Path, text: str) -> str:
    (folder / "ours.toml").write_text(f"schema = 1\n\n{text}\n")
    return "\n".join(str(one) for one in open_book(folder).findings)


@each("array", shapes())
def test_every_key_of_every_kind_of_table_is_found_again_by_a_like_one(array: str, tmp_path: Path) -> None:
    shape = shapes()[array]
    known = [*shape.keys(), *(SOME_QUANTITIES if shape.has_values else ())]
    wrong = {misspelt(key): key for key in known if key != "id"}
    said = findings(tmp_path, f'[[{array}]]\nid = "a"\n' + "\n".join(f'{key} = "1"' for key in wrong))
    missed = [
        (key, right)
        for key, right in wrong.items()
        if f"a.{key}: [[{array}]] has no key '{key}'. Did you mean {right}?" not in said
    ]
    assert missed == []


@each("array", shapes())
def test_every_kind_of_table_is_found_again_by_a_like_name(array: str, tmp_path: Path) -> None:
    wrong = misspelt(array)
    said = findings(tmp_path, f'[[{wrong}]]\nid = "a"')
    assert f"A book has no table '{wrong}'. Did you mean [[{array}]]?" in said


@each("key", KEYS)
def test_every_key_of_a_value_is_found_again_by_a_like_one(key: str, tmp_path: Path) -> None:
    said = findings(
        tmp_path, f'[[entry]]\nid = "a"\nfamily = "tap"\nrake_angle = {{ {misspelt(key)} = "1" }}'
    )
    assert f"A value has no key '{misspelt(key)}'. Did you mean {key}?" in said


@each("key", told.KEYS)
def test_every_key_of_a_line_of_the_work_is_found_again_by_a_like_one(key: str, tmp_path: Path) -> None:
    said = findings(tmp_path, f'[[setup]]\nid = "a"\ntitle = "A"\nhold = {{ {misspelt(key)} = "1" }}')
    assert f"has no key '{misspelt(key)}'. Did you mean {key}?" in said


def test_a_name_like_no_other_is_told_how_it_may_be_kept(tmp_path: Path) -> None:
    said = findings(tmp_path, '[[entry]]\nid = "a"\nqqq = "1"\n\n[[zzz]]\nid = "b"')
    assert said.count("begin its name with x- to keep it as your own") == 1
    assert said.count("Begin its name with x- to keep it as your own") == 1
    assert findings(tmp_path, '[[x-zzz]]\nqqq = "1"') == ""
