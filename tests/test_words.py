"""No text that the program ships has a word that was given up, or an example that belongs in tests only.

Walked are the sentences in the code of all three rooms (labels, help, messages, docstrings), the manual page, the
documents, the shipped book, the invented yard, and the stored setup sheets.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterable, Iterator
from pathlib import Path

import pytest

from geometry.quantities import QUANTITIES
from tui.actions import ACTIONS

TOP = Path(__file__).parents[1]
ROOMS = ("geometry", "library", "tui")
KNOWS_THE_OLD_NAMES = TOP / "library" / "book" / "retired.py"
TEXTS = ("*.toml", "*.md", "*.1", "*.txt", "*.html")

WORDS = (
    r"progressive(ly)?",
    r"eccentricly",
    r"relief[_ -]styles?",
    r"tap[_ -]axial[_ -]relief",
    r"axial[_ -]travel",
    r"clearance[_ -]offset",
    r"shop_rule_offset",
    r"rule less exact",
    r"(radial|axial|square)[_ -]cams?",
    r"cam[_ ]per",
    r"cam_falls?(_per_turn)?",
    r"cam (fall|rise|lift)",
    r"cam_lifts?",
    r"(?<!-)dials?",
    r"circles? of holes",
    r"holes beyond",
    r"ratio of the head",
    r"(the )?bench sheets?",
    r"work ?sheets?",
    r"workings",
    r"chip for each tooth",
    r"lip height difference",
    r"point off cent(re|er)",
    r"height of the sharp thread",
    r"minor diameter of the (nut|screw)",
    r"(nut|screw)'s (basic )?minor diameter",
    r"nobody said",
    r"nought",
    r"foretells?",
    r"mend(s|ed|ing)?(?!\.py)",
    r"take it,",
    r"(?<!Commit )each save(?=:)",
)
"""Words that were given up; whatever the case, and not inside another word."""

EXAMPLES = (
    r"3/4-10(?! ?(UNC|BSW))[^|]*\b(land|lead|advances?|travels?)",
    r"8 thou",
    r"three-quarter[- ]ten",
)
"""An example that is a check value of the tests, marked 'common practice, no source', and stands nowhere else."""

ITS_NUMBERS = (r"0?\.200 in", r"0?\.0085")
"""The numbers of that example; on a page that is worked out, another tool's reading may come to the same."""

SPOKEN = (
    r"ugly",
    r"but it works",
    r"lays the grind along",
    r"radial relief that makes",
    r"(set|put) (with a|the) pointer at the edge",
    r"pointer at the edge",
)
"""Sentences that sounded as if somebody were talking."""


def whole(patterns: Iterable[str]) -> re.Pattern[str]:
    """Any of some patterns, whatever the case, and not inside another word."""
    return re.compile(rf"(?<![A-Za-z0-9])(?:{'|'.join(patterns)})(?![A-Za-z0-9])", re.IGNORECASE)


WORKED_OUT = TOP / "tests/library/setup_sheet/pages"
"""The stored setup sheets, whose numbers come from the relations."""

ON_A_PAGE = whole((*WORDS, *SPOKEN, *EXAMPLES))
RETIRED = whole((*WORDS, *SPOKEN, *EXAMPLES, *ITS_NUMBERS))

OLD_TITLES = {
    *("Take it", "Look at it", "All", "Back up", "Words", "Learn", "Drop", "Mine", "Theirs", "Each save"),
    *("Cuts", "Dial", "Dials", "Worksheet", "Work", "Bench sheet"),
}
"""Labels of keys and lines that did not say what they do."""


def sentences(source: str) -> Iterator[tuple[int, str]]:
    """Every text in a piece of code, with its line."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.lineno, node.value


def retired_in(file: Path) -> list[str]:
    """The words in a file that were given up, each with its place."""
    retired = ON_A_PAGE if file.is_relative_to(WORKED_OUT) else RETIRED
    text = file.read_text(encoding="utf-8")
    parts = sentences(text) if file.suffix == ".py" else enumerate(text.splitlines(), 1)
    return [
        f"{file.name}:{line}: {found[0]}"
        for line, part in parts
        for found in retired.finditer(" ".join(part.split()))
    ]


def shipped_texts() -> list[Path]:
    """Every file that carries words to a reader."""
    code = [file for room in ROOMS for file in (TOP / room).rglob("*.py") if file != KNOWS_THE_OLD_NAMES]
    data = [file for room in ROOMS for kind in TEXTS for file in (TOP / room).rglob(kind)]
    pages = [file for kind in TEXTS for file in WORKED_OUT.rglob(kind)]
    return [*code, *data, *pages, TOP / "README.md", TOP / "DEVELOPERS.md"]


def test_every_kind_of_text_is_walked() -> None:
    names = {file.relative_to(TOP).as_posix() for file in shipped_texts()}
    assert names > {
        "README.md",
        "DEVELOPERS.md",
        "tui/man/heelclear.1",
        "tui/view/help_page.py",
        "tui/actions.py",
        "geometry/sentences.py",
        "library/shipped/families.toml",
        "library/demo/ferry-yard/ferry-yard.toml",
        "library/book/README.md",
        "tests/library/setup_sheet/pages/tap.txt",
    }


def test_no_shipped_text_has_a_word_that_was_given_up() -> None:
    assert [found for file in shipped_texts() for found in retired_in(file)] == []


@pytest.mark.parametrize(
    ("name", "planted"),
    [
        ("a.py", 'HELP = "Read the dial at the heel."'),
        ("a.py", 'def f() -> None:\n    """Follow the radial\n    cam."""'),
        ("a.py", 'x = f"{1} progressive"'),
        ("a.toml", 'relief_style = "flat"'),
        ("a.toml", "notes = 'Ugly, but it works.'"),
        ("a.md", "A 3/4-10 tap with a land of 0.200 in"),
        ("a.md", "Read 8 thou on it."),
        ("a.toml", 'notes = "Read a lead of .0085 in."'),
        ("a.md", "0.0085 in of lead over the land"),
        ("a.1", "the worksheet"),
        ("a.html", "<h1>Bench sheet</h1>"),
    ],
)
def test_a_planted_word_is_found(tmp_path: Path, name: str, planted: str) -> None:
    file = tmp_path / name
    file.write_text(planted, encoding="utf-8")
    assert retired_in(file)


@pytest.mark.parametrize(
    "text",
    [
        "recommended",
        "3/4-10 UNC",
        "58 thou",
        "radial throw",
        "10.2000 in",
        "mendable",
    ],
)
def test_a_word_that_only_holds_one_is_left_alone(text: str) -> None:
    assert RETIRED.search(text) is None


def test_keys_say_what_they_do() -> None:
    assert {one.title for one in ACTIONS} & OLD_TITLES == set()


def test_the_min_and_max_of_a_table_are_called_so() -> None:
    old = re.compile(r"\b(least|greatest|deepest|most)\b", re.IGNORECASE)
    assert [row.title for row in QUANTITIES.values() if old.search(row.title)] == []
