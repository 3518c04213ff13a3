"""The shape of a screw thread: heights and diameters that follow from diameter and pitch.

The 60 degree form is that of ISO 68-1 and ASME B1.1: a sharp triangle of height ``H`` with an eighth of
``H`` cut off the crest of the screw and a quarter off the crest of the nut. The 55 degree Whitworth form,
BS 84, is rounded alike at crest and root, so that screw and nut have one depth; so is the 47.5 degree form of the small
British Association threads, BS 93. The threads of leadscrews, the metric trapezoidal one of ISO 2901 (30 degrees) and the
Acme one of ASME B1.5 (29 degrees), are half a pitch high where screw and nut meet, and keep clear of each other at both roots.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.preconditions import GeometryError, refuse, require_positive
from geometry.sentences import Rounding, length, ratio


@dataclass(frozen=True)
class Form:
    """A thread form, every height as a part of the pitch.

    Attributes:
        title: what the form is called in a sentence.
        flank_angle: between the flanks, in radians.
        sharp: height of the sharp triangle.
        to_pitch_line: from the crest of the screw to the pitch line.
        internal: depth of the internal thread.
        external: depth of the external thread, without what it clears the nut by.
        clearance: from each pitch on, in mm, by how much the root of the screw clears the nut, in mm, and the nut the screw.
    """

    title: str
    flank_angle: float
    sharp: float
    to_pitch_line: float
    internal: float
    external: float
    clearance: tuple[tuple[float, float], ...] = ()

    @property
    def has_one_depth(self) -> bool:
        """Whether a full thread of this form is one thing, whoever counts it."""
        return self.title != ISO_TITLE

    def clearance_of(self, pitch: float) -> float:
        """How far screw and nut keep off each other at the roots, in mm.

        Example:
            >>> form("trapezoidal").clearance_of(4.0), form("iso").clearance_of(1.75)
            (0.25, 0.0)
        """
        return next((amount for least, amount in reversed(self.clearance) if pitch >= least - 1e-9), 0.0)


ISO_TITLE = "60 degree"
"""Of the one form whose full thread is counted in two ways."""


def _sharp(degrees: float) -> float:
    """Height of the sharp triangle between flanks at an angle, as a part of the pitch."""
    return 1 / (2 * math.tan(math.radians(degrees) / 2))


_ISO_SHARP = math.sqrt(3) / 2
_WHITWORTH_SHARP = 1 / (2 * math.tan(math.radians(55) / 2))
_WHITWORTH_DEPTH = 2 / 3 * _WHITWORTH_SHARP
"""BS 84 prints 0.960491 P for the sharp height and 0.640327 P for the depth: a sixth is cut off at either end."""

FORMS = {
    "iso": Form(
        ISO_TITLE, math.radians(60), _ISO_SHARP, 3 / 8 * _ISO_SHARP, 5 / 8 * _ISO_SHARP, 17 / 24 * _ISO_SHARP
    ),
    "whitworth": Form(
        "Whitworth",
        math.radians(55),
        _WHITWORTH_SHARP,
        _WHITWORTH_DEPTH / 2,
        _WHITWORTH_DEPTH,
        _WHITWORTH_DEPTH,
    ),
    "ba": Form("British Association", math.radians(47.5), _sharp(47.5), 0.3, 0.6, 0.6),
    "trapezoidal": Form(
        "metric trapezoidal",
        math.radians(30),
        _sharp(30),
        0.25,
        0.5,
        0.5,
        ((0.0, 0.15), (2.0, 0.25), (6.0, 0.5), (14.0, 1.0)),
    ),
    "acme": Form(
        "Acme", math.radians(29), _sharp(29), 0.25, 0.5, 0.5, ((0.0, 0.005 * 25.4), (2.54, 0.01 * 25.4))
    ),
}
"""The forms by name. ISO 724 gives the diameters d2 = d - 0.649519 P and D1 = d - 1.082532 P of the first; ISO 2904
gives d2 = d - 0.5 P, D1 = d - P and d3 = D1 - 2 a of the trapezoidal one, and ASME B1.5 the same of the Acme one."""


def form(name: str) -> Form:
    """The thread form of a name: ``iso``, ``whitworth``, ``ba``, ``trapezoidal`` or ``acme``.

    Raises:
        GeometryError: for another name.

    Example:
        >>> round(2 * form("iso").internal, 6)
        1.082532
    """
    if name not in FORMS:
        raise GeometryError(f"A thread form is {', '.join([*FORMS][:-1])} or {[*FORMS][-1]}.", "thread_form")
    return FORMS[name]


@dataclass(frozen=True)
class Thread:
    """A screw thread of one diameter and pitch; lengths in mm.

    Attributes:
        diameter: over the crests of the screw.
        pitch: from one thread to the next.
        shape: its form.
    """

    diameter: float
    pitch: float
    shape: Form

    @property
    def sharp_height(self) -> float:
        """Height of the sharp triangle, ``H``: 0.866025 P or 0.960491 P."""
        return self.shape.sharp * self.pitch

    @property
    def internal_depth(self) -> float:
        """Depth of the internal thread on one side: 5/8 H, or 0.640327 P for Whitworth."""
        return self.shape.internal * self.pitch

    @property
    def external_depth(self) -> float:
        """Depth of the external thread on one side: 17/24 H, 0.640327 P for Whitworth, 0.6 P for BA, else 0.5 P + a."""
        return self.shape.external * self.pitch + self.clearance

    @property
    def clearance(self) -> float:
        """How far screw and nut keep off each other at the roots: a of a trapezoidal or an Acme thread, else nothing."""
        return self.shape.clearance_of(self.pitch)

    @property
    def pitch_diameter(self) -> float:
        """Where thread and groove are equally wide: d - 0.649519 P, or d - 0.640327 P for Whitworth."""
        return self.diameter - 2 * self.shape.to_pitch_line * self.pitch

    @property
    def internal_minor_diameter(self) -> float:
        """Over the crests of the nut: d - 1.082532 P, or d - 1.280654 P for Whitworth."""
        return self.diameter - 2 * self.internal_depth

    @property
    def external_minor_diameter(self) -> float:
        """At the root of the screw: d - 1.226869 P, or d - 1.280654 P for Whitworth."""
        return self.diameter - 2 * self.external_depth


def thread(diameter: float, pitch: float, form_name: str) -> Thread:
    """A thread of this diameter, pitch and form.

    Args:
        diameter: over the crests of the screw, in mm, above zero.
        pitch: in mm, above zero, so fine that the root keeps a core.
        form_name: ``"iso"``, ``"whitworth"``, ``"ba"``, ``"trapezoidal"`` or ``"acme"``.

    Returns:
        The thread.

    Raises:
        GeometryError: when the pitch is so coarse that no core is left.

    Example:
        >>> round(thread(10.0, 1.25, "iso").external_minor_diameter, 3)
        8.466
    """
    made = Thread(require_positive("diameter", diameter), require_positive("pitch", pitch), form(form_name))
    if made.external_minor_diameter <= 0:
        raise _no_core(made)
    return made


def _no_core(made: Thread) -> GeometryError:
    says = "A thread of {pitch} pitch leaves no core in a diameter of {diameter}; the pitch must be under {most}."
    parts = {
        "pitch": length(made.pitch),
        "diameter": length(made.diameter),
        "most": length((made.diameter - 2 * made.clearance) / (2 * made.shape.external), Rounding.DOWN),
    }
    meant = 25.4 / made.pitch
    if Thread(made.diameter, meant, made.shape).external_minor_diameter <= 0:
        return refuse("pitch", says, parts)
    says += " Were threads per inch meant? {number} of them to the inch are a pitch of {meant}."
    return refuse("pitch", says, {**parts, "number": ratio(made.pitch), "meant": length(meant)})
