"""Every mistake in a file gets its own sentence, at the right place, and hides nothing that is good.

Each ``bad/NAME.toml`` holds one kind of mistake (and mostly a good entry after it); ``bad/NAME.txt`` holds the exact lines
that a check of the book prints, and which entries could still be read.
"""

from __future__ import annotations

import shutil
from pathlib import Path

from library.book.opening import open_book
from tests.each import each

SAMPLES = Path(__file__).parent / "bad"
NAMES = sorted(sample.stem for sample in SAMPLES.glob("*.toml"))


def told(sample: Path, folder: Path) -> str:
    shutil.copy(sample, folder)
    book = open_book(folder)
    lines = [str(finding).removeprefix(f"{folder}/") for finding in book.findings]
    kept = [book.entries[row.id].id for row in book.rows if row.layer == "shop"]
    return "\n".join([*lines, "kept: " + ", ".join(sorted(kept))]) + "\n"


@each("name", NAMES)
def test_the_mistake_is_told_in_these_words(name: str, tmp_path: Path) -> None:
    folder = tmp_path / name
    folder.mkdir()
    assert told(SAMPLES / f"{name}.toml", folder) == (SAMPLES / f"{name}.txt").read_text()


@each("name", NAMES)
def test_every_sample_is_a_mistake_and_names_its_line(name: str) -> None:
    first = (SAMPLES / f"{name}.txt").read_text().splitlines()[0]
    assert first.startswith(f"{name}.toml:")


def test_windows_line_ends_change_no_message(tmp_path: Path) -> None:
    for name in ("decimal-comma", "three-quotes-open", "git-conflict", "unit-of-wrong-kind", "smart-quotes"):
        sample = tmp_path / f"{name}.toml"
        sample.write_bytes((SAMPLES / f"{name}.toml").read_bytes().replace(b"\n", b"\r\n"))
        folder = tmp_path / name
        folder.mkdir()
        assert told(sample, folder) == (SAMPLES / f"{name}.txt").read_text()


def test_all_mistakes_of_all_files_come_at_once_in_the_order_of_files_and_lines(tmp_path: Path) -> None:
    names = ("decimal-comma", "many-at-once", "unit-of-wrong-kind")
    for name in names:
        text = (SAMPLES / f"{name}.toml").read_text()
        (tmp_path / f"{name}.toml").write_text(
            text.replace('"next-tap"', f'"next-{name}"').replace("spiral-tap", name)
        )
    found = [(finding.place.file.stem, finding.place.line) for finding in open_book(tmp_path).findings]
    assert found == [
        ("decimal-comma", 7),
        ("many-at-once", 6),
        ("many-at-once", 7),
        ("many-at-once", 8),
        ("many-at-once", 14),
        ("unit-of-wrong-kind", 7),
    ]
