"""The run: tasks to workers, a few times as many as there are workers, results stored as they arrive."""

from __future__ import annotations

import heapq
from collections import Counter, deque
from collections.abc import Callable
from concurrent.futures import CancelledError, Future
from dataclasses import dataclass, field
from queue import Empty, SimpleQueue

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.uses.variants.engines import Engine
from setwright.solver.uses.variants.expected import seconds_of
from setwright.solver.uses.variants.matrix import Matrix
from setwright.solver.uses.variants.record import record, standing_of
from setwright.solver.uses.variants.store import Store
from setwright.solver.uses.variants.task import CLASH, FINAL, NO_WEEK, SET_ASIDE, SOLVED, UNFINISHED, Task, Work

IN_FLIGHT = 3
"""Tasks handed out for each worker: one runs, the others are on their way."""
TICK = 0.2
"""Seconds between two looks at whether to stop."""
MOST_DEATHS = 2


class Mismatch(Exception):
    """A worker has another version or catalogue than the run; its one argument says so."""


def mismatched(error: BaseException) -> str:
    """What is wrong with a worker that is not what the run was planned with, or that cannot load it; else nothing."""
    if isinstance(error, Mismatch):
        return str(error)
    unknown = isinstance(error, AttributeError) and str(error).startswith("Can't get attribute")
    return f"a worker cannot load what it is to do: {error}" if unknown or isinstance(error, ImportError) else ""


@dataclass(frozen=True)
class Tally:
    """How a run stands: cells by how they ended, and those still to come."""

    cells: int
    kept: int
    """Found ready in the folder."""
    solved: int
    impossible: int
    no_week: int
    troubled: int
    """Set aside, or ended by the net: a re-run tries them again."""
    waiting: int
    """Left out because the shorter variant has no result."""
    running: int
    left: int

    @property
    def done(self) -> int:
        return self.solved + self.impossible + self.no_week


@dataclass(frozen=True)
class Job:
    """What a run works on."""

    matrix: Matrix
    store: Store
    work: Work
    overlay: tuple[str, bytes] | None = None
    shard: tuple[int, int] = (1, 1)
    """(k, n): every nth chain from the kth on."""

    def places(self) -> tuple[int, ...]:
        """The cells of this shard, whole chains, in order."""
        k, n = self.shard
        return tuple(place for chain in self.matrix.chains[k - 1 :: n] for place in chain)


def run(
    job: Job,
    engine: Engine,
    tell: Callable[[Tally], None] = lambda tally: None,
    stopped: Callable[[], bool] = lambda: False,
) -> Tally:
    """Solve what is missing; the tally at the end.

    Raises SetwrightError where the folder cannot be written or the workers are gone; what was stored by then is kept.
    """
    return Run(job, engine, tell, stopped).all()


