"""A result is computed once for the same question, and anew for any other."""

from __future__ import annotations

from dataclasses import replace

from geometry.calculation import Calculation, Field, Inputs, Result
from geometry.complaints import untried
from geometry.evaluate import forget, run
from geometry.figure import undrawn


def counting() -> tuple[Calculation, list[object]]:
    """A calculation of its own, and what it was asked to compute, in order."""
    computed: list[object] = []

    def compute(given: Inputs) -> Result:
        computed.append(given.number("diameter"))
        return Result({"diameter": given.number("diameter")})

    sheet = Calculation(
        name="counted",
        title="Counted",
        question="How often?",
        wants="A diameter.",
        neglects="Everything.",
        kinds=("tap",),
        inputs=(Field("diameter"), Field("flutes", default=2)),
        outputs=("diameter",),
        cautions=(),
        compute=compute,
    )
    return sheet, computed


def test_the_same_question_is_computed_once() -> None:
    sheet, computed = counting()
    assert run(sheet, {"diameter": 12.0}) is run(sheet, {"diameter": 12.0})
    assert computed == [12.0]


def test_another_number_is_computed_anew_though_it_compares_alike() -> None:
    sheet, computed = counting()
    for diameter in (12.0, 12, 12.5):
        run(sheet, {"diameter": diameter})
    assert [repr(one) for one in computed] == ["12.0", "12", "12.5"]


def test_what_is_said_besides_counts_though_it_is_the_default() -> None:
    sheet, computed = counting()
    run(sheet, {"diameter": 12.0})
    run(sheet, {"diameter": 12.0, "flutes": 2})
    assert len(computed) == 2


def test_another_calculation_of_the_same_name_has_its_own_results() -> None:
    sheet, computed = counting()
    other = replace(sheet, compute=lambda given: Result({"diameter": 2 * given.number("diameter")}))
    assert run(sheet, {"diameter": 3.0}).outputs != run(other, {"diameter": 3.0}).outputs
    assert computed == [3.0]


def test_without_a_drawing_or_without_tried_advice_it_is_another_question() -> None:
    sheet, computed = counting()
    run(sheet, {"diameter": 12.0})
    with undrawn():
        run(sheet, {"diameter": 12.0})
    with untried():
        run(sheet, {"diameter": 12.0})
    assert len(computed) == 3


def test_a_dictionary_that_changes_afterwards_changes_no_result() -> None:
    sheet, _ = counting()
    values = {"diameter": 12.0}
    first = run(sheet, values)
    values["diameter"] = 5.0
    assert run(sheet, values).outputs["diameter"] == 5.0
    assert run(sheet, {"diameter": 12.0}) is first


def test_what_was_forgotten_is_computed_anew() -> None:
    sheet, computed = counting()
    run(sheet, {"diameter": 12.0})
    forget()
    run(sheet, {"diameter": 12.0})
    assert len(computed) == 2
