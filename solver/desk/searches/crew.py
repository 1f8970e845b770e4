"""The searches of a desk: who asked for them, which waits for its turn, and the processes that do them."""

from __future__ import annotations

import os
import secrets
import threading
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from typing import Any, Final

from setwright.solver.desk.clock import seconds
from setwright.solver.desk.searches.driven import Driven
from setwright.solver.desk.searches.search import Search, ended_with
from setwright.solver.desk.searches.task import Task

MOST_KEPT: Final = 60
"""Searches whose ends are kept in memory; those that nobody looked at for longest are forgotten."""
READY: Final = 2
"""Processes that are kept ready for the next searches, so that a second page waits for no start of one."""


class Crew:
    """Starts, watches and stops searches; safe to call from any thread, and none of its calls waits for a process.

    Each process is led by a thread of its own: it alone takes a search, sends it and hears what is told until it ends.
    How searches and processes stand is read and changed under one lock.
    """

    def __init__(self, most: int | None = None) -> None:
        """At most so many searches run at once; as many as cores where it is None."""
        self._most = most or os.cpu_count() or 1
        self._changed = threading.Condition()
        self._searches: dict[str, Search] = {}
        self._waiting: list[Search] = []
        self._turns = Counter[str]()
        self._processes: list[Driven[Search]] = []
        self._closed = False

    def start(self) -> None:
        """Start the processes that are kept ready, so that the first search waits for no imports."""
        with self._changed:
            self._keep_ready()

    def close(self) -> None:
        """End all processes."""
        with self._changed:
            self._closed = True
            for process in self._processes:
                process.kill()
            self._changed.notify_all()

    def ask(self, asker: str, task: Task) -> Search:
        """A new search, begun as soon as a process is free and it is the asker's turn."""
        search = Search(secrets.token_urlsafe(9), asker, task)
        with self._changed:
            self._searches[search.id] = search
            self._waiting.append(search)
            self._forget_oldest()
            self._keep_ready()
            self._changed.notify_all()
        return search

    def search(self, key: str) -> Search | None:
        """The search of an id; None where it is not known, or forgotten."""
        with self._changed:
            found = self._searches.get(key)
            if found:
                found.watched = seconds()
            return found

    def latest(self, asker: str, name: str) -> Search | None:
        """The search of a kind that someone asked for last; None where there is none, or it is forgotten."""
        with self._changed:
            found = [search for search in self._searches.values() if (search.asker, search.task.name) == (asker, name)]
            return found[-1] if found else None

    def stop(self, search: Search) -> None:
        """End a search with the best that it has; one that hands over nothing in a second is ended by force."""
        with self._changed:
            self._stop(search)

    def stop_unwatched(self, longest: float, waited_for: Callable[[str], bool] = lambda key: False) -> None:
        """Stop the searches that no page has looked at for so many seconds and for which none waits out of sight."""
        with self._changed:
            for search in self._searches.values():
                if seconds() - search.watched > longest and not waited_for(search.id):
                    self._stop(search)

    def forget(self, asker: str) -> None:
        """Stop and forget all searches of one who is gone, and those of others that hold their brief."""
        with self._changed:
            for search in [one for one in self._searches.values() if one.is_about(asker)]:
                self._stop(search)
                del self._searches[search.id]

    # ---- inside: the lock is held, but for the thread of a process

    def _stop(self, search: Search) -> None:
        if search.told.ended or search.stopping:
            return
        search.stopping = True
        if search in self._waiting:
            self._waiting.remove(search)
            self._tell(search, {"state": "stopped"})
        for process in self._processes:
            if process.work is search:
                process.stop(self._changed)

    def _tell(self, search: Search, what: dict[str, Any]) -> None:
        """The next value of how a search stands; what comes after its end is dropped."""
        if not search.told.ended:
            search.told = replace(search.told, **what, count=search.told.count + 1)
            self._changed.notify_all()

    def _keep_ready(self) -> None:
        """Start processes until enough are free for those who wait, and for the next two, or all there may be run."""
        while not self._closed and len(self._processes) < self._most and self._free() < READY + len(self._waiting):
            process: Driven[Search] = Driven()
            self._processes.append(process)
            threading.Thread(target=self._lead, args=(process,), daemon=True).start()

    def _free(self) -> int:
        return sum(process.work is None and not process.leaving for process in self._processes)

    def _lead(self, process: Driven[Search]) -> None:
        """Start a process and give it one search after the other, until it has done enough or is gone."""
        began = process.start()
        while began and (search := self._next(process)):
            self._do(process, search)
        with self._changed:
            process.kill()
            self._processes.remove(process)
            if began:
                self._keep_ready()
            elif not self._processes:
                self._fail_all()
        if began:
            process.handle.join()

    def _next(self, process: Driven[Search]) -> Search | None:
        """The search that a free process does next, that of the asker who was served least; None where it is to end."""
        with self._changed:
            while not self._closed and process.is_fit() and self._free() <= READY + len(self._waiting):
                if self._waiting:
                    search = min(self._waiting, key=lambda one: self._turns[one.asker])
                    self._waiting.remove(search)
                    self._turns[search.asker] += 1
                    process.take(search)
                    self._tell(search, {"state": "running"})
                    self._keep_ready()
                    return search
                if self._free() == len(self._processes):
                    self._turns.clear()
                self._changed.wait()
            process.leaving = True
            return None

    def _do(self, process: Driven[Search], search: Search) -> None:
        """Send a search to a process and pass on what it tells until the search has ended, or the process."""
        for told in process.told(search.task):
            with self._changed:
                self._tell(search, told)
                if search.told.ended:
                    break
        with self._changed:
            if not search.told.ended:
                # The process is gone, though it may not look so yet: it is given nothing more.
                process.leaving = True
            self._tell(search, ended_with(search))
            process.work = None
            self._forget_oldest()

    def _forget_oldest(self) -> None:
        """Drop the ended searches that nobody looked at for longest."""
        ended = sorted((one for one in self._searches.values() if one.told.ended), key=lambda one: one.watched)
        for search in ended[: max(0, len(self._searches) - MOST_KEPT)]:
            del self._searches[search.id]

    def _fail_all(self) -> None:
        """No process can be started: those who wait are told."""
        while self._waiting:
            self._tell(self._waiting.pop(), ended_with(None))
