"""The catalogue, read once."""

from __future__ import annotations

import pytest

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.load import load_catalogue


@pytest.fixture(scope="session")
def catalogue() -> Catalogue:
    return load_catalogue()
