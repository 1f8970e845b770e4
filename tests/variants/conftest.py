"""What two hundred cheap cells come to when nothing goes wrong."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor

import pytest
from cheap_cells import TWO_HUNDRED, contents, job

from setwright.solver.uses.variants.engines import Lent
from setwright.solver.uses.variants.run import run


@pytest.fixture(scope="session")
def undisturbed(tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    """Every file of an undisturbed run."""
    folder = tmp_path_factory.mktemp("undisturbed")
    with ThreadPoolExecutor(1) as executor:
        run(job(TWO_HUNDRED, folder), Lent(executor, 1))
    return contents(folder)
