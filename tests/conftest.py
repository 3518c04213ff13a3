"""What all tests share: property tests of a stated size, and the developer's own files hidden."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

settings.register_profile(
    "bench", max_examples=200, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile(
    "long", max_examples=5000, deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile(os.environ.get("HEELCLEAR_TEST_PROFILE", "bench"))

PRIVATE_VARIABLES = ("HEELCLEAR_LIBRARY", "NO_COLOR", "VISUAL", "EDITOR", "COLORTERM", "TMUX")


@pytest.fixture(autouse=True)
def an_empty_home(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Every test runs with an empty home, so that it neither reads nor changes the developer's own files."""
    home = tmp_path_factory.mktemp("home")
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
