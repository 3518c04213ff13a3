"""What is still to be given before there is an answer."""

from __future__ import annotations

from geometry.calculations import calculation
from library.calc.answer import answer
from library.calc.field_titles import title_in
from library.pages.answer import wanted


def test_titles_with_commas_of_their_own_are_parted_by_semicolons() -> None:
    said = wanted(answer(calculation("relief-drop"), {"surface": "cone"}))
    assert said is not None
    (sentence,) = said.texts
    listed = sentence.removeprefix("The answer stands here as soon as you have given: ").removesuffix(".")
    assert listed.split("; ") == [
        "included angle",
        "diameter",
        "relief of the cone, square to the edge",
        "land width",
    ]


def test_the_relief_that_the_shoulders_shall_have_is_called_wanted() -> None:
    sheet = calculation("step-relief")
    assert title_in(sheet, "shoulder_relief_angle").startswith("Wanted relief of the shoulder")
    assert not title_in(calculation("relief-drop"), "shoulder_relief_angle").startswith("Wanted")
