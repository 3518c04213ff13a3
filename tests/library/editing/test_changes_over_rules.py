"""What comes by a rule is changed for one tool alone, and taken back to the rule."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

from library.editing import changes as ask
from library.editing.concurrent_edit import concurrent_edits
from library.editing.plan import Plan
from library.editing.planning import plan

RULE = """\
schema = 1

[[rule]]
id = "taps"
title = "taps"
family = "tap"

[rule.flutes]
low = 3
usual = 4
high = 6
source = "common practice"
"""


def data_of(made: Plan) -> dict[str, Any]:
    assert made.after is not None
    return tomllib.loads(made.after.decode())


def test_a_changed_field_of_a_rules_value_keeps_the_rest_of_it_and_the_rule_stays(
    shop: Path, shipped: Path
) -> None:
    (shipped / "rules.toml").write_text(RULE)
    made = plan(ask.SetValue("gun-tap", "flutes", {"usual": 3, "source": "shop"}, "taps"), shop, shipped)
    (entry,) = data_of(made)["entry"]
    assert entry == {"id": "gun-tap", "flutes": {"low": 3, "usual": 3, "high": 6, "source": "shop"}}
    (shop / "rules.toml").write_text(
        'schema = 1\n[[rule]]\nid = "taps"\nflutes = { usual = 5, source = "shop" }\n'
    )
    made = plan(ask.SetValue("gun-tap", "flutes", {"note": "counted"}, "taps"), shop, shipped)
    (entry,) = data_of(made)["entry"]
    assert entry["flutes"] == {"usual": 5, "source": "shop", "note": "counted"}


def test_taking_back_a_value_says_that_the_rules_comes_back(shop: Path, shipped: Path) -> None:
    (shipped / "rules.toml").write_text(RULE)
    own = '\n[[entry]]\nid = "gun-tap"\nflutes = { usual = 2, source = "shop" }\n'
    (shop / "own.toml").write_text(f"schema = 1\n{own}")
    made = plan(ask.RemoveValue("gun-tap", "flutes", "taps"), shop, shipped)
    assert made.sentence == "gun-tap: flutes back to the rule (in own.toml)."
    assert "entry" not in data_of(made)


def test_a_copy_has_the_values_itself_that_came_by_rules(shop: Path, shipped: Path) -> None:
    (shipped / "rules.toml").write_text(RULE)
    made = plan(ask.CopyEntry("gun-tap", "our-tap", "Our tap", {"flutes": "taps"}), shop, shipped)
    (copied,) = [one for one in data_of(made)["entry"] if one["id"] == "our-tap"]
    assert copied["flutes"] == {"low": 3, "usual": 4, "high": 6, "source": "common practice"}


def test_a_number_of_the_shops_own_is_for_every_size_and_no_question_is_asked_about_the_bands(
    shop: Path, shipped: Path
) -> None:
    band = '\n[[rule.flutes.bands]]\nto = "3 mm"\nusual = 2\nsource = "common practice"\n'
    (shipped / "rules.toml").write_text(RULE + band)
    change = ask.SetValue("gun-tap", "flutes", {"usual": 3, "source": "shop", "bands": None}, "taps")
    began = {"low": 3, "usual": 4, "high": 6, "source": "common practice"}
    assert concurrent_edits(change, began, shop, shipped) == {}
    (entry,) = data_of(plan(change, shop, shipped))["entry"]
    assert entry["flutes"] == {"low": 3, "usual": 3, "high": 6, "source": "shop"}
    (shipped / "rules.toml").write_text(RULE.replace("usual = 4", "usual = 5"))
    (conflict,) = concurrent_edits(change, began, shop, shipped).values()
    assert (conflict.base, conflict.mine, conflict.theirs) == (4, 3, 5)
