"""Styled lines: pieces of text that each have a role; what every screen is made of."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from rich.cells import cell_len, chop_cells, set_cell_size

from library.pages.texts import wrapped
from library.sanitize import sanitize
from tui.pieces import Line, Piece, Role, text_of

__all__ = [
    "EMPTY",
    "Line",
    "Piece",
    "Role",
    "beside",
    "cut",
    "filled",
    "fit",
    "line",
    "padded",
    "rule",
    "spread_out",
    "text_of",
    "width_of",
    "wrap",
]

EMPTY: Line = ()

_NUMBER_AT_END = re.compile(r"(?:(?<!\w)[-+]|(?<!\w-)(?<![\d.,/-]))\.?\d[\d.,/-]*\Z")
"""A number that a text ends with; the digits of a name such as T-12-5 are none."""

AT_THE_END = 0.8
"""How much of a name that is cut in its middle may be its end."""

_GOES_ON = re.compile(r"[.,/-]?\d")
"""What shows behind a number's first part that there is more of it."""


def line(*pieces: Piece | str) -> Line:
    """Make a line; a bare text is in the plain role.

    Example:
        >>> line("Find: ", Piece("tap", "typed"))
        (Piece(text='Find: ', role='plain'), Piece(text='tap', role='typed'))
    """
    return tuple(piece if isinstance(piece, Piece) else Piece(piece) for piece in pieces)


def width_of(one: Line) -> int:
    """How many cells a line takes.

    Example:
        >>> width_of(line("edge ", Piece("刃")))
        7
    """
    return sum(cell_len(piece.text) for piece in one)


def fit(text: str, width: int, *, right: bool = False) -> str:
    """Text cut or padded to exactly ``width`` cells, with a mark where something was cut.

    A number is never cut inside, for a part of it reads as another number: it goes as a whole.

    Args:
        text: foreign text is welcome; it is cleaned here.
        width: in cells.
        right: whether it stands at the right edge, as numbers do.

    Example:
        >>> fit("Land width", 6), fit("8 deg", 7, right=True), fit("at 3600 rpm", 6)
        ('Land …', '  8 deg', 'at …  ')
    """
    text = sanitize(text)
    taken = len(text) if text.isascii() else cell_len(text)
    if taken <= width:
        padding = " " * (width - taken)
        return padding + text if right else text + padding
    if width <= 0:
        return ""
    kept = set_cell_size(text, width - 1)
    if text.startswith(kept) and _GOES_ON.match(text, len(kept)) is not None:
        kept = _NUMBER_AT_END.sub("", kept)
    shown = f"{kept}…"
    padding = " " * (width - cell_len(shown))
    return padding + shown if right else shown + padding


def fit_ends(text: str, width: int) -> str:
    """Text in exactly ``width`` cells; what is too long keeps its beginning and, of whole words, more of its end.

    Names of one family begin alike, and what tells them apart stands at the end.

    Args:
        text: foreign text is welcome; it is cleaned here.
        width: in cells.

    Example:
        >>> fit_ends("Multi-flute countersink, 90 degrees, plain steel", 29)
        'Multi…90 degrees, plain steel'
        >>> fit_ends("Nut tap", 9), fit_ends("Onewordonly", 6)
        ('Nut tap  ', 'Onewo…')
    """
    text = sanitize(text)
    if cell_len(text) <= width:
        return fit(text, width)
    ends = (text[at + 1 :] for at, sign in enumerate(text) if sign == " ")
    end = next((one for one in ends if cell_len(one) <= width * AT_THE_END), "")
    if not end:
        return fit(text, width)
    begun = fit(text, width - cell_len(end)).rstrip()
    return fit(f"{begun.removesuffix('…').rstrip(' ,')}…{end}", width)


def padded(one: Line, width: int) -> Line:
    """A line made exactly ``width`` cells wide."""
    missing = width - width_of(one)
    if missing >= 0:
        return (*one, Piece(" " * missing)) if missing else one
    kept: list[Piece] = []
    for piece in one:
        room = width - width_of(tuple(kept))
        if room <= 0:
            break
        kept.append(piece if cell_len(piece.text) <= room else Piece(fit(piece.text, room), piece.role))
    return tuple(kept)


