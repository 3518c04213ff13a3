"""What a book says of a thread."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from library.book.model import Citation, Layer
from library.issue import NOWHERE, Place

NOT_TOLD = Citation("missing")
"""Of a thread whose table names no source."""


@dataclass(frozen=True)
class OwnThread:
    """One ``[[thread]]`` table of a book. Every measure is text with its unit, as it was written.

    Attributes:
        id: that of the standard thread that it is laid over, or of a thread of its own.
        title: the designation; empty where nothing is said, and the id where there is no standard thread either.
        said: what it says by the fields of ``library.threads.Thread``; a measure that could not be read is an empty
            text, so that no other number is taken for the shop's.
        series: the id of the standard series that it belongs to; empty where nothing is said.
        thread_form: the shape of the thread, where nothing is said of a series.
        thread_taper: how the thread runs, where nothing is said of a series.
        citation: where its numbers are from.
        unread: whether a part of its table could not be read; then it gives no number at all.
    """

    id: str
    title: str = ""
    said: Mapping[str, object] = field(default_factory=dict)
    series: str = ""
    thread_form: str = ""
    thread_taper: str = ""
    citation: Citation = NOT_TOLD
    unread: bool = False
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shop"
    place: Place = NOWHERE
