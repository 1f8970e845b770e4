"""The search processes: at most as many as cores, given the searches that wait in turn of those who asked for them."""

from __future__ import annotations

import multiprocessing
import os
import secrets
import threading
import time
from dataclasses import dataclass, field, replace
from typing import Any, Final

from setwright.solver.desk.searches.process import wait_for_tasks
from setwright.solver.desk.searches.task import Task, Told

MOST_KEPT: Final = 60
"""Searches whose ends are kept in memory; the oldest are forgotten."""
PATIENCE: Final = 1.0
"""Seconds that a search that was told to stop is given to hand over its best week."""
MOST_TASKS: Final = 50
"""Tasks that one process does before another takes its place, so that its memory does not grow."""


@dataclass
class Search:
    """One search: who asked for it, what is done, and how it stands."""

    id: str
    asker: str
    """A client's code, or another word for those who share a turn."""
    task: Task
    told: Told = field(default_factory=Told)
    watched: float = field(default_factory=time.monotonic)
    """When a page last looked at it."""
    stopping: bool = False


@dataclass
class _Process:
    handle: Any
    connection: Any
    stop: Any
    search: Search | None = None
    tasks: int = 0


class Crew:
    """Starts, watches and stops searches; safe to call from any thread."""

    def __init__(self, most: int | None = None) -> None:
        self._most = most or os.cpu_count() or 1
        self._changed = threading.Condition()
        self._searches: dict[str, Search] = {}
        self._waiting: list[Search] = []
        self._turns: dict[str, int] = {}
        self._processes: list[_Process] = []
        self._closed = False
        self._context = multiprocessing.get_context("spawn")

    def start(self) -> None:
        """Start the processes, so that the first search waits for no imports."""
        with self._changed:
            while len(self._processes) < self._most:
                self._add_process()

    def ask(self, asker: str, task: Task) -> Search:
        """A new search, begun as soon as a process is free and it is the asker's turn."""
        search = Search(secrets.token_urlsafe(9), asker, task)
        with self._changed:
            self._searches[search.id] = search
            self._waiting.append(search)
            self._forget_oldest()
            self._hand_out()
        return search

    def search(self, key: str) -> Search | None:
        """The search of an id; None where it is not known, or forgotten."""
        with self._changed:
            found = self._searches.get(key)
            if found:
                found.watched = time.monotonic()
            return found

    def latest(self, asker: str, name: str) -> Search | None:
        """The search of a kind that someone asked for last; None where there is none, or it is forgotten."""
        with self._changed:
            found = [search for search in self._searches.values() if (search.asker, search.task.name) == (asker, name)]
            return found[-1] if found else None

    def after(self, search: Search, count: int, seconds: float) -> Told:
        """How a search stands, as soon as it has told more than `count` times, or when the seconds are over."""
        with self._changed:
            search.watched = time.monotonic() + seconds
            self._changed.wait_for(lambda: search.told.count > count or self._closed, seconds)
            search.watched = time.monotonic()
            return search.told

    def stop(self, search: Search) -> None:
        """End a search with the best that it has; one that hands over nothing in a second is ended by force."""
        with self._changed:
            if search.told.ended or search.stopping:
                return
            search.stopping = True
            if search in self._waiting:
                self._waiting.remove(search)
                self._tell(search, state="stopped")
                return
            process = next((p for p in self._processes if p.search is search), None)
        if process:
            process.stop.set()
            timer = threading.Timer(PATIENCE, self._end_by_force, (process, search))
            timer.daemon = True
            timer.start()

    def unwatched(self, seconds: float) -> tuple[Search, ...]:
        """The searches that go on though no page has looked at them for so many seconds."""
        now = time.monotonic()
        with self._changed:
            return tuple(s for s in self._searches.values() if not s.told.ended and now - s.watched > seconds)

    def close(self) -> None:
        """End all processes."""
        with self._changed:
            self._closed = True
            processes, self._processes = self._processes, []
            self._changed.notify_all()
        for process in processes:
            process.stop.set()
            process.handle.kill()
            process.handle.join()

    def _tell(self, search: Search, **what: Any) -> None:
        """The next value of how a search stands; the lock is held."""
        search.told = replace(search.told, **what, count=search.told.count + 1)
        self._changed.notify_all()

    def _hand_out(self) -> None:
        """Give searches that wait to free processes, first to the asker who was served least; the lock is held."""
        while self._waiting and not self._closed:
            process = next((p for p in self._processes if p.search is None), None)
            if process is None:
                if len(self._processes) >= self._most:
                    return
                process = self._add_process()
            search = min(self._waiting, key=lambda one: self._turns.get(one.asker, 0))
            self._waiting.remove(search)
            self._turns[search.asker] = self._turns.get(search.asker, 0) + 1
            process.search, process.tasks = search, process.tasks + 1
            process.stop.clear()
            self._tell(search, state="running")
            process.connection.send(search.task)

    def _add_process(self) -> _Process:
        """One more process and the thread that hears it; the lock is held."""
        ours, theirs = self._context.Pipe()
        stop = self._context.Event()
        handle = self._context.Process(target=wait_for_tasks, args=(theirs, stop), daemon=True)
        handle.start()
        theirs.close()
        process = _Process(handle, ours, stop)
        self._processes.append(process)
        threading.Thread(target=self._hear, args=(process,), daemon=True).start()
        return process

    def _hear(self, process: _Process) -> None:
        """Pass on what a process tells until it is gone."""
        while True:
            try:
                kind, what = process.connection.recv()
            except (EOFError, OSError):
                self._gone(process)
                return
            with self._changed:
                if process.search is not None:
                    self._tell(process.search, **{"state": "running", **what})
                if kind == "end":
                    process.search = None
                    if process.tasks >= MOST_TASKS:
                        process.connection.close()
                    self._hand_out()

    def _gone(self, process: _Process) -> None:
        """Take a process off; the search that it had in hand is stopped, or failed where nobody asked it to."""
        with self._changed:
            if process in self._processes:
                self._processes.remove(process)
            search, process.search = process.search, None
            if search is not None and not search.told.ended:
                self._tell(search, **_ended_with(search))
            self._hand_out()

    def _end_by_force(self, process: _Process, search: Search) -> None:
        """Kill a process that goes on with a search which was told to stop."""
        with self._changed:
            late = process.search is search
        if late:
            process.handle.kill()

    def _forget_oldest(self) -> None:
        """Drop the ends of the oldest searches; the lock is held."""
        ended = [key for key, search in self._searches.items() if search.told.ended]
        for key in ended[: max(0, len(self._searches) - MOST_KEPT)]:
            del self._searches[key]


def _ended_with(search: Search) -> dict[str, Any]:
    """How a search ends whose process is gone: with its best week where it was told to stop."""
    if search.stopping:
        return {"state": "stopped"}
    fault = {"where": "search", "said": "its process ended", "remedy": "ask again; the desk's terminal may say why"}
    return {"state": "failed", "faults": (fault,)}
