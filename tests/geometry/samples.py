"""One set of ordinary values for each calculation: a job that could lie on the bench.

A new calculation adds its line here; the tests that go through all calculations and the script that times
them both read it. Lengths are mm, angles radians, speeds mm/s and turns rad/s.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import pi, radians

from geometry.calculation import Given

SAMPLES: Mapping[str, Mapping[str, Given]] = {
    "back-taper": {
        "diameter": 10.0,
        "back_diameter": 9.95,
        "taper_length": 80.0,
        "distance_from_front": (20.0, 40.0, 80.0),
    },
    "setting-height": {"relief_angle": radians(7), "wheel_shape": "type-1-straight", "wheel_diameter": 150.0},
    "cone-relief": {
        "included_angle": radians(82),
        "diameter": (20.0, 12.0, 6.0),
        "throw_per": "tooth",
        "flutes": 3.0,
        "radial_throw": 1.2,
        "axial_throw": 0.8,
        "relief_angle": radians(8),
        "land_width": 3.0,
    },
    "drill-point": {
        "diameter": 12.7,
        "point_angle": radians(118),
        "lip_height_difference": 0.08,
        "lip_relief_angle": radians(12),
        "web_thickness": 2.0,
        "chisel_edge_angle": radians(125),
        "land_width": 3.0,
    },
    "face-offset": {"diameter": 10.0, "rake_angle": radians(15), "other_diameter": (8.0, 4.0)},
    "feed-clearance": {
        "diameter": 6.0,
        "relief_angle": radians(8),
        "lip_relief_runs": "rising",
        "inner_relief_angle": radians(20),
        "inner_diameter": 1.2,
        "feed": 0.25,
    },
    "index-moves": {
        "flutes": 7.0,
        "plate_holes": (18.0, 20.0, 21.0, 49.0),
        "index_ratio": 40.0,
        "diameter": 20.0,
    },
    "reamer-land": {
        "diameter": 10.0,
        "land_width": 2.0,
        "land_measured_as": "chord",
        "margin_width": 0.2,
        "relief_angle": radians(6),
        "primary_land": 0.6,
        "secondary_relief_angle": radians(15),
    },
    "relief-drop": {
        "diameter": 12.0,
        "relief_angle": radians(8),
        "land_width": 2.0,
        "land_measured_as": "chord",
        "relief_form": "flat",
    },
    "relief-facets": {
        "diameter": 12.0,
        "body_diameter": 12.7,
        "land_width": 8.0,
        "land_measured_as": "arc",
        "relief_angle": radians(10),
        "primary_land": 0.8,
        "least_gap": 0.05,
        "deepest_gap": 0.5,
        "hole_diameter": 12.1,
    },
    "relief-from-reading": {
        "diameter": 12.0,
        "drop": 0.281,
        "land_width": 2.0,
        "land_measured_as": "chord",
        "second_drop": 0.142,
        "second_land_width": 1.0,
    },
    "relief-forms": {
        "compare_by": "heel-drop",
        "diameter": 12.0,
        "relief_angle": radians(8),
        "land_width": 2.0,
        "land_measured_as": "arc",
        "primary_land": 0.8,
    },
    "screw-thread": {
        "diameter": 10.0,
        "pitch": 1.5,
        "starts": 2.0,
        "drilled_diameter": 8.6,
        "full_thread": "five-eighths",
    },
    "size-loss": {
        "diameter": 12.0,
        "stock_per_sharpening": 0.2,
        "relief_angle": radians(4),
        "land_width": 3.0,
        "least_land": 1.0,
        "least_diameter": 11.9,
    },
    "step-relief": {
        "diameter": (6.0, 8.0, 10.0, 12.0),
        "included_angle": (radians(90), radians(90), radians(118)),
        "radial_throw": 3.0,
        "axial_throw": 1.0,
        "feed": 0.15,
        "least_relief_angle": radians(6),
        "shoulder_relief_angle": radians(6),
    },
    "lead-over-land": {"diameter": 12.0, "pitch": 1.75, "land_width": 3.2, "hand": "left"},
    "tap-chamfer": {
        "diameter": 10.0,
        "pitch": 1.5,
        "chamfer_threads": 4.0,
        "flutes": 3.0,
        "radial_chamfer_relief": radians(4),
        "land_width": 2.5,
        "chamfer_stock": 0.1,
        "cut_back": 0.5,
    },
    "wheel-speed": {"wheel_diameter": 150.0, "rotational_speed": 100 * pi, "rated_speed": 35_000.0},
    "wheel-tilt": {
        "helix_angle": radians(30),
        "relief_angle": radians(8),
        "diameter": 12.0,
        "land_width": 2.0,
        "wheel_width": 5.0,
    },
}
