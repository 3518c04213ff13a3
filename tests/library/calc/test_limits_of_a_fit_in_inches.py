"""Limits of a reamer and of its hole in inches: a band of a few tenths is told finer than tenths."""

from __future__ import annotations

from geometry.calculations import calculation
from geometry.quantities import quantity
from library.calc.answer import answer
from library.units.show import say, show_answer
from library.units.system import Display

INCHES = Display("in")


def answered(measured: str) -> tuple[dict[str, str], str, str]:
    """What is answered for 3/8 in H7, and the state and the words of its first check."""
    texts = {"nominal_diameter": "3/8 in", "hole_tolerance": "H7", "measured_diameter": measured}
    found = answer(calculation("reamer-size"), texts, display=INCHES).result
    assert found is not None
    shown = {key: show_answer(value, quantity(key), INCHES) for key, value in found.outputs.items()}
    return shown, found.checks[0].state, say(found.checks[0].sentence, INCHES)


def test_a_reamer_on_watch_has_something_left_to_grind_between_limits_that_can_be_told_apart() -> None:
    # ISO 286: H7 of 6 to 10 mm is +15 micrometres; ISO 522 keeps 3 of them below it and makes within 6. In inches
    # 9.531 and 9.537 mm are .37524 and .37547, 9.540 mm is .37559, and .3755 is .00003 over. Derived.
    shown, state, said = answered(".3755 in")
    assert state == "watch"
    assert "Grind its circle to 0.37535 in" in said
    assert (shown["reamer_lower_limit"], shown["reamer_upper_limit"]) == ("0.37524 in", "0.37547 in")
    assert (shown["hole_lower_limit"], shown["hole_upper_limit"]) == ("0.37500 in", "0.37559 in")
    assert shown["left_to_grind"] == "0.00003 in"


def test_the_least_that_puts_a_reamer_on_watch_is_not_told_as_nothing_left_to_grind() -> None:
    shown, state, _ = answered("9.5376 mm")
    assert (state, shown["left_to_grind"]) == ("watch", "0.00002 in")


def test_in_millimetres_a_micrometre_is_told_as_before() -> None:
    assert show_answer(9.5374, quantity("reamer_upper_limit")) == "9.537 mm"
