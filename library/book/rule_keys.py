"""Reading the keys by which a rule says for which tools it is.

A key that cannot be read makes the rule one for nothing: without its condition it would be taken for more tools than it was
meant for.
"""

from __future__ import annotations

from library.book.diagnostics import Location, shown
from library.book.fields import Reader, one_line, want_known

NONE: tuple[str, ...] = ()
"""What a condition means that could not be read, or that names nothing: no tool at all."""


EVERY_TOOL = ("*",)
"""What stands in place of tools to be left out that could not be read."""


def some_words(raw: object, location: Location) -> tuple[str, ...]:
    """One text, or several."""
    if isinstance(raw, str):
        raw = [raw]
    if not isinstance(raw, list):
        location.complain(
            f"This is {shown(raw)}; a text or a list of texts is wanted.",
            'Write it as "first" or ["first", "second"].',
        )
        return NONE
    found = [one_line(one, location.at(number)) for number, one in enumerate(raw)]
    if not found:
        location.complain(
            "This names nothing, so the rule is for no tool.", "Name something, or leave it out."
        )
    return NONE if None in found else tuple(str(one) for one in found)


def words_left_out(raw: object, location: Location) -> tuple[str, ...]:
    """The same of tools that a rule is not for; where it cannot be read, all of them are left out."""
    return () if raw == [] else some_words(raw, location) or EVERY_TOOL


def some_of(array: str) -> Reader:
    """A reader for one id of a table of another kind, or for several."""

    def read(raw: object, location: Location) -> tuple[str, ...]:
        found = some_words(raw, location)
        for number, name in enumerate(found):
            want_known(array, name, location.at(number) if isinstance(raw, list) else location)
        return found

    return read


def some_out_of(choices: str) -> Reader:
    """A reader for one of several words, or for several of them.

    Args:
        choices: the words, with blanks between them.
    """

    def read(raw: object, location: Location) -> tuple[str, ...]:
        found = some_words(raw, location)
        for word in found:
            if word not in choices.split():
                known = ", ".join(choices.split())
                location.complain(f"{shown(word)} is not one of {known}.", "Write one of them.")
                return NONE
        return found

    return read


def want_values(made: object, location: Location) -> None:
    """Complain of a rule that gives nothing."""
    if not getattr(made, "values", None) and not location.table.unread:
        location.complain(
            "This rule gives no value.",
            'Add one, such as flutes = { usual = 4, source = "shop" }.',
            "warning",
        )
