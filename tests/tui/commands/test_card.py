"""The commands for job cards: a whole job without a screen."""

from __future__ import annotations

import json
import re
import shlex
from pathlib import Path
from typing import Any

import pytest

from tui.main import main

MACHINES = """schema = 1

[[machine]]
id = "window-grinder"
title = "The grinder by the window"
index_ratio = 40
plate_holes = [15, 16, 18, 21]
spindle_speeds = ["2800 rpm", "4200 rpm"]
head_tilt = { low = "-10 deg", high = "15 deg" }

[machine.graduations.wheel-head]
title = "wheel head"
division = "0.01 mm"
sets = ["wheel_head_height"]
more = "up"
less = "down"

[machine.graduations.tooth-rest]
title = "tooth rest"
division = "0.01 mm"
sets = ["tooth_rest_height"]
more = "down"
less = "up"

[[wheel]]
id = "cup-60"
title = "White cup 100"
shape = "type-6-straight-cup"
diameter = "100 mm"
rated_speed = "20 m/s"
"""

TAP = (
    "tool.name=T-14",
    "tool.thread=M12",
    "tool.flutes=4",
    "received.diameter=11.97 mm",
    "received.land_width=3.2 mm",
    "received.land_measured_as=chord",
    "received.drop=0.20 mm, 0.21 mm, 0.19 mm, 0.20 mm",
    "wanted.surface=thread-land",
    "wanted.thread_relief_angle=8 deg",
    "wanted.thread_relief_angle.reason=tore in bronze",
    "wanted.relief_form=eccentric",
    "settings.wheel-speed.rotational_speed=2800 rpm",
)


