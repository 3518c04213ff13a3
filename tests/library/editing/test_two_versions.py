"""Two versions of the program at one book: what only the newer one knows is told of, kept, and never written over."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

from library.book import fetching, folders, index
from library.book.opening import open_book
from library.cards import index as card_index
from library.cards.editing import edited
from library.cards.index import card_rows
from library.cards.store import load
from library.cards.store import save as save_card
from library.editing import changes as ask
from library.editing.document import EditRefused
from library.editing.planning import plan
from library.editing.saving import save
from library.history import trust
from library.history.auto_commit import FILE, commits_each_save, set_commits_each_save
from tests.each import each
from tui.first_steps import STEPS, first_steps

OURS = """\
schema = 1
polish = "mirror"   # above all tables

[[entry]]
id = "gun-tap"
family = "tap"
title = "Gun tap"
laser = "yes"   # of the next version
rake_angle = { usual = "4 deg", source = "shop", tempered = true }
glow_angle = { usual = "4 deg", source = "shop" }

[entry.plasma]
deep = [1, 2]

[[jig]]
id = "a"
what = 3

[[machine]]
id = "grey"
title = "Grey"
laser = 7

[machine.optics]
deep = true
"""
NEWER = OURS.replace("schema = 1", "schema = 2", 1)

CHANGES: dict[str, ask.Change] = {
    "value": ask.SetValue("gun-tap", "rake_angle", {"usual": "9 deg"}),
    "new value": ask.SetValue("gun-tap", "chamfer_relief_angle", {"usual": "9 deg", "source": "shop"}),
    "no value": ask.RemoveValue("gun-tap", "glow_angle"),
    "text": ask.SetText("gun-tap", "title", "Spiral-point tap"),
    "copy": ask.CopyEntry("gun-tap", "second-tap", "Second tap"),
    "rename": ask.RenameEntry("gun-tap", "other-tap"),
    "table": ask.SetTable("machine", "grey", {"title": "Green"}),
    "add": ask.AddEntry("new-tap", "tap", "New tap"),
    "remove": ask.RemoveEntry("gun-tap"),
}
"""Every way to change a book; each is asked of a file that holds what this version does not know."""


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    (tmp_path / "shop").mkdir()
    return tmp_path / "shop"


@each("name", CHANGES)
def test_a_file_of_a_newer_program_is_never_written_in(name: str, shop: Path) -> None:
    (shop / "taps.toml").write_text(NEWER)
    with pytest.raises(
        EditRefused, match=r"A newer Heelclear wrote taps\.toml \(schema 2; this one knows 1\)"
    ):
        save(plan(CHANGES[name], shop, folders.shipped_folder()))
    assert (shop / "taps.toml").read_text() == NEWER
    assert [path.name for path in shop.iterdir() if path.suffix == ".toml"] == ["taps.toml"]


def test_a_newer_program_that_saves_between_look_and_save_is_not_written_over(shop: Path) -> None:
    (shop / "taps.toml").write_text(OURS)
    planned = plan(CHANGES["value"], shop, folders.shipped_folder())
    (shop / "taps.toml").write_text(NEWER)
    with pytest.raises(EditRefused, match="newer Heelclear"):
        save(planned)
    assert (shop / "taps.toml").read_text() == NEWER


@each("name", [name for name in CHANGES if name != "remove"])
def test_keys_and_tables_that_are_not_known_are_kept_by_every_change(name: str, shop: Path) -> None:
    (shop / "taps.toml").write_text(OURS)
    save(plan(CHANGES[name], shop, folders.shipped_folder()))
    now = (shop / "taps.toml").read_text()
    changed = {
        "value": "rake_angle",
        "no value": "glow_angle",
        "text": "title",
        "rename": "id",
        "table": "title",
    }
    gone = [line for line in OURS.splitlines() if line not in now.splitlines()]
    assert all(line.startswith(changed[name]) for line in gone), gone
    assert len(gone) == (name in changed)
    assert "tempered = true" in now


def test_what_is_not_known_is_told_of_and_the_rest_is_read(shop: Path) -> None:
    (shop / "taps.toml").write_text(NEWER)
    book = open_book(shop)
    told = " ".join(f"{one.wrong} {one.fix}" for one in book.findings)
    for words in ("A newer Heelclear wrote this file (schema 2; this one knows 1).", "never written in",
                  "'polish'", "'laser'", "'glow_angle'", "'jig'"):  # fmt: skip
        assert words in told
    assert book.entries["gun-tap"].values["rake_angle"].usual is not None


def test_a_card_keeps_the_keys_of_a_newer_program(shop: Path) -> None:
    text = (
        'schema = 1\n\n[[card]]\nid = "c"\nfamily = "tap"\nlaser = "yes"\n\n[card.plasma]\ndeep = [1, 2]\n'
        '\n[card.tool]\nname = "T-1"\nglow = "red"\n\n[card.after.drop]\nreadings = "1 mm"\nby = "eye"\n'
    )
    (shop / "cards").mkdir()
    (shop / "cards" / "c.toml").write_text(text)
    opened = load(shop, "c")
    assert opened.findings
    for way, typed in (("minutes", "20"), ("tool.name", "T-2"), ("after.drop", "2 mm")):
        opened = save_card(shop, opened, edited(opened.card, way, typed))
    now = (shop / "cards" / "c.toml").read_text()
    for line in ('laser = "yes"', "[card.plasma]", 'glow = "red"', 'by = "eye"', 'minutes = "20"'):
        assert line in now


def test_rows_of_cards_that_another_version_kept_are_read_anew(
    shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(fetching, "SETTLED", 0.0)
    (shop / "cards").mkdir()
    (shop / "cards" / "c.toml").write_text('schema = 1\n\n[[card]]\nid = "c"\nresult = "good"\n')
    cache = tmp_path / "cache"
    (right,) = card_rows(shop, cache)
    (file,) = cache.iterdir()
    kept = json.loads(file.read_text())
    stamp, values = kept["rows"]["c.toml"]
    wrong = ["spoilt" if one == "good" else one for one in values]
    for other in (
        {"version": card_index.VERSION + 1, "rows": {"c.toml": [stamp, wrong]}},
        {"version": card_index.VERSION - 1, "rows": {"c.toml": [stamp, wrong]}},
        {"version": card_index.VERSION, "rows": {"c.toml": [stamp, [*values, "more"]]}},
        {"version": card_index.VERSION, "rows": {"c.toml": [stamp, values[:-1]]}},
    ):
        file.write_text(json.dumps(other))
        assert card_rows(shop, cache) == (right,)
    # So that the test could fail: of this version they are believed.
    file.write_text(json.dumps({"version": card_index.VERSION, "rows": {"c.toml": [stamp, wrong]}}))
    assert card_rows(shop, cache) != (right,)


@pytest.mark.depth
def test_what_is_kept_of_a_book_hangs_on_every_part_of_the_program_that_reads_it(shop: Path) -> None:
    (shop / "taps.toml").write_text(OURS)
    read = (
        "import sys; from pathlib import Path; from library.book.opening import open_book; "
        f"open_book(Path({str(shop)!r})).findings; "
        "print(*{m.__file__ for m in sys.modules.values() if getattr(m, '__file__', None)}, sep='\\n')"
    )
    top = Path(index.__file__).parents[2]
    told = subprocess.run([sys.executable, "-c", read], cwd=top, capture_output=True, text=True, check=True)
    loaded = [Path(line) for line in told.stdout.splitlines()]
    own = {str(path.parent.relative_to(top)) for path in loaded if path.is_relative_to(top / "library")}
    own |= {str(path.parent.relative_to(top)) for path in loaded if path.is_relative_to(top / "geometry")}
    assert {"library/book", "geometry/quantities"} <= own <= set(index.STAMPED)


def test_settings_and_state_of_a_newer_program_are_kept(
    shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    state = tmp_path / "state"
    state.mkdir()
    monkeypatch.setattr(folders, "state_folder", lambda: state)
    (shop / FILE).write_text('polish = "mirror"\n')
    set_commits_each_save(shop, wanted=True)
    assert commits_each_save(shop)
    assert 'polish = "mirror"' in (shop / FILE).read_text()
    (state / trust.FILE).write_text('["/a", {"path": "/b", "until": 2030}]')
    trust.trust(tmp_path / "c")
    assert trust.withdraw(Path("/a"))
    assert json.loads((state / trust.FILE).read_text()) == [
        {"path": "/b", "until": 2030},
        str(tmp_path / "c"),
    ]
    (state / "first-steps").write_text("open\npolish\n")
    steps = first_steps(state)
    assert steps.left == STEPS[1:]
    steps.take("card")
    assert "polish" in (state / "first-steps").read_text().split()
