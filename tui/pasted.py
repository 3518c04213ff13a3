"""What a terminal sends as pasted is text only: no escape sequence in it is ever a key, a click or a report."""

from __future__ import annotations

START = "\x1b[200~"
"""What a terminal sends before a paste."""

END = "\x1b[201~"
"""What it sends after one; a terminal lets no paste hold it."""

MOST = 20_000
"""Characters of one paste that are looked at; no field takes as many."""


class PlainPastes:
    """Takes the escape characters out of what stands between the beginning and the end of a paste.

    What it is given comes in pieces as a terminal sends it; a piece may end anywhere.

    Example:
        >>> PlainPastes().through(f"a{START}8 deg{chr(27)}[B{END}") == f"a{START}8 deg[B{END}"
        True
    """

    def __init__(self) -> None:
        self._is_inside = False
        self._before = ""
        self._held = ""
        self._taken = 0

    def through(self, data: str) -> str:
        """The next piece, harmless; empty where it is held back until more comes."""
        data, self._held = self._held + data, ""
        harmless = []
        while data:
            piece, data = self._inside(data) if self._is_inside else self._outside(data)
            harmless.append(piece)
        return "".join(harmless)

    def _outside(self, data: str) -> tuple[str, str]:
        """What comes up to the beginning of a paste, which may have begun in the piece before; and the rest."""
        seen = self._before + data
        at = seen.find(START)
        if at < 0:
            self._before = seen[1 - len(START) :]
            return data, ""
        end = at + len(START) - len(self._before)
        self._is_inside, self._before, self._taken = True, "", 0
        return data[:end], data[end:]

    def _inside(self, data: str) -> tuple[str, str]:
        """What is pasted up to its end, without escape characters; and the rest."""
        text, end, rest = data.partition(END)
        if end:
            self._is_inside = False
        else:
            begun = next(n for n in range(min(len(END) - 1, len(text)), -1, -1) if text.endswith(END[:n]))
            text, self._held = text[: len(text) - begun], text[len(text) - begun :]
        text = text.replace("\x1b", "")[: max(MOST - self._taken, 0)]
        self._taken += len(text)
        return text + end, rest
