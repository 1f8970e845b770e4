"""What two hundred cheap variants come to when nothing goes wrong."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor

import pytest
from cheap_variants import TWO_HUNDRED, contents, job

from setwright.solver.uses.variants.running import run_variants
from setwright.solver.uses.variants.workers import ExecutorWorkers


@pytest.fixture(scope="session")
def undisturbed(tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    """Every file of an undisturbed run."""
    folder = tmp_path_factory.mktemp("undisturbed")
    with ThreadPoolExecutor(1) as executor:
        run_variants(job(TWO_HUNDRED, folder), ExecutorWorkers(executor, 1))
    return contents(folder)
