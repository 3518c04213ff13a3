"""What the reader of the book complains of, in the words of a form: no brackets, braces or keys of its files."""

from __future__ import annotations

import re

from library.calc.wording import by_title
from library.issue import Issue

_EMPTY = re.compile(
    r"This \[\[\w+\]\] has (?:no (?P<key>\w+)|neither a (?P<either>\w+) nor (?P<nor>[\w ]+))\."
)

_SAID_OTHERWISE: tuple[tuple[re.Pattern[str], str], ...] = (
    (
        re.compile(r"This (?:value|line) has no source\..*"),
        "It is to be said where this is from: shop, common practice, from memory, or the id of a source of the book.",
    ),
    (
        re.compile(r"This line has no text\..*"),
        "There is no text here, and the line below says where it is from. Write the text, or empty that line.",
    ),
    (
        re.compile(r"There is no source ('.*'|\".*\") in the book\. Add a \[\[.*"),
        r"There is no source \1 in the book. Write shop, common practice, from memory, or the id of one that is there.",
    ),
    (
        re.compile(r"There is no (\w+) ('.*'|\".*\") in the book\. Add a \[\[.*"),
        r"There is no \1 \2 in the book. Write one that is there, or empty the line.",
    ),
    (
        re.compile(r"There is no quantity ('.*'|\".*\")\. It can be .*"),
        r"There is no quantity \1. Write its name in the files, such as rake_angle; the words explained have them all.",
    ),
)
"""What a person reads who never saw a file, by what the reader says of one."""

_NOUNS = {"setup": "set-up", "recommended_wheel": "recommended wheel"}


def empty_line(issue: Issue) -> str:
    """The key that a table as a whole is complained of for not having; empty where it is anything else.

    Example:
        >>> from library.issue import Issue
        >>> empty_line(Issue("thread", "", "error", "This [[thread]] has no diameter."))
        'diameter'
    """
    found = _EMPTY.match(issue.wrong)
    return (found["key"] or found["either"]) if found else ""


def as_in_a_form(wrong: str, fix: str = "", *, is_named: bool = False) -> str:
    """A complaint as it stands under a line of a form.

    Args:
        wrong: what is wrong, a sentence about a key of a file.
        fix: what to do about it there; empty where the first has it in it.
        is_named: whether the line takes the names of quantities as the files have them, so that they stay.

    Example:
        >>> as_in_a_form("This line has no text.", 'Add text = "...".')
        'There is no text here, and the line below says where it is from. Write the text, or empty that line.'
        >>> as_in_a_form("There is no series 'x'.", "Leave it out, and give thread_form instead.")
        "There is no series 'x'. Leave it out, and give thread form instead."
    """
    said = f"{wrong} {fix if is_named else by_title(fix)}".strip()
    if found := _EMPTY.match(said):
        return (
            f"Fill in this line, or that of the {found['nor']}."
            if found["nor"]
            else "This line must not be empty."
        )
    for pattern, otherwise in _SAID_OTHERWISE:
        if pattern.fullmatch(said):
            said = pattern.sub(otherwise, said)
    for noun, spoken in _NOUNS.items():
        said = said.replace(f"There is no {noun} ", f"There is no {spoken} ")
    return said
