"""Words of the trade that are no quantity, or another name of one: heel, edge, hook, clearance, backing off.

The glossary shows them before the quantities, and the book is found by the other names too.
Common practice, no source; rake, clearance, face and cutting edge as ISO 3002-1 has them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache


@dataclass(frozen=True)
class Term:
    """One word of the trade.

    Attributes:
        word: as the glossary calls it.
        definition: what it is, in whole sentences.
        also: other names for it.
        keys: the quantities that its names are names of as well.
        choice: the quantity and the choice of it that is meant, such as an eccentric relief form.
    """

    word: str
    definition: str
    also: tuple[str, ...] = ()
    keys: tuple[str, ...] = ()
    choice: tuple[str, str] = ("", "")

    @property
    def title(self) -> str:
        """Its word, as a heading."""
        return self.word.capitalize()


TERMS = (
    Term(
        "edge",
        "The line in which the face and the land of a tooth meet; it cuts, and its way round the axis is the circle that everything behind it has to stay inside of.",
        ("cutting edge",),
    ),
    Term(
        "face",
        "The surface of the flute that the chip runs off on, up to the edge.",
        ("cutting face", "rake face"),
    ),
    Term(
        "land",
        "The surface behind the edge, as far as the heel. Its width is measured round the circle or straight across, and it is relieved wholly, in part or not at all.",
        keys=("land_width",),
    ),
    Term(
        "heel",
        "The end of the land, where it meets the next flute: of all places behind the edge the one that turns furthest from it. A flat land comes back to the circle there first, so the heel tells whether a relief clears.",
        keys=("heel_drop",),
    ),
    Term(
        "margin",
        "A narrow strip of the land right behind the edge that is left on the circle, so that it guides the tool and holds its size.",
        ("circular land", "cylindrical land"),
        ("margin_width",),
    ),
    Term(
        "rake",
        "How the face leans behind the edge, which decides how freely the chip runs off; negative where the face leans forward.",
        ("hook", "hook angle", "top rake"),
        ("rake_angle",),
    ),
    Term(
        "chordal hook",
        "The hook of a tap measured along the chord of its concave face, from the crest to the root of the thread. The rake at the edge is larger, by half of the arc of the face.",
        ("hook along the chord",),
        ("hook_angle",),
    ),
    Term(
        "relief",
        "The fall of a surface behind its edge, without which it would touch the work. Each surface has a relief of its own, given in its own view.",
        ("clearance", "clearance angle"),
        (
            "land_relief_angle",
            "thread_relief_angle",
            "chamfer_relief_angle",
            "cone_relief_angle",
            "shoulder_relief_angle",
            "lip_relief_angle",
            "bevel_relief_angle",
            "end_relief_angle",
            "relief_angle",
        ),
    ),
    Term(
        "eccentric relief",
        "A relief that goes on falling at the same rate from the edge to the heel, as a cam or an eccentric motion of the tool makes it; seen along the axis it is a curve. Some say radial relief for it; elsewhere that is the relief measured square to the axis, in whatever form.",
        ("eccentric", "cam relief", "radial relief", "backing off", "backed off"),
        choice=("relief_form", "eccentric"),
    ),
    Term(
        "con-eccentric relief",
        "A relief of a thread land that begins some way behind the edge: first a strip on the circle, which guides the tap, then a fall toward the axis. Without the strip it is eccentric, without the fall concentric.",
        ("con-eccentric land", "concentric thread land"),
    ),
    Term(
        "flat relief",
        "A relief of one straight facet. It falls quickly at the edge and comes back to the circle further round, so a wide land needs a second facet, or the heel rubs.",
        ("angular relief", "straight relief"),
        choice=("relief_form", "flat"),
    ),
    Term(
        "indicator drop",
        "What an indicator that was set to zero at the edge shows further back: how far that place lies inside the circle of the edges.",
        ("drop", "fall behind the edge"),
        ("drop",),
    ),
    Term(
        "tooth rest",
        "A blade that holds the tooth which is ground at its height. Under a helical tooth it stands fixed beside the wheel, its top sloped along the tooth, and turns the tool as it slides past.",
        ("finger", "rest blade"),
        ("tooth_rest_height", "rest_width"),
    ),
    Term(
        "dish",
        "How far the end edges of a tool lean back from their corners toward the middle, so that the corners cut first and the middle does not drag. A seat cut by a dished end is a little higher in its middle.",
        ("end hollow", "concavity"),
        ("dish_angle", "dish_depth"),
    ),
    Term(
        "unequal spacing",
        "Edges that stand unevenly round the tool, so that they do not come into the work in one beat; chatter lives on that beat. Where each edge has another opposite it, a micrometer still finds the diameter.",
        ("irregular spacing", "staggered teeth", "uneven flutes"),
        ("spacing_angles", "spacing_step"),
    ),
    Term(
        "throw",
        "How far a cam moves what it drives, from its lowest place to its highest; counted for a whole turn of the tool or from one tooth to the next.",
        ("travel of a cam",),
        ("throw_per_turn", "throw_per_tooth", "cam_throws"),
    ),
    Term(
        "rubs",
        "What a surface behind the edge does that lies on the circle or outside it: it presses on the work and does not cut. It leaves a polished band on the land, heat, and a hole that closes on the tool.",
        ("drags", "binds", "stands proud"),
    ),
    Term(
        "compound angle",
        "The angle of a face that slopes two ways at once. It is set by a swivel and a tilt, or by two tilts of which the lower one is a little less than the slope it stands for.",
        ("double angle", "universal vise", "universal vice"),
        ("compound_tilt_angle", "cross_slope_angle"),
    ),
    Term(
        "spiral point",
        "A slanted gash at the front of a straight flute of a tap, which drives the chips ahead through the hole. It runs a thread or two past the chamfer and is sharpened by itself.",
        ("gun point", "gun nose", "chip driver"),
        ("spiral_point_angle", "spiral_point_depth"),
    ),
    Term(
        "vee",
        "Two flat sides at an angle in which a tool lies on two of its edges, so that a tool with an odd number of flutes can be measured: no two of its edges lie opposite each other.",
        ("vee block", "v-block", "flute micrometer", "vee anvil"),
        ("vee_angle", "vee_reading"),
    ),
    Term(
        "facet point",
        "A drill point whose flanks are flat: one facet at the lip, and mostly a steeper one behind it that clears the heel. Where the second ones reach the line through the axis, four facets meet in a tip.",
        ("four-facet point", "flat-ground point"),
        ("second_lip_relief_angle",),
    ),
    Term(
        "bevel lead",
        "The short cone at the front of a reamer on which it cuts. It wears at its outer corner, where the land begins, and is sharpened by grinding the cone back along the axis.",
        ("lead of a reamer", "reamer chamfer"),
        ("bevel_angle", "bevel_length"),
    ),
    Term(
        "wear",
        "What use takes off an edge: a bright strip behind it that has no relief any more, or a corner that is rounded or chipped. Where the strip is widest it says how much has to come off.",
        ("wear land", "blunt edge", "flank wear"),
        ("wear_land",),
    ),
    Term(
        "spark-out",
        "Passes without infeed at the end, until the wheel hardly sparks: machine and tool spring back, and the last of the stock comes off.",
        ("sparking out", "dwell passes"),
        ("spark_out_passes",),
    ),
    Term(
        "flank",
        "One side of a thread, between its crest and its root. Where the thread land falls toward the axis the flanks fall away too, square to themselves by less: by half of it on a 60 degree thread.",
        ("thread flank",),
        ("flank_angle", "flank_relief_angle"),
    ),
    Term(
        "web",
        "The metal that is left between the flutes of a drill. It grows toward the shank, so a drill that has become short has a longer chisel edge, until its point is thinned again.",
        ("core of a drill",),
        ("web_thickness", "second_web", "web_after", "wanted_web"),
    ),
    Term(
        "split point",
        "A drill point whose chisel edge two notches cut away to the middle, so that it starts where it is put and needs less thrust.",
        ("cross-ground point",),
        choice=("thinning", "split"),
    ),
    Term(
        "gauge projection",
        "How far the small end of a taper pipe tap stands out of a ring gauge that is screwed on by hand. It says where on the cone of the thread the tap begins, and so how deep it has to go in.",
        ("gage projection",),
        ("gauge_projection", "projection_after"),
    ),
    Term(
        "hand-tight plane",
        "The place of a taper pipe thread that lies at the mouth of the fitting when the pipe is screwed in by hand; British pipe threads call it the gauge plane. Its pitch diameter is that by which the thread is gauged.",
        ("gauge plane", "hand-tight engagement"),
        ("gauge_length",),
    ),
    Term(
        "chamfer of a tap",
        "The cone ground on the first threads of a tap, which does nearly all of the cutting; behind it stands the full thread, which guides and sizes.",
        ("taper lead",),
        ("chamfer_threads",),
    ),
    Term(
        "limits of size",
        "The smallest and the largest size that something may have. Between those of a hole lie those of the tool that makes it: room above for what it cuts over its own size, room below to wear.",
        ("limits", "min. and max."),
        ("hole_lower_limit", "hole_upper_limit", "reamer_lower_limit", "reamer_upper_limit"),
    ),
    Term(
        "tolerance class",
        "A letter and a number of ISO 286, such as H7: the letter says where the limits lie beside the nominal size, the number how wide they are. A large letter is a hole and a small one a shaft.",
        ("iso tolerance", "fit of a hole", "h7"),
        ("hole_tolerance",),
    ),
    Term(
        "form relief",
        "The relief of a profile that a cam moves as one piece, a rounded corner for example. Square to the profile it is the smaller the more the profile turns away from the land, so that the end needs a cam that goes back along the axis as well.",
        ("relieved form", "form-relieved"),
        ("least_form_relief",),
    ),
    Term(
        "cross hole",
        "The slanted hole through the cone of a countersink without flutes; the half of its rim that comes last is the edge, and its wall the face.",
        ("zero flute", "zero-flute countersink"),
        ("cross_hole_diameter",),
    ),
    Term(
        "class of a thread",
        "Behind the size of an internal thread, how wide its pitch diameter may be: unified threads have 1B (loose), 2B (usual) and 3B (close), metric ones a number, 6 being the usual one, and H, or G for room under a coat of metal.",
        ("thread class", "class of fit", "2b", "3b", "6h"),
        ("thread_class", "thread_lower_limit", "thread_upper_limit"),
    ),
    Term(
        "tap limit",
        "The mark behind the size on a ground tap: an H or L number counts half thousandths of an inch over or under the basic pitch diameter, a D number the same on metric taps, and an ISO class tenths of the tolerance of the thread.",
        ("h limit", "d limit", "gh number", "pitch diameter limit"),
        ("tap_limit",),
    ),
)
"""The words, those that are parts of a tooth first."""


def names_of(key: str) -> tuple[str, ...]:
    """What else a quantity is called.

    Args:
        key: of the quantity.

    Example:
        >>> names_of("margin_width")
        ('circular land', 'cylindrical land')
    """
    return tuple(name for term in TERMS if key in term.keys for name in term.also)


def words_found_by(choices: Mapping[str, Iterable[str]]) -> tuple[str, ...]:
    """The words by which something is found that has values for these quantities.

    Args:
        choices: the keys of the quantities, each with the choices made in it; none for a number.

    Example:
        >>> words_found_by({"rake_angle": (), "relief_form": ("flat",)})
        ('rake', 'hook', 'hook angle', 'top rake', 'flat relief', 'angular relief', 'straight relief')
    """
    return _found_by(tuple((key, tuple(words)) for key, words in choices.items()))


@lru_cache(maxsize=1024)
def _found_by(chosen: tuple[tuple[str, tuple[str, ...]], ...]) -> tuple[str, ...]:
    """The same, kept: in a large book most tools have values for the same quantities."""
    choices = dict(chosen)
    fitting = (
        term
        for term in TERMS
        if any(key in choices for key in term.keys) or term.choice[1] in choices.get(term.choice[0], ())
    )
    return tuple(name for term in fitting for name in (term.word, *term.also))


def terms_with(words: Iterable[str]) -> tuple[Term, ...]:
    """The terms whose name, other names or definition have all of these words, those called so first.

    Args:
        words: parts of words; upper and lower case are the same.

    Example:
        >>> terms_with(["drags"])[0].word, terms_with(["HEEL"])[0].word
        ('rubs', 'heel')
    """
    sought = [word.casefold() for word in words]

    def has_all(text: str) -> bool:
        return all(word in text.casefold() for word in sought)

    found = [term for term in TERMS if has_all(f"{term.word} {' '.join(term.also)} {term.definition}")]
    asked = " ".join(sought)
    return tuple(
        sorted(
            found,
            key=lambda term: (
                asked not in (term.word, *term.also),
                not has_all(f"{term.word} {' '.join(term.also)}"),
            ),
        )
    )
