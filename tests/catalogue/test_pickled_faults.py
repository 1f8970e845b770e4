"""Errors keep their faults on the way from one process to another."""

from __future__ import annotations

import pickle
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context

import pytest

from setwright.catalogue.faults import CatalogueFault, Fault, SetwrightError, UsageFault
from setwright.solver.cli.exit_codes import ExitCode, NoWeekError, exit_code_of

FAULTS = (Fault("days[2]", "is no day", "write mon"), Fault("kit", "is unknown"))
ERRORS = (
    SetwrightError(FAULTS),
    UsageFault(FAULTS[0]),
    CatalogueFault(iter(FAULTS)),
    NoWeekError(FAULTS[1], ExitCode.CLASH),
)


def failing(place: int) -> None:
    raise ERRORS[place]


@pytest.mark.parametrize("protocol", range(2, pickle.HIGHEST_PROTOCOL + 1))
@pytest.mark.parametrize("error", ERRORS, ids=lambda error: type(error).__name__)
def test_an_error_is_pickled_with_its_faults(error: SetwrightError, protocol: int) -> None:
    again = pickle.loads(pickle.dumps(error, protocol))
    assert type(again) is type(error) and again.faults == error.faults
    assert str(again) == str(error) and exit_code_of(again) == exit_code_of(error)


def test_a_pool_hands_back_the_error_of_its_worker() -> None:
    with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as pool:
        for place, error in enumerate(ERRORS):
            with pytest.raises(type(error)) as caught:
                pool.submit(failing, place).result()
            assert caught.value.faults == error.faults
