"""What may be typed for a number, what it means, and what is refused with which sentence."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.sentences import Kind
from library.units.grammar import LONGEST, SPELLINGS, parse
from library.units.read import UnitError, read, read_many
from library.units.system import INCH, METRIC


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("12", 12.0),
        ("12mm", 12.0),
        (" 12.5  mm ", 12.5),
        (".5 in", 12.7),
        ("1/2 in", 12.7),
        ('3/8"', 9.525),
        ("3/8\u2033", 9.525),
        ("1-1/2 in", 38.1),
        ("1 1/2 in", 38.1),
        ("1 1/2 inches", 38.1),
        ("200 thou", 5.08),
        ("0.200 in", 5.08),
        ("4 tenths", 0.01016),
        ("-0.05 mm", -0.05),
        ("\u22120.05 mm", -0.05),
        ("50 um", 0.05),
        ("50 \u00b5m", 0.05),
        ("1.2 cm", 12.0),
        ("1e-3 mm", 0.001),
        ("0", 0.0),
    ],
)
def test_a_length_is_read_in_every_way_a_shop_writes_it(text: str, millimetres: float) -> None:
    assert read(text, Kind.LENGTH).number == pytest.approx(millimetres, rel=1e-15)


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        ("8", 8.0),
        ("8 deg", 8.0),
        ("8\u00b0", 8.0),
        ("3 deg 30 min", 3.5),
        ("3\u00b0 30'", 3.5),
        ("3\u00b030\u2032", 3.5),
        ("-3 deg 30 min", -3.5),
        ("1 deg 47 min 24 sec", 1.79),
        ("30 min", 0.5),
        ("7-1/2 deg", 7.5),
        ("0.1 rad", math.degrees(0.1)),
    ],
)
def test_an_angle_is_read_in_degrees_minutes_or_radians(text: str, degrees: float) -> None:
    assert math.degrees(read(text, Kind.ANGLE).number) == pytest.approx(degrees, rel=1e-14)


def test_a_number_without_a_unit_is_in_the_unit_that_is_worked_in() -> None:
    assert read("0.5", Kind.LENGTH, METRIC).number == 0.5
    assert read("0.5", Kind.LENGTH, INCH).number == 12.7
    assert read("3/8", Kind.LENGTH, INCH).number == 9.525


def test_speeds_rotations_and_threads_are_read() -> None:
    assert read("30 m/s", Kind.SPEED).number == 30_000.0
    # 1 ft/min is 304.8 mm in 60 s, by the definition of the international foot.
    assert read("6000 sfm", Kind.SPEED).number == pytest.approx(6000 * 304.8 / 60, rel=1e-15)
    assert read("60 rpm", Kind.ROTATION).number == pytest.approx(2 * math.pi, rel=1e-15)
    assert 1 / read("10 tpi", Kind.PER_LENGTH).number == pytest.approx(2.54, rel=1e-15)
    assert 1 / read("20", Kind.PER_LENGTH, METRIC).number == pytest.approx(1.27, rel=1e-15)
    assert read("1:16", Kind.RATIO).number == 0.0625


@pytest.mark.parametrize(
    ("text", "one_in"),
    [
        *(
            (text, 48)
            for text in (
                "1/4 in per foot",
                "1/4 in/ft",
                "1/4 in per ft",
                "1/4 per foot",
                '.25" / ft',
                "1 in 48",
            )
        ),
        *((text, 50) for text in ("20 mm/m", "20 mm per m", "20 thou per inch", "1 in 50")),
    ],
)
def test_a_taper_is_read_as_so_much_for_so_long(text: str, one_in: int) -> None:
    # A foot is 12 inches, a metre 1000 mm.
    assert 1 / read(text, Kind.RATIO).number == pytest.approx(one_in, rel=1e-15)


def test_what_stands_behind_the_plus_minus_of_a_taper_is_in_its_unit() -> None:
    assert read("1/4 in per foot +/- .012", Kind.RATIO).half_width == pytest.approx(0.001)


@pytest.mark.parametrize("text", ["1/4 in per yard", "1/4 in"])
def test_a_taper_that_is_none_is_refused_with_one_that_is(text: str) -> None:
    with pytest.raises(UnitError, match=r" as 1:48 or 1/4 in per foot\."):
        read(text, Kind.RATIO)


@pytest.mark.parametrize("text", ["75", "75 %", "75%", "75 percent"])
def test_a_percentage_is_the_same_with_and_without_its_sign(text: str) -> None:
    assert read(text, Kind.PERCENT).number == 75.0


def test_a_percentage_given_for_a_ratio_is_a_hundredth_of_it() -> None:
    assert read("6.25 %", Kind.RATIO).number == 0.0625


def test_a_plus_minus_is_read_in_the_same_unit_unless_it_has_its_own() -> None:
    assert read("3.2 mm +/- 0.05", Kind.LENGTH).half_width == pytest.approx(0.05)
    assert read("1/8 in \u00b1 2 thou", Kind.LENGTH).half_width == pytest.approx(0.0508)
    assert read("8 deg +/- 30 min", Kind.ANGLE).half_width == pytest.approx(math.radians(0.5))


@pytest.mark.parametrize(
    ("text", "kind", "sentence"),
    [
        ("0,5 mm", Kind.LENGTH, "'0,5 mm' has a comma; write the decimal with a point: 0.5 mm."),
        ("3/8", Kind.LENGTH, "'3/8' is a fraction without a unit; write 3/8 in if it is inches."),
        ("5 deg", Kind.LENGTH, "'5 deg' is given as an angle; a length is wanted, such as 3.2 mm, 1/8 in or 40 thou."),
        ("5 mm", Kind.ANGLE, "'5 mm' is given as a length; an angle is wanted, such as 8 deg or 3 deg 30 min."),
        ("wide", Kind.LENGTH, "'wide' does not begin with a number, such as 3.2 mm, 1/8 in or 40 thou."),
        ("2.5.6", Kind.LENGTH, "'2.5.6' has more than one decimal point; a number has one at most, such as 3.2 mm, 1/8 in or 40 thou."),
        ("1/0 in", Kind.LENGTH, "'1/0 in' has a zero under its line, which is no number; write one such as 3.2 mm, 1/8 in or 40 thou."),
        ("1/4/2", Kind.LENGTH, "'1/4/2' is no number; write one such as 3.2 mm, 1/8 in or 40 thou."),
        ("15, 16, 18", Kind.COUNT, "'15, 16, 18' is a list; one value is wanted here, such as 4."),
        ("15,16,18", Kind.COUNT, "'15,16,18' is a list; one value is wanted here, such as 4."),
        ("1.6,2.5 mm", Kind.LENGTH, "'1.6,2.5 mm' is a list; one value is wanted here, such as 3.2 mm, 1/8 in or 40 thou."),
        ("6; 8 mm", Kind.LENGTH, "'6; 8 mm' is a list; one value is wanted here, such as 3.2 mm, 1/8 in or 40 thou."),
        ("6 to 8 mm", Kind.LENGTH, "'6 to 8 mm' is a range; one value is wanted here, such as 3.2 mm, 1/8 in or 40 thou."),
        ("6-8 deg", Kind.ANGLE, "'6-8 deg' is a range; one value is wanted here, such as 8 deg or 3 deg 30 min."),
        ("8-32", Kind.COUNT, "'8-32' is no number; write one such as 4."),
        ("3 mm +/-", Kind.LENGTH, "'3 mm +/-' has no number behind its +/-; give one, or take the +/- away."),
        ("5 kg", Kind.COUNT, "'5 kg' has a unit; what is counted has none, such as 4."),
        ("+/- 0.1", Kind.LENGTH, "'+/- 0.1' has no number before its +/-; give one, such as 3.2 mm, 1/8 in or 40 thou."),
        ("40 mil", Kind.LENGTH, "'40 mil': 'mil' means a thou to some and a millimetre to others; write thou or mm."),
        ("3 inc", Kind.LENGTH, "'3 inc' has a unit that is not known here; write it as 3.2 mm, 1/8 in or 40 thou. Did you mean inch?"),
        ("", Kind.LENGTH, "Nothing is written there; give a number."),
        ("3 deg 75 min", Kind.ANGLE, "Minutes and seconds of an angle stay under 60."),
        ("3 mm +/- 1 mm +/- 1 mm", Kind.LENGTH, "'3 mm +/- 1 mm +/- 1 mm' has more than one +/-."),
        ("3 mm +/- -1 mm", Kind.LENGTH, "What stands after +/- is how far off it may be, so it is not below zero."),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_refused_with_a_sentence(text: str, kind: Kind, sentence: str) -> None:
    with pytest.raises(UnitError) as refused:
        read(text, kind)
    assert str(refused.value) == sentence


@pytest.mark.parametrize(
    "text", ["9**9**9", "mm**9**9", "1 1/2/3 in", "1.2.3 mm", "--5 mm", "1/2/3 in", "5 mm 3", "nan mm", "inf", "__import__", "\uff15 mm", "5 mm\x1b[2J"]
)  # fmt: skip
def test_arithmetic_and_trickery_are_refused_at_once(text: str) -> None:
    with pytest.raises(UnitError):
        read(text, Kind.LENGTH)


def test_a_text_longer_than_anybody_measures_is_refused() -> None:
    with pytest.raises(UnitError, match="characters long"):
        read("1" * (LONGEST + 1), Kind.LENGTH)


def test_a_record_does_not_take_a_length_without_a_unit() -> None:
    with pytest.raises(UnitError, match="has no unit"):
        read("3.2", Kind.LENGTH, unit_wanted=True)
    assert read("0", Kind.LENGTH, unit_wanted=True).number == 0.0
    assert read("4", Kind.COUNT, unit_wanted=True).number == 4.0


def test_a_share_of_the_diameter_is_only_for_books() -> None:
    share = read("0.25 D", Kind.LENGTH, of_diameter=True)
    assert (share.number, share.per_diameter) == (0.25, True)
    with pytest.raises(UnitError):
        read("0.25 D", Kind.LENGTH)


def test_several_numbers_share_the_last_unit_and_may_have_their_own() -> None:
    assert [one.number for one in read_many("6, 8; 10 mm", Kind.LENGTH)] == [6.0, 8.0, 10.0]
    assert [one.number for one in read_many("1/4, 1/2 in", Kind.LENGTH)] == pytest.approx([6.35, 12.7])
    assert [one.number for one in read_many("1/4 in, 8 mm", Kind.LENGTH)] == pytest.approx([6.35, 8.0])
    with pytest.raises(UnitError):
        read_many(" , ", Kind.LENGTH)


@given(st.fractions(min_value=0, max_value=100, max_denominator=64))
def test_every_inch_fraction_is_read_exactly(fraction: Fraction) -> None:
    whole, rest = divmod(fraction, 1)
    text = f"{whole}-{rest} in" if rest and whole else f"{fraction} in"
    assert read(text, Kind.LENGTH).number == float(fraction * Fraction(254, 10))


@given(st.integers(min_value=0, max_value=10**7))
def test_thou_and_millimetres_agree(thou: int) -> None:
    metric = Fraction(thou * 254, 10_000)
    typed = f"{metric.numerator / metric.denominator!r} mm"
    assert read(f"{thou} thou", Kind.LENGTH).number == pytest.approx(
        read(typed, Kind.LENGTH).number, rel=1e-12
    )


@given(st.text(max_size=60), st.sampled_from(list(Kind)))
def test_no_text_does_anything_but_read_or_refuse(text: str, kind: Kind) -> None:
    try:
        assert math.isfinite(read(text, kind).number)
    except UnitError as refused:
        assert str(refused)[-1] in ".?"


def test_each_spelling_is_small_letters_so_that_it_can_be_found() -> None:
    for spelling in SPELLINGS:
        assert spelling == spelling.lower()
        kind, _ = SPELLINGS[spelling]
        assert parse(f"2 {spelling}", kind).kind in {kind, None}


def test_several_commas_without_a_blank_are_no_decimal() -> None:
    with pytest.raises(UnitError, match="has commas without a blank; write 6, 8, 10 mm for several numbers"):
        read_many("6,8,10 mm", Kind.LENGTH)
    with pytest.raises(
        UnitError, match=r"has commas without a blank; write 1, 1\.6, 2\.5 mm for several numbers"
    ):
        read_many("1, 1.6,2.5 mm", Kind.LENGTH)


def test_a_unit_where_something_is_counted_is_told_before_its_spread() -> None:
    with pytest.raises(UnitError, match="given as a length; a count is wanted"):
        read("3 mm +/- 0.1", Kind.COUNT, whole=True)
    with pytest.raises(UnitError, match="what is counted has none, so write 3"):
        read("3 +/- 1", Kind.COUNT, whole=True)


@pytest.mark.parametrize("text", ["nan, 1/2, 12,5, 3", "0.2,0.3,abc", "abc,1,5"])
def test_no_way_to_write_several_numbers_is_recommended_that_has_a_word_among_them(text: str) -> None:
    with pytest.raises(UnitError, match="does not begin with a number") as told:
        read_many(text, Kind.LENGTH)
    assert "write " not in str(told.value)
