"""Whatever bytes a file has, it is read to its end in a little memory, and the good files beside it stay."""

from __future__ import annotations

import random
import resource
import signal
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from library.book.fetching import LARGEST_FILE
from library.book.opening import open_book
from library.book.parsing import decoded, parse
from library.issue import Issue
from library.toml.limits import LONGEST_LINE
from library.toml.pieces import split
from library.toml.scanner import positions
from tests.each import each
from tests.examples import every_third_at_once

SHIPPED = Path(__file__).parents[3] / "library" / "shipped"
SAMPLES = sorted([*SHIPPED.glob("*.toml"), *(Path(__file__).parent / "bad").glob("*.toml")])
FILE = Path("any.toml")

SNIPPETS = [b'"', b'"""', b"'''", b"[", b"]", b"[[", b"]]", b"{", b"}", b"=", b",", b"#", b"\\", b"\n", b"\r", b"\0", b"\xff", b"\xe2\x80\xae",
            b"[[entry]]", b"[entry]", b"id = ", b"<<<<<<< a\n", b"=======\n", b">>>>>>> b\n", b"\xef\xbb\xbf", b"x = 1979-05-27", b"inf"]  # fmt: skip


HANGS = 120.0
"""Seconds of the processor after which a reading counts as one without an end; good ones need one or two."""


@contextmanager
def to_its_end() -> Iterator[None]:
    """Fail, even out of a regular expression's return, when the block does not come to an end by itself."""

    def late(*_: object) -> None:
        raise TimeoutError("this has no end")

    before = signal.signal(signal.SIGVTALRM, late)
    signal.setitimer(signal.ITIMER_VIRTUAL, HANGS)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        signal.signal(signal.SIGVTALRM, before)


def read(raw: bytes) -> list[Issue]:
    """Read a file of these bytes and see that all that is told of it is in it."""
    with to_its_end():
        parsed = parse(raw, FILE, "shop")
    text = decoded(raw)
    lines = text.split("\n")
    for finding in parsed.findings:
        assert 1 <= finding.place.line <= len(lines)
        assert finding.place.column >= 1
        assert finding.wrong.endswith((".", "?"))
        assert finding.fix
        assert str(finding).isprintable()
    return parsed.findings


def mutated(raw: bytes, chance: random.Random) -> bytes:
    """The bytes with a few random cuts, copies and insertions."""
    for _ in range(chance.randint(1, 4)):
        start = chance.randrange(len(raw) + 1)
        end = min(len(raw), start + chance.choice([0, 0, 1, 1, 5, 40, 300]))
        between = chance.choice(
            [b"", b"", chance.choice(SNIPPETS), chance.randbytes(chance.randint(1, 4)), raw[start:end] * 2]
        )
        raw = raw[:start] + between + raw[end:]
    return raw


@given(st.binary(max_size=400))
@example(b"\xff\xfe")
@example(b"[[entry]]\n[[entry]")
def test_any_bytes_can_be_read(raw: bytes) -> None:
    read(raw)


@given(st.lists(st.sampled_from(SNIPPETS), max_size=40).map(b"".join))
def test_any_mixture_of_signs_can_be_read(raw: bytes) -> None:
    read(raw)


@each("sample", SAMPLES, lambda sample: sample.stem)
def test_a_file_with_random_damage_can_be_read(sample: Path) -> None:
    chance = random.Random(sample.stem)
    raw = sample.read_bytes()
    for _ in range(4):
        read(mutated(raw[:20_000], chance))


@given(st.lists(st.sampled_from(SNIPPETS), max_size=40).map(b"".join))
def test_the_pieces_of_a_file_are_the_file(raw: bytes) -> None:
    text = decoded(raw)
    pieces = split(text)
    assert "".join(text[piece.start : piece.end] for piece in pieces) == text
    assert [piece.line for piece in pieces] == [1 + text.count("\n", 0, piece.start) for piece in pieces]


def test_one_damaged_table_leaves_all_others_of_the_shipped_files_readable() -> None:
    chance = random.Random(1)
    for sample in SHIPPED.glob("*.toml"):
        raw = sample.read_bytes()
        whole = [sheet.id for sheet in parse(raw, FILE, "shop").tables if sheet.id]
        pieces = [piece for piece in split(decoded(raw)) if piece.array]
        for _ in range(4):
            piece = chance.choice(pieces)
            text = decoded(raw)
            lines = text[piece.start : piece.end].split("\n")
            lines.insert(1, 'rake_angle = = "not closed')
            broken = text[: piece.start] + "\n".join(lines) + text[piece.end :]
            parsed = parse(broken.encode(), FILE, "shop")
            kept = [sheet.id for sheet in parsed.tables if sheet.id and not sheet.broken and not sheet.unread]
            assert len(parsed.findings) >= 1
            assert len(set(whole) - set(kept)) <= 1, (sample.name, piece.line)


