"""One test over many small cases: it goes through all of them, and names each that fails.

A case of its own for every row costs more than the row itself; the milliseconds of thousands of them are minutes.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import wraps
from inspect import signature
from typing import Any

Test = Callable[..., None]


def each(name: str, values: Iterable[Any], told: Callable[[Any], str] = str) -> Callable[[Test], Test]:
    """Run a test for every value, as one test.

    Args:
        name: the parameter of the test that takes the value.
        values: what it takes.
        told: how a value is named where its case fails.
    """
    cases = list(values)

    def over_all(test: Test) -> Test:
        @wraps(test)
        def run(**others: Any) -> None:
            failed: list[str] = []
            first: AssertionError | None = None
            for one in cases:
                try:
                    test(**others, **{name: one})
                except AssertionError as error:
                    failed.append(f"{told(one)}: {str(error).splitlines()[0] if str(error) else 'failed'}")
                    first = first or error
            if first is not None:
                raise AssertionError(f"{len(failed)} of {len(cases)} cases:\n" + "\n".join(failed)) from first

        shown = signature(test)
        run.__signature__ = shown.replace(  # type: ignore[attr-defined]
            parameters=[one for key, one in shown.parameters.items() if key != name]
        )
        assert cases, f"{test.__name__} has no case"
        return run

    return over_all
