"""The vocabulary: every row says what it is and how it is measured, and none is there twice."""

from __future__ import annotations

import math
import re

import pytest

from geometry.edge.views import VIEWS
from geometry.quantities import QUANTITIES, SUBJECTS, Quantity, quantity
from geometry.sentences import Kind
from geometry.surfaces import SURFACES, Surface
from tests.each import each

each_row = each("row", QUANTITIES.values(), lambda row: row.key)


@each_row
def test_a_row_reads_as_one_sentence_of_meaning_and_one_of_measuring(row: Quantity) -> None:
    for sentence in (row.definition, row.measured):
        assert sentence[0].isupper()
        assert sentence.endswith(".")
        assert "  " not in sentence
    assert row.title
    assert re.fullmatch(r"[a-z][a-z0-9_]*", row.key)
    assert quantity(row.key) is row


@each_row
def test_a_row_has_words_to_choose_from_or_a_range(row: Quantity) -> None:
    if row.kind is Kind.CHOICE:
        assert len(row.choices) > 1
        assert len(set(row.choices)) == len(row.choices)
        assert all(re.fullmatch(r"[A-Za-z0-9-]+( [a-z0-9-]+)*", word) for word in row.choices)
    else:
        assert row.choices == ()
        assert row.low < row.high
        assert math.isfinite(row.low)
        assert not row.whole or row.low == int(row.low)


@each_row
def test_another_kind_of_the_same_thing_is_in_the_vocabulary_and_points_back(row: Quantity) -> None:
    for other in row.other_kinds:
        assert quantity(other).kind is not row.kind
        assert row.key in quantity(other).other_kinds


def test_titles_tell_the_rows_apart() -> None:
    titles = [row.title.casefold() for row in QUANTITIES.values()]
    assert len(set(titles)) == len(titles)


def test_the_subjects_are_each_there_once() -> None:
    assert len(set(SUBJECTS)) == len(SUBJECTS)


def test_a_name_that_is_not_in_the_vocabulary_is_no_quantity() -> None:
    with pytest.raises(KeyError):
        quantity("no_such_quantity")


@pytest.mark.parametrize("surface", list(SURFACES.values()), ids=lambda one: one.key)
def test_each_surface_has_its_relief_its_second_facet_and_its_edge_in_the_vocabulary(
    surface: Surface,
) -> None:
    points = {"radial": "the indicator points at the axis", "normal": "square", "axial": "axis"}[surface.view]
    for key in (surface.relief_key, surface.second_key):
        assert quantity(key).kind is Kind.ANGLE
        assert points in quantity(key).measured.lower()
    assert not surface.edge_key or quantity(surface.edge_key).kind is Kind.ANGLE
    assert surface.key in quantity("surface").choices


def test_the_indicator_points_one_way_for_each_view() -> None:
    assert len(quantity("indicator_points").choices) == len(quantity("relief_view").choices) == len(VIEWS)
