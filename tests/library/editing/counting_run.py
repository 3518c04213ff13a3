"""Several programs count up one value of one file at the same time, each through plan and save.

    python counting_run.py PROCESSES UPDATES same|own

With ``same`` all count up one value, and a conflict is answered by reading again; with ``own`` each has a key of
its own and must never be asked. Each update says whose it is, so that two that count to the same number differ. Prints how many conflicts were reported and what the file says at the end.
"""

from __future__ import annotations

import os
import sys
import tempfile
import tomllib
from pathlib import Path

from library.editing import changes as ask
from library.editing.planning import plan
from library.editing.saving import Conflicts, save


def counts(file: Path) -> dict[str, int]:
    entry = tomllib.loads(file.read_text())["entry"][0]
    return {key: value["usual"] for key, value in entry.items() if isinstance(value, dict)}


def count_up(folder: Path, key: str, updates: int) -> int:
    """Add one to the value as often as asked, and return how many conflicts were met on the way."""
    conflicts = 0
    for update in range(updates):
        while True:
            seen = counts(folder / "taps.toml")[key]
            made = plan(
                ask.SetValue("tap", key, {"usual": seen + 1, "note": f"{os.getpid()} {update}"}), folder
            )
            if made.before is None or f"usual = {seen}," not in made.before.decode():
                conflicts += 1  # Somebody saved between the reading and the planning.
                continue
            result = save(made)
            if not isinstance(result, Conflicts):
                break
            conflicts += 1
    return conflicts


def child(folder: Path, key: str, updates: int) -> tuple[int, int]:
    """Start a process that counts; gives its number and the end of a pipe on which it tells its conflicts."""
    reading, writing = os.pipe()
    number = os.fork()
    if number == 0:
        try:
            os.write(writing, str(count_up(folder, key, updates)).encode())
            os._exit(0)
        finally:
            os._exit(1)
    os.close(writing)
    return number, reading


def main(processes: int, updates: int, keys: str) -> int:
    names = [f"x-{number}" if keys == "own" else "x-0" for number in range(processes)]
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "taps.toml"
        lines = "".join(
            f'{name} = {{ usual = 0, source = "shop" }}  # {name}\n' for name in sorted(set(names))
        )
        file.write_text(f'[[entry]]\nid = "tap"\n{lines}')
        children = [child(Path(folder), name, updates) for name in names]
        failed = sum(os.waitpid(number, 0)[1] != 0 for number, _ in children)
        conflicts = sum(int(os.read(pipe, 20) or b"0") for _, pipe in children)
        found = counts(file)
    print(f"{failed} failed, {conflicts} conflicts, counted {sum(found.values())} in {len(found)} values")
    return 1 if failed or sum(found.values()) != processes * updates else 0


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]), int(sys.argv[2]), sys.argv[3]))
