"""By which words a calculation is found, beside its title and its question."""

from __future__ import annotations

from geometry.calculation import Calculation
from geometry.quantities import QUANTITIES
from geometry.quantities.terms import words_found_by
from library.calc.wording import spoken


def other_words(sheet: Calculation) -> str:
    """Its name, how what it asks for and answers is called, by any of its names, and the words to choose from.

    Args:
        sheet: the calculation.

    Example:
        >>> from geometry.calculations import calculation
        >>> words = other_words(calculation("setting-height"))
        >>> "Wheel diameter" in words, "setting height" in words
        (True, True)
    """
    rows = [
        QUANTITIES[key] for key in dict.fromkeys((*(field.key for field in sheet.inputs), *sheet.outputs))
    ]
    synonyms = words_found_by({row.key: row.choices for row in rows})
    choices = [spoken(choice) for row in rows for choice in row.choices]
    return " ".join((spoken(sheet.name), *(row.title for row in rows), *synonyms, *choices))
