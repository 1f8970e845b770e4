"""One search process: it waits for tasks, does one after the other, and sends back what they tell."""

from __future__ import annotations

import multiprocessing
import os
import signal
import sys
import threading
import traceback
from contextlib import suppress
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any, Final

from setwright.catalogue.faults import SetwrightError
from setwright.catalogue.load import load_catalogue
from setwright.solver.desk.clock import seconds
from setwright.solver.desk.searches.task import Task, told_of

PAUSE: Final = 0.25
"""Least seconds between two tellings."""
NICENESS: Final = 10
"""How far a search stands back behind the pages where both want a core."""
DEFECT: Final = {"where": "search", "said": "ended by a defect of setwright", "remedy": "see the terminal of the desk"}


def wait_for_tasks(connection: Connection, stop: Any) -> None:
    """Say that it is ready, and do the tasks that come over a connection until it closes.

    All that is sent is fields of `Told`. A `stop` whose value is not 0 ends the task in hand.
    """
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    if hasattr(os, "nice"):
        os.nice(NICENESS)
    threading.Thread(target=_end_with_the_desk, daemon=True).start()
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)  # the solvers print, however silent they are told to be
    _warm()
    with suppress(EOFError, OSError):  # the desk is gone, or wants this process no longer
        connection.send({})
        while True:
            task = connection.recv()
            connection.send(_end_of(task, _Teller(connection, stop)))


def _end_with_the_desk() -> None:
    """End this process, whatever it does, when the desk's own is gone."""
    desk = multiprocessing.parent_process()
    if desk is not None:
        desk.join()
        os._exit(1)


def _warm() -> None:
    """The heavy imports and the catalogue, before the first task comes."""
    from setwright.solver import planning
    from setwright.solver.desk.searches import tasks

    assert planning and tasks
    load_catalogue()


def _end_of(task: Task, teller: _Teller) -> dict[str, Any]:
    """The fields of the last `Told` of a task; one that was stopped is no failure, and shows what it told last."""
    from setwright.solver.desk.searches.tasks import TASKS
    from setwright.solver.engines.stopped import StoppedRun

    try:
        catalogue = load_catalogue(None if task.overlay is None else Path(task.overlay))
        document = TASKS[task.name]()(task.arguments, catalogue, teller)
        return {"state": "stopped" if teller.stopped() else "done", "document": document}
    except StoppedRun:
        return {"state": "stopped"}
    except SetwrightError as error:
        if teller.stopped():
            return {"state": "stopped"}
        faults = tuple(told_of(fault) for fault in error.faults)
        return {"state": "failed", "faults": faults, "document": None}
    except Exception:
        traceback.print_exc(file=sys.stderr)
        return {"state": "failed", "faults": (DEFECT,), "document": None}


class _Teller:
    """Sends what a task tells, not more often than a page can show it."""

    def __init__(self, connection: Connection, stop: Any) -> None:
        self._connection, self._stop = connection, stop
        self._begun, self._sent = seconds(), -PAUSE

    def due(self) -> bool:
        """Whether something told now would be sent: what is costly to tell is made only then."""
        return seconds() - self._sent >= PAUSE

    def progress(self, **what: Any) -> None:
        """Tell fields of `Told`, with the seconds so far; told too soon after the last, it is left out."""
        if self.due():
            self._sent = seconds()
            with suppress(OSError):  # the desk is gone, and this process follows it
                self._connection.send({"seconds": round(self._sent - self._begun, 1), **what})

    def stopped(self) -> bool:
        """Whether the search is to end with what it has."""
        return bool(self._stop.value)
