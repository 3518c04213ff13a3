"""What all tests share: property tests of a stated size, the developer's own files hidden, shipped files read once."""

from __future__ import annotations

import compileall
import gc
import multiprocessing
import os
import re
from collections.abc import Iterator
from contextlib import suppress
from itertools import count
from pathlib import Path
from typing import Any
from zlib import crc32

import pytest
from hypothesis import HealthCheck, settings

from library.book import book_reader
from library.book.fetching import Signature
from library.book.folders import shipped_folder
from library.book.loader import Loader
from library.book.model import Layer
from library.book.rows import Row, extents_of

for name, examples in (("quick", 25), ("server", 200), ("long", 5000)):
    settings.register_profile(
        name,
        max_examples=examples,
        deadline=None,
        suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
    )
settings.load_profile(os.environ.get("HEELCLEAR_TEST_PROFILE", "quick"))

SHIPPED = shipped_folder()
PRIVATE_VARIABLES = ("HEELCLEAR_LIBRARY", "NO_COLOR", "VISUAL", "EDITOR", "COLORTERM", "TMUX")


def pytest_configure(config: pytest.Config) -> None:
    """Translate source and tests once, on all cores, before each of the workers does it for itself."""
    gc.disable()
    if hasattr(config, "workerinput") or not config.getoption("numprocesses", None):
        return
    cores = os.cpu_count() or 1
    started = [multiprocessing.get_context("fork").Process(target=_translate, args=(config, place, cores))
               for place in range(cores)]  # fmt: skip
    for one in started:
        one.start()
    for one in started:
        one.join()


def _translate(config: pytest.Config, place: int, shares: int) -> None:
    """Translate a share of the source and of the tests, these with their assertions as pytest takes them apart.

    How pytest keeps them is its own affair: where another version does it in another way, each worker translates
    for itself, which takes it ten seconds more and changes nothing else.
    """
    here = Path(__file__).parent
    rooms = (here.with_name(name) for name in ("geometry", "library", "tui"))
    for path in sorted(one for room in rooms for one in room.rglob("*.py"))[place::shares]:
        compileall.compile_file(path, quiet=2)
    with suppress(AttributeError, ImportError, TypeError, OSError):
        from _pytest.assertion import rewrite

        for path in sorted((*here.rglob("test_*.py"), *here.rglob("conftest.py")))[place::shares]:
            cache = rewrite.get_cache_dir(path)
            kept = cache / (path.stem + rewrite.PYC_TAIL)
            if rewrite._read_pyc(path, kept) is None:
                cache.mkdir(exist_ok=True)
                digest, code = rewrite._rewrite_test(path, config)
                rewrite._write_pyc(config.stash[rewrite.assertstate_key], code, digest, kept)


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """Half as many workers again as there are cores: programs under test in a terminal sleep much of their time."""
    return max(2, (os.cpu_count() or 2) * 3 // 2)


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Mix the files for the workers, in the same way each time: those that wait for a terminal would all come last.

    The longest test of all comes first: the recipes, each of whose runs is a whole suite.
    """
    if hasattr(config, "workerinput"):
        items.sort(
            key=lambda item: (
                item.path.name != "test_recipes.py",
                crc32(str(item.path.relative_to(config.rootpath)).encode()),
            )
        )


def pytest_collection_finish() -> None:
    """Look for garbage among what the tests make only: thousands of collected tests never become any."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(20_000, 20, 50)
    gc.enable()


_FOLDERS = count()


def _new_folder(factory: pytest.TempPathFactory, name: str) -> Path:
    """A folder of its own for a test. That of pytest looks through all of the thousands beside it for the next number."""
    folder = factory.getbasetemp() / f"{next(_FOLDERS)}-{name}"
    folder.mkdir()
    return folder


@pytest.fixture
def tmp_path(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A new folder, named after its test as pytest names it."""
    return _new_folder(tmp_path_factory, re.sub(r"\W", "_", request.node.name)[:30])


@pytest.fixture(autouse=True)
def an_empty_home(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Every test runs with an empty home, so that it neither reads nor changes the developer's own files."""
    home = _new_folder(tmp_path_factory, "home")
    monkeypatch.setenv("HOME", str(home))
    for name, folder in (
        ("XDG_DATA_HOME", "data"),
        ("XDG_CONFIG_HOME", "config"),
        ("XDG_STATE_HOME", "state"),
        ("XDG_CACHE_HOME", "cache"),
    ):
        monkeypatch.setenv(name, str(home / folder))
    for name in PRIVATE_VARIABLES:
        monkeypatch.delenv(name, raising=False)
    return home


@pytest.fixture(scope="session", autouse=True)
def shipped_files_read_once() -> Iterator[None]:
    """A file of the shipped book is read and checked once a process, not once for each test that opens the book.

    What it gives depends on its text and on the ids that other files have, and it is kept by both. Files of a shop,
    and shipped ones that a test made for itself, are read each time.
    """
    read, pairs, make = vars(book_reader)["_read"], vars(book_reader)["_pairs"], Loader.make
    gather = book_reader.gather
    kept: dict[object, Any] = {}

    def read_once(path: Path, layer: Layer, known: book_reader.Known, *rest: object) -> Any:
        if not path.is_relative_to(SHIPPED):
            return read(path, layer, known, *rest)
        key = ("read", path, layer, Signature.of(path.stat()), frozenset(known.items()))
        if key not in kept:
            found = read(path, layer, known, *rest)
            if found.note.signature.size < 0:
                return (
                    found  # It changed a moment ago, and may change again without its time stamp showing it.
                )
            kept[key] = found
        return kept[key]

    def pairs_once(path: Path, layer: Layer, header: re.Pattern[str]) -> Any:
        if not path.is_relative_to(SHIPPED):
            return pairs(path, layer, header)
        key = ("pairs", path, layer, Signature.of(path.stat()), header)
        if key not in kept:
            kept[key] = pairs(path, layer, header)
        return kept[key]

    def gathered_once(files: book_reader.Files, before: book_reader.Kept, *, for_list: bool = False) -> Any:
        """The whole of a book that has nothing but the shipped files."""
        if before or not all(path.is_relative_to(SHIPPED) for path, *_ in files):
            return gather(files, before, for_list=for_list)
        key = ("book", tuple(files), for_list)
        if key not in kept:
            kept[key] = gather(files, before, for_list=for_list)
        index, reads, context = kept[key]
        return index, list(reads), context

    def make_once(loader: Loader, row: Row) -> object:
        """What is made of a table of the shipped book, which is frozen, as long as its file is as it was."""
        try:
            notes = [vars(loader)["_notes"][extent.file] for extent in extents_of(row)]
        except (TypeError, ValueError, IndexError):  # A cache that a test has spoilt.
            return make(loader, row)
        if not all(note.path.is_relative_to(SHIPPED) for note in notes):
            return make(loader, row)
        key = ("make", row, *((note.path, note.signature, Signature.of(note.path.stat())) for note in notes))
        if key not in kept:
            kept[key] = make(loader, row)
        return kept[key]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(book_reader, "_read", read_once)
        patch.setattr(book_reader, "_pairs", pairs_once)
        patch.setattr(book_reader, "gather", gathered_once)
        patch.setattr(Loader, "make", make_once)
        yield
