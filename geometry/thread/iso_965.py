"""The numbers of ISO 965-1: how wide the pitch diameter of an internal metric thread may be, in micrometres.

By step of diameter and by pitch, for the tolerance grade 5, from which the other grades follow. Tests reach them by the
formula of the standard and by tables of makers.
"""

from __future__ import annotations

STEPS = (1.4, 2.8, 5.6, 11.2, 22.4, 45.0, 90.0, 180.0)
"""The largest diameter of each step, in mm; the first one begins at 0.99 and the others over the one before."""

FIRST = 0.99
"""Where the first step begins, in mm."""

GRADE_5: tuple[dict[float, int], ...] = (
    {0.2: 50, 0.25: 56, 0.3: 60},
    {0.25: 60, 0.35: 67, 0.4: 71, 0.45: 75},
    {0.35: 71, 0.5: 80, 0.6: 90, 0.7: 95, 0.75: 95, 0.8: 100},
    {0.5: 90, 0.75: 106, 1.0: 118, 1.25: 125, 1.5: 140},
    {0.5: 95, 0.75: 112, 1.0: 125, 1.25: 140, 1.5: 150, 1.75: 160, 2.0: 170, 2.5: 180},
    {0.75: 118, 1.0: 132, 1.5: 160, 2.0: 180, 3.0: 212, 3.5: 224, 4.0: 236, 4.5: 250},
    {1.5: 170, 2.0: 190, 3.0: 224, 4.0: 250, 5.0: 265, 5.5: 280, 6.0: 300},
    {2.0: 200, 3.0: 236, 4.0: 265, 6.0: 315},
)
"""By step, then by pitch in mm."""

R40 = (
    32, 34, 36, 38, 40, 42, 45, 48, 50, 53, 56, 60, 63, 67, 71, 75, 80, 85, 90, 95, 100, 106, 112, 118, 125, 132, 140, 150,
    160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300, 315, 335, 355, 375, 400, 425, 450, 475, 500, 530, 560, 600,
    630, 670, 710,
)  # fmt: skip
"""Preferred numbers, forty to a tenfold. ISO 3, rounded as ISO 965-1 has them."""

G_ABOVE = {
    0.2: 17, 0.25: 18, 0.3: 18, 0.35: 19, 0.4: 19, 0.45: 20, 0.5: 20, 0.6: 21, 0.7: 22, 0.75: 22, 0.8: 24, 1.0: 26,
    1.25: 28, 1.5: 32, 1.75: 34, 2.0: 38, 2.5: 42, 3.0: 48, 3.5: 53, 4.0: 60, 4.5: 63, 5.0: 71, 5.5: 75, 6.0: 80,
}  # fmt: skip
"""How far position G lies above H, by pitch in mm. From memory; tests reach it by the formula, and by 6g screws."""

D_BANDS = ((0.7, 15), (0.8, 20), (1.0, 25), (1.75, 31), (3.0, 41), (6.0, 52))
"""How wide the limits of a D tap are, in micrometres, up to each pitch in mm.

At 0.8, 1, 1.25 and 1.5 mm as a tap maker's catalogue prints them; the others are from memory.
"""

D_READ = (0.8, 1.0, 1.25, 1.5)
"""The pitches of which the limits of a D tap were read."""
