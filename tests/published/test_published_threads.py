"""The thread tables against rows of standards, tables of firms, and two packages of the registry."""

from __future__ import annotations

import math

import pytest
from pybosl2.parts import screws
from screw_thread_lib.data.ASME import ASME_M_6g6H_dict, ASME_UN_2A2B_dict

from geometry.sentences import Kind
from library.threads import Thread, all_threads, find_threads
from library.units.read import read

INCH = 25.4


def number(text: str) -> float:
    return read(text, Kind.LENGTH, unit_wanted=True).number


def thread(name: str) -> Thread:
    (found,) = find_threads(name)
    return found


def pitch(row: Thread) -> float:
    """The pitch in millimetres."""
    if row.pitch:
        return number(row.pitch)
    return INCH / float(row.threads_per_inch.removesuffix(" tpi"))


# ISO 724 as an engineering page lists it: pitch diameter, minor of the screw, minor of the nut.
@pytest.mark.parametrize(
    ("name", "pitch_diameter", "screw_minor", "minor"),
    [
        ("M8x1", 7.35, 6.773, 6.917),
        ("M8x0.75", 7.513, 7.08, 7.188),
        ("M10x1.25", 9.188, 8.466, 8.647),
        ("M10x1", 9.35, 8.773, 8.917),
        ("M12x1.5", 11.026, 10.16, 10.376),
        ("M16x1.5", 15.026, 14.16, 14.376),
        ("M20x2", 18.701, 17.546, 17.835),
        ("M20x1.5", 19.026, 18.16, 18.376),
    ],
)
def test_metric_diameters_are_those_of_iso_724(
    name: str, pitch_diameter: float, screw_minor: float, minor: float
) -> None:
    row = thread(name)
    assert number(row.pitch_diameter) == pytest.approx(pitch_diameter, abs=0.0006)
    assert number(row.screw_minor_diameter) == pytest.approx(screw_minor, abs=0.0006)
    assert number(row.minor_diameter) == pytest.approx(minor, abs=0.0006)


# ASME B1.1, unified screws of class 2A, as the data of the package screw-thread-lib have it: what the rounded root may be. Its
# 1-14 is of no series that has a table.
@pytest.mark.parametrize("name", sorted(set(ASME_UN_2A2B_dict) - {"1-14"}))
def test_the_rounded_root_of_a_unified_screw_lies_within_what_asme_b1_1_allows(name: str) -> None:
    printed = ASME_UN_2A2B_dict[name]
    row = thread(f"{'#' if name.startswith('10-') else ''}{name} {printed['series']}")
    allowance = printed["dbsc"] - printed["dmax"]
    assert number(row.pitch_diameter) / INCH == pytest.approx(printed["D2min"], abs=1e-4)
    assert printed["d1min"] < number(row.screw_minor_diameter) / INCH - allowance < printed["d1max"]


def test_all_unified_screws_have_their_root_by_the_one_relation_of_the_rows_that_were_read() -> None:
    """The coarse rows to 3 in were read as printed; 11/16 of the sharp height on either side is what they obey."""
    series = ("unified-coarse", "unified-fine", "unified-extra-fine", "unified-8", "unified-12", "unified-16")
    for name in series:
        rows = [row for row in all_threads().values() if row.series.id == name]
        assert len(rows) >= 15
        for row in rows:
            root = number(row.diameter) - 11 / 8 * math.sqrt(3) / 2 * pitch(row)
            assert number(row.screw_minor_diameter) == pytest.approx(root, abs=0.0001 * INCH), row.id


