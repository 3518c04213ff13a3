"""A small fixed drawing for each of the main quantities, in plain ASCII, at most 34 by 8 cells.

The tool turns to the left, so its edge is at the left; a surface of cut metal is hatched. The two settings by a
height look along the tool: its left side, where the edge goes down as it cuts and the land rises behind it.
"""

from __future__ import annotations

from textwrap import dedent

WIDEST, HIGHEST = 34, 8

_DRAWINGS: dict[tuple[str, ...], str] = {
    ("diameter", "least_diameter", "diameter_after"): r"""
            ..-------..
          .'           '.
         /               \
    edge +<-- diameter -->+ edge
         \               /
          '.           .'
            ''-------''
        """,
    ("land_width", "clear_land_width", "least_land", "land_after"): r"""
            |<---- land ---->|
       edge +---._           |
            |/  /''--.___    |
       face | /  /  /  / ''--+ heel
            |/  /  /  /  /  /|
            |  /  /  /  /  / |
        """,
    ("land_measured_as",): r"""
              .. arc ..
          .-''         ''-.
        .'                 '.
       +------ chord --------+
     edge                   heel
        """,
    ("land_angle", "rub_angle", "facet_start"): r"""
       edge +--..___..--+ heel
             \  land   /
              \ angle /
               \     /
                \   /
                 \ /
                  + axis
        """,
    ("relief_angle", "eccentric_relief_angle", "flat_relief_angle"): r"""
       edge +- - - - - - - - tangent
            |''-._  relief angle
            |/  / ''-._
            | /  /  /  ''-._
       face |/  /  /  /  /  ''-+ heel
            |  /  /  /  /  /  /|
        """,
    ("secondary_relief_angle", "primary_land", "facet_angle", "facet_width"): r"""
            |<primary>|
       edge +--.___   |
            |/  /  '''+._ second facet
            | /  /  /  /  '._
       face |/  /  /  /  /   '+ heel
            |  /  /  /  /  /  |
        """,
    ("margin_width",): r"""
            |<margin>|
       edge +--------+ - - - circle
            |/  /  /  '--._
       face | /  /  /  /   ''--+ heel
            |/  /  /  /  /  /  |
        """,
    ("relief_form",): r"""
       eccentric      flat

       +-._             +._  _.--
       |/  '-._         |/ ''/  |
       | /  /  '-.      | /  /  |
       |/  /  /  |      |/  /  /|
       keeps falling    comes back
        """,
    ("heel_drop", "drop", "eccentric_drop", "flat_drop", "primary_drop"): r"""
       edge + . . . . . . . .   circle
            |''-._           |
            |/  / ''-._      | drop
            | /  /  /  ''-._ v
       face |/  /  /  /  /  '+ heel
            |  /  /  /  /  / |
        """,
    ("rake_angle", "local_rake_angle"): r"""
         edge +-----.___
              :\ /  /   ''--
       radius : \  /  /  /  /
       to the :  \   /  /  /
       axis   :   \ /  /  /
              :rake\  /  /
        """,
    ("face_offset",): r"""
                 edge +----.__
                      | /  /  ''-
                      |/  /  /  /
       axis           |  /  /  /
         +<- offset ->| /  /  /
                      :
               plane of the face
        """,
    ("point_angle", "half_point_angle", "point_length", "lip_length"): r"""
                  .-----------
               _.'  /  /  /  /
       point _'  /  /  /  /  /
       angle( - - - - - - - - axis
             '-.  /  /  /  / /
                '._ /  /  / /
                   '-----------
        """,
    ("included_angle", "mouth_diameter"): r"""
                     .--------
       from side  _-'  /  /  /
       to side _-'  /  /  /  /
             (- - - - - - - - axis
               '-_  /  /  /  /
                  '-_  /  /  /
                     '--------
        """,
    ("helix_angle",): r"""
       -----------------------------
       '-._      '-._      '-._
           '-._      '-._helix '-._
       - - - - '-._- - - '-._ ) - - axis
                   '-._      '-._
       ----------------'-.-------'-.
        """,
    ("lip_relief_angle", "inner_relief_angle"): r"""
       lip +- - - - - - - - - square
           |''-._ lip relief  to axis
           |/  / ''-._
           | /  /  /  ''-._ flank
           |/  /  /  /  /  ''-
             the point is up
        """,
    ("chamfer_angle", "chamfer_length", "chamfer_threads", "cut_back"): r"""
                         _/\_/\_/\_/
                   _/\_-'  full threads
             _/\_-'
       point |
             |<- chamfer ->|
       - - - - - - - - - - - - - axis
        """,
    ("web_thickness", "chisel_edge_angle", "chisel_edge_length"): r"""
       seen from the point
                    ___________ lip
               ^   /
           web |  / chisel edge
        _______v_/
        lip
        """,
    ("lip_height_difference", "point_offset", "hole_oversize"): r"""
                  tip
                 .-'-._
              .-'      '-._ _ _ _
          _.-'             |    ^
         |                 |    v
         |                 | one lip
         |                 | higher
        """,
    ("back_taper", "taper_ratio", "taper_angle", "swivel_angle", "back_diameter"): r"""
       front                 back
       .------.....____
       ^               ''''---. ^
       | larger       smaller | |
       v               ____---' v
       '------'''''----
        """,
    ("pitch", "lead", "starts", "threads_per_inch"): r"""
            |<pitch>|
            /\      /\      /\
           /  \    /  \    /  \
          /    \  /    \  /    \
         /  /  /\/  /  /\/  /  /\
       - - - - - - - - - - - - axis
        """,
    ("lead_over_land", "lead_angle"): r"""
        edge ._
             |  '-._  the thread
             |      '-._ climbs
             |<-- land --> '-._ heel
                              |
         lead over the land is what it
         has advanced at the heel
        """,
    ("radial_throw", "axial_throw", "square_throw"): r"""
        radial throw: in to the axis
                  |
                  v
            .-----------------
          .' /  /  /  /  /  /
        .'  /  /  /  /  /  /
       - - - - - - - - - - - axis
       axial throw: from the point -->
        """,
    ("wheel_head_height", "rule_height"): r"""
          .---.         heel
         /     \     .-'
        |       |  .'  land
        |   +- -|.'- - - - - - - - -^
         \wheel/.'          height  |
          '---'+ edge - - -+ axis - v
         cuts v ^ rest     of tool
        """,
    ("tooth_rest_height",): r"""
         cup  |+ heel
         wheel||
              || land     of tool
              ||- - - - -+ axis - ^
              ||           height |
          rim |+ edge - - - - - - v
         cuts v ^ rest
        """,
    ("body_diameter", "least_gap", "deepest_gap"): r"""
       . . . . . . . . . . old body
       edge +  .  .  .  .  . circle
            |'-._        ^ gap
            |/  /'--.____v____
       face | /  /  /  /  /  /+ heel
            |/  /  /  /  /  / |
        """,
    ("feed", "feed_slope", "relief_left", "largest_feed"): r"""
       edge +- - - - - - - - - level
            |'-._''--..__ path of
            |/  / '-._   ''- feed
            | /  /  / '-._
            |/  /  /  /  /'-. flank
         what lies between is left
        """,
}

FIGURES: dict[str, tuple[str, ...]] = {
    key: tuple(dedent(drawing).strip("\n").rstrip().split("\n"))
    for keys, drawing in _DRAWINGS.items()
    for key in keys
}
"""The lines of the drawing for a quantity, by its key."""
