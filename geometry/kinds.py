"""The kinds of tool that calculations tell apart.

A kind is no family. Families are data of the book, and a shop makes its own; a kind is a way of being ground that the
calculations know, and a family of the book says which one is its own. Any number of families may be of one kind: a
spade drill is ground like a ``twist-drill``. Each kind bears the name of the tools that it is first met on. They are as
many as there are tools with another set of calculations, or with the same ones in another order of importance: a
subland drill has a land of its own for each diameter, so its lands come before what follows from one relief under all
steps. An end mill is ground round its outside as well as on its end, and a counterbore on its end alone. Common
practice, no source.
"""

from __future__ import annotations

EVERY_KIND = (
    "tap",
    "countersink",
    "step-drill",
    "twist-drill",
    "reamer",
    "counterbore",
    "centre-drill",
    "subland-drill",
    "end-mill",
)
"""All of them, for a calculation that serves whatever is ground."""

NOT_GROUND_DOWN = frozenset({"tap"})
"""Those that are called by another size than their edges run on: the crests of a tap stand over its thread."""
