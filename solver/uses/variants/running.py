"""The run: tasks to workers, a few times as many as there are workers, results stored as they arrive."""

from __future__ import annotations

import heapq
from collections import Counter, deque
from collections.abc import Callable
from concurrent.futures import CancelledError, Future
from dataclasses import dataclass, field
from queue import Empty, SimpleQueue

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.uses.variants.expected_time import seconds_of
from setwright.solver.uses.variants.matrix import VariantMatrix
from setwright.solver.uses.variants.result_store import ResultStore
from setwright.solver.uses.variants.results import ending_of, written_result
from setwright.solver.uses.variants.task import CLASH, FINAL, NO_WEEK, SET_ASIDE, SOLVED, UNFINISHED, VariantTask, Work
from setwright.solver.uses.variants.workers import Workers

IN_FLIGHT = 3
"""Tasks handed out for each worker: one runs, the others are on their way."""
STOP_INTERVAL = 0.2
"""Seconds between two looks at whether to stop."""
MOST_DEATHS = 2


class WorkerMismatchError(Exception):
    """A worker has another version or catalogue than the run; its one argument says so."""


def _mismatch_in(error: BaseException) -> str:
    """What is wrong with a worker that is not what the run was planned with, or that cannot load it; else nothing."""
    if isinstance(error, WorkerMismatchError):
        return str(error)
    unknown = isinstance(error, AttributeError) and str(error).startswith("Can't get attribute")
    return f"a worker cannot load what it is to do: {error}" if unknown or isinstance(error, ImportError) else ""


@dataclass(frozen=True)
class Tally:
    """How a run stands: variants by how they ended, and those still to come."""

    variants: int
    kept: int
    """Found ready in the folder."""
    solved: int
    impossible: int
    no_week: int
    troubled: int
    """Set aside, or ended by the wall-clock limit: a re-run tries them again."""
    waiting: int
    """Left out because the shorter variant has no result."""
    running: int
    left: int

    @property
    def done(self) -> int:
        """Variants whose end a later run leaves as it is."""
        return self.solved + self.impossible + self.no_week


@dataclass(frozen=True)
class Job:
    """What a run works on."""

    matrix: VariantMatrix
    store: ResultStore
    """An open store."""
    work: Work
    """What a worker does with a task; it must be importable where the workers are."""
    overlay: tuple[str, bytes] | None = None
    """Name and bytes of the catalogue file laid over the shipped one."""
    shard: tuple[int, int] = (1, 1)
    """(k, n): every nth chain from the kth on."""

    def places(self) -> tuple[int, ...]:
        """The variants of this shard, whole chains, in order."""
        k, n = self.shard
        return tuple(place for chain in self.matrix.chains[k - 1 :: n] for place in chain)


def run_variants(
    job: Job,
    workers: Workers,
    tell: Callable[[Tally], None] = lambda tally: None,
    stopped: Callable[[], bool] = lambda: False,
) -> Tally:
    """Solve what is missing; the tally at the end.

    Raises SetwrightError where the folder cannot be written or the workers are gone; what was stored by then is kept.
    """
    return _Run(job, workers, tell, stopped).completed()


