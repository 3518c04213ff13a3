"""Turn the error of the TOML parser into what a person did wrong, in the words of a shop.

``tomllib`` says on which line it stopped. From there it is looked for what a person did wrong, which may be on an
earlier line: a bracket or a text that was opened and not closed.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from library.toml.syntax_hints import FIRST, OTHERS, STRINGS, Rule, blotted, hint_for, is_closed


@dataclass(frozen=True)
class ParseError:
    """Lines of one table that cannot be read, and why; an ``Issue`` once it is known of which file and table.

    Attributes:
        line: counted from 1 at the table's first.
        column: counted from 1.
        wrong: what is wrong, a sentence.
        fix: what to do, a sentence.
        key: the key on that line, if it has one.
        last: the last line of what cannot be read.
        apart: whether the rest of the table can be read without these lines.
    """

    line: int
    column: int
    wrong: str
    fix: str
    key: str = ""
    last: int = 0
    apart: bool = True


_SPOT = re.compile(r"\(at line (?P<line>\d+), column (?P<column>\d+)\)$")
_PAIR = re.compile(r"^[ \t]*(?P<key>[A-Za-z0-9_-]+)[ \t]*[=:]")
_MARK = re.compile(r"(?:<{7}|={7}|>{7}|\|{7})(?:[ \t]|\r?$)")
_THREE = re.compile(r'"""|\'\'\'')


def explain(lines: list[str], message: str) -> ParseError:
    """Say what is wrong with a table that ``tomllib`` refused.

    Args:
        lines: of the table.
        message: what ``tomllib`` said, with its line and column.

    Example:
        >>> mistake = explain(["rake_angle = 8 deg"], "Expected a newline (at line 1, column 15)")
        >>> mistake.wrong, mistake.fix
        ('8 deg has no quotes; only a bare number may stand without them.', 'Write "8 deg".')
    """
    found = _SPOT.search(message)
    line = min(int(found["line"]), len(lines)) if found else len(lines)
    column = int(found["column"]) if found else 1
    if "recursion" in message:
        line = (
            max(range(len(lines)), key=lambda number: lines[number].count("[") + lines[number].count("{")) + 1
        )
        return _told(lines, line, 1, "Brackets lie too deep within each other.", "Remove them.")
    return (
        _unclosed_text(lines, message)
        or _seen(lines, line, FIRST)
        or _missing_quote(lines, line, message)
        or _unclosed_brackets(lines, line)
        or _at_header(lines, line)
        or _known_by_message(lines, line, column, message)
        or _seen(lines, line, OTHERS)
        or _told(lines, line, column, *_GENERAL)
    )


_GENERAL = ("This line cannot be read.", 'Write it as key = "text", or begin it with # if it is a remark.')


def _seen(lines: list[str], line: int, rules: tuple[Rule, ...]) -> ParseError | None:
    hint = hint_for(lines[line - 1], rules)
    return _told(lines, line, hint.column, hint.wrong, hint.fix) if hint else None


def is_conflict_mark(line: str) -> bool:
    """Whether a line is one that git leaves where two versions of a file disagree."""
    return _MARK.match(line) is not None


def key_of(line: str) -> str:
    """The key that a line begins with, or nothing."""
    found = _PAIR.match(line)
    return found["key"] if found else ""


def _told(lines: list[str], line: int, column: int, wrong: str, fix: str, *, last: int = 0) -> ParseError:
    key = key_of(lines[line - 1])
    return ParseError(
        line, column, wrong, fix, key, last or line, apart=not lines[line - 1].lstrip().startswith("[")
    )


def _unclosed_text(lines: list[str], message: str) -> ParseError | None:
    if "Unterminated" not in message and not message.startswith(('Expected \'"""\'', "Expected \"'''\"")):
        return None
    for number in range(len(lines), 0, -1):
        begins = _THREE.search(lines[number - 1])
        if begins:
            return ParseError(number, begins.start() + 1, "The text that begins here with three quotes is not closed.",
                           "Put three quotes after its end.", key_of(lines[number - 1]), len(lines))  # fmt: skip
    return None


