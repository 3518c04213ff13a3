"""What the step Set of a card asks for: everything that a calculation in use still wants has its line, and one line only."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest

from geometry.quantities import quantity
from geometry.sentences import Kind
from library.book.model import Book
from library.book.opening import open_book
from library.cards.model import Card, Setting, Tool, Wanted
from library.cards.settings_lines import setting_lines
from library.cards.starting import from_entry
from tui.view.card_form import CardForm
from tui.view.card_row import Row
from tui.view.card_settings_told import state_of
from tui.view.text_line import TextLine

USUAL = {
    "diameter": "12 mm",
    "land_width": "2 mm",
    "drop": "0.1 mm",
    "wheel_diameter": "150 mm",
    "rotational_speed": "2500 rpm",
    "feed": "0.1 mm",
    "point_angle": "118 deg",
    "included_angle": "90 deg",
    "chamfer_angle": "10 deg",
    "bevel_angle": "45 deg",
    "radial_throw": "1.6 mm",
    "stock_per_sharpening": "0.1 mm",
    "least_diameter": "11.5 mm",
    "margin_width": "0.2 mm",
    "back_diameter": "11.98 mm",
    "corner_wear": "0.2 mm",
}
"""What a person might write into a line; of other quantities one of its kind."""

OF_A_KIND = {Kind.LENGTH: "1 mm", Kind.ANGLE: "8 deg", Kind.COUNT: "4"}

WHAT_IS_ASKED = ("received", "wanted", "settings")

METHODS = ("cam", "wheel-head-height")


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def begun(book: Book, entry: str, **wanted: str) -> Card:
    """A card of an entry, of a tool of 12 mm, of three steps or an M12, with some lines that are wanted."""
    card, kind = from_entry(book, book.entries[entry]), book.kind_of(book.entries[entry].family)
    tool = Tool("A", size="6, 8, 10 mm" if kind in {"step-drill", "subland-drill"} else "12 mm", flutes="2")
    tool = Tool("A", thread="M12", flutes="3") if kind == "tap" else tool
    return replace(
        card, tool=tool, wanted={**card.wanted, **{key: Wanted(text) for key, text in wanted.items() if text}}
    )


def text_for(row: Row) -> str:
    """What goes into a line: a word of its own, the low end of a range, or what is usual."""
    if row.choices:
        return next(one for one in row.choices if one)
    if row.offers:
        return row.offers[min(1, len(row.offers) - 1)]
    return USUAL.get(row.quantity or row.key) or OF_A_KIND.get(
        quantity(row.quantity or row.key).kind, "20 m/s"
    )


def filled_in(book: Book, card: Card) -> tuple[CardForm, list[str]]:
    """The form after everything was filled in that its steps ask for, and the ways of those lines."""
    form, filled = CardForm(book, card), list[str]()

    def wants(row: Row) -> bool:
        is_range = row.section == "wanted" and len(row.offers) > 1 and row.text == row.offers[0]
        return (row.wants or is_range) and row.way not in filled and row.section in WHAT_IS_ASKED

    for section in (*WHAT_IS_ASKED, *WHAT_IS_ASKED):
        form.go_to(section)
        while (row := next(filter(wants, form.rows), None)) is not None:
            filled.append(row.way)
            if row.section != "wrong":
                form.go_to(row.way)
                form.keep(TextLine.ending(text_for(row)))
    return form, filled


def unanswered(form: CardForm) -> list[str]:
    return [one.sheet.name for one in form.job.steps if one.in_use and state_of(one) == "needs input"]


def twice(filled: list[str]) -> list[str]:
    counted = Counter(way.rpartition(".")[2] for way in filled if way.startswith("settings."))
    return [key for key, count in counted.items() if count > 1]


def settings(form: CardForm) -> dict[str, str]:
    return {one.key: one.value for one in setting_lines(form.job, form.job.display)}


def test_the_head_of_a_masonry_drill_goes_up_for_its_lip_relief_and_the_wheel_is_asked_once(
    book: Book,
) -> None:
    form, filled = filled_in(book, begun(book, "masonry-drill-hammer", relief_method="wheel-head-height"))
    assert [way for way in filled if "wheel_diameter" in way] == ["settings.wheel-speed.wheel_diameter"]
    assert not unanswered(form)
    # 25 degrees along the axis on a lip 65 off it are atan(tan 25 sin 65) = 22.910 square to it: 75 sin 22.910.
    assert settings(form)["wheel_head_height"] == "29.196 mm"


def test_an_empty_line_for_the_wheel_stands_once_and_the_later_calculation_says_where(book: Book) -> None:
    form = CardForm(book, begun(book, "masonry-drill-hammer", relief_method="wheel-head-height"))
    form.go_to("settings")
    assert [row.way for row in form.rows if row.way.endswith("wheel_diameter")] == [
        "settings.wheel-speed.wheel_diameter"
    ]
    (height,) = (row for row in form.rows if row.way == "settings.setting-height")
    assert height.below == ("for want of wheel diameter, asked for above",)


def test_what_a_later_calculation_waits_for_has_the_name_of_its_line(book: Book) -> None:
    form = CardForm(book, begun(book, "step-drill-spiral-flute-plain-steel"))
    form.go_to("settings")
    (line,) = (row for row in form.rows if row.way == "settings.step-relief.included_angle")
    (drop,) = (row for row in form.rows if row.way == "settings.relief-drop")
    assert line.label.strip() == "Shoulder angles"
    assert drop.below[0].startswith("for want of ")
    assert "shoulder angles, asked for above" in drop.below[0]


def test_a_lip_is_rolled_under_a_cup_which_no_height_of_the_tooth_rest_sets(book: Book) -> None:
    form, _ = filled_in(book, begun(book, "masonry-drill-hammer", relief_method="tooth-rest-height"))
    assert not unanswered(form)
    assert "tooth_rest_height" not in settings(form)


def test_a_cam_is_asked_for_nowhere_on_a_lip(book: Book) -> None:
    form, filled = filled_in(book, begun(book, "centre-drill-type-a", surface="lip", relief_method="cam"))
    assert not [way for way in filled if "throw" in way]
    assert not unanswered(form)
    assert {one.sheet.name for one in form.job.steps if one.rests} >= {"cone-relief", "step-relief"}


def test_a_relief_of_another_surface_has_one_line_among_what_is_wanted(book: Book) -> None:
    form, filled = filled_in(book, begun(book, "subland-drill-aluminium-wrought", surface="shoulder"))
    assert [way for way in filled if "lip_relief_angle" in way] == ["wanted.lip_relief_angle"]
    assert not unanswered(form)


def test_the_relief_of_a_land_is_not_asked_for_where_the_bevel_is_ground(book: Book) -> None:
    _, filled = filled_in(book, replace(begun(book, "reamer-rose"), received={"margin_width": ("0.2 mm",)}))
    assert not [way for way in filled if "land_relief_angle" in way]


def test_a_shoulder_that_is_a_face_leaves_a_throw_toward_the_axis_out_and_is_read_along_it(
    book: Book,
) -> None:
    form, _ = filled_in(book, begun(book, "subland-drill-counterbore-plain-steel", relief_method="cam"))
    step = form.job.step("relief-drop")
    assert step is not None
    assert (step.works, "chosen_throw" in step.answer.inputs) == (True, False)


@pytest.mark.depth
def test_no_entry_leaves_a_calculation_without_a_line_for_what_it_wants_and_none_asks_twice(
    book: Book,
) -> None:
    firsts = {one.family: one.id for one in reversed(list(book.entries.values()))}
    ways = [
        (entry, surface, method)
        for family, entry in firsts.items()
        for surface in book.families[family].surfaces
        for method in METHODS
    ]
    ways += [(entry, "", "") for entry in list(book.entries)[::8]]
    wrong = []
    for entry, surface, method in ways:
        form, filled = filled_in(book, begun(book, entry, surface=surface, relief_method=method))
        found = [*unanswered(form), *twice(filled)]
        wrong += (
            [f"{entry} on {surface or 'its surface'} by {method or 'what follows'}: {found}"] if found else []
        )
    assert not wrong, "\n".join(wrong)


def test_of_two_surfaces_that_are_read_each_drop_at_the_heel_says_which_it_is_of(book: Book) -> None:
    def drops(**typed: Setting) -> list[str]:
        received = {"land_width": ("1.2 mm",), "land_measured_as": ("chord",)}
        card = replace(begun(book, "reamer-machine-plain-steel"), received=received, settings=typed)
        form = CardForm(
            book, replace(card, wanted={**card.wanted, "relief_method": Wanted("tooth-rest-height")})
        )
        form.go_to("settings")
        told = [one.title for row in form.rows for one in row.told]
        return [title for title in told if title.startswith("Drop at the heel")]

    assert drops() == ["Drop at the heel"]
    typed = {"reamer-land": Setting({"margin_width": "0.2 mm"})}
    assert drops(**typed) == ["Drop at the heel, bevel lead", "Drop at the heel, land"]


@pytest.mark.parametrize(("method", "is_set"), [("work-head", False), ("wheel-head-height", True)])
def test_half_the_point_stands_among_the_settings_only_where_the_method_sets_it(
    book: Book, method: str, is_set: bool
) -> None:
    card = begun(book, "twist-drill-jobber-plain-steel", relief_method=method, point_angle="140 deg")
    card = replace(card, received={"web_thickness": ("1.6 mm",), "land_width": ("4 mm",)})
    form = CardForm(book, card)
    form.go_to("settings")
    titles = [one.title for row in form.rows if row.way == "settings.drill-point" for one in row.told]
    below = [text for row in form.rows if row.way == "settings.drill-point" for text in row.below]
    assert titles
    assert ("Half point angle" in titles) is is_set
    assert any("Half point angle" in text for text in below) is is_set


def test_a_stop_of_another_surface_than_the_ground_one_bears_its_name(book: Book) -> None:
    # So wide a flat of the thread land rubs before anything comes off its face; the job grinds the chamfer.
    card = begun(
        book, "tap-hand-plain-steel", thread_relief_angle="2 deg", relief_form="flat", surface="chamfer"
    )
    card = replace(
        card,
        received={"land_width": ("4 mm",), "land_measured_as": ("chord",)},
        settings={"size-loss": Setting({"stock_per_sharpening": "0.1 mm"})},
    )
    form = CardForm(book, card)
    form.go_to("settings.size-loss.stock_per_sharpening")
    told = [one.title for row in form.rows for one in row.told if row.way == "settings.size-loss"]
    assert told == ["Size lost in sharpening, thread land"]
