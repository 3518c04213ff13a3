"""Whether every save is recorded: one line beside the book that everybody who shares it has."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from library.book.opening import open_book
from library.errors import SaveError
from library.history.auto_commit import FILE, commits_each_save, set_commits_each_save


def test_it_is_off_until_somebody_turns_it_on_and_looking_makes_no_file(tmp_path: Path) -> None:
    assert not commits_each_save(tmp_path)
    assert not commits_each_save(tmp_path / "not there")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("wanted", [True, False])
def test_what_is_set_is_read_back(tmp_path: Path, wanted: bool) -> None:
    set_commits_each_save(tmp_path, wanted=not wanted)
    set_commits_each_save(tmp_path, wanted=wanted)
    assert commits_each_save(tmp_path) is wanted


def test_the_folder_is_made_with_it(tmp_path: Path) -> None:
    set_commits_each_save(tmp_path / "book", wanted=True)
    assert commits_each_save(tmp_path / "book")


def test_other_settings_in_the_file_stay(tmp_path: Path) -> None:
    (tmp_path / FILE).write_text('colour = "blue"\n')
    set_commits_each_save(tmp_path, wanted=True)
    assert tomllib.loads((tmp_path / FILE).read_text()) == {"colour": "blue", "commit_each_save": True}


def test_the_file_is_no_part_of_the_book(tmp_path: Path) -> None:
    set_commits_each_save(tmp_path, wanted=True)
    assert open_book(tmp_path).findings == open_book(None).findings


def test_only_true_counts_as_on(tmp_path: Path) -> None:
    for text in ('commit_each_save = "yes"', "commit_each_save = 1", "commit_each_save = ", "\udcff"):
        (tmp_path / FILE).write_text(text, errors="surrogateescape")
        assert not commits_each_save(tmp_path), text


def test_a_file_with_a_mistake_is_left_as_it_is(tmp_path: Path) -> None:
    (tmp_path / FILE).write_text("commit_each_save = \n")
    with pytest.raises(SaveError, match="holds a mistake"):
        set_commits_each_save(tmp_path, wanted=True)
    assert (tmp_path / FILE).read_text() == "commit_each_save = \n"


def test_a_pipe_of_that_name_holds_nothing_up(tmp_path: Path) -> None:
    import os

    os.mkfifo(tmp_path / FILE)
    assert not commits_each_save(tmp_path)
    with pytest.raises(SaveError):
        set_commits_each_save(tmp_path, wanted=True)
