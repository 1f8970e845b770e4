"""What every check against published values asks for: the catalogue, its curves and the published numbers.

Tolerances follow the marks of the evidence file: A (read in the paper's record) tight, B (second-hand) wider,
C (common practice) to the minute, M (from memory) never the only support of a check.
"""

from collections.abc import Callable, Mapping

import pytest

from setwright.catalogue.entries import Catalogue, Number
from setwright.catalogue.load import load_catalogue
from setwright.solver.evaluation.curves import Curves

Published = Callable[[str], Number]


@pytest.fixture(scope="session")
def catalogue() -> Catalogue:
    return load_catalogue()


@pytest.fixture(scope="session")
def numbers(catalogue: Catalogue) -> Mapping[str, float]:
    return {key: number.value for key, number in catalogue.evidence.items()}


@pytest.fixture(scope="session")
def curves(catalogue: Catalogue) -> Curves:
    return Curves.of(catalogue)


@pytest.fixture(scope="session")
def published(catalogue: Catalogue) -> Published:
    """A published number by its id in the evidence file, where value, interval, source and mark stand together."""
    return lambda name: catalogue.evidence[name]
