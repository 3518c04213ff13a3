"""What the README of the book shows can be written just so."""

from __future__ import annotations

import re
from pathlib import Path

from library.book.opening import open_book

README = Path(__file__).parents[3] / "library" / "book" / "README.md"


def examples() -> list[str]:
    return re.findall(r"```toml\n(.*?)```", README.read_text(), re.DOTALL)


def test_the_examples_make_a_book_without_a_problem(tmp_path: Path) -> None:
    schema, entry, table_of_its_own, with_bands, others, *more = examples()
    (tmp_path / "entries.toml").write_text(schema + entry)
    for number, example in enumerate((others, *more)):
        (tmp_path / f"others-{number}.toml").write_text(schema + example)
    (tmp_path / "long.toml").write_text(
        schema + '[[entry]]\nid = "long"\nfamily = "tap"\ntitle = "Long"\n' + table_of_its_own
    )
    notebook = '[[source]]\nid = "our-notebook"\ntitle = "The notebook"\n'
    (tmp_path / "bands.toml").write_text(
        schema + notebook + '[[entry]]\nid = "bands"\nfamily = "reamer"\ntitle = "Bands"\n' + with_bands
    )
    book = open_book(tmp_path)
    assert [str(finding) for finding in book.findings] == []
    value = book.entries["long"].values["rake_angle"]
    assert value.low is not None
    assert (value.low.text, value.citation.label) == ("3 deg", "shop")
    tap = book.entries["spiral-point-tap-bronze"]
    width = tap.values["land_width"].usual
    assert width is not None
    assert width.per_diameter
    assert tap.values["chamfer_relief_angle"].citation.place == "chapter 5, table 5-1"


def test_every_file_of_the_reader_is_told_of() -> None:
    text = README.read_text()
    files = {path.name for path in README.parent.glob("*.py")} - {"__init__.py", "model.py"}
    assert {name for name in files if f"`{name}`" not in text} == set()
