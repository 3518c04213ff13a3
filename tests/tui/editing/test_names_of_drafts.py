"""The list of what was left unsaved names each thing as the shop does, never as the files do."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from library.book.opening import open_book
from library.demo import BOOK
from library.drafts.draft import Draft
from tui.screens.draft_names import label_of, name_of
from tui.session import Session

TAP = "Spiral-point tap, aluminium bronze"


@pytest.fixture(scope="module")
def session() -> Session:
    return Session(book=open_book(BOOK))


@pytest.mark.parametrize(
    ("kind", "about", "fields", "name"),
    [
        ("own-table", "New symptom", {}, "New trouble"),
        ("own-table", "New symptom", {"title": "Whistles"}, "New trouble: Whistles"),
        ("own-table", "New recommended_wheel", {}, "New recommended wheel"),
        ("own-table", "symptom.gone", {}, "Trouble: gone"),
        ("equipment", "New machine", {"title": "Old Nan"}, "New machine: Old Nan"),
        ("equipment", "machine.grey", {"title": "The grey grinder"}, "Machine: The grey grinder"),
        ("value", "tap-spiral-point-aluminium-bronze.rake_angle", {}, f"Rake angle: {TAP}"),
        ("value", "gone.rake_angle", {}, "Rake angle: gone"),
        ("text", "tap-spiral-point-aluminium-bronze.synonyms", {}, f"Other words: {TAP}"),
        ("table", "New entry", {"title": "Short drill"}, "New entry: Short drill"),
        ("table", "Copy of an entry.tap-spiral-point-aluminium-bronze", {}, f"Copy of an entry: {TAP}"),
        ("calculator", "tap-spiral-point-aluminium-bronze", {}, f"Calculations for {TAP}"),
        ("job-card", "2026-11-20-01", {}, "Job card 2026-11-20-01"),
        (
            "job-card",
            "new card, begun 2026-11-20 10:00:00",
            {},
            "Job card: new card, begun 2026-11-20 10:00:00",
        ),
    ],
)
def test_a_draft_is_named_in_words_of_the_shop(
    session: Session, kind: str, about: str, fields: Mapping[str, str], name: str
) -> None:
    assert name_of(session, Draft(kind, about, fields)) == name


def test_the_lines_of_a_draft_are_too() -> None:
    assert label_of(Draft("own-table", "New symptom", {}), "synonyms") == "said too"
    assert label_of(Draft("job-card", "2026-11-20-01", {}), "settings.relief-drop.cam_throws").startswith(
        "settings, relief drop, "
    )
    assert label_of(Draft("value", "a-tap.rake_angle", {}), "usual") == "usual"
