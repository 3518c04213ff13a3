"""The ordinary values of every worksheet, for the tests that go through all of them."""

from __future__ import annotations

from collections.abc import Mapping
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path

import pytest

from geometry.worksheet import Given

Samples = Mapping[str, Mapping[str, Given]]


@pytest.fixture(scope="session")
def samples() -> Samples:
    """``SAMPLES`` of the file beside this one, which is found by its path because tests are no package."""
    spec = spec_from_file_location("worksheet_samples", Path(__file__).with_name("samples.py"))
    assert spec is not None
    assert spec.loader is not None
    module = module_from_spec(spec)
    spec.loader.exec_module(module)
    found: Samples = module.SAMPLES
    return found
