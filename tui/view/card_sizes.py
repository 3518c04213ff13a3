"""What of the size of a tool is told among its settings, though nothing is missing: which diameter counts, which class of hole."""

from __future__ import annotations

from geometry.role import FACETS, HEEL
from library.cards.job import Job
from library.cards.step import Step

OTHER_END = {"reamer_lower_limit": "reamer_upper_limit", "tap_lower_limit": "tap_upper_limit"}
"""What is told together with what a calculation answers first, for one end of a range says little."""

OF_A_CLASS = {"reamer_lower_limit": "hole_tolerance"}
"""The first of two limits, with the class that they are for: where nobody gave one, they stand for one that is presumed."""


def class_of(step: Step, key: str) -> str:
    """Of limits the class that they are for, and that it is presumed where nobody gave it; empty of anything else.

    In brackets it stands behind the verdict; one that is presumed gives none, and stands alone.

    Args:
        step: that answers them.
        key: the quantity.
    """
    of = step.answer.inputs.get(OF_A_CLASS.get(key, ""))
    return "" if of is None else f"{of.text}, presumed" if of.origin == "default" else f"({of.text})"


def told_of_the_size(job: Job, step: Step) -> set[str]:
    """The inputs of a calculation that stand among the settings although they are known.

    The diameter that a tool is ground down to, where the heel hangs on it, for nobody may take it for the one that the tool
    came with; and a class of limits that nobody gave.
    """
    of = step.answer.inputs
    found = {key for key in OF_A_CLASS.values() if key in of and of[key].origin == "default"}
    has_the_heel = step is job.doing(HEEL) or step.sheet.role.rows == FACETS
    return found | ({"diameter"} if has_the_heel and step.provenance.get("diameter") == "to be" else set())
