"""The settings stand in the order in which they are counted, also where one of two throws is a cam of the drawer and one is set."""

from __future__ import annotations

import re

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.starting import from_entry
from library.demo import lay_out
from tui.keys import no_keys
from tui.view.card_form import CardForm
from tui.view.card_set_table import set_lines
from tui.view.lines import text_of

STEP_DRILL = {
    "machine": "grey-grinder",
    "tool.size": "6, 8, 10 mm",
    "tool.flutes": "2",
    "received.land_width": "2 mm",
    "settings.step-relief.feed": "0.1 mm",
}


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    yard = tmp_path_factory.mktemp("yard") / "book"
    lay_out(yard)
    machines = yard / "machines.toml"
    told = machines.read_text(encoding="utf-8")
    own = re.sub(
        r"(?m)^cam_throws.*$",
        'cam_throws = ["2.5 mm"]\ncam_throw_range = {low = "0.1 mm", high = "12 mm"}',
        told,
    )
    assert own != told
    machines.write_text(own, encoding="utf-8")
    return open_book(yard)


def numbers_of(lines: list[str]) -> list[int]:
    return [int(one[2:5]) for one in lines if one[2:5].strip().isdigit()]


def set_table(book: Book, throws: dict[str, str]) -> list[str]:
    card = from_entry(book, book.entries["step-drill-ground-from-drill"])
    typed = {f"settings.step-relief.{key}": text for key, text in throws.items()}
    for way, text in {**STEP_DRILL, **typed}.items():
        card = edited(card, way, text)
    form = CardForm(book, card)
    form.go_to("settings.step-relief.feed")
    return [text_of(one).rstrip() for one in set_lines(form, no_keys, 80)[0]]


@pytest.mark.parametrize("radial", ["2.5 mm", "2.4 mm"])
@pytest.mark.parametrize("axial", ["2.5 mm", "2.4 mm"])
def test_two_throws_are_counted_as_they_stand(book: Book, radial: str, axial: str) -> None:
    lines = set_table(book, {"radial_throw": radial, "axial_throw": axial})
    numbers = numbers_of(lines)
    assert numbers == list(range(1, len(numbers) + 1))
    assert len(numbers) > 3
    assert sum("Radial throw" in one and one[2:5].strip().isdigit() for one in lines) == 1
    assert sum("Axial throw" in one and one[2:5].strip().isdigit() for one in lines) == 1


def test_what_is_typed_for_a_throw_above_says_for_which(book: Book) -> None:
    lines = set_table(book, {"radial_throw": "2.4 mm", "axial_throw": "2.5 mm"})
    (typed,) = [one for one in lines if "typed for setting" in one and "Radial" in one]
    (above,) = [one for one in lines if "Radial throw" in one and one != typed]
    assert typed.endswith(f"typed for setting {int(above[2:5])}")
