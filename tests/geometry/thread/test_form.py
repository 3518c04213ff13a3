"""The forms of threads, built again from their triangles in high precision."""

from __future__ import annotations

import mpmath
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.preconditions import GeometryError
from geometry.thread.form import form, thread

mpmath.mp.dps = 40


def sharp_height(flank_angle: int) -> mpmath.mpf:
    """The height of a triangle of this angle on a base of one pitch."""
    return 1 / (2 * mpmath.tan(mpmath.radians(flank_angle) / 2))


def width_of_groove(depth_below_crest_line: mpmath.mpf, flank_angle: int, cut_off: mpmath.mpf) -> mpmath.mpf:
    """How wide the groove between two sharp threads is, so far below a crest that has ``cut_off`` removed."""
    return 2 * (depth_below_crest_line + cut_off) * mpmath.tan(mpmath.radians(flank_angle) / 2)


def test_the_sharp_triangle_of_sixty_degrees() -> None:
    assert form("iso").sharp == pytest.approx(float(sharp_height(60)), rel=1e-15)


def test_the_sharp_triangle_of_fifty_five_degrees() -> None:
    assert form("whitworth").sharp == pytest.approx(float(sharp_height(55)), rel=1e-15)
    # Whitworth form, BS 84: H = 0.960491 P, depth 0.640327 P.
    assert round(form("whitworth").sharp, 6) == 0.960491
    assert round(form("whitworth").internal, 6) == 0.640327


@pytest.mark.parametrize(("name", "flanks", "cut_off"), [("iso", 60, "1/8"), ("whitworth", 55, "1/6")])
def test_thread_and_groove_are_equally_wide_at_the_pitch_diameter(
    name: str, flanks: int, cut_off: str
) -> None:
    over, under = cut_off.split("/")
    crest = sharp_height(flanks) * mpmath.mpf(over) / mpmath.mpf(under)
    groove = width_of_groove(mpmath.mpf(form(name).to_pitch_line), flanks, crest)
    assert float(groove) == pytest.approx(0.5, rel=1e-14)


def test_the_flat_at_the_crest_of_the_nut_is_a_quarter_of_the_pitch() -> None:
    # ISO 68-1: an eighth of H off the crest of the screw, a quarter off that of the nut.
    height = sharp_height(60)
    ridge = 1 - width_of_groove(mpmath.mpf(form("iso").internal), 60, height / 8)
    assert float(ridge) == pytest.approx(0.25, rel=1e-14)


diameters = st.floats(1.0, 100.0)
names = st.sampled_from(["iso", "whitworth"])


@given(diameters, st.floats(0.02, 0.5), names)
def test_diameters_and_depths_tell_the_same_thread(diameter: float, part: float, name: str) -> None:
    made = thread(diameter, part * diameter, name)
    assert made.diameter - 2 * made.internal_depth == pytest.approx(made.internal_minor_diameter, rel=1e-12)
    assert made.diameter - 2 * made.external_depth == pytest.approx(made.external_minor_diameter, rel=1e-12)
    assert made.external_minor_diameter <= made.internal_minor_diameter < made.pitch_diameter < diameter


@given(diameters, st.floats(0.02, 0.3), names, st.floats(0.1, 10.0))
def test_a_thread_drawn_larger_keeps_its_shape(
    diameter: float, part: float, name: str, factor: float
) -> None:
    small, large = (
        thread(diameter, part * diameter, name),
        thread(factor * diameter, factor * part * diameter, name),
    )
    assert large.pitch_diameter == pytest.approx(factor * small.pitch_diameter, rel=1e-12)
    assert large.sharp_height == pytest.approx(factor * small.sharp_height, rel=1e-12)


def test_a_pitch_that_leaves_no_core_is_refused_with_the_coarsest_that_does() -> None:
    with pytest.raises(GeometryError, match=r"must be under 8\.151 mm"):
        thread(10.0, 9.0, "iso")
    assert thread(10.0, 8.15, "iso").external_minor_diameter > 0


def test_a_form_that_is_not_known_is_refused() -> None:
    with pytest.raises(GeometryError, match="iso, whitworth, ba, trapezoidal or acme"):
        form("square")
