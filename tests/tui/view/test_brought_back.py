"""What is typed over in a form comes back, as on a card."""

from __future__ import annotations

from tui.view.text_form import Blank, TextForm


def machine() -> TextForm:
    form = TextForm(
        (Blank("cams", "Cams", overtype=True), Blank("title", "Title")), {"title": "By the window"}
    )
    form.type("1, 1.6, 2.5")
    form.focus = "title"
    form.focus = "cams"
    return form


def test_a_list_that_was_typed_over_comes_back_and_then_the_line_is_emptied() -> None:
    form = machine()
    form.type("5 mm")
    assert form.values()["cams"] == "5 mm"
    form.clear()
    assert form.values()["cams"] == "1, 1.6, 2.5"
    form.clear()
    assert form.values()["cams"] == ""


def test_a_line_in_which_nothing_was_typed_over_is_emptied() -> None:
    form = machine()
    form.focus = "title"
    form.type(" of the slip")
    form.clear()
    assert form.values()["title"] == ""


def test_nothing_comes_back_once_the_form_was_started_over() -> None:
    form = machine()
    form.type("4 mm")
    form.start_over({"cams": "5 mm"})
    form.clear()
    assert form.values()["cams"] == ""