@dataclass
class Run:
    """The state of one run."""

    job: Job
    engine: Engine
    tell: Callable[[Tally], None]
    stopped: Callable[[], bool]
    ended: dict[int, str] = field(default_factory=dict)
    counts: Counter[str] = field(default_factory=Counter)
    cells: int = 0
    ready: list[tuple[float, int]] = field(default_factory=list)
    """(expected seconds of the cell and those that follow, negative; place): the longest first, so that all workers
    end at about one time."""
    ahead: dict[int, float] = field(default_factory=dict)
    children: dict[int, list[int]] = field(default_factory=dict)
    flying: dict[Future[bytes], int] = field(default_factory=dict)
    landed: SimpleQueue[Future[bytes]] = field(default_factory=SimpleQueue)
    suspects: deque[int] = field(default_factory=deque)
    """Cells that were in flight when a worker died: each is tried again alone."""
    deaths: dict[int, int] = field(default_factory=dict)
    broken: bool = False
    kept: int = 0

    def all(self) -> Tally:
        self.look()
        while True:
            if self.broken and not self.flying:
                self.engine.renew()
                self.broken = False
            if not self.stopped():
                self.send()
            else:
                self.recall()
            self.tell(self.tally())
            if not self.flying:
                return self.tally()
            self.wait()

    # ---- what there is to do

    def look(self) -> None:
        """Find what is done already, and what can begin."""
        places = self.job.places()
        cells = self.job.matrix.cells
        for place in places:
            standing = standing_of(self.job.store.read(cells[place].key), cells[place].key)
            if standing and standing.end in FINAL:
                self.note(place, standing.end)
        self.cells, self.kept = len(places), len(self.ended)
        for place in reversed(places):
            base = cells[place].extends
            self.ahead[place] = self.ahead.get(place, 0.0) + seconds_of(cells[place], "quick")
            if base is not None:
                self.ahead[base] = self.ahead.get(base, 0.0) + self.ahead[place]
        for place in places:
            base = cells[place].extends
            if place in self.ended:
                continue
            if base is None or base in self.ended:
                self.make_ready(place)
            else:
                self.children.setdefault(base, []).append(place)

    def make_ready(self, place: int) -> None:
        heapq.heappush(self.ready, (-self.ahead[place], place))

    def task(self, place: int) -> Task:
        """The task of a cell, with the week that it extends."""
        job, cell = self.job, self.job.matrix.cells[place]
        return Task(
            name=cell.name,
            values=dict(cell.values),
            brief=cell.brief,
            key=cell.key,
            share=job.matrix.share,
            stamp=dict(job.matrix.stamp),
            overlay=job.overlay,
            extends=None if cell.extends is None else job.matrix.cells[cell.extends].name,
            previous=self.previous(cell.extends),
        )

    def previous(self, place: int | None) -> bytes | None:
        """The result of the nearest shorter variant that has a week."""
        while place is not None:
            cell = self.job.matrix.cells[place]
            if self.ended[place] == SOLVED:
                return self.still_there(cell.key)
            place = cell.extends
        return None

    def still_there(self, key: str) -> bytes:
        """A result as it stood when it was looked up or kept; without it a longer variant would come out otherwise."""
        data = self.job.store.read(key)
        if data is None or standing_of(data, key) is None:
            said = "has gone or is damaged since this run found it whole"
            raise SetwrightError(Fault(str(self.job.store.path(key)), said, "run the same command again"))
        return data

    # ---- to and fro

    def send(self) -> None:
        """Hand out what may be handed out; after a death one cell at a time until the suspects are through."""
        if self.broken:
            return
        if self.suspects:
            if not self.flying:
                self.submit(self.suspects.popleft())
            return
        while self.ready and len(self.flying) < IN_FLIGHT * self.engine.workers:
            self.submit(heapq.heappop(self.ready)[1])

    def submit(self, place: int) -> None:
        future = self.engine.submit(self.job.work, self.task(place))
        self.flying[future] = place
        future.add_done_callback(self.landed.put)

    def recall(self) -> None:
        """Take back what has not begun."""
        for future in tuple(self.flying):
            future.cancel()

    def wait(self) -> None:
        """Take in what has landed, or look after a tick whether the workers are still there."""
        try:
            self.land(self.landed.get(timeout=TICK))
        except Empty:
            self.engine.check()

    def land(self, future: Future[bytes]) -> None:
        """Store one result, or deal with what went wrong."""
        alone = len(self.flying) == 1 and not self.broken
        place = self.flying.pop(future)
        if future.cancelled() and self.stopped():
            return
        error = CancelledError() if future.cancelled() else future.exception()
        if error is None:
            self.keep(place, future.result())
        elif said := mismatched(error):
            raise SetwrightError(Fault("workers", said, "give every worker the same setwright, solvers and catalogue"))
        elif isinstance(error, CancelledError) or self.engine.deadly(error):
            self.engine.check()
            self.died(place, alone)
        else:
            self.set_aside(place, f"{type(error).__name__}: {error}")

    def died(self, place: int, alone: bool) -> None:
        """A worker died while this cell was in flight: try it alone, and set it aside when it dies alone twice."""
        self.broken = True
        self.deaths[place] = self.deaths.get(place, 0) + alone
        if self.deaths[place] >= MOST_DEATHS:
            self.set_aside(place, f"its worker died {MOST_DEATHS} times with nothing else running")
        else:
            self.suspects.append(place)

    def set_aside(self, place: int, said: str) -> None:
        self.keep(place, record(self.task(place), SET_ASIDE, said))

    def keep(self, place: int, data: bytes) -> None:
        """Store a result at once; a final one lets the longer variants begin."""
        key = self.job.matrix.cells[place].key
        standing = standing_of(data, key)
        if standing is None:
            said = f"a worker returned no whole result of {self.job.matrix.cells[place].name!r}"
            raise SetwrightError(Fault("workers", said, "give every worker the same setwright, then run again"))
        self.job.store.write(key, data)
        self.note(place, standing.end)
        if standing.end in FINAL:
            for child in self.children.pop(place, ()):
                self.make_ready(child)

    # ---- how it stands

    def note(self, place: int, end: str) -> None:
        self.ended[place] = end
        self.counts[end] += 1

    def tally(self) -> Tally:
        left = self.cells - self.counts.total()
        return Tally(
            cells=self.cells,
            kept=self.kept,
            solved=self.counts[SOLVED],
            impossible=self.counts[CLASH],
            no_week=self.counts[NO_WEEK],
            troubled=self.counts[UNFINISHED] + self.counts[SET_ASIDE],
            waiting=0 if self.flying or self.ready or self.suspects else left,
            running=min(len(self.flying), self.engine.workers),
            left=left,
        )