# A tap maker's catalogue of 2016-2017, page 799, basic sizes in mm: pitch diameter and minor of the nut.
@pytest.mark.parametrize(
    ("name", "pitch_diameter", "minor"),
    [
        ("M4.5", 4.013, 3.688),
        ("M5", 4.480, 4.134),
        ("M5x0.5", 4.675, 4.459),
        ("M6", 5.350, 4.917),
        ("M6x0.75", 5.513, 5.188),
        ("M7", 6.350, 5.917),
        ("M8", 7.188, 6.647),
        ("M9", 8.188, 7.647),
        ("M9x1", 8.350, 7.917),
        ("M9x0.75", 8.513, 8.188),
        ("M10", 9.026, 8.376),
        ("M10x0.75", 9.513, 9.188),
    ],
)
def test_metric_diameters_are_those_of_the_tap_catalogue(
    name: str, pitch_diameter: float, minor: float
) -> None:
    row = thread(name)
    assert number(row.pitch_diameter) == pytest.approx(pitch_diameter, abs=0.0011)
    assert number(row.minor_diameter) == pytest.approx(minor, abs=0.0011)


def test_metric_pitches_are_those_of_the_first_package() -> None:
    """Each coarse pitch is our coarse one, and each finer pitch is in our fine table."""
    ours = {(number(row.diameter), pitch(row)): row.series.id for row in all_threads().values()}
    for diameter, pitches in screws._ISO_THREAD.items():
        assert ours[(diameter, pitches.coarse)] == "iso-metric-coarse", diameter
        for finer in (pitches.fine, pitches.extra_fine, pitches.super_fine):
            if finer is not None:
                assert ours.get((diameter, finer)) == "iso-metric-fine", (diameter, finer)


@pytest.mark.parametrize(
    "name", [name for name, row in sorted(ASME_UN_2A2B_dict.items()) if row["series"] != "UNS"]
)
def test_unified_threads_are_those_of_the_second_package(name: str) -> None:
    """ASME B1.1-2019 in screw-thread-lib: least pitch and minor diameters of the nut are the basic ones."""
    row = ASME_UN_2A2B_dict[name]
    ours = thread(f"{'#' if name.startswith('10-') else ''}{name} {row['series']}")
    assert number(ours.diameter) == pytest.approx(row["dbsc"] * INCH, abs=1e-9)
    assert pitch(ours) == pytest.approx(INCH / row["n"], rel=1e-12)
    assert number(ours.pitch_diameter) == pytest.approx(row["D2min"] * INCH, abs=0.00006 * INCH)
    assert number(ours.minor_diameter) == pytest.approx(row["D1min"] * INCH, abs=0.0006 * INCH)


@pytest.mark.parametrize("name", sorted(ASME_M_6g6H_dict))
def test_metric_threads_are_those_of_the_second_package(name: str) -> None:
    """ASME B1.13-2005 in screw-thread-lib, in inches to five places."""
    row = ASME_M_6g6H_dict[name]
    ours = thread(name.split("-", maxsplit=1)[0])
    assert pitch(ours) == pytest.approx(INCH / row["n"], rel=1e-9)
    assert number(ours.pitch_diameter) == pytest.approx(row["D2min"] * INCH, abs=0.0008)
    assert number(ours.minor_diameter) == pytest.approx(row["D1min"] * INCH, abs=0.0008)


# Unified screw threads, standard series (ASME B1.1), opening rows as an engineering page lists them:
# least minor and pitch diameter of the nut, inches.
@pytest.mark.parametrize(
    ("name", "minor", "pitch_diameter"),
    [
        ("#0-80 UNF", 0.0465, 0.0519),
        ("#1-64 UNC", 0.0561, 0.0629),
        ("#1-72 UNF", 0.0580, 0.0640),
        ("#2-56 UNC", 0.0667, 0.0744),
        ("#2-64 UNF", 0.0691, 0.0759),
    ],
)
def test_small_unified_threads_are_those_of_b1_1(name: str, minor: float, pitch_diameter: float) -> None:
    row = thread(name)
    assert number(row.minor_diameter) / INCH == pytest.approx(minor, abs=0.00006)
    assert number(row.pitch_diameter) / INCH == pytest.approx(pitch_diameter, abs=0.00006)


