"""How long each calculation takes, and how long ``geometry`` takes to import; run it by hand.

    python tests/bench_calculations.py

It prints microseconds for one computation of each calculation with the values of its sample, the time for
10,000 computations spread over all of them, and the time to import the package with every calculation.
"""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable, Mapping
from itertools import cycle, islice
from time import perf_counter

from geometry.calculation import Calculation, Given
from geometry.calculations import calculation, calculation_names
from geometry.evaluate import run

ENTRIES = 10_000
REPEATS = 15
"""The best of so many is printed: what else the machine does only ever makes a run slower."""

LIMITS = {"relief-facets": 2000.0}
"""Microseconds allowed where it is not the usual hundred."""

USUAL_LIMIT = 100.0
IMPORTS = {
    "geometry and one calculation": "from geometry.calculations import calculation; calculation('relief-drop')",
    "geometry and every calculation": "from geometry.calculations import calculation, calculation_names; "
    "[calculation(name) for name in calculation_names()]",
}


def seconds(work: Callable[[], object], times: int) -> float:
    """The time of one call, from the best of several rounds of ``times`` calls."""
    best = float("inf")
    for _ in range(REPEATS):
        start = perf_counter()
        for _ in range(times):
            work()
        best = min(best, (perf_counter() - start) / times)
    return best


def print_each(jobs: list[tuple[Calculation, Mapping[str, Given]]]) -> None:
    """One line for each calculation: checked and computed, and computed alone."""
    print(f"{'calculation':24} {'us':>8} {'limit':>8}")
    for sheet, values in jobs:
        took = seconds(lambda sheet=sheet, values=values: run(sheet, values), 100) * 1e6  # type: ignore[misc]
        limit = LIMITS.get(sheet.name, USUAL_LIMIT)
        print(f"{sheet.name:24} {took:8.1f} {limit:8.0f}{'' if took <= limit else '   SLOW'}")


def print_all(jobs: list[tuple[Calculation, Mapping[str, Given]]]) -> None:
    """The time for a library's worth of computations, calculation after calculation."""
    start = perf_counter()
    for sheet, values in islice(cycle(jobs), ENTRIES):
        run(sheet, values)
    print(f"{ENTRIES} computations: {perf_counter() - start:.2f} s")


def print_imports() -> None:
    """The time to import geometry in a fresh interpreter."""
    for name, line in IMPORTS.items():
        code = f"import time; t = time.perf_counter(); {line}; print((time.perf_counter() - t) * 1000)"
        command = [sys.executable, "-c", code]
        took = min(
            float(subprocess.run(command, check=True, capture_output=True, text=True).stdout)
            for _ in range(REPEATS)
        )
        print(f"import of {name}: {took:.1f} ms")


def main() -> None:
    """Time everything and print it."""
    values = {name: calculation(name).sample for name in calculation_names()}
    jobs = [(calculation(name), values[name]) for name in calculation_names() if name in values]
    for name in set(calculation_names()) - set(values):
        print(f"{name} has no sample and was not timed")
    print_each(jobs)
    print_all(jobs)
    print_imports()


if __name__ == "__main__":
    main()
