"""The numbers of ISO 286: standard tolerances and fundamental deviations of holes up to 500 mm, in micrometres.

Each row holds one number for each step of size. Tests reach the tolerances by the formulas of ISO 286-1 and the limits
by printed tables.
"""

from __future__ import annotations

STEPS = (3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500)
"""The largest size of each step, in mm; a step begins over the one before it."""

FINER_STEPS = (
    3,
    6,
    10,
    18,
    30,
    50,
    65,
    80,
    100,
    120,
    140,
    160,
    180,
    200,
    225,
    250,
    280,
    315,
    355,
    400,
    450,
    500,
)
"""The steps of the letters that change faster with the size."""

GRADES = {
    5: (4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27),
    6: (6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40),
    7: (10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63),
    8: (14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97),
    9: (25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155),
    10: (40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250),
    11: (60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400),
}
"""How wide the tolerance of a grade is."""

LOWER = {
    "D": (20, 30, 40, 50, 65, 80, 100, 120, 145, 170, 190, 210, 230),
    "E": (14, 20, 25, 32, 40, 50, 60, 72, 85, 100, 110, 125, 135),
    "F": (6, 10, 13, 16, 20, 25, 30, 36, 43, 50, 56, 62, 68),
    "G": (2, 4, 5, 6, 7, 9, 10, 12, 14, 15, 17, 18, 20),
    "H": (0,) * 13,
}
"""How far above the nominal size the smallest hole lies, whatever the grade."""

UPPER_OF_J = {
    6: (2, 5, 5, 6, 8, 10, 13, 16, 18, 22, 25, 29, 33),
    7: (4, 6, 8, 10, 12, 14, 18, 22, 26, 30, 36, 39, 43),
    8: (6, 10, 12, 15, 20, 24, 28, 34, 41, 47, 55, 60, 66),
}
"""How far above the nominal size the largest hole of letter J lies, by grade."""

BELOW = {
    "K": (0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5),
    "M": (2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23),
    "N": (4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40),
    "P": (6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68),
    "R": (10, 15, 19, 23, 28, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84, 94, 98, 108, 114, 126, 132),
    "S": (14, 19, 23, 28, 35, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140, 158, 170, 190, 208, 232, 252),
}
"""How far below the nominal size the largest hole lies before the fine grades bring it up; R and S by the finer steps."""

BROUGHT_UP = {"K": 8, "M": 8, "N": 8, "P": 7, "R": 7, "S": 7}
"""The coarsest grade that is brought up by what its tolerance is wider than that of the grade before it."""
