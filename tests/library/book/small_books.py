"""Files of a shop with nothing but taps that are all alike, and what the cache keeps of them."""

from __future__ import annotations

from pathlib import Path

from library.book.folders import cache_folder

ENTRY = """
[[entry]]
id = "{name}"
family = "tap"
title = "Tap {name}"
work_material = "bronze"
synonyms = ["gun tap"]
rake_angle = {{ low = "3 deg", usual = "5 deg", high = "8 deg", source = "shop" }}
land_width = "0.25 D"
"""


def write(file: Path, *names: str) -> None:
    """A file with one tap for each name."""
    file.write_text("schema = 1\n" + "".join(ENTRY.format(name=name) for name in names))


def cache_files() -> list[Path]:
    return sorted(path for path in cache_folder().rglob("*") if path.is_file())


def the_index() -> Path:
    (file,) = (file for file in cache_files() if file.name == "index")
    return file