BOMBS: dict[str, Callable[[], bytes]] = {
    "dotted keys": lambda: b"\n".join(b".".join([b"a"] * 2000) + b".k%d = 1" % n for n in range(250)),
    "dotted header": lambda: b"\n".join(b"[" + b".".join([b"a"] * 2000) + b".k%d]" % n for n in range(250)),
    "dotted keys in braces": lambda: b"\n".join(b"k%d = { " % n + b".".join([b"a"] * 2000) + b" = 1 }" for n in range(250)),
    "one dotted key": lambda: b".".join([b"a"] * 500_000) + b" = 1",
    "brackets": lambda: b"x = " + b"[" * 1_000_000,
    "brackets on lines": lambda: b"x = " + b"[\n" * 500_000,
    "braces": lambda: b"x = " + b"{ a = " * 150_000,
    "one long line": lambda: b'x = "' + b"a" * 1_000_000 + b'"',
    "many tables": lambda: b"[[entry]]\n" * 100_000,
    "many unknown tables": lambda: b"[[zzz]]\n" * 100_000,
    "many broken tables": lambda: b"[[entry]]\nid = = 1\n" * 50_000,
    "many open texts": lambda: b'\\"""' * 250_000,
    "many open texts of lines": lambda: b"\n'''\\".join([b"x"] * 200_000),
    "many quotes": lambda: b'"\\' * 500_000,
    "many marks of git": lambda: b"<<<<<<< a\n" * 100_000,
    "many conflicts": lambda: b"[[entry]]\n<<<<<<< a\n=======\n>>>>>>> b\n" * 25_000,
    "many wrong keys": lambda: b"[[entry]]\nid = 'a'\n" + b"".join(b"k%d = 1\n" % n for n in range(80_000)),
    "many wrong lines": lambda: b"[[entry]]\nid = 'a'\n" + b"words are no toml\n" * 50_000,
    "many hidden characters": lambda: "".join(f'k{n} = "\u202e"\n' for n in range(60_000)).encode(),
    "a long list": lambda: b"[[entry]]\nid = 'a'\nsynonyms = [" + b"1,\n" * 300_000 + b"]",
    "a list of nothing": lambda: b"[[entry]]\nid = 'a'\nrake_angle = [" + b"{},\n" * 200_000 + b"]",
    "a list of values": lambda: b"[[entry]]\nid = 'a'\n[entry.rake_angle]\nalso = [" + b"{usual='9 mm'},\n" * 60_000 + b"]",
    "nested values": lambda: b"[[entry]]\nid = 'a'\nrake_angle = " + b"{also=[" * 300 + b"]}" * 300,
    "spaces": lambda: (b" " * 4000 + b"\n") * 250,
    "spaces before a sign": lambda: (b"k =" + b" " * 900 + b"x y\n") * 1000,
    "commas": lambda: (b"x = {" + b"a = 1 a = 1," * 70 + b"\n") * 1000,
    "signs that many rules look at": lambda: (b'x = [{ "a" 1 1 = ' * 50 + b"\n") * 1000,
    "long numbers": lambda: (b"x = " + b"9" * 4000 + b"\n") * 250,
    "remarks": lambda: b"#\n" * 500_000,
}  # fmt: skip


@pytest.mark.usefixtures("three_tables")
@pytest.mark.parametrize("size", [LARGEST_FILE >> 5, pytest.param(LARGEST_FILE, marks=pytest.mark.depth)])
@pytest.mark.parametrize("name", every_third_at_once(BOMBS))
def test_a_file_that_was_made_to_hurt_is_read_to_its_end_and_hides_nothing(
    name: str, size: int, tmp_path: Path, record_property: Callable[[str, object], None]
) -> None:
    (tmp_path / "bomb.toml").write_bytes(BOMBS[name]()[:size])
    (tmp_path / "good.toml").write_text(
        'schema = 1\n[[entry]]\nid = "good"\nfamily = "tap"\ntitle = "Good"\n'
    )
    open_book()
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    begin = time.process_time()
    with to_its_end():
        book = open_book(tmp_path)
    record_property("seconds", round(time.process_time() - begin, 3))
    assert resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before < 400 * 1024
    assert book.entries["good"].title == "Good"
    assert len(book.findings) < 45_000


def test_a_line_of_the_longest_length_is_read_and_one_more_byte_is_not() -> None:
    text = 'schema = 1\n[[entry]]\nid = "a"\nx-text = "{}"\n'
    room = LONGEST_LINE - len('x-text = ""')
    assert parse(text.format("b" * room).encode(), FILE, "shop").findings == []
    (finding,) = parse(text.format("b" * (room + 1)).encode(), FILE, "shop").findings
    assert finding.wrong == "The line is longer than 4096 bytes."
    assert parse(text.format("\u00e9" * (room // 2)).encode(), FILE, "shop").findings == []
    assert len(parse(text.format("\u00e9" * (room // 2 + 1)).encode(), FILE, "shop").findings) == 1


@pytest.mark.depth
def test_positions_of_a_large_table_are_found_to_the_last() -> None:
    text = "[[entry]]\n" + "".join(
        f"k{number} = {{ a = [1, 2, {{ b = 'c' }}] }}\n" for number in range(20_000)
    )
    with to_its_end():
        assert positions(text)["entry", 0, "k19999", "a", 2, "b"][0] == 20_001