class Shop:
    """A shop's folder and the program over it."""

    def __init__(self, folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self.folder = folder
        self.capsys = capsys
        folder.mkdir()
        (folder / "machines.toml").write_text(MACHINES, encoding="utf-8")

    def run(self, *words: str) -> tuple[int, str, str]:
        code = main(["--library", str(self.folder), *words])
        printed = self.capsys.readouterr()
        return code, printed.out, printed.err

    def good(self, *words: str) -> str:
        code, out, err = self.run(*words)
        assert (code, err) == (0, ""), err
        return out

    def data(self, *words: str) -> Any:
        return json.loads(self.good(*words, "--json"))

    def bad(self, *words: str) -> str:
        code, out, err = self.run(*words)
        assert (code, out) == (2, "")
        return err

    def new(self, *words: str) -> str:
        return str(self.data("card-new", *words)["id"])


@pytest.fixture
def shop(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Shop:
    return Shop(tmp_path / "shop", capsys)


def an_entry(shop: Shop) -> str:
    return str(
        next(one["id"] for one in shop.data("list", "--family", "tap") if one["id"] == "tap-hand-plain-steel")
    )


def test_a_whole_job_from_the_book_to_the_record(shop: Shop) -> None:
    card = shop.new("--entry", an_entry(shop), *TAP)
    assert re.fullmatch(r"\d{4}-\d{2}-\d{2}-01", card)
    page = shop.good("card", card)
    # pi 11.97 tan 8 degrees is 5.285 mm in one turn.
    assert re.search(r"Throw per turn +5\.285 mm", page)
    assert "[________]" in page
    code, _, err = shop.run(
        "card-set", card, "after.drop=0.45 mm, 0.50 mm, 0.45 mm", "after.drop.tolerance=0.02 mm", "--done"
    )
    assert code == 1
    assert "saved as a draft" in err
    assert "flute 4 of 4 has no reading" in err
    assert "0.50 mm is 0.025 mm over the tolerance" in err
    assert shop.data("cards")[0]["status"] == "draft"
    shop.good(
        "card-set",
        card,
        "after.drop=0.45 mm, 0.46 mm, 0.45 mm, 0.45 mm",
        "minutes=25",
        "result=good",
        "--done",
    )
    (row,) = shop.data("cards", "tool:T-14", "result:good")
    assert (row["id"], row["status"], row["size"]) == (card, "done", "M12")
    assert (
        shop.data("card", card)["card"]["settings"]["relief-drop"]["recorded"]["throw_per_turn"] == "5.285 mm"
    )


def test_a_card_is_written_even_when_what_is_on_it_does_not_add_up(shop: Shop) -> None:
    code, out, err = shop.run("card-new", "--family", "taps", "received.land_width=3/16", "tool.flutes=4")
    assert (code, err) == (0, "")
    assert "STOP: Land width: '3/16' has no unit" in out
    assert 'land_width = "3/16"' in next(shop.folder.rglob("cards/*/*.toml")).read_text()


@pytest.mark.parametrize("form", ["text", "markdown", "html"])
def test_the_sheet_prints_in_three_forms(shop: Shop, form: str) -> None:
    card = shop.new("--entry", an_entry(shop), *TAP)
    page = shop.good("card", card, "--format", form)
    assert "White cup 100" in page
    assert "under marked speed" in page
    assert ("<svg" in page) == (form == "html")
    if form == "text":
        assert page.isascii()
        assert max(map(len, page.splitlines())) <= 80


def test_lengths_are_shown_in_inches_where_asked_for(shop: Shop) -> None:
    card = shop.new("--entry", an_entry(shop), *TAP)
    # 5.285 mm.
    assert re.search(r"Throw per turn +0\.2081 in", shop.good("card", card, "--units", "in"))


def test_a_size_with_the_class_of_its_hole_puts_each_where_it_belongs(shop: Shop) -> None:
    shop.run("card-new", "--entry", "reamer-machine-plain-steel", "tool.size=10 H7", "tool.flutes=6")
    (card,) = (shop.folder / "cards").rglob("*.toml")
    written = card.read_text(encoding="utf-8")
    assert 'size = "10 mm"' in written
    assert 'hole_tolerance = "H7"' in written
    shop.run("card-set", card.stem, "tool.size=12 H8")
    written = card.read_text(encoding="utf-8")
    assert 'size = "12 mm"' in written
    assert 'hole_tolerance = "H8"' in written


def test_the_unit_behind_the_last_reading_is_that_of_all_as_on_the_screen(shop: Shop) -> None:
    shop.run("card-new", "--entry", "tap-hand-plain-steel", "--units", "in", "tool.flutes=4",
             "received.drop=0.20, 0.21, 0.19, 0.20 mm", "after.drop=11, 12, 9, 12 thou")  # fmt: skip
    (card,) = (shop.folder / "cards").rglob("*.toml")
    written = " ".join(card.read_text(encoding="utf-8").split())
    assert '"0.20 mm", "0.21 mm", "0.19 mm", "0.20 mm"' in written
    assert '"11 thou", "12 thou", "9 thou", "12 thou"' in written


def test_doing_it_again_begins_a_new_card_for_the_same_tool(shop: Shop) -> None:
    first = shop.new("--entry", an_entry(shop), *TAP, "notes=once")
    second = shop.new("--again", first)
    found = shop.data("card", second)["card"]
    assert found["again"] == first
    assert found["tool"]["name"] == "T-14"
    assert "received" not in found
    assert "notes" not in found


def test_the_life_of_a_tool(shop: Shop) -> None:
    card = shop.new("--entry", an_entry(shop), *TAP, "after.diameter=11.95 mm")
    shop.good(
        "card-set",
        card,
        "settings.size-loss.stock_per_sharpening=0.2 mm",
        "settings.size-loss.least_diameter=11.8 mm",
    )
    text = shop.good("cards", "--tool", "t-14")
    assert "11.970 mm  11.950 mm" in text
    # From 11.95 to 11.8 with 2 * 0.2 tan 8 = 0.0562 each time: 2.67.
    assert "Sharpenings left: 2" in text
    assert shop.data("cards", "--tool", "T-14")["sharpenings_left"] == 2
    assert "No card names a tool 'T-15'" in shop.bad("cards", "--tool", "T-15")


def test_a_batch_tells_what_stays_and_what_changes(shop: Shop) -> None:
    one = shop.new("--entry", an_entry(shop), *TAP)
    other = shop.new("--entry", an_entry(shop), *TAP, "tool.name=T-15", "wanted.thread_relief_angle=6 deg")
    text = shop.good("card-plan", one, other)
    assert text.index("Set once, and leave") < text.index("Wheel") < text.index(one) < text.index(other)
    found = shop.data("card-plan", one, other)
    assert {line["title"] for line in found["cards"][1]["changes"]} == {"Throw per turn"}
    assert "no card 2020-01-01-01" in shop.bad("card-plan", one, "2020-01-01-01")


def test_what_was_learned_goes_to_the_book(shop: Shop) -> None:
    entry = an_entry(shop)
    card = shop.new("--entry", entry, *TAP)
    assert re.search(r"thread_relief_angle +8 deg +tore in bronze; card", shop.good("card-learn", card))
    shop.good("card-learn", card, "thread_relief_angle")
    value = shop.data("show", entry)["values"]["thread_relief_angle"]
    assert value["usual"]["text"] == "8 deg"
    assert value["source"]["kind"] == "shop"
    assert value["note"] == f"tore in bronze; card {card}"
    assert shop.run("check")[0] == 0
    assert "nothing to teach about pitch" in shop.bad("card-learn", card, "pitch")


def test_readings_come_in_from_a_table_and_records_go_out(shop: Shop, tmp_path: Path) -> None:
    card = shop.new("--entry", an_entry(shop), *TAP)
    table = tmp_path / "readings.csv"
    table.write_text(
        f"card,when,quantity,flute,reading\n{card},after,drop,1,0.45 mm\n{card},after,drop,2,0.46 mm\n"
    )
    assert "2 readings on 1 cards." in shop.good("card-import", str(table))
    assert shop.data("card", card)["card"]["after"]["drop"]["readings"] == ["0.45 mm", "0.46 mm"]
    assert f'"{card}","after","drop","2","0.46 mm"\r\n' in shop.good("cards", "--readings").replace(
        "\n", "\r\n"
    ).replace("\r\r", "\r")
    assert shop.good("cards", "--csv").splitlines()[1].startswith(f'"{card}","draft",')
    table.write_text(f"card,when,quantity,flute,reading\n{card},after,dorp,1,0.45 mm\n")
    err = shop.bad("card-import", str(table))
    assert "no quantity 'dorp'" in err
    assert "Nothing was saved." in err


def test_where_one_card_cannot_be_written_the_table_is_saved_on_none(shop: Shop, tmp_path: Path) -> None:
    cards = [shop.new("--family", "tap") for _ in range(3)]
    files = [next(shop.folder.rglob(f"{card}.toml")) for card in cards]
    before = [file.read_bytes() for file in files]
    table = tmp_path / "readings.csv"
    table.write_text(
        "card,when,quantity,flute,reading\n" + "".join(f"{card},after,drop,1,0.45 mm\n" for card in cards)
    )
    for locked in files[1:]:
        locked.chmod(0o444)
    err = " ".join(shop.bad("card-import", str(table)).split())
    assert [file.read_bytes() for file in files] == before
    assert [card for card in cards if f"{card}.toml may only be read" in err] == cards[1:]
    assert err.endswith("Nothing was saved, on no card.")
    for locked in files[1:]:
        locked.chmod(0o644)
    assert "3 readings on 3 cards." in shop.good("card-import", str(table))
    assert all(b"0.45 mm" in file.read_bytes() for file in files)


def test_a_table_that_cannot_be_read_is_told(shop: Shop, tmp_path: Path) -> None:
    assert "not there" in shop.bad("card-import", str(tmp_path / "none.csv"))
    (tmp_path / "latin.csv").write_bytes(b"card\xff\n")
    assert "UTF-8" in shop.bad("card-import", str(tmp_path / "latin.csv"))


def test_a_closed_card_is_not_written_on_by_mistake(shop: Shop, tmp_path: Path) -> None:
    card = shop.new("--family", "tap")
    shop.good("card-set", card, "--done")
    assert "closed" in shop.bad("card-set", card, "notes=later")
    table = tmp_path / "readings.csv"
    table.write_text(f"card,when,quantity,flute,reading\n{card},after,drop,1,0.45 mm\n")
    assert "is closed" in shop.bad("card-import", str(table))
    shop.good("card-set", card, "notes=later", "--reopen")
    assert shop.data("cards")[0]["status"] == "draft"


@pytest.mark.parametrize(
    ("words", "needles"),
    [
        (["card", "2020-01-01-01"], ["no card 2020-01-01-01", "heelclear cards"]),
        (["card", "../../etc/passwd"], ["no id of a card"]),
        (["card-new", "--entry", "tap-hand-plain-stel"], ["no entry", "tap-hand-plain-steel"]),
        (["card-new", "--family", "hammers"], ["no family", "tap"]),
        (["card-new", "--again", "2020-01-01-01"], ["no card"]),
        (["card-new", "tool.flute=4"], ["no place", "tool.flutes"]),
        (["card-new", "nonsense"], ["place=text"]),
        (["card-set", "2020-01-01-01", "notes=x"], ["no card"]),
        (["card-learn", "2020-01-01-01"], ["no card"]),
    ],
)
def test_what_cannot_be_done_is_told_with_what_could(
    shop: Shop, words: list[str], needles: list[str]
) -> None:
    err = shop.bad(*words)
    for needle in needles:
        assert needle in err
    assert not (shop.folder / "cards").exists()


def test_a_shop_without_cards_is_told_how_to_begin_one(shop: Shop) -> None:
    assert "card-new" in shop.good("cards")
    assert shop.data("cards") == []
    assert "No card has all of that." in shop.good("cards", "winch")


def test_a_card_of_a_newer_program_is_printed_and_not_changed(shop: Shop) -> None:
    card = shop.new("--family", "tap")
    file = next(shop.folder.rglob("cards/*/*.toml"))
    file.write_text(file.read_text().replace("schema = 1", "schema = 99"))
    before = file.read_bytes()
    assert "Setup sheet" in shop.good("card", card)
    assert "newer Heelclear" in shop.bad("card-set", card, "notes=x")
    assert file.read_bytes() == before


def test_reading_commands_change_no_byte_of_the_shop(shop: Shop) -> None:
    card = shop.new("--entry", an_entry(shop), *TAP)
    before = {
        path: (path.read_bytes(), path.stat().st_mtime_ns)
        for path in shop.folder.rglob("*")
        if path.is_file()
    }
    for words in (
        ["cards"],
        ["cards", "--csv"],
        ["card", card],
        ["card", card, "--json"],
        ["card-plan", card],
        ["card-learn", card],
    ):
        shop.good(*words)
    after = {
        path: (path.read_bytes(), path.stat().st_mtime_ns)
        for path in shop.folder.rglob("*")
        if path.is_file()
    }
    assert after == before


def test_a_poisoned_card_never_reaches_the_terminal(shop: Shop) -> None:
    poison = "\x1b]52;c;cm0=\x07\u202e[/bold]"
    card = shop.new("--family", "tap", f"tool.name={poison}", f"notes={poison}", f"result={poison}")
    for words in (
        ["cards"],
        ["card", card],
        ["card", card, "--format", "html"],
        ["cards", "--csv"],
        ["card-plan", card],
    ):
        _, out, err = shop.run(*words)
        assert not set(out + err) & {"\x1b", "\x07", "\u202e"}


def test_check_tells_what_is_wrong_in_a_card_and_in_a_machine_with_file_and_line(shop: Shop) -> None:
    assert shop.run("check")[0] == 0
    shop.new("--family", "tap", "tool.flutes=4")
    file = next(shop.folder.rglob("cards/*/*.toml"))
    file.write_text(file.read_text() + "\n[card.received]\ndrop = 0.28\n")
    (shop.folder / "machines.toml").write_text(MACHINES.replace('"0.01 mm"', '"0,01 mm"', 1))
    code, out, _ = shop.run("check")
    assert code == 1
    assert re.search(r"machines\.toml:\d+:1: window-grinder\.graduations\.wheel-head\.division: .*comma", out)
    assert re.search(rf"{re.escape(str(file))}:\d+:1: .*received\.drop: The reading 0\.28 has no unit", out)
    assert "2 problems found." in out


def test_the_tour_of_the_readme_can_be_walked_word_for_word(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    readme = (Path(__file__).parents[3] / "README.md").read_text(encoding="utf-8")
    tour = re.search(r"## A job, from the bench to the record.*?```sh\n(.*?)```", readme, re.DOTALL)
    assert tour is not None
    card = "ID"
    for line in tour[1].strip().splitlines():
        words = shlex.split(line.replace("~/yard", str(tmp_path / "yard")), comments=True)
        assert words[0] == "heelclear"
        assert main([card if word == "ID" else word for word in words[1:]]) == 0, line
        printed = capsys.readouterr()
        assert printed.err == ""
        if "card-new" in words:
            card = printed.out.split()[0]
    # Chord 3.0 on 11.96, relief 6.5 degrees: R theta tan a = 0.345 mm, so 0.35 and 0.34 are within 0.02.
    assert card != "ID"
