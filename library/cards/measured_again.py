"""What of a tool is judged as it came, until it is measured again after grinding."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from library.cards.model import Card, Inspection

MEASURED_AGAIN = {
    "diameter": "measured_diameter",
    "back_diameter": "back_diameter",
    "tap_pitch_diameter": "tap_pitch_diameter",
}
"""What is judged as the tool came, and by the input of that name; once it was measured after grinding, that is judged."""


def measured_after(card: Card, key: str) -> str:
    """What was measured of a quantity after grinding, in one line; empty where nothing was.

    Example:
        >>> from library.cards.model import Inspection
        >>> measured_after(Card(after={"diameter": Inspection(("12.013 mm",))}), "diameter")
        '12.013 mm'
    """
    found = card.after.get(key)
    return ", ".join(one.strip() for one in found.readings if one.strip()) if found is not None else ""


def with_measured_again(card: Card, decides: Mapping[str, Inspection]) -> dict[str, Inspection]:
    """What of the inspection a job is worked out with: what decides on a setting, and the readings that are judged anew.

    Args:
        card: with what was measured before and after grinding.
        decides: of the inspection what settings hang on.
    """
    again = {
        key: card.after[key] for key in MEASURED_AGAIN if key in card.received and measured_after(card, key)
    }
    judged = {
        key: replace(decides.get(key, Inspection()), readings=one.readings) for key, one in again.items()
    }
    return {**decides, **judged}
