"""Whoever does just what a sentence says, with all other inputs as they are, is rid of that complaint.

One test for all calculations: it follows the cure of each check, its amounts as a person reads them in
millimetres and in inches.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Calculation, Check, Field, Given, Together
from geometry.calculations import calculation, calculation_names
from geometry.evaluate import Refusal, run
from geometry.quantities import quantity
from geometry.sentences import Amount, Kind
from library.units.convert import from_geometry, to_geometry
from library.units.show import number
from library.units.system import Display
from tests.examples import OVER_ALL

NOT_YET: set[str] = set()
READERS = (Display("mm"), Display("in"))
GOES_TO = re.compile(r"(?<!up )\b(?:to|above|under|below|than|from|between) \{(\w+)\}")
DOES = re.compile(
    r"(?:^|[.?:,] |\b(?:or|and|else|but) )(?i:use|take|give|allow|drill|ask for|choose|mount|tilt)\b[^.;:]*?\{(\w+)\}"
)
OR_LESS = re.compile(r"\{(\w+)\}[^.;:{]{0,12} or (?:more|less)\b")
DOUBTS = re.compile(r"\bmeasure\b[^.;:]*\bagain\b")
SENTENCE_ENDS = re.compile(r"[.?] ")
BEYOND = re.compile(r"\b(?:above|more than) \{(\w+)\}")
SHORT_OF = re.compile(r"\b(?:under|below|less than|narrower than) \{(\w+)\}")
Samples = Mapping[str, Mapping[str, Given]]

covered = pytest.mark.parametrize(
    "sheet",
    [calculation(name) for name in calculation_names()],
    ids=lambda sheet: sheet.name,
)


@dataclass(frozen=True)
class Shown:
    """The amounts of a sentence as one reader sees them, beyond or short of it where the sentence says so."""

    check: Check
    display: Display

    def value(self, wanted: float) -> float:
        """What a person types for an amount of the cure."""
        names = [
            name
            for name, part in self.check.sentence.parts.items()
            if isinstance(part, Amount)
            and math.isclose(abs(part.value), abs(wanted), rel_tol=1e-12, abs_tol=1e-15)
        ]
        if not names and wanted == 0:
            return 0.0  # "until they are level" names no amount, and is one
        assert names, f"{wanted} is not said in: {self.check.sentence.template}"
        # What is found stands before what is advised, and may be the same amount rounded the other way.
        template = self.check.sentence.template
        name = max(names, key=lambda one: template.rindex(f"{{{one}}}"))
        part = self.check.sentence.parts[name]
        assert isinstance(part, Amount)
        unit = self.display.unit(part.kind)
        text = number(from_geometry(part.value, part.kind, unit), part.kind, unit, part.rounding)
        away = (name in BEYOND.findall(template)) - (name in SHORT_OF.findall(template))
        typed = to_geometry(float(text) + away * last_digit(text, part.kind), part.kind, unit)
        # A face so far off the axis is said without its sign: it stays on its side.
        return -typed if wanted * part.value < 0 else typed


def last_digit(text: str, kind: Kind) -> float:
    """One step of the last digit of a number as it is read; of a ratio without decimals a thousandth."""
    if kind is Kind.COUNT:
        return 1.0
    decimals = len(text.partition(".")[2])
    return 10.0**-decimals if decimals or kind is not Kind.RATIO else 0.001


def ways(check: Check, display: Display) -> Iterator[dict[str, Given | None]]:
    """The inputs to change for each way that a check offers."""
    shown = Shown(check, display)

    def typed(value: Given | None) -> Given | None:
        if value is None or isinstance(value, str):
            return value
        return tuple(map(shown.value, value)) if isinstance(value, tuple) else shown.value(value)

    changes = [{key: typed(value)} for key, value in check.cure]
    if isinstance(check.cure, Together):
        yield {key: value for change in changes for key, value in change.items()}
    else:
        yield from changes


def changed(values: Mapping[str, Given], change: Mapping[str, Given | None]) -> dict[str, Given]:
    merged = {**values, **change}
    return {key: value for key, value in merged.items() if value is not None}


def complaint(check: Check) -> str:
    """What a check finds wrong: its first sentence, whatever it then advises."""
    return check.sentence.template.split(". ")[0]


def advice(check: Check) -> str:
    """What a check says to do, without what it found."""
    template = check.sentence.template
    says = getattr(check, "says", "")
    return template.removeprefix(says) if says else SENTENCE_ENDS.split(template, maxsplit=1)[-1]


def named(check: Check) -> set[str]:
    """The amounts that a check tells a person to go to, to use or to keep to."""
    text = advice(check)
    found = {name for pattern in (GOES_TO, DOES, OR_LESS) for name in pattern.findall(text)}
    return {name for name in found if isinstance(check.sentence.parts[name], Amount)}


def covered_by_cure(check: Check, values: Mapping[str, Given]) -> Iterator[str]:
    """The amounts of a check that its cure puts into an input, or that lead there from what the input holds."""
    for key, wanted in check.cure:
        for value in wanted if isinstance(wanted, tuple) else (wanted,):
            if not isinstance(value, float):
                continue
            held = values.get(key)
            away = held - value if isinstance(held, float) else value
            for name, part in check.sentence.parts.items():
                if isinstance(part, Amount) and any(
                    math.isclose(part.value, one, rel_tol=1e-12, abs_tol=1e-15)
                    for one in (value, -value, away)
                ):
                    yield name


def follow(sheet: Calculation, values: Mapping[str, Given]) -> None:
    """Do what every sentence says and see that its complaint is gone."""
    try:
        found = run(sheet, values).checks
    except Refusal:
        return
    for check in found:
        if check.state not in ("watch", "stop"):
            continue
        left_out = set(named(check)) - set(covered_by_cure(check, values))
        assert not left_out, (str(check.sentence), left_out)
        for display in READERS:
            for way in ways(check, display):
                try:
                    again = run(sheet, changed(values, way)).checks
                except Refusal:
                    # Only a doubt may lead to a refusal, which then says what else is wrong; advice never does.
                    assert DOUBTS.search(str(check.sentence)), (str(check.sentence), way)
                    continue
                left = {complaint(one) for one in again if one.state in ("watch", "stop")}
                assert complaint(check) not in left, (str(check.sentence), way)


def near(field: Field, sample: Mapping[str, Given]) -> st.SearchStrategy[Given]:
    """Values round the sample's, or round the middle of what lies on a bench, never out of range."""
    row = quantity(field.key)
    if row.kind is Kind.CHOICE:
        return st.sampled_from(row.choices)
    middle = sample.get(field.key, {Kind.LENGTH: 3.0, Kind.ANGLE: 0.2}.get(row.kind, 3.0))
    at = middle[0] if isinstance(middle, tuple) else middle
    assert not isinstance(at, str)
    low, high = max(row.low, at / 5), min(row.high, at * 5)
    one = st.integers(math.ceil(low), math.floor(high)).map(float) if row.whole else st.floats(low, high)
    return st.lists(one, min_size=1, max_size=4).map(tuple) if field.many else one


