"""The command ``heelclear calc``: the same calculations without a screen."""

from __future__ import annotations

import json
from typing import Any

import pytest

from geometry.calculations import calculation, calculation_names
from library.calc.inputs import shown
from library.units.system import METRIC
from tests.each import each
from tui.main import main

A_SCREEN = 24
"""Lines of the smallest terminal that people have."""

AXIAL = ["calc", "lead-over-land", "diameter=12mm", "pitch=1.75mm", "land_width=3.2mm"]


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = main(words)
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def data(capsys: pytest.CaptureFixture[str], *words: str) -> Any:
    code, out, err = run(capsys, *words, "--json")
    assert (code, err) == (0, "")
    return json.loads(out)


def test_without_a_name_the_calculations_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "calc")
    assert code == 0
    for name in ("lead-over-land", "relief-drop", "setting-height", "wheel-speed"):
        assert name in out


def test_help_of_a_calculation_lists_its_inputs_and_what_each_accepts(
    capsys: pytest.CaptureFixture[str],
) -> None:
    code, out, _ = run(capsys, "calc", "lead-over-land", "--help")
    assert code == 0
    for key in ("diameter", "pitch", "threads_per_inch", "starts", "hand", "land_width", "land_measured_as"):
        assert key in out
    assert "arc or chord" in out


def test_the_answer_as_data_has_the_agreed_shape(capsys: pytest.CaptureFixture[str]) -> None:
    found = data(capsys, *AXIAL)
    assert found["calculation"] == "lead-over-land"
    assert found["inputs"]["land_width"] | {"text": ""} == {
        "value": 3.2,
        "unit": "mm",
        "from": "given",
        "text": "",
    }
    assert found["inputs"]["starts"]["from"] == "default"
    # M12 x 1.75, land 3.2 as an arc: 1.75 * 3.2 / (pi * 12), by hand.
    assert found["outputs"]["lead_over_land"]["value"] == pytest.approx(0.148545, abs=1e-6)
    assert found["outputs"]["lead_over_land"]["unit"] == "mm"
    assert [s["fraction"] for s in found["stations"]] == [0.0, 0.25, 0.5, 0.75, 1.0]
    assert all(check["state"] in {"pass", "watch", "stop"} and check["text"] for check in found["checks"])
    assert {"key", "text", "source"} == set(found["cautions"][0])
    assert found["cautions"][-1]["key"] == "defer"


def test_a_chord_goes_further_round_than_an_arc_of_the_same_width(capsys: pytest.CaptureFixture[str]) -> None:
    found = data(capsys, *AXIAL, "land_measured_as=chord")
    # 1.75 * 2 asin(3.2 / 12) / (2 pi), by hand.
    assert found["outputs"]["lead_over_land"]["value"] == pytest.approx(0.150364, abs=1e-6)


def test_inches_are_taken_and_given_where_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    words = [
        "calc",
        "lead-over-land",
        "diameter=3/4",
        "threads_per_inch=10",
        "land_width=.2",
        "--units",
        "in",
    ]
    found = data(capsys, *words)
    # Common practice, no source: a 3/4-10 tap with a land of 0.200 in as an arc advances 0.0085 in.
    assert found["outputs"]["lead_over_land"]["value"] == pytest.approx(0.0085, abs=5e-5)
    assert found["outputs"]["lead_over_land"]["unit"] == "in"
    assert round(found["outputs"]["lead_over_land"]["value"] * 1000) == 8


