"""Which folder is the shop's, and why, in this order: the option, the variable, the person's own data folder."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.book import folders


def test_the_option_comes_before_the_variable(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(folders.VARIABLE, "/variable")
    assert folders.shop_folder(Path("/option")) == (Path("/option"), "named by --library")


def test_the_variable_comes_before_the_data_folder(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(folders.VARIABLE, "~/book")
    folder, reason = folders.shop_folder()
    assert folder == Path.home() / "book"
    assert "HEELCLEAR_LIBRARY" in reason


@pytest.mark.parametrize("value", [None, ""])
def test_without_either_it_is_in_the_data_folder(value: str | None, monkeypatch: pytest.MonkeyPatch) -> None:
    if value is not None:
        monkeypatch.setenv(folders.VARIABLE, value)
    folder, reason = folders.shop_folder()
    assert folder.is_relative_to(Path.home() / "data")
    assert reason.startswith("your data folder")


def test_each_folder_of_the_program_is_another_and_none_is_made_by_asking() -> None:
    found = {
        folders.cache_folder(),
        folders.state_folder(),
        folders.config_folder(),
        folders.shop_folder()[0],
    }
    assert len(found) == 4
    assert not any(folder.exists() for folder in found)


def test_the_shipped_folder_is_there() -> None:
    assert (folders.shipped_folder() / "families.toml").is_file()


@pytest.mark.parametrize("named", ["~nobody-of-that-name/book", "~nobody-of-that-name"])
def test_the_home_of_somebody_who_is_not_known_here_is_no_crash(
    named: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv(folders.VARIABLE, named)
    assert folders.shop_folder()[0] == Path(named)
    assert folders.shop_folder(Path(named))[0] == Path(named)
