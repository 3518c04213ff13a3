"""Which settings of a calculation stand above its fields."""

from __future__ import annotations

from collections.abc import Container, Sequence

from library.cards.setting_line import SettingLine


def shown_above(lines: Sequence[SettingLine], typed: Container[str]) -> list[SettingLine]:
    """The settings that stand above the fields: what was typed has its own line there, unless another stands behind it.

    So they stand in the order in which they are counted.

    Args:
        lines: what the calculation sets, in the order in which it is set.
        typed: the quantities that were typed into it.
    """
    many = max((n for n, one in enumerate(lines, 1) if one.graduation or one.key not in typed), default=0)
    return list(lines[:many])
