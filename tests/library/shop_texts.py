"""The grinder and the wheels of an invented shop, as its book would have them."""

from __future__ import annotations

CUP = """
[[wheel]]
id = "cup-60"
title = "White cup 100"
shape = "type-6-straight-cup"
diameter = "100 mm"
rated_speed = "20 m/s"
"""

DISH = """
[[wheel]]
id = "dish-80"
title = "Pink dish 75"
shape = "type-1-straight"
diameter = "75 mm"
rated_speed = "6000 rpm"
"""


def grinder(spindle_speeds: str, cams: str, sets: str) -> str:
    """The beginning of a file, with the machine by the window; each list as it stands in the file."""
    return f"""schema = 1

[[machine]]
id = "window-grinder"
title = "The grinder by the window"
index_ratio = 40
plate_holes = [15, 16, 18, 21]
spindle_speeds = {spindle_speeds}
{cams}
head_tilt = {{ low = "-10 deg", high = "15 deg" }}

[machine.graduations.wheel-head]
title = "wheel head"
division = "0.01 mm"
sets = {sets}
more = "up"
less = "down"

[machine.graduations.tooth-rest]
title = "tooth rest"
division = "0.01 mm"
sets = ["tooth_rest_height"]
more = "down"
less = "up"

[machine.graduations.indicator]
division = "0.01 mm"
reads = ["drop"]
"""


OWN_FAMILIES = """schema = 1

[[family]]
id = "flat-drill"
title = "Flat drills"
what = "A flat blade with two lips, held in a bar."
like = "twist-drill"
never_ground = "The sides of the blade."

[[family]]
id = "valve-burr"
title = "Valve burrs"
surfaces = ["cone"]

[[entry]]
id = "flat-cast-iron"
family = "flat-drill"
title = "Flat drill for cast iron"
point_angle = { usual = "118 deg", source = "shop" }
lip_relief_angle = { usual = "10 deg", source = "shop" }

[[entry]]
id = "burr-bronze"
family = "valve-burr"
title = "Burr for bronze seats"
included_angle = { usual = "90 deg", source = "shop" }
cone_relief_angle = { usual = "8 deg", source = "shop" }
"""
"""Two families that no shipped book has, each with an entry: one like another, one known by its surface alone."""