def test_every_unified_coarse_row_that_was_read_obeys_the_form() -> None:
    """The rows were read whole; the 60 degree form must give the same to a ten-thousandth of an inch."""
    rows = [row for row in all_threads().values() if row.series.id == "unified-coarse"]
    assert len(rows) == 33
    for row in rows:
        p, outside = pitch(row), number(row.diameter)
        assert number(row.pitch_diameter) == pytest.approx(outside - 0.649519 * p, abs=0.0001 * INCH), row.id
        assert number(row.minor_diameter) == pytest.approx(outside - 1.082532 * p, abs=0.0001 * INCH), row.id


# British Standard Whitworth as a fastener firm lists it, inches: pitch diameter and minor diameter.
@pytest.mark.parametrize(
    ("name", "threads", "pitch_diameter", "minor"),
    [
        ("1/16 BSW", 60, 0.0518, 0.0413),
        ("1/8 BSW", 40, 0.1090, 0.0930),
        ("3/16 BSW", 24, 0.1608, 0.1341),
        ("1/4 BSW", 20, 0.2180, 0.1860),
        ("5/16 BSW", 18, 0.2769, 0.2414),
        ("3/8 BSW", 16, 0.3350, 0.2950),
        ("1/2 BSW", 12, 0.4467, 0.3933),
        ("5/8 BSW", 11, 0.5668, 0.5086),
        ("3/4 BSW", 10, 0.6860, 0.6220),
        ("1 BSW", 8, 0.9200, 0.8400),
        ("1-1/2 BSW", 6, 1.3933, 1.2866),
        ("2 BSW", 4.5, 1.8578, 1.7155),
        ("3 BSW", 3.5, 2.8172, 2.6342),
        ("4 BSW", 3, 3.7867, 3.5732),
        ("6 BSW", 2.5, 5.7441, 5.4880),
    ],
)
def test_whitworth_threads_are_those_of_the_fastener_table(
    name: str, threads: float, pitch_diameter: float, minor: float
) -> None:
    row = thread(name)
    assert INCH / pitch(row) == pytest.approx(threads, rel=1e-12)
    assert number(row.pitch_diameter) / INCH == pytest.approx(pitch_diameter, abs=0.0004)
    assert number(row.minor_diameter) / INCH == pytest.approx(minor, abs=0.0004)


# BS 84 worked for BSF, inches: effective and minor diameter of 1/4 and 1/2.
@pytest.mark.parametrize(
    ("name", "threads", "pitch_diameter", "minor"),
    [("1/4 BSF", 26, 0.2254, 0.2007), ("1/2 BSF", 16, 0.4600, 0.4200)],
)
def test_british_fine_threads_are_those_of_bs_84(
    name: str, threads: int, pitch_diameter: float, minor: float
) -> None:
    row = thread(name)
    assert INCH / pitch(row) == pytest.approx(threads, rel=1e-12)
    assert number(row.pitch_diameter) / INCH == pytest.approx(pitch_diameter, abs=0.00006)
    assert number(row.minor_diameter) / INCH == pytest.approx(minor, abs=0.00006)


# A thread gauge firm's list of BSW and BSF after BS 84:2007: threads per inch.
@pytest.mark.parametrize(
    ("size", "bsw", "bsf"),
    [
        ("3/16", 24, 32),
        ("1/4", 20, 26),
        ("5/16", 18, 22),
        ("3/8", 16, 20),
        ("7/16", 14, 18),
        ("1/2", 12, 16),
        ("9/16", 12, 16),
        ("5/8", 11, 14),
        ("11/16", 11, 14),
        ("3/4", 10, 12),
        ("7/8", 9, 11),
        ("1", 8, 10),
        ("1-1/8", 7, 9),
        ("1-1/4", 7, 9),
        ("1-1/2", 6, 8),
        ("1-3/4", 5, 7),
        ("2", 4.5, 7),
        ("2-1/4", 4, 6),
        ("2-1/2", 4, 6),
        ("2-3/4", 3.5, 6),
        ("3", 3.5, 5),
        ("3-1/4", 3.25, 5),
        ("3-1/2", 3.25, 4.5),
        ("3-3/4", 3, 4.5),
        ("4", 3, 4.5),
    ],
)
def test_threads_per_inch_are_those_of_the_gauge_list(size: str, bsw: float, bsf: float) -> None:
    assert INCH / pitch(thread(f"{size} BSW")) == pytest.approx(bsw, rel=1e-12)
    assert INCH / pitch(thread(f"{size} BSF")) == pytest.approx(bsf, rel=1e-12)