@dataclass
class _Run:
    """The state of one run."""

    job: Job
    workers: Workers
    tell: Callable[[Tally], None]
    stopped: Callable[[], bool]
    ended: dict[int, str] = field(default_factory=dict)
    counts: Counter[str] = field(default_factory=Counter)
    variants: int = 0
    ready: list[tuple[float, int]] = field(default_factory=list)
    """(expected seconds of the variant and those that follow, negative; place): the longest first, so that all workers
    end at about one time."""
    seconds_ahead: dict[int, float] = field(default_factory=dict)
    longer: dict[int, list[int]] = field(default_factory=dict)
    in_flight: dict[Future[bytes], int] = field(default_factory=dict)
    arrived: SimpleQueue[Future[bytes]] = field(default_factory=SimpleQueue)
    suspects: deque[int] = field(default_factory=deque)
    """Variants that were in flight when a worker died: each is tried again alone."""
    deaths: dict[int, int] = field(default_factory=dict)
    broken: bool = False
    kept: int = 0

    def completed(self) -> Tally:
        self._find_open()
        while True:
            if self.broken and not self.in_flight:
                self.workers.renew()
                self.broken = False
            if not self.stopped():
                self._hand_out()
            else:
                self._cancel_waiting()
            self.tell(self._tally())
            if not self.in_flight:
                return self._tally()
            self._wait()

    # ---- what there is to do

    def _find_open(self) -> None:
        """Find what is done already, and what can begin."""
        places = self.job.places()
        variants = self.job.matrix.variants
        for place in places:
            standing = ending_of(self.job.store.read(variants[place].key), variants[place].key)
            if standing and standing.end in FINAL:
                self._count_end(place, standing.end)
        self.variants, self.kept = len(places), len(self.ended)
        for place in reversed(places):
            base = variants[place].extends
            self.seconds_ahead[place] = self.seconds_ahead.get(place, 0.0) + seconds_of(variants[place], "quick")
            if base is not None:
                self.seconds_ahead[base] = self.seconds_ahead.get(base, 0.0) + self.seconds_ahead[place]
        for place in places:
            base = variants[place].extends
            if place in self.ended:
                continue
            if base is None or base in self.ended:
                self._make_ready(place)
            else:
                self.longer.setdefault(base, []).append(place)

    def _make_ready(self, place: int) -> None:
        heapq.heappush(self.ready, (-self.seconds_ahead[place], place))

    def _task(self, place: int) -> VariantTask:
        """The task of a variant, with the week that it extends."""
        job, variant = self.job, self.job.matrix.variants[place]
        return VariantTask(
            name=variant.name,
            values=dict(variant.values),
            brief=variant.brief,
            key=variant.key,
            share=job.matrix.share,
            stamp=dict(job.matrix.stamp),
            overlay=job.overlay,
            extends=None if variant.extends is None else job.matrix.variants[variant.extends].name,
            previous=self._previous(variant.extends),
        )

    def _previous(self, place: int | None) -> bytes | None:
        """The result of the nearest shorter variant that has a week."""
        while place is not None:
            variant = self.job.matrix.variants[place]
            if self.ended[place] == SOLVED:
                return self._result_again(variant.key)
            place = variant.extends
        return None

    def _result_again(self, key: str) -> bytes:
        """A result as it stood when it was looked up or kept; without it a longer variant would come out otherwise."""
        data = self.job.store.read(key)
        if data is None or ending_of(data, key) is None:
            said = "has gone or is damaged since this run found it whole"
            raise SetwrightError(Fault(str(self.job.store.path(key)), said, "run the same command again"))
        return data

    # ---- to and fro

    def _hand_out(self) -> None:
        """Hand out what may be handed out; after a death one variant at a time until the suspects are through."""
        if self.broken:
            return
        if self.suspects:
            if not self.in_flight:
                self._submit(self.suspects.popleft())
            return
        while self.ready and len(self.in_flight) < IN_FLIGHT * self.workers.count:
            self._submit(heapq.heappop(self.ready)[1])

    def _submit(self, place: int) -> None:
        future = self.workers.submit(self.job.work, self._task(place))
        self.in_flight[future] = place
        future.add_done_callback(self.arrived.put)

    def _cancel_waiting(self) -> None:
        """Take back what has not begun."""
        for future in tuple(self.in_flight):
            future.cancel()

    def _wait(self) -> None:
        """Take in what has arrived, or look after a tick whether the workers are still there."""
        try:
            self._take_in(self.arrived.get(timeout=STOP_INTERVAL))
        except Empty:
            self.workers.check()

    def _take_in(self, future: Future[bytes]) -> None:
        """Store one result, or deal with what went wrong."""
        alone = len(self.in_flight) == 1 and not self.broken
        place = self.in_flight.pop(future)
        if future.cancelled() and self.stopped():
            return
        error = CancelledError() if future.cancelled() else future.exception()
        if error is None:
            self._store(place, future.result())
        elif said := _mismatch_in(error):
            raise SetwrightError(Fault("workers", said, "give every worker the same setwright, solvers and catalogue"))
        elif isinstance(error, CancelledError) or self.workers.died(error):
            self.workers.check()
            self._retry_alone(place, alone)
        else:
            self._set_aside(place, f"{type(error).__name__}: {error}")

    def _retry_alone(self, place: int, alone: bool) -> None:
        """A worker died while this variant was in flight: try it alone, and set it aside when it dies alone twice."""
        self.broken = True
        self.deaths[place] = self.deaths.get(place, 0) + alone
        if self.deaths[place] >= MOST_DEATHS:
            self._set_aside(place, f"its worker died {MOST_DEATHS} times with nothing else running")
        else:
            self.suspects.append(place)

    def _set_aside(self, place: int, said: str) -> None:
        self._store(place, written_result(self._task(place), SET_ASIDE, said))

    def _store(self, place: int, data: bytes) -> None:
        """Store a result at once; a final one lets the longer variants begin."""
        key = self.job.matrix.variants[place].key
        standing = ending_of(data, key)
        if standing is None:
            said = f"a worker returned no whole result of {self.job.matrix.variants[place].name!r}"
            raise SetwrightError(Fault("workers", said, "give every worker the same setwright, then run again"))
        self.job.store.write(key, data)
        self._count_end(place, standing.end)
        if standing.end in FINAL:
            for child in self.longer.pop(place, ()):
                self._make_ready(child)

    # ---- how it stands

    def _count_end(self, place: int, end: str) -> None:
        self.ended[place] = end
        self.counts[end] += 1

    def _tally(self) -> Tally:
        left = self.variants - self.counts.total()
        return Tally(
            variants=self.variants,
            kept=self.kept,
            solved=self.counts[SOLVED],
            impossible=self.counts[CLASH],
            no_week=self.counts[NO_WEEK],
            troubled=self.counts[UNFINISHED] + self.counts[SET_ASIDE],
            waiting=0 if self.in_flight or self.ready or self.suspects else left,
            running=min(len(self.in_flight), self.workers.count),
            left=left,
        )
