"""A feed that serves the whole job has one line on the card, in the first calculation that asks for it."""

from __future__ import annotations

from library.book.model import Book
from library.cards.issues import issues_of
from tests.begun_cards import begun
from tui.view.card_form import CardForm

LAID_OUT = {
    "tool.size": "6, 8, 10 mm", "tool.flutes": "2", "received.land_width": "1.6 mm",
    "received.land_measured_as": "arc", "settings.step-relief.included_angle": "90, 90 deg",
    "settings.step-relief.axial_throw": "0.5 mm",
}  # fmt: skip


def form_of(book: Book, **more: str) -> CardForm:
    return CardForm(book, begun(book, "step-drill-spiral-flute-plain-steel", **{**LAID_OUT, **more}))


def test_one_feed_is_one_line_and_what_is_wrong_with_it_is_told_once_there(yard_book: Book) -> None:
    for feed in ("", "0.15 mm", "150 mm"):
        form = form_of(yard_book, **{"settings.step-relief.feed": feed})
        form.go_to("settings.step-relief.feed")
        assert [row.way for row in form.rows if row.quantity == "feed"] == ["settings.step-relief.feed"]
    told = [one.way for one in issues_of(form.job) if "Feed per turn is" in one.text]
    assert told == ["settings.step-relief.feed"]
    form.put("0.15 mm")
    assert all(
        step.answer.inputs["feed"].text == "0.15 mm"
        for step in form.job.steps
        if "feed" in step.answer.inputs
    )


def test_a_feed_typed_for_one_calculation_alone_keeps_its_line(yard_book: Book) -> None:
    form = form_of(
        yard_book,
        **{"settings.step-relief.feed": "0.15 mm", "settings.feed-clearance.feed": "0.2 mm"},
    )
    form.go_to("settings.feed-clearance.feed")
    assert form.row.text == "0.2 mm"


def test_where_the_first_calculation_is_left_out_the_feed_has_its_line_in_the_next(yard_book: Book) -> None:
    form = form_of(yard_book, **{"settings.step-relief": "skip"})
    form.go_to("settings.feed-clearance.feed")
    assert form.row.way == "settings.feed-clearance.feed"