def built(sheet: Calculation, sample: Mapping[str, Given]) -> st.SearchStrategy[dict[str, Given]]:
    """One of each group of alternatives, what is wanted, and what is optional now and then."""
    groups = sorted({field.one_of for field in sheet.inputs if field.one_of})
    alone = [field for field in sheet.inputs if not field.one_of]
    wanted = {f.key: near(f, sample) for f in alone if not f.optional and f.default is None}
    others = {f.key: near(f, sample) for f in alone if f.key not in wanted}
    one_each = [
        st.one_of(
            [st.fixed_dictionaries({f.key: near(f, sample)}) for f in sheet.inputs if f.one_of == group]
        )
        for group in groups
    ]
    return st.builds(
        lambda base, *chosen: {key: value for part in (base, *chosen) for key, value in part.items()},
        st.fixed_dictionaries(wanted, optional=others),
        *one_each,
    )


@st.composite
def facet_tools(draw: st.DrawFn) -> dict[str, Given]:
    """A tool ground down, of which every part may be short, wide, deep or flat."""
    diameter, relief = draw(st.floats(2.0, 50.0)), draw(st.floats(0.02, 0.78))
    radius = diameter / 2
    tool: dict[str, Given] = {
        "diameter": diameter,
        "body_diameter": diameter * draw(st.floats(1.0, 1.6)),
        "relief_angle": relief,
        "primary_land": draw(st.floats(0.02, 2.2)) * radius * math.sin(relief),
        "least_gap": radius * (1 - math.cos(relief)) * draw(st.floats(0.02, 4.0)),
    }
    if draw(st.booleans()):
        tool |= {"land_width": draw(st.floats(0.05, 0.99)) * diameter, "land_measured_as": "chord"}
    else:
        tool["land_width"] = draw(st.floats(0.05, 5.5)) * radius
    if draw(st.booleans()):
        tool["secondary_relief_angle"] = relief + draw(st.floats(0.001, 1.0)) * (math.radians(60) - relief)
    if draw(st.booleans()):
        tool["deepest_gap"] = radius * draw(st.floats(0.01, 0.9))
    return tool