def test_options_may_stand_between_the_values(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(
        capsys, "calc", "relief-drop", "diameter=12", "--json", "relief_angle=8", "land_width=2"
    )
    assert code == 0
    # 2 tan 8 degrees, by hand.
    assert json.loads(out)["outputs"]["heel_drop"]["value"] == pytest.approx(0.281082, abs=1e-6)


def test_an_entry_fills_what_is_not_given(capsys: pytest.CaptureFixture[str]) -> None:
    entries = data(capsys, "list", "--family", "tap")
    found = data(
        capsys,
        "calc",
        "relief-drop",
        "diameter=12mm",
        "relief_angle=6deg",
        "land_width=3mm",
        "--entry",
        entries[0]["id"],
    )
    assert found["inputs"]["relief_form"]["from"] == "entry"
    assert found["inputs"]["relief_form"]["value"] == "eccentric"


def test_the_answer_as_text_warns_and_shows_readings_with_units(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["diameter=12", "relief_angle=8", "land_width=2", "relief_form=flat"]
    code, out, _ = run(capsys, "calc", "relief-drop", *words)
    assert code == 0
    assert "STOP  The flat, carried on to the heel, stands 0.055 mm proud" in out
    assert "heel" in out
    assert out.splitlines()[1].startswith("STOP  The flat, carried on to the heel, stands 0.055 mm proud")
    assert len(out.splitlines()) <= A_SCREEN
    assert "CAUTION  under marked speed | ring wheel" in out
    assert "Before you grind" not in out


def test_the_cautions_of_an_answer_are_told_in_full_where_that_is_asked_for(
    capsys: pytest.CaptureFixture[str],
) -> None:
    words = ["diameter=12", "relief_angle=8", "land_width=2", "relief_form=flat"]
    _, short, _ = run(capsys, "calc", "relief-drop", *words)
    code, out, _ = run(capsys, "calc", "relief-drop", *words, "--cautions")
    assert code == 0
    full = " ".join(out.split())
    assert "CAUTION " not in full
    for caution in json.loads(run(capsys, "calc", "relief-drop", *words, "--json")[1])["cautions"]:
        assert " ".join(caution["text"].split()) in full
        assert caution["source"] in full
    # The answer stands last in both, so that it is what a terminal leaves in sight.
    assert out.splitlines()[-6:] == short.splitlines()[-6:]


@each("name", calculation_names())
def test_all_that_was_counted_with_is_told_where_that_is_asked_for(
    name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    sheet = calculation(name)
    words = [f"{key}={shown(key, value, METRIC)}" for key, value in sheet.sample.items()]
    squeezed = " ".join(run(capsys, "calc", name, *words, "--given")[1].split())
    for check in data(capsys, "calc", name, *words)["checks"]:
        assert " ".join(check["text"].split()) in squeezed
    for key, value in sheet.sample.items():
        assert shown(key, value, METRIC) in squeezed, key


@pytest.mark.parametrize(
    ("words", "needles"),
    [
        (["calc", "relief-drop", "diameter=0,5mm"], ["diameter", "comma", "0.5"]),
        (["calc", "relief-drop", "diameter=12", "relief_angle=8"], ["land_width", "such as 3.2 mm"]),
        (["calc", "relief-drop", "diamter=12"], ["diamter", "diameter"]),
        (["calc", "relief-drop", "12"], ["key=value"]),
        (["calc", "relief-drop", "diameter=12", "diameter=13"], ["diameter", "twice"]),
        (["calc", "relief-drip"], ["relief-drip", "relief-drop"]),
        (["calc", "relief-drop", "--entry", "no-such"], ["no-such"]),
        (["calc", "lead-over-land", "hand=up"], ["hand", "up", "right", "left"]),
        (["calc", "relief-drop", "diameter=-3"], ["diameter", "-3"]),
    ],
)
def test_bad_input_ends_with_2_and_a_sentence_that_names_it(
    capsys: pytest.CaptureFixture[str], words: list[str], needles: list[str]
) -> None:
    code, out, err = run(capsys, *words)
    assert code == 2
    assert out == ""
    for needle in needles:
        assert needle in err


def test_every_problem_gets_its_own_line(capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = run(
        capsys, "calc", "relief-drop", "diameter=wide", "relief_angle=200", "relief_form=round"
    )
    assert code == 2
    assert len(err.splitlines()) == 4


@pytest.mark.parametrize(
    ("rated", "state"), [("50m/s", "pass"), ("20m/s", "stop"), ("3600rpm", "pass"), ("2000rpm", "stop")]
)
def test_a_wheel_over_its_rating_is_a_stop(
    capsys: pytest.CaptureFixture[str], rated: str, state: str
) -> None:
    found = data(
        capsys,
        "calc",
        "wheel-speed",
        "wheel_diameter=150mm",
        "rotational_speed=3000rpm",
        f"rated_speed={rated}",
    )
    # pi * 0.150 m * 3000 / 60 s, by hand.
    assert found["outputs"]["surface_speed"]["value"] == pytest.approx(23.5619, abs=1e-4)
    assert [check["state"] for check in found["checks"]] == [state]


def test_height_for_both_kinds_of_wheel(capsys: pytest.CaptureFixture[str]) -> None:
    straight = data(
        capsys,
        "calc",
        "setting-height",
        "relief_angle=7",
        "wheel_shape=type-1-straight",
        "wheel_diameter=150",
    )
    # 75 sin 7 degrees and 0.0087 * 7 * 150, by hand.
    assert straight["outputs"]["wheel_head_height"]["value"] == pytest.approx(9.14020, abs=1e-5)
    assert straight["outputs"]["rule_height"]["value"] == pytest.approx(9.135)
    cup = data(
        capsys, "calc", "setting-height", "relief_angle=7", "wheel_shape=type-6-straight-cup", "diameter=20"
    )
    assert cup["outputs"]["tooth_rest_height"]["value"] == pytest.approx(1.218693, abs=1e-6)


@pytest.mark.parametrize("text", ["75", "75%", "75 percent"])
def test_a_percentage_of_thread_is_taken_with_and_without_its_sign(
    capsys: pytest.CaptureFixture[str], text: str
) -> None:
    found = data(capsys, "calc", "screw-thread", "diameter=12", "pitch=1.75", f"thread_percent={text}")
    # The tap makers' rule, with 0.01299 as the constant of 60 degree threads: 12 - 75 x 0.01299 x 1.75.
    assert found["outputs"]["drilled_diameter"]["value"] == pytest.approx(12 - 75 * 0.01299 * 1.75, abs=1e-3)


def test_a_share_where_a_percentage_is_wanted_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = run(capsys, "calc", "screw-thread", "diameter=12", "pitch=1.75", "thread_percent=0.75")
    assert code == 2
    assert "thread_percent" in err


def test_the_help_of_the_command_has_lines_of_its_own(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "calc", "--help")
    assert code == 0
    assert "\ufffd" not in out
    assert all(len(one) <= 80 for one in out.split("\n\n")[0].splitlines())


def test_a_wheel_marked_in_turns_is_told_in_turns(capsys: pytest.CaptureFixture[str]) -> None:
    wheel = ["calc", "wheel-speed", "wheel_diameter=100mm", "rotational_speed=5200rpm"]
    stopped = data(capsys, *wheel, "rated_rotational_speed=5000rpm", "rated_speed=35m/s")["checks"][0]
    assert stopped["state"] == "stop"
    assert "over its rating of 5000 rpm" in stopped["text"]
    # 35 m/s on 100 mm are 6684.5 turns a minute, so there the turns are not what binds.
    slower = data(capsys, *wheel, "rated_rotational_speed=9000rpm", "rated_speed=35m/s")["checks"][0]
    assert "within its rating of 35.00 m/s. Do not turn it faster than 6684 rpm." in slower["text"]


def test_the_line_of_a_limit_agrees_with_the_sentence_about_it(capsys: pytest.CaptureFixture[str]) -> None:
    wheel = ["wheel_diameter=150mm", "rotational_speed=3000rpm", "rated_speed=30m/s"]
    _, out, _ = run(capsys, "calc", "wheel-speed", *wheel)
    told = " ".join(out.split())
    assert "Highest spindle speed: 3819 rpm" in told
    assert "Do not turn it faster than 3819 rpm" in told


def test_an_unknown_entry_is_not_followed_by_what_it_would_have_given(
    capsys: pytest.CaptureFixture[str],
) -> None:
    _, _, err = run(capsys, "calc", "relief-drop", "--entry", "no-such")
    assert len(err.splitlines()) == 1


def test_a_value_from_the_book_brings_its_range_its_note_and_its_source(
    capsys: pytest.CaptureFixture[str],
) -> None:
    words = ["calc", "relief-drop", "--entry", "tap-hand-plain-steel", "diameter=12"]
    brief = " ".join(run(capsys, *words)[1].split())
    assert "Relief of the chamfer, square to the axis: 6.00 deg" in brief
    _, out, _ = run(capsys, *words, "--given")
    told = " ".join(out.split())
    assert "from the book In the book: 6 deg (4 deg to 8 deg). At the chamfer." in told
    assert "Source: from memory" in told
    found = data(capsys, *words)["inputs"]
    assert found["relief_angle"]["source"] == "from memory"
    assert found["relief_angle"]["note"].startswith("At the chamfer.")
    assert "source" not in found["diameter"]


def test_a_worn_wheel_is_told_the_turns_of_the_new_one(capsys: pytest.CaptureFixture[str]) -> None:
    # By hand: 25 m/s on 100 mm is 4774.6 turns in a minute, on 98 mm 4872.1.
    wheel = ["calc", "wheel-speed", "wheel_diameter=98mm", "rotational_speed=4000rpm", "rated_speed=25m/s"]
    known = data(capsys, *wheel, "wheel_new_diameter=100mm")["checks"][0]["text"]
    assert "Do not turn it faster than 4774 rpm: 25.00 m/s at the 100.000 mm that it had when new" in known
    unknown = data(capsys, *wheel)["checks"][0]["text"]
    assert "faster than 4872 rpm, nor faster than the turns marked on the wheel." in unknown
