"""The surfaces of a family, and reliefs that belong to none."""

from __future__ import annotations

from pathlib import Path

from library.book.model import Book
from library.book.opening import open_book


def book_of(folder: Path, text: str) -> Book:
    (folder / "ours.toml").write_text("schema = 1\n" + text)
    return open_book(folder)


def test_an_unknown_surface_is_told_and_left_out(tmp_path: Path) -> None:
    book = book_of(
        tmp_path, '[[family]]\nid = "hob"\ntitle = "Hobs"\nsurfaces = ["end", "thread-lnad", "hump"]\n'
    )
    assert book.families["hob"].surfaces == ("end",)
    near, far = (str(finding) for finding in book.findings)
    assert near.endswith("hob.surfaces.1: There is no surface 'thread-lnad'. Did you mean 'thread-land'?")
    assert "There is no surface 'hump'. It can be land, thread-land, chamfer" in far


def test_a_family_of_the_shop_may_change_the_order_of_a_shipped_one(tmp_path: Path) -> None:
    book = book_of(tmp_path, '[[family]]\nid = "tap"\nsurfaces = ["thread-land", "chamfer"]\n')
    assert book.families["tap"].surfaces == ("thread-land", "chamfer")
    assert book.families["tap"].title == "Taps"


def test_a_relief_of_no_surface_is_kept_and_the_check_names_the_keys_to_write(tmp_path: Path) -> None:
    book = book_of(
        tmp_path,
        '[[entry]]\nid = "ours"\nfamily = "tap"\ntitle = "Ours"\n'
        'relief_angle = { usual = "6 deg", source = "shop" }\n'
        'secondary_relief_angle = { usual = "12 deg", source = "shop" }\n',
    )
    first, second = book.findings
    assert (first.severity, second.severity) == ("warning", "warning")
    assert first.way == "ours.relief_angle"
    assert "chamfer_relief_angle" in first.fix
    assert "thread_relief_angle" in first.fix
    assert "second_chamfer_relief_angle" in second.fix
    usual = book.entries["ours"].values["relief_angle"].usual
    assert usual is not None
    assert usual.text == "6 deg"
