"""The hook of a tap along its chord beside the rake at its edge, for a face that a rounded wheel grinds concave."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    note,
    passed,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cures import Way, way
from geometry.figure import Figure
from geometry.plausible import LEAST_RAKE, MOST_RAKE, SLACK, pitch_plausible
from geometry.preconditions import GeometryError
from geometry.role import Role
from geometry.sentences import Rounding, angle, length
from geometry.thread.form import thread
from geometry.thread.pitch_input import PITCH, pitch_of
from geometry.tooth.face import face_offset
from geometry.tooth.hook import HookedFace, face_of_hook, face_of_rake

EXAMPLE_LAND = math.radians(25)
"""How far the land goes round in the figure, which is there for the face; nobody is asked for a land."""


def _depth(given: Inputs) -> float:
    return thread(given.number("diameter"), pitch_of(given), given.choice("thread_form")).external_depth


def _face(given: Inputs) -> HookedFace:
    crest, depth, radius = given.number("diameter") / 2, _depth(given), given.number("face_radius")
    if given.has("hook_angle"):
        return face_of_hook(given.number("hook_angle"), crest, depth, radius)
    return face_of_rake(given.number("rake_angle"), crest, depth, radius)


def _unusual(given: Inputs, face: HookedFace) -> Iterator[Check]:
    """What is odd about the rake at the edge, and what brings it back."""
    low, high = LEAST_RAKE, MOST_RAKE
    if low - SLACK <= face.rake <= high + SLACK:
        return
    bound, rounding = (high, Rounding.DOWN) if face.rake > high else (low, Rounding.UP)
    which = "or less" if face.rake > high else "or more"
    ways: list[Way] = []
    if given.has("rake_angle"):
        ways.append(
            way(f"ask for a rake of {{bound}} {which}", "rake_angle", "bound", angle(bound, rounding))
        )
    else:
        ways += _hook_for(face, bound, which, rounding)
        if face.rake > high > face.hook + SLACK:
            wider = face.chord / (2 * math.sin(high - face.hook))
            ways.append(
                way(
                    "give the face a radius of {wider} or more",
                    "face_radius",
                    "wider",
                    length(wider, Rounding.UP),
                )
            )
    yield complaint(
        "watch",
        "At the edge this face has a rake of {rake}, more than edges are given.",
        ways,
        rake=angle(face.rake),
    )


def _hook_for(face: HookedFace, rake: float, which: str, rounding: Rounding) -> Iterator[Way]:
    """The hook at which the same wheel just gives a rake; none where it does not reach the root then."""
    try:
        hook = face_of_rake(rake, face.crest, face.crest - face.root, face.radius).hook
    except GeometryError:
        return
    yield way(f"ask for a hook of {{hook}} {which}", "hook_angle", "hook", angle(hook, rounding))


def _checks(given: Inputs) -> Iterator[Check]:
    face = _face(given)
    key = "pitch" if given.has("pitch") else "threads_per_inch"
    yield from pitch_plausible(pitch_of(given), given.number("diameter"), key=key)
    odd = tuple(_unusual(given, face))
    yield from odd
    says = note if odd else passed
    yield says(
        "A hook of {hook} along the chord is a rake of {rake} at the edge with this face: {more} more. Books give either; see "
        "how theirs is measured.",
        hook=angle(face.hook),
        rake=angle(face.rake),
        more=angle(face.rake - face.hook),
    )
    yield note(
        "With the radius through the edge level, the middle of the wheel's rounding stands {ahead} off it, in front of the "
        "face, and {below} "
        + ("nearer to the axis than the edge." if face.rake >= 0 else "further out than the edge."),
        ahead=length(face.centre_ahead),
        below=length(abs(face.centre_below)),
    )
    yield note(
        "The face falls {hollow} behind its chord, and at the root of the thread its rake is {root}.",
        hollow=length(face.hollow),
        root=angle(face.root_rake),
    )


def _compute(given: Inputs) -> Result:
    face = _face(given)
    raw = Result(
        {
            "rake_angle": face.rake,
            "hook_angle": face.hook,
            "wheel_centre_ahead": face.centre_ahead,
            "wheel_centre_below": face.centre_below,
            "root_rake_angle": face.root_rake,
            "face_hollow": face.hollow,
            "face_offset": face_offset(face.hook, 2 * face.crest),
        },
        checks=worst_first(_checks(given)),
        figure=Figure(face.crest, EXAMPLE_LAND, (), face.rake),
    )
    return settled(raw, given, lambda changed, _: _checks(changed))


CALCULATION = Calculation(
    name="tap-hook",
    title="Hook of a tap and its concave face",
    question="Which rake at the edge is a hook along the chord, for a face of this radius, and how does the wheel stand for it?",
    wants="The diameter is the tap's over its crests. The hook leans along the chord from crest to root of the thread, the rake at "
    "the edge alone; the radius is that of the face, which the rounded rim of the wheel leaves.",
    neglects="It holds for a straight flute, seen square to the axis, and takes the face as one arc from crest to root; on the "
    "chamfer the crest lies lower, and the hook there is another. The offset is that of a flat face with the same hook.",
    kinds=("tap",),
    belongs_on=("thread-land", "chamfer"),
    beside=True,
    inputs=(
        Field("diameter"),
        *PITCH,
        Field("thread_form", default="iso"),
        Field("hook_angle", one_of="hook"),
        Field("rake_angle", one_of="hook"),
        Field("face_radius"),
    ),
    outputs=(
        "rake_angle",
        "hook_angle",
        "wheel_centre_ahead",
        "wheel_centre_below",
        "root_rake_angle",
        "face_hollow",
        "face_offset",
    ),
    cautions=(*AT_THE_WHEEL, "dressing"),
    compute=_compute,
    role=Role(
        place=33,
        of_course=(),
        about="face_radius",
        sets=("wheel_centre_ahead", "wheel_centre_below"),
        apart="for the faces, a job of its own",
        tells=("pass", "note"),
    ),
    sample={"diameter": 12.0, "pitch": 1.75, "hook_angle": math.radians(10), "face_radius": 6.0},
)
