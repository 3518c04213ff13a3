"""The hooked face of a tap, which a wheel with a rounded rim grinds concave: its hook along the chord, its rake at the edge.

In the section square to the axis the face is an arc from the crest to the root of the thread. The chord between its
ends leans by the hook; the tangent at the crest leans by half of the arc more, and that is the rake the edge cuts with.
With the crest at ``R``, the root at ``R - h`` and the arc's radius ``p``, the chord is ``c = R cos(hook) -
sqrt((R - h)^2 - (R sin(hook))^2)`` long, and ``rake = hook + asin(c / 2 p)``. All of it is derived.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.preconditions import refuse, require_angle, require_at_most, require_positive
from geometry.sentences import Rounding, angle, length


@dataclass(frozen=True)
class HookedFace:
    """A concave face between the crest and the root of a thread.

    Attributes:
        crest: radius of the circle of the edges, in mm.
        root: radius of the circle of the roots, in mm.
        radius: of the face, in mm.
        rake: at the edge, in radians.
        arc: how much the face turns from crest to root, in radians.

    Example:
        >>> face = face_of_hook(math.radians(10), 6.0, 1.0, 8.0)
        >>> round(math.degrees(face.hook), 6), round(math.degrees(face.rake), 3), round(face.hollow, 4)
        (10.0, 13.65, 0.0162)
    """

    crest: float
    root: float
    radius: float
    rake: float
    arc: float

    @property
    def hook(self) -> float:
        """Along the chord from crest to root, against the radius at the crest, in radians."""
        return self.rake - self.arc / 2

    @property
    def chord(self) -> float:
        """From crest to root straight across, in mm."""
        return 2 * self.radius * math.sin(self.arc / 2)

    @property
    def hollow(self) -> float:
        """How deep the face lies behind its chord in the middle, in mm."""
        return 2 * self.radius * math.sin(self.arc / 4) ** 2

    @property
    def root_rake(self) -> float:
        """The rake of the face at the root, against the radius there, in radians."""
        across, up = self.chord * math.sin(self.hook), self.crest - self.chord * math.cos(self.hook)
        return self.rake - self.arc + math.atan2(across, up)

    @property
    def centre_ahead(self) -> float:
        """How far the middle of the wheel's rounding lies ahead of the radius through the edge, in mm."""
        return self.radius * math.cos(self.rake)

    @property
    def centre_below(self) -> float:
        """How far it lies nearer to the axis than the edge, along that radius, in mm; below zero further out."""
        return self.radius * math.sin(self.rake)


def face_of_hook(hook_angle: float, crest: float, depth: float, radius: float) -> HookedFace:
    """The face that has a hook along its chord.

    Args:
        hook_angle: in radians, under a right angle either way.
        crest: radius of the circle of the edges, in mm, above zero.
        depth: of the thread, in mm, above zero and under the crest's radius.
        radius: of the face, in mm, above zero.

    Raises:
        GeometryError: when the chord misses the root, or the arc is too small to reach it.

    Example:
        >>> round(math.degrees(face_of_hook(0.0, 10.0, 1.0, 1.0).rake), 6)
        30.0
    """
    root = _root(crest, depth)
    require_angle("hook_angle", hook_angle, -math.pi / 2, math.pi / 2)
    off = crest * math.sin(hook_angle)
    if abs(off) >= root:
        most = math.asin(root / crest)
        raise refuse(
            "hook_angle",
            "At a hook of {hook} the face misses the root of the thread; it lies between {least} and {most}.",
            {
                "hook": angle(hook_angle),
                "least": angle(-most, Rounding.UP),
                "most": angle(most, Rounding.DOWN),
            },
        )
    chord = crest * math.cos(hook_angle) - math.sqrt((root - off) * (root + off))
    # The arc comes to the circle of the roots from outside: at the latest it touches it there.
    turned = math.atan2(chord * math.sin(hook_angle), crest - chord * math.cos(hook_angle))
    widest = math.sin(min(math.pi / 2, math.pi / 2 + hook_angle + turned))
    if chord >= 2 * require_positive("face_radius", radius) * widest:
        raise _too_small(radius, chord / (2 * widest))
    half = math.asin(chord / (2 * radius))
    return HookedFace(crest, root, radius, hook_angle + half, 2 * half)


def face_of_rake(rake_angle: float, crest: float, depth: float, radius: float) -> HookedFace:
    """The face that has a rake at its edge: the inverse of ``face_of_hook``.

    Where the arc has turned by ``t`` it lies on the circle of the roots if ``R cos(rake) sin(t) + (p - R sin(rake))
    cos(t) = p - R sin(rake) + (R^2 - r^2) / 2 p``, with ``r`` the radius of the roots.

    Args:
        rake_angle: in radians, under a right angle either way.
        crest: radius of the circle of the edges, in mm, above zero.
        depth: of the thread, in mm, above zero and under the crest's radius.
        radius: of the face, in mm, above zero.

    Raises:
        GeometryError: when the arc turns away before it reaches the root.

    Example:
        >>> round(abs(math.degrees(face_of_rake(math.radians(30), 10.0, 1.0, 1.0).hook)), 6)
        0.0
    """
    root = _root(crest, depth)
    require_angle("rake_angle", rake_angle, -math.pi / 2, math.pi / 2)
    require_positive("face_radius", radius)
    square = depth * (crest + root)
    reach = root + crest * math.sin(rake_angle)
    if reach <= 0:
        raise refuse(
            "rake_angle",
            "With so negative a rake the face never reaches the root of the thread; it is above {least}.",
            {"least": angle(-math.asin(root / crest), Rounding.UP)},
        )
    if radius <= square / (2 * reach):
        raise _too_small(radius, square / (2 * reach))
    sine, cosine = crest * math.cos(rake_angle), radius - crest * math.sin(rake_angle)
    away = math.hypot(sine, cosine)
    level = (cosine + square / (2 * radius)) / away
    arc = math.atan2(sine, cosine) - math.acos(min(level, 1.0))
    return HookedFace(crest, root, radius, rake_angle, arc)


def _root(crest: float, depth: float) -> float:
    require_positive("external_thread_depth", depth)
    require_positive("diameter", crest)
    require_at_most("external_thread_depth", depth, crest * (1 - 1e-9), "the radius of the tap")
    return crest - depth


def _too_small(radius: float, least: float) -> Exception:
    return refuse(
        "face_radius",
        "A face with a radius of {radius} turns away before it reaches the root of the thread; it takes more than {least}.",
        {"radius": length(radius), "least": length(least, Rounding.UP)},
    )
