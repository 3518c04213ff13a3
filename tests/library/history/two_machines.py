"""What two machines that share a book do: change and record, look, and pull."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

from library.editing import changes as ask
from library.editing.planning import plan
from library.editing.saving import Done, save
from library.history.recording import record
from library.history.sharing import Pulled, pull
from library.history.work_tree import WorkTree, find_work_tree

RunGit = Callable[..., str]
Two = tuple[Path, Path]


def tree_of(folder: Path) -> WorkTree:
    found = find_work_tree(folder)
    assert found is not None
    return found


def change(folder: Path, what: ask.Change) -> None:
    done = save(plan(what, folder))
    assert isinstance(done, Done)
    assert record(tree_of(folder), [done.plan.path], done.plan.sentence)


def rake(angle: str) -> ask.SetValue:
    return ask.SetValue("gun-tap", "rake_angle", {"usual": angle})


def relief(angle: str) -> ask.SetValue:
    return ask.SetValue("gun-tap", "relief_angle", {"usual": angle})


def entries(folder: Path, file: str = "taps.toml") -> dict[str, dict[str, Any]]:
    return {entry["id"]: entry for entry in tomllib.loads((folder / file).read_text())["entry"]}


def pulled(folder: Path) -> Pulled:
    result = pull(tree_of(folder))
    assert isinstance(result, Pulled), result
    return result
