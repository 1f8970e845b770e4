"""What the catalogue's tests share: the shipped catalogue, read once."""

import pytest

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.load import load_catalogue


@pytest.fixture(scope="session")
def catalogue() -> Catalogue:
    return load_catalogue()
