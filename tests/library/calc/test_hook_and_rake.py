"""What a book counts along the chord of a tap's face, and what at its edge, fill each what they are."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from geometry.calculations import calculation
from library.book.model import Book
from library.book.opening import open_book
from library.calc.answer import Answer, answer

OWN = """schema = 1

[[entry]]
id = "tap-hand-plain-steel"
rake_angle = { usual = "6 deg", source = "shop" }

[[entry]]
id = "our-tap"
family = "tap"
title = "Our tap"
hook_angle = { usual = "10 deg", source = "shop" }
"""


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    folder: Path = tmp_path_factory.mktemp("own")
    (folder / "taps.toml").write_text(OWN)
    return open_book(folder)


def asked(book: Book, name: str, entry: str, **typed: str) -> Answer:
    size = {"diameter": "12 mm"} | ({"pitch": "1.75 mm", "face_radius": "6 mm"} if name == "tap-hook" else {})
    return answer(calculation(name), {**size, **typed}, entry=book.entries[entry], book=book)


def test_every_value_of_the_source_that_counts_along_the_chord_stands_as_a_hook() -> None:
    entries = open_book().entries.values()
    taps = [one for one in entries if "tap" in one.family]
    assert len(taps) > 40
    cited = {
        key
        for one in taps
        for key, value in one.values.items()
        if value.citation.document == "tap-patent-2005" and key in {"rake_angle", "hook_angle"}
    }
    assert cited == {"hook_angle"}
    hooks = [one.values["hook_angle"] for one in taps if "hook_angle" in one.values]
    assert len(hooks) == 18
    assert all("chordal hook" in one.note for one in hooks)
    rakes = [one.values["rake_angle"] for one in taps if "rake_angle" in one.values]
    assert all("at the edge" in one.note for one in rakes)


def test_a_range_of_hooks_fills_nothing_by_itself() -> None:
    shipped = open_book()
    for name in ("tap-hook", "face-offset"):
        found = asked(shipped, name, "tap-hand-alloy-steel")
        assert not {"rake_angle", "hook_angle"} & set(found.inputs)
        assert any(one.missing for one in found.issues)


def test_a_hook_of_the_book_is_the_chord_of_the_face_and_of_the_flat_one(book: Book) -> None:
    found = asked(book, "tap-hook", "our-tap")
    assert "rake_angle" not in found.inputs
    assert found.result is not None
    # A chord of the depth 1.0735 mm in a circle of 6 mm radius leans half its arc less than the tangent at the edge.
    depth = 17 / 24 * math.sqrt(3) / 2 * 1.75
    hook = math.radians(10)
    # The chord ends at the root: crest, root and hook are two sides and an angle of one triangle.
    chord = 6 * math.cos(hook) - math.sqrt((6 - depth) ** 2 - (6 * math.sin(hook)) ** 2)
    assert found.result.outputs["rake_angle"] == pytest.approx(hook + math.asin(chord / 12))
    flat = asked(book, "face-offset", "our-tap")
    assert flat.result is not None
    assert flat.result.outputs["face_offset"] == pytest.approx(6 * math.sin(hook))
    assert flat.result.outputs["face_offset"] == pytest.approx(found.result.outputs["face_offset"])


def test_a_rake_of_the_shops_own_book_goes_on_filling_what_it_filled(book: Book) -> None:
    assert book.findings == ()
    for name in ("tap-hook", "face-offset"):
        found = asked(book, name, "tap-hand-plain-steel")
        assert found.result is not None
        assert found.inputs["rake_angle"].text == "6 deg"
        assert "hook_angle" not in found.inputs
        assert found.result.outputs["rake_angle"] == pytest.approx(math.radians(6))


def test_a_hook_that_is_typed_goes_before_the_rake_of_the_book(book: Book) -> None:
    found = asked(book, "tap-hook", "tap-hand-plain-steel", hook_angle="8 deg")
    assert "rake_angle" not in found.inputs
    assert found.result is not None
    assert found.result.outputs["hook_angle"] == pytest.approx(math.radians(8))