@st.composite
def form_tools(draw: st.DrawFn) -> dict[str, Given]:
    """An edge of which every form may rub."""
    diameter, relief = draw(st.floats(2.0, 60.0)), draw(st.floats(0.02, 0.7))
    turned = draw(st.floats(0.05, 3.0))
    chord = draw(st.booleans())
    return {
        "compare_by": draw(st.sampled_from(("edge-angle", "heel-drop"))),
        "diameter": diameter,
        "relief_angle": relief,
        "land_width": diameter * math.sin(turned / 2) if chord else turned * diameter / 2,
        "land_measured_as": "chord" if chord else "arc",
        "primary_land": draw(st.floats(0.02, 1.0)) * diameter / 2 * min(turned, 2 * math.sin(relief)),
        "secondary_relief_angle": relief + draw(st.floats(0.001, 1.0)) * (math.radians(60) - relief),
    }


@st.composite
def tilted_wheels(draw: st.DrawFn) -> dict[str, Given]:
    """A helical land under an inclined wheel, the wheel round, narrow, or both."""
    diameter, helix = draw(st.floats(3.0, 60.0)), draw(st.floats(0.03, 1.2))
    land = draw(st.floats(0.02, 0.6)) * diameter
    tool: dict[str, Given] = {"helix_angle": helix, "diameter": diameter, "land_width": land}
    if draw(st.booleans()):
        tool["relief_angle"] = draw(st.floats(0.0, 0.7))
    else:
        tool["wheel_tilt"] = draw(st.floats(0.0, 0.5))
    if draw(st.booleans()):
        tool["wheel_diameter"] = draw(st.floats(20.0, 300.0))
    if draw(st.booleans()):
        wide = land / math.tan(helix) * draw(st.floats(0.1, 1.2))
        tool["wheel_width"] = min(200.0, max(0.01, wide))
    return tool


OWN: Mapping[str, Callable[[], st.SearchStrategy[dict[str, Given]]]] = {
    "relief-facets": facet_tools,
    "relief-forms": form_tools,
    "wheel-tilt": tilted_wheels,
}
"""How tools are built whose measures hang together; others are built round their sample."""


def test_a_doubted_relief_may_lead_to_the_sentence_on_a_facet_that_never_comes_round() -> None:
    tool = {"diameter": 2.75, "land_width": 3.5, "relief_angle": 0.5, "primary_land": 1.0}
    sheet = calculation("reamer-land")
    follow(sheet, {**tool, "secondary_relief_angle": 1.0})
    with pytest.raises(Refusal, match="never comes round"):
        run(sheet, {**tool, "secondary_relief_angle": math.radians(45)})


@covered
def test_doing_what_a_sentence_says_ends_its_complaint(sheet: Calculation, samples: Samples) -> None:
    own = OWN[sheet.name]() if sheet.name in OWN else st.nothing()

    @OVER_ALL
    @given(st.one_of(own, built(sheet, samples[sheet.name])))
    def followed(values: dict[str, Given]) -> None:
        follow(sheet, values)

    followed()
