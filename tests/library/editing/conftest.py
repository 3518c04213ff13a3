"""A shipped layer and a shop's folder, both small."""

from __future__ import annotations

from pathlib import Path

import pytest

SHIPPED = """\
schema = 1

[[family]]
id = "tap"
title = "Taps"
kind = "tap"

[[entry]]
id = "gun-tap"
family = "tap"
title = "Spiral-point tap"
cautions = ["eyes"]
rake_angle = { low = "3 deg", usual = "5 deg", high = "8 deg", source = "handbook", place = "table 3" }
relief_angle = "4 deg"
"""

TAPS = """\
# The shop's own taps.
schema = 1

[[entry]]  # the one on the shelf
id = "bronze-tap"
family = "tap"
title = "Tap for bronze"
rake_angle = {usual='4 deg',   source = "shop"}  # measured in May
cautions = [
    "eyes",  # always
    "fine-dust",
]
notes = '''
[[entry]]
# not a remark
'''

# Tried once.
[[entry]]
id = "brass-tap"
family = "tap"
title = "Tap for brass"
relief_angle.usual = "3 deg"
relief_angle.source = "from memory"  # ask again

[entry.land_width]
usual = "1.5 mm"
source = "shop"
"""


@pytest.fixture
def shipped(tmp_path: Path) -> Path:
    folder = tmp_path / "shipped"
    folder.mkdir()
    (folder / "taps.toml").write_text(SHIPPED)
    return folder


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    folder = tmp_path / "shop"
    folder.mkdir()
    (folder / "taps.toml").write_text(TAPS)
    return folder
