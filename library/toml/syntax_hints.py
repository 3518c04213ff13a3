"""Syntax hints: patterns of common mistakes on one line, each with what is wrong and what to write instead.

What a person did wrong on a line is nearly always one of a few things; each has its row here.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from library.toml.patterns import SHORT_STRING

LONGEST = 1000
"""Characters in a line that is looked at so closely."""

STRINGS = re.compile(rf"{SHORT_STRING}|\#[^\n]*")
"""Texts and remarks in a line."""


@dataclass(frozen=True)
class Rule:
    """One mistake: ``looks`` is searched for in the line, with the insides of its texts blotted out."""

    looks: re.Pattern[str]
    wrong: str
    fix: str
    raw: bool = False


@dataclass(frozen=True)
class Hint:
    """A match of a rule: the column it begins in, what is wrong, and what to do."""

    column: int
    wrong: str
    fix: str


def _rule(looks: str, wrong: str, fix: str, *, raw: bool = False) -> Rule:
    return Rule(re.compile(looks, re.VERBOSE), wrong, fix, raw)


_UNIT = r"""(?P<unit>\ ?(?:[A-Za-z\u00b0\u00b5%][A-Za-z0-9/.\u00b0]*|["']))?"""
_NUMBER = r"(?P<number>[-+]?(?:(?:\d+[ -])?\d+/\d+|\d+\.?\d*|\.\d+))"
_ENDS = r"(?=[ \t]*(?:[,}\]\#]|$))"
_WRITE_IT = "Write {suggestion}."

FIRST = (
    _rule(rf"""=[ \t]*{_NUMBER}(?P<unit>\ ?["']){_ENDS}""", "{found} has no quotes, and an inch mark.", _WRITE_IT, raw=True),
    _rule(r"""=[ \t]*"[^"=]*"[^",={\[]*"[ \t]*(?:[,}]|$)""", "The text ends at its second quote, but the line goes on.",
          'For inches write in, such as "3/8 in"; a quote inside a text is written \\".', raw=True),
)  # fmt: skip
"""What is looked for before quotes and brackets are counted."""

OTHERS = (
    _rule(r"=[ \t]*$", "Nothing stands after the equals sign.", "Write a value there, or remove the line."),
    _rule(r"=[ \t]*=", "There are two equals signs.", "Remove one of them."),
    _rule(r"=[ \t]*(?P<found>[\u2018-\u201f\u00ab\u00bb])|(?P<late>[\u2018-\u201f])[ \t]*$",
          "The quotes are curly ones.", 'Type straight quotes: "like this".', raw=True),
    _rule(rf"=[ \t]*(?P<number>[-+]?\d+,\d+){_UNIT}{_ENDS}",
          "{found} has a decimal comma and no quotes.", _WRITE_IT),
    _rule(rf"=[ \t]*(?P<number>[-+]?(?:\d+[ -])?\d+/\d+){_UNIT}{_ENDS}",
          "The fraction {found} has no quotes.", _WRITE_IT),
    _rule(rf"=[ \t]*{_NUMBER}{_UNIT}(?:[ ]\d+{_UNIT.replace('unit', 'second')})?{_ENDS}",
          "{found} has no quotes; only a bare number may stand without them.", _WRITE_IT),
    _rule(r"""=[ \t]*[^"'\s\[{=][^"'\[{=]*["'][ \t]*(?:$|[,}\]\#])""",
          "A quote is missing where the text begins.", 'Put a " before it.'),
    _rule(r"=[ \t]*(?P<number>[^\W\d][^,}\]\#\"'={]*?)[ \t]*(?:$|[,}\]\#])",
          "The text {found} has no quotes.", _WRITE_IT),
    _rule(r"=[ \t]*\[(?:[^\]]*,)?[ \t]*(?P<number>[^\W\d][\w -]*?)[ \t]*[,\]]",
          "The text {found} has no quotes.", _WRITE_IT),
    _rule(r"\{[^}]*,[ \t]*\}", "A comma stands before the closing brace.", "Remove that comma."),
    _rule(r"""\{[^}]*["'\d\]][ \t]+[\w-]+[ \t]*=""", "A comma is missing between two keys in braces.",
          "Put a comma between them."),
    _rule(r"""\[[^\]]*["'][ \t]+["'][^\]]*\]""", "A comma is missing between two texts in brackets.",
          "Put a comma between them."),
    _rule(r"""^[ \t]*[\w-]+[ \t]*=[ \t]*(?:"[^"]*"|'[^']*'|[\d.]+|\{[^}]*\}|\[[^\]]*\])[ \t]*(?P<found>[,;])[ \t]*$""",
          "The line ends with '{found}', which does not belong there.", "Remove it."),
    _rule(r"""=[ \t]*"[^"]*"[ \t]*[^\s,}\]\#]""", "The line goes on after the text has ended.",
          "Remove what follows the second quote, or put # before it if it is a remark."),
    _rule(r"^[ \t]*(?P<number>[\w-]+)[ \t]*:", "A colon stands where an equals sign belongs.",
          "Write {number} = and then the value."),
    _rule(r"^[ \t]*(?P<number>[A-Za-z_-]+(?:[ ]+[A-Za-z_-]+)+)[ \t]*=", "The key {found} has a space in it.",
          "Write it {joined}."),
    _rule(r"""^[ \t]*(?P<number>[\w-]+)[ \t]+["'\d{\[]""", "The equals sign is missing.",
          "Write {number} = and then the value."),
    _rule(r"^[ \t]*=", "The key is missing before the equals sign.", "Write its name there, or remove the line."),
    _rule(r"^[ \t]*(?P<number>[\w-]*[^\W_a-zA-Z0-9][\w-]*)[ \t]*=", "The key {found} has other letters than a to z.",
          "Write it with plain letters, digits, - and _, or put it in quotes."),
)  # fmt: skip


def blotted(line: str) -> str:
    """A line with the insides of its texts and its remark blotted out, so that only its own signs are left.

    Example:
        >>> blotted('title = "a = b" # c')
        'title = "_____"'
    """

    def blot(found: re.Match[str]) -> str:
        text = found[0]
        if text.startswith("#"):
            return ""
        return (
            text[0] + "_" * (len(text) - 2) + text[-1] if is_closed(text) else text[0] + "_" * (len(text) - 1)
        )

    return STRINGS.sub(blot, line).rstrip()


def is_closed(text: str) -> bool:
    """Whether a text that a line begins also ends there."""
    return len(text) > 1 and text[-1] == text[0]


def hint_for(line: str, rules: tuple[Rule, ...]) -> Hint | None:
    """The first of the rules that fits a line."""
    if len(line) > LONGEST:
        return None
    plain = blotted(line)
    for rule in rules:
        found = rule.looks.search(line if rule.raw else plain)
        if found is None:
            continue
        words = _words(found)
        begins = next(
            (found.start(name) for name in ("number", "found", "late") if words.get(name)), found.start()
        )
        return Hint(begins + 1, rule.wrong.format_map(words), rule.fix.format_map(words))
    return None


def _words(found: re.Match[str]) -> dict[str, str]:
    """What a rule's sentences may speak of: what stands there, and how to write it."""
    words = {name: text or "" for name, text in found.groupdict().items()}
    number, unit = words.get("number", ""), words.get("unit", "")
    rest = found[0][found[0].find(number) + len(number) :] if "second" in words else unit
    words["joined"] = re.sub(r"[ ]+", "_", number)
    whole = (number + rest).strip()
    words["suggestion"] = '"' + _in_order(whole) + '"'
    words["found"] = words.get("found") or whole
    return words


def _in_order(measure: str) -> str:
    """A measure as the book wants it: a point for the comma, ``in`` for the inch mark, a 0 before the point."""
    text = re.sub(r"(\d),(\d)", r"\1.\2", measure)
    text = re.sub(r"^([-+]?)\.", r"\g<1>0.", text)
    return re.sub(r'(\d)[ ]?"$', r"\1 in", text)