# ISO 228-1, and ISO 7-1 at the gauge plane (Mechanical Engineer's Pocket Book, 4.1.38), mm.
@pytest.mark.parametrize(
    ("size", "threads", "major", "pitch_diameter", "minor"),
    [
        ("1/8", 28, 9.728, 9.147, 8.566),
        ("1/4", 19, 13.157, 12.301, 11.445),
        ("3/8", 19, 16.662, 15.806, 14.950),
    ],
)
def test_british_pipe_threads_are_those_of_the_pocket_book(
    size: str, threads: int, major: float, pitch_diameter: float, minor: float
) -> None:
    for row in (thread(f"G {size}"), thread(f"R {size}")):
        assert INCH / pitch(row) == pytest.approx(threads, rel=1e-12)
        assert number(row.diameter) == pytest.approx(major, abs=0.0006)
        assert number(row.pitch_diameter) == pytest.approx(pitch_diameter, abs=0.0011)
        assert number(row.minor_diameter) == pytest.approx(minor, abs=0.0011)


# ISO 228-1 as tabulated in the data of the package bd-warehouse 0.4.0 (Apache-2.0), iso_228_1.csv: mm. The depth of the
# thread is rounded to a thousandth first, so that minor diameters are the major one less twice that.
@pytest.mark.parametrize(
    ("size", "major", "pitch_diameter", "minor"),
    [
        ("1/2", "20.955", "19.793", "18.631"),
        ("3/4", "26.441", "25.279", "24.117"),
        ("1", "33.249", "31.770", "30.291"),
        ("1-1/4", "41.910", "40.431", "38.952"),
        ("1-1/2", "47.803", "46.324", "44.845"),
        ("2", "59.614", "58.135", "56.656"),
        ("4", "113.030", "111.551", "110.072"),
        ("6", "163.830", "162.351", "160.872"),
    ],
)
def test_british_pipe_threads_are_those_of_iso_228_to_the_last_digit(
    size: str, major: str, pitch_diameter: str, minor: str
) -> None:
    for row in (thread(f"G {size}"), thread(f"R {size}")):
        told = (row.diameter, row.pitch_diameter, row.minor_diameter, row.screw_minor_diameter)
        assert told == tuple(f"{one} mm" for one in (major, pitch_diameter, minor, minor)), row.id


def test_american_pipe_threads_obey_the_formulas_of_b1_20_1() -> None:
    """E0 = D - (0.05 D + 1.1) p; the rows were read to five places from a chart of the standard."""
    rows = [row for row in all_threads().values() if row.series.id == "american-pipe-taper"]
    assert len(rows) == 16
    for row in rows:
        outside, p = number(row.diameter) / INCH, pitch(row) / INCH
        front = outside - (0.05 * outside + 1.1) * p
        assert number(row.front_pitch_diameter) / INCH == pytest.approx(front, abs=0.00002), row.id


# Length of hand-tight engagement L1 in inches, same chart: E1 = E0 + L1 / 16.
@pytest.mark.parametrize(
    ("size", "engagement"),
    [
        ("1/16", 0.160),
        ("1/4", 0.228),
        ("3/8", 0.240),
        ("1/2", 0.320),
        ("3/4", 0.339),
        ("1", 0.400),
        ("1-1/4", 0.420),
        ("2", 0.436),
        ("2-1/2", 0.682),
        ("3", 0.766),
    ],
)
def test_the_hand_tight_plane_of_npt_lies_where_b1_20_1_puts_it(size: str, engagement: float) -> None:
    row = thread(f"{size} NPT")
    grows = (number(row.pitch_diameter) - number(row.front_pitch_diameter)) / INCH
    assert grows == pytest.approx(engagement / 16, abs=0.00003)
