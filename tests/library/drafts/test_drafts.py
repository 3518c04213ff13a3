"""What was typed survives, is offered once, and says where it differs."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.drafts.draft import Difference, Draft, compare, from_bytes, to_bytes
from library.drafts.draft_store import Drafts
from library.errors import SaveError
from library.files.disk import Disk

RAKE = Draft("value", "gun-tap.rake_angle", {"usual": "5 de", "note": ""}, {"usual": "4 deg", "note": ""})


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "state" / "drafts"


@pytest.fixture
def running(folder: Path) -> Iterator[Drafts]:
    drafts = Drafts(folder)
    yield drafts
    drafts.close()


def ended(folder: Path, *kept: Draft) -> None:
    """A run of the program that ended with these drafts kept."""
    drafts = Drafts(folder)
    for draft in kept:
        drafts.keep(draft)
    drafts.close()


def test_a_draft_comes_back_at_the_next_start_as_it_was_typed(folder: Path, running: Drafts) -> None:
    ended(folder, RAKE)
    (kept,) = running.left_behind()
    assert kept.draft.fields == RAKE.fields
    assert kept.draft.started == RAKE.started
    assert (kept.draft.kind, kept.draft.about) == (RAKE.kind, RAKE.about)


def test_a_draft_of_a_program_that_still_runs_is_not_offered(folder: Path, running: Drafts) -> None:
    other = Drafts(folder)
    other.keep(RAKE)
    assert running.left_behind() == ()
    other.close()
    assert len(running.left_behind()) == 1


def test_two_windows_with_the_same_form_keep_a_draft_each(folder: Path, running: Drafts) -> None:
    ended(folder, RAKE)
    ended(folder, Draft("value", RAKE.about, {"usual": "6"}))
    assert sorted(kept.draft.fields["usual"] for kept in running.left_behind()) == ["5 de", "6"]


def test_keeping_again_replaces_the_draft_of_the_same_thing_only(folder: Path, running: Drafts) -> None:
    later = Draft("value", RAKE.about, {"usual": "5 deg"})
    ended(folder, RAKE, Draft("entry", "", {"id": "x"}), later)
    assert sorted(str(kept.draft.fields) for kept in running.left_behind()) == [
        "{'id': 'x'}",
        "{'usual': '5 deg'}",
    ]


def test_a_saved_draft_is_gone(folder: Path, running: Drafts) -> None:
    other = Drafts(folder)
    other.keep(RAKE)
    other.drop(RAKE)
    other.close()
    assert running.left_behind() == ()
    assert [path.name for path in folder.iterdir()] == [".lock"]


def test_a_draft_that_was_recovered_or_thrown_away_is_not_offered_again(
    folder: Path, running: Drafts
) -> None:
    ended(folder, RAKE)
    running.forget(running.left_behind()[0])
    assert running.left_behind() == ()
    assert [path.name for path in folder.iterdir()] == [".lock"]


def test_the_newest_is_offered_first(folder: Path, running: Drafts) -> None:
    start = datetime(2024, 5, 1, 12)
    for number, about in enumerate("cab"):
        _kept_at(folder, about, start + timedelta(minutes=number))
    assert [kept.draft.about for kept in running.left_behind()] == ["b", "a", "c"]


def test_the_newest_is_the_one_kept_last_also_where_the_clock_was_set_back(
    folder: Path, running: Drafts
) -> None:
    start = datetime(2024, 10, 27, 12)
    for about, days in (("first", 0), ("a day back", -1), ("two days back", -2), ("right again", 1)):
        _kept_at(folder, about, start + timedelta(days=days))
    told = [kept.draft.about for kept in running.left_behind()]
    assert told == ["right again", "two days back", "a day back", "first"]
    assert running.left_behind()[1].draft.kept == start - timedelta(days=2), "what is told is the clock's"


def test_the_clock_set_back_while_the_program_runs_loses_no_draft_and_no_order(
    folder: Path, running: Drafts
) -> None:
    clock = iter([datetime(2024, 10, 27, 12), datetime(2024, 10, 26, 12), datetime(2024, 10, 26, 13)])
    drafts = Drafts(folder, now=lambda: next(clock))
    for about, text in (("a", "1"), ("b", "1"), ("a", "2")):
        drafts.keep(Draft("entry", about, {"id": text}))
    drafts.close()
    found = [(kept.draft.about, kept.draft.fields["id"]) for kept in running.left_behind()]
    assert found == [("a", "2"), ("b", "1")]


def _kept_at(folder: Path, about: str, when: datetime) -> None:
    drafts = Drafts(folder, now=lambda: when)
    drafts.keep(Draft("entry", about, {}))
    drafts.close()


@pytest.mark.parametrize("number", [errno.ENOLCK, errno.EOPNOTSUPP, errno.ENOSYS])
def test_where_the_disk_has_no_locks_a_draft_is_refused_in_a_sentence_and_leaves_nothing(
    folder: Path, number: int
) -> None:
    class Lockless(Disk):
        def lock(self, descriptor: int) -> None:
            raise OSError(number, os.strerror(number))

    drafts = Drafts(folder, Lockless())
    for _ in range(3):
        with pytest.raises(SaveError, match="cannot keep two programs from saving at once"):
            drafts.keep(RAKE)
    drafts.close()
    assert list(folder.iterdir()) == []


def test_a_lock_that_is_never_given_is_not_waited_for_without_an_end(folder: Path) -> None:
    class Held(Disk):
        def lock(self, descriptor: int) -> None:
            raise BlockingIOError(errno.EAGAIN, os.strerror(errno.EAGAIN))

        def pause(self, seconds: float) -> None:
            pass

    with pytest.raises(SaveError, match="does not let the lock"):
        Drafts(folder, Held()).keep(RAKE)


def test_nothing_is_made_before_something_is_kept(folder: Path, running: Drafts) -> None:
    assert running.left_behind() == ()
    running.drop(RAKE)
    assert not folder.exists()


def test_files_that_are_no_drafts_are_passed_over(folder: Path, running: Drafts) -> None:
    ended(folder, RAKE)
    name = "0" * 16 + "-" + "1" * 16 + ".toml"
    for number, raw in enumerate(
        [b"", b"\xff", b"kind = 1", b'kind = "a"\nabout = ""\nkept = 2024-01-01T00:00:00\nfields = 3\n']
    ):
        (folder / name.replace("1", str(number + 2))).write_bytes(raw)
    os.mkfifo(folder / name)
    assert [kept.draft.about for kept in running.left_behind()] == [RAKE.about]


SPOILT = {
    "nested thousands deep": b"fields = " + b"[" * 100_000 + b"]" * 100_000,
    "tables in tables": b"x = " + b"{a = " * 20_000 + b"1" + b"}" * 20_000,
    "cut": to_bytes(RAKE)[:60],
    "empty": b"",
    "not text": b"\xff\xfe",
    "no draft": b"kind = 1",
    "strange fields": to_bytes(RAKE).replace(b'usual = "5 de"', b"usual = { a = 1 }"),
}


@pytest.mark.parametrize("raw", SPOILT.values(), ids=SPOILT)
def test_a_spoilt_draft_is_set_aside_with_a_sentence_and_the_others_are_offered(
    folder: Path, running: Drafts, raw: bytes
) -> None:
    ended(folder, RAKE)
    spoilt = folder / f"{'0' * 16}-{'1' * 16}.toml"
    spoilt.write_bytes(raw)
    assert [kept.draft.about for kept in running.left_behind()] == [RAKE.about]
    (sentence,) = running.troubles
    aside = spoilt.with_name(f"{spoilt.name}.spoilt")
    assert sentence.startswith("A draft cannot be read: ")
    assert sentence.endswith(f"It was set aside as {aside}.")
    assert aside.read_bytes() == raw
    assert not spoilt.exists()
    # Told once: at the next look it is out of the way.
    running.left_behind()
    assert running.troubles == ()


def test_a_draft_of_a_newer_version_stays_for_it_and_is_told_of(folder: Path, running: Drafts) -> None:
    ended(folder, RAKE)
    newer = folder / f"{'0' * 16}-{'1' * 16}.toml"
    newer.write_bytes(to_bytes(RAKE).replace(b"draft = 1", b"draft = 7"))
    assert len(running.left_behind()) == 1
    (sentence,) = running.troubles
    assert "another version of Heelclear" in sentence
    assert newer.exists()


def test_a_draft_keeps_the_unit_that_its_numbers_were_typed_in(folder: Path, running: Drafts) -> None:
    ended(folder, Draft("calculator", "gun-tap", {"land_width": "0.2"}, units="in"))
    assert [kept.draft.units for kept in running.left_behind()] == ["in"]


def test_an_older_draft_without_a_unit_says_so_and_counts_as_millimetres() -> None:
    older = from_bytes(to_bytes(RAKE).replace(b'units = ""\n', b""))
    assert (older.units, older.lengths) == ("", "mm")
    assert older.fields == RAKE.fields


def test_a_draft_can_be_read_without_the_program() -> None:
    assert to_bytes(RAKE).decode().splitlines()[:3] == [
        "draft = 1",
        'kind = "value"',
        'about = "gun-tap.rake_angle"',
    ]


@given(
    fields=st.dictionaries(st.text(), st.text(st.characters(codec="utf-8"))),
    about=st.text(st.characters(codec="utf-8")),
)
def test_any_text_comes_back(fields: dict[str, str], about: str) -> None:
    fields = {key.encode("utf-8", "replace").decode(): text for key, text in fields.items()}
    draft = Draft("entry", about, fields, fields, datetime(2024, 1, 1))
    assert from_bytes(to_bytes(draft)) == draft


def test_a_draft_is_compared_with_what_is_saved_now() -> None:
    now = {"usual": "6 deg", "note": "", "source": "shop"}
    assert compare(RAKE, now) == (
        Difference("usual", "5 de", "6 deg", moved=True),
        Difference("source", None, "shop", moved=True),
    )
    assert compare(RAKE, {"usual": "5 de", "note": ""}) == ()
    assert not RAKE.is_unchanged()
    assert Draft("value", "a", {"low": "1"}, {"low": "1"}).is_unchanged()


def test_whatever_operation_fails_the_draft_kept_before_is_still_whole(folder: Path, running: Drafts) -> None:
    names = ("open", "read", "write", "fsync", "fstat", "chmod", "replace", "lock")
    for number in (errno.ENOSPC, errno.EIO, errno.EACCES, errno.EROFS, errno.EDQUOT):
        for failing in names:

            class Failing(Disk):
                pass

            drafts = Drafts(folder, disk := Failing())
            drafts.keep(Draft("entry", "old", {"id": "first"}))

            def fail(*given: object, number: int = number) -> None:
                raise OSError(number, os.strerror(number))

            setattr(disk, failing, fail)
            with pytest.raises(SaveError) as caught:
                drafts.keep(Draft("entry", "old", {"id": "second"}))
            assert "Nothing was saved" in caught.value.sentence
            delattr(disk, failing)
            drafts.close()
            (kept,) = running.left_behind()
            assert kept.draft.fields == {"id": "first"}
            running.forget(kept)


TYPING = """
import sys
from pathlib import Path
from library.drafts.draft import Draft
from library.drafts.draft_store import Drafts

drafts = Drafts(Path(sys.argv[1]))
text = ""
while True:
    text += "x"
    drafts.keep(Draft("entry", "new", {"notes": text}))
    print(len(text), flush=True)
"""


def test_a_draft_survives_kill_9_at_any_moment(folder: Path, running: Drafts) -> None:
    for round_ in range(6):
        typing = subprocess.Popen(
            [sys.executable, "-c", TYPING, str(folder)], stdout=subprocess.PIPE, text=True
        )
        assert typing.stdout is not None
        typing.stdout.readline()
        assert running.left_behind() == ()
        time.sleep(0.003 * round_)
        typing.send_signal(signal.SIGKILL)
        confirmed = [int(line) for line in typing.communicate()[0].split()]
        (kept,) = running.left_behind()
        assert len(kept.draft.fields["notes"]) >= max(confirmed, default=1)
        running.forget(kept)
