"""A word by which a tool is called tells of no trouble by itself."""

from __future__ import annotations

from library.guidance.model import Symptom
from library.guidance.troubles import asked_for

BELL = Symptom("bell", "Bell mouth", synonyms=("wide at the mouth", "taper hole"))
BURNS = Symptom("burns", "Burns the edge")


def test_the_name_of_a_tool_asks_for_no_trouble_that_has_a_word_of_it() -> None:
    assert asked_for("taper pin reamer", [BELL, BURNS], "Taper reamer") == ()
    assert asked_for("taper", [BELL, BURNS], "Taper reamer") == ()


def test_a_trouble_that_is_told_is_shown_though_the_tool_shares_a_word_with_it() -> None:
    assert asked_for("taper hole reamer", [BELL, BURNS], "Taper reamer") == (BELL,)
    assert asked_for("burns taper reamer", [BELL, BURNS], "Taper reamer") == (BURNS,)
    assert asked_for("taper", [BELL, BURNS], "Machine reamer") == (BELL,)
