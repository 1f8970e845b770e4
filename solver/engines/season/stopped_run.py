"""A run of CP-SAT that ends as soon as the user stops it."""

from __future__ import annotations

import threading
from typing import Any, Final

from ortools.sat.python import cp_model

from setwright.solver.engines.stopped import Stopped, check

PAUSE: Final = 0.05
"""Seconds between two looks at whether the user has stopped it."""


def run(solver: cp_model.CpSolver, model: cp_model.CpModel, stopped: Stopped) -> Any:
    """CP-SAT's status at the end of a run; raises StoppedRun where the user stopped it, whatever it found."""
    ended = threading.Event()

    def watch() -> None:
        while not ended.wait(PAUSE):
            if stopped():
                solver.stop_search()

    check(stopped)
    watcher = threading.Thread(target=watch, daemon=True)
    watcher.start()
    try:
        status = solver.solve(model)
    finally:
        ended.set()
        watcher.join()
    check(stopped)
    return status
