"""What terminals send for the keys F1 to F10 in each of their usual modes, and for Alt or Esc with a digit.

Sources: the manual pages ``console_codes(4)`` and ``rxvt(7)``, the control sequences of xterm, the entries of terminfo
for ``linux``, ``xterm-r6``, ``vt220``, ``rxvt``, ``xterm-sun``, ``cons25`` and ``scoansi``, and the settings of keyboards
in the manual of PuTTY.
"""

from __future__ import annotations

from collections.abc import Mapping

_FROM_F6 = ("\x1b[17~", "\x1b[18~", "\x1b[19~", "\x1b[20~", "\x1b[21~")

MODES: Mapping[str, tuple[str, ...]] = {
    "xterm": ("\x1bOP", "\x1bOQ", "\x1bOR", "\x1bOS", "\x1b[15~", *_FROM_F6),
    "xterm-r6, vt220, rxvt and PuTTY as it comes": (
        *("\x1b[11~", "\x1b[12~", "\x1b[13~", "\x1b[14~", "\x1b[15~"),
        *_FROM_F6,
    ),
    "the console of Linux": ("\x1b[[A", "\x1b[[B", "\x1b[[C", "\x1b[[D", "\x1b[[E", *_FROM_F6),
    "PuTTY as a VT400": ("\x1bOP", "\x1bOQ", "\x1bOR", "\x1bOS", "\x1b[15~", *_FROM_F6),
    "PuTTY as a VT100+": tuple(f"\x1bO{sign}" for sign in "PQRSTUVWXY"),
    "xterm with the keys of a Sun": tuple(f"\x1b[{number}z" for number in range(224, 234)),
    "kitty": ("\x1b[P", "\x1b[Q", "\x1b[13~", "\x1b[S", "\x1b[15~", *_FROM_F6),
    "Alt, or Esc, with a digit": tuple(f"\x1b{digit}" for digit in "1234567890"),
}
"""The sequences of F1 to F10 by the mode of the keyboard."""

SCO = tuple(f"\x1b[{sign}" for sign in "MNOPQRSTUV")
"""Those of the modes called SCO or cons25. Some of them mean something else everywhere else."""

SCO_EVERYWHERE = {"f2": "\x1b[N", "f8": "\x1b[T", "f9": "\x1b[U", "f10": "\x1b[V"}
"""Those of them that mean nothing else anywhere."""

SCO_TERMS = ("sco", "ansi.sys", "cons25", "putty-sco")
"""How the name of a terminal begins that sends them."""


def sequences(term: str) -> dict[str, str]:
    r"""Every sequence of the keys F1 to F10 and the key that it is of.

    Args:
        term: the name of the terminal, from the environment.

    Example:
        >>> sequences("xterm")["\x1b[[B"], sequences("scoansi")["\x1b[P"], sequences("xterm")["\x1b[P"]
        ('f2', 'f4', 'f1')
    """
    found = {one: f"f{number}" for mode in MODES.values() for number, one in enumerate(mode, 1)}
    found |= {one: key for key, one in SCO_EVERYWHERE.items()}
    if is_sco(term):
        found |= {one: f"f{number}" for number, one in enumerate(SCO, 1)}
    return found


def is_sco(term: str) -> bool:
    """Whether a terminal of this name sends the sequences of SCO."""
    return term.startswith(SCO_TERMS)
