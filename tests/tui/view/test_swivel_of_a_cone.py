"""The card of a cone on its tooth rest: each setting with what is to be said of it, in its own line."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.job import work_out
from library.cards.model import Card, Tool, Wanted
from library.cards.settings_lines import setting_lines
from tui.view.card_settings_told import told_of, with_turning


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return open_book(tmp_path_factory.mktemp("shop"))


def test_less_than_the_edge_stands_under_the_swivel_and_the_side_of_the_axis_under_the_rest(
    book: Book,
) -> None:
    card = Card(
        family="countersink",
        tool=Tool("C-82", size="1 in", flutes="6"),
        received={"land_width": ("1/8 in",), "land_measured_as": ("arc",)},
        wanted={
            "included_angle": Wanted("82 deg"),
            "cone_relief_angle": Wanted("8 deg"),
            "relief_method": Wanted("tooth-rest-height"),
        },
    )
    job = work_out(card, book)
    step = job.step("setting-height")
    assert step is not None
    lines = [one for one in setting_lines(job, job.display) if one.sheet == "setting-height"]
    told = with_turning(job, step, lines, told_of(job, step, lines))
    titles = [one.title for one in told]
    # Derived: the rest turns it 10.55 down, tan 8 / cos 41, and tan 41 cos 10.55 is the tangent of 40.52.
    assert [one.value for one in lines][:1] == ["40.52 deg"]
    under = titles.index("Axis to the wheel face") + 1
    assert titles[under] == "Less than the edge, as the rest turns the tooth."
    assert titles[titles.index("Tooth rest height") + 1] == "Below the tool axis."