def wrap(text: str, width: int, role: Role = "plain", *, first: str = "", rest: str = "") -> list[Line]:
    """Text as lines no wider than ``width``; its own line breaks are kept.

    Args:
        text: foreign text is welcome; it is cleaned here.
        width: in cells.
        role: of every line.
        first: stands before the first line.
        rest: stands before every other line.
    """
    return [line(Piece(one, role)) for one in wrapped(text, width, first, rest, sanitize)]


def cut(text: str, width: int) -> list[str]:
    """A text in parts no wider than the screen, behind a blank where there is one; joined they are the text again.

    Example:
        >>> cut('usual = "5 deg"', 10)
        ['usual = ', '"5 deg"']
    """
    found = []
    while cell_len(text) > width:
        part = chop_cells(text, width)[0]
        at = part.rfind(" ") + 1
        at = at if part[:at].strip() else len(part)
        found.append(text[:at])
        text = text[at:]
    return [*found, text]


def beside(left: Sequence[Line], right: Sequence[Line], left_width: int, gap: str = " ") -> list[Line]:
    """Two columns as one: each left line padded to ``left_width``, then the gap, then the right line."""
    count = max(len(left), len(right))
    full_left = [*left, *[EMPTY] * (count - len(left))]
    full_right = [*right, *[EMPTY] * (count - len(right))]
    return [
        (*padded(one, left_width), Piece(gap, "rule"), *other)
        for one, other in zip(full_left, full_right, strict=True)
    ]


def spread_out(left: Line, right: Line, width: int) -> Line:
    """One line with something at its left edge and something at its right edge.

    Example:
        >>> text_of(spread_out(line("Book"), line("mm"), 10))
        'Book    mm'
    """
    room = width - width_of(right)
    return (*padded(left, room), *right) if room > 0 else padded(left, width)


def rule(width: int) -> Line:
    """A line across."""
    return line(Piece("─" * width, "rule"))


def edge_of(below: int, width: int, key: str = "PgDn", above: int = 0) -> Line:
    """The line under a text of which ``below`` more lines are out of sight, and ``above`` where nothing else tells it.

    Example:
        >>> text_of(edge_of(3, 26)), text_of(edge_of(0, 4))
        ('── 3 more lines: PgDn ──  ', '────')
        >>> text_of(edge_of(3, 44, above=2)), text_of(edge_of(0, 25, above=1))
        ('── 3 more lines: PgDn ── 2 above: PgUp ──   ', '── 1 line above: PgUp ── ')
    """
    said = f"── {below} more line{'s' if below > 1 else ''}: {key} ──" if below else ""
    if above and below:
        said += f" {above} above: PgUp ──"
    elif above:
        return above_of(above, width, "PgUp")
    return line(Piece(fit(said, width), "rule")) if said else rule(width)


def above_of(above: int, width: int, key: str = "Up") -> Line:
    """The line over a text of which ``above`` lines are out of sight.

    Example:
        >>> text_of(above_of(4, 28)), text_of(above_of(1, 20, "")), text_of(above_of(0, 4))
        ('── 4 lines above: Up ──     ', '── 1 line above ──  ', '────')
    """
    said = f"── {above} line{'s' if above > 1 else ''} above{': ' if key else ''}{key} ──"
    return line(Piece(fit(said, width), "rule")) if above else rule(width)


def filled(lines: Iterable[Line], height: int) -> list[Line]:
    """Exactly ``height`` lines: cut, or with empty ones after."""
    kept = list(lines)[: max(height, 0)]
    return kept + [EMPTY] * (height - len(kept))


def at_most(lines: list[Line], width: int, height: int) -> list[Line]:
    """So many lines; where there are more, the last one says so.

    Args:
        lines: each of one piece.
        width: in cells.
        height: how many lines there are room for.

    Example:
        >>> [text_of(one) for one in at_most(wrap("up and down", 6), 6, 1)]
        ['up a…']
    """
    if len(lines) <= height:
        return filled(lines, height)
    last = lines[height - 1][0]
    kept = fit(last.text, width - 1).rstrip().removesuffix("…")
    return [*lines[: height - 1], line(Piece(f"{kept}…", last.role))]