def _unclosed_brackets(lines: list[str], line: int) -> ParseError | None:
    """A list or braces that were opened on this line or an earlier one and not closed."""
    for number in range(line, 0, -1):
        text = blotted(lines[number - 1])
        for opens, closes in (("{", "}"), ("[", "]")):
            if not re.match(r"[ \t]*[\w-]+[ \t]*=[ \t]*[\[{]", text) or text.count(opens) <= text.count(
                closes
            ):
                continue
            last = _closing_line(lines, number, opens, closes)
            if opens == "[" and last >= line and number < line:
                continue
            wrong, fix = _BRACKETS[opens, last > number]
            return _told(lines, number, text.index(opens) + 1, wrong, fix, last=last)
        if number < line and not re.search(r"[\[{,]$", text) and text:
            return None
    return None


_BRACKETS = {
    ("{", True): ("The value in braces goes over several lines.",
                  "Write it on one line, or as a table of its own below the entry."),
    ("{", False): ("The brace that opens here is not closed.", "Put } at its end."),
    ("[", True): ("The list that begins here cannot be read.", 'Write it as ["first", "second"].'),
    ("[", False): ("The bracket that opens here is not closed.", "Put ] at its end."),
}  # fmt: skip


def _closing_line(lines: list[str], line: int, opens: str, closes: str) -> int:
    """The line on which brackets that were opened on ``line`` end; the same line where none does."""
    for number in range(line + 1, len(lines) + 1):
        text = blotted(lines[number - 1])
        if text.lstrip().startswith("[[") or (
            opens in text and text.find(opens) < (text + closes).find(closes)
        ):
            break
        if closes in text:
            return number
    return line


def _at_header(lines: list[str], line: int) -> ParseError | None:
    text = lines[line - 1]
    if is_conflict_mark(text):
        return ParseError(line, 1, "A mark of git stands here; two versions of these lines disagreed.",
                       "Keep one version, and delete the lines of <<<<<<<, ======= and >>>>>>>.", last=line)  # fmt: skip
    found = re.match(r"[ \t]*\[+[ \t]*(?P<name>[\w.-]*)", text)
    if not found:
        return None
    name = found["name"] or "entry"
    right = f"[{name}]" if "." in name else f"[[{name}]]"
    return _told(
        lines, line, 1, "The brackets of this table are not right.", f"Write {right} alone on the line."
    )


def _known_by_message(lines: list[str], line: int, column: int, message: str) -> ParseError | None:
    key = key_of(lines[line - 1])
    if message.startswith(("Cannot overwrite", "Duplicate inline", "Cannot mutate", "Cannot declare")):
        return _told(lines, line, 1, f"The key {key} is given twice." if key else "A key is given twice.",
                     "Keep one of the two.")  # fmt: skip
    if message.startswith(("Unescaped", "Invalid hex", "Escaped character")):
        return _told(lines, line, column, "A backslash stands in the text, where it has a meaning of its own.",
                     "Write / or two backslashes.")  # fmt: skip
    return None


def _missing_quote(lines: list[str], line: int, message: str) -> ParseError | None:
    suspects = range(1, len(lines) + 1) if message.startswith('Expected "\'"') else (line,)
    for number in suspects:
        text = lines[number - 1]
        strings = [found for found in STRINGS.finditer(text) if not found[0].startswith("#")]
        last = strings[-1] if strings else None
        if last is None or "=" not in text or re.search("[\u2018-\u201f]", last[0]) or is_closed(last[0]):
            continue
        begins = text[: last.start()].rstrip().endswith(("=", "[", ","))
        wrong = "A quote is missing where the text ends." if begins else "A quote is missing on this line."
        fix = 'Put a " at its end.' if begins else "Put a quote before and after each text."
        return _told(lines, number, last.start() + 1 if begins else 1, wrong, fix)
    return None
