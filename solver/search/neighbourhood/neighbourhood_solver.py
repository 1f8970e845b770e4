"""CP-SAT on one neighbourhood of a week at a time: free days take other candidates, the other days stay as they are."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from setwright.solver.engines.build import day_model
from setwright.solver.engines.cpsat import CpSatModel
from setwright.solver.evaluation.week import Week
from setwright.solver.linear.columns import Column
from setwright.solver.linear.instance import Instance
from setwright.solver.linear.linear_model import Expression, LinearModel
from setwright.solver.search.candidates import Candidates
from setwright.solver.search.decoding import week_of
from setwright.solver.search.neighbourhood.neighbourhoods import Neighbourhood
from setwright.solver.search.stopping import StopSignal

Chosen = frozenset[int]
"""The columns that make a week, as indices into the candidates."""
TANGENT_MARGIN = 300
"""Score units by which the model's tangents may lie above the true curve."""


@dataclass(frozen=True)
class LeastSum:
    """An objective: the least of a sum over columns, among weeks whose modelled score is at least `floor`."""

    expression: Expression
    floor: int
    """Score units."""


@dataclass(frozen=True)
class Trial:
    """How CP-SAT ended on one neighbourhood."""

    exhausted: bool
    """Whether it was solved to its end, so that it holds nothing better."""
    seen: tuple[Chosen, ...]
    """Each better week it came upon, the best last."""


@dataclass(frozen=True)
class NeighbourhoodSolver:
    """The candidates of a brief, the linear model of the week on its days over them, and when to stop."""

    instance: Instance
    candidates: Candidates
    model: LinearModel
    """Its first variables are the candidates' columns, in their order."""
    signal: StopSignal

    def search(
        self,
        place: Neighbourhood,
        chosen: Chosen,
        work: float,
        accept: Callable[[Chosen], bool],
        least: LeastSum | None = None,
        glimpse: Callable[[Chosen], None] | None = None,
    ) -> Trial:
        """Solve one neighbourhood of a week and offer what it held to `accept`; raises Interrupted.

        `work` is CP-SAT's deterministic time. Without `least` the score is maximised. `glimpse` is shown each better
        week at once, while it is solved.
        """
        self.signal.check()
        trial = self.solve(self.cp_sat_model(place, chosen, least), work, glimpse)
        accept_last(trial.seen, accept)
        self.signal.check()
        return trial

    def cp_sat_model(self, place: Neighbourhood, chosen: Chosen, least: LeastSum | None = None) -> CpSatModel:
        """The neighbourhood of a week as a CP-SAT model that starts from that week."""
        fixed = {j: 1 for j in chosen if self.model.columns[j].group not in place.days}
        model = CpSatModel(self.model, fixed, self.open_columns(place, chosen))
        if chosen:
            model.hint(chosen)
        if least is None:
            model.maximise()
        else:
            model.minimise(least.expression, least.floor)
        return model

    def solve(self, model: CpSatModel, work: float, glimpse: Callable[[Chosen], None] | None = None) -> Trial:
        """Run CP-SAT for so much deterministic time. Reads nothing that changes, so that any thread may do it."""
        seen: list[Chosen] = []

        def heard(columns: Chosen) -> None:
            seen.append(columns)
            if glimpse is not None:
                glimpse(columns)

        found = model.solve(work, self.signal.seconds_left(), heard)
        return Trial(found.status == "OPTIMAL", tuple(seen))

    def open_columns(self, place: Neighbourhood, chosen: Chosen) -> frozenset[int]:
        """The columns open in a neighbourhood of a week, all on free days: its own, the pinned ones and the best."""
        columns, free = self.model.columns, frozenset(place.days)
        found = {j for j in chosen | self.candidates.must if columns[j].group in free}
        used = {a.cls for j in chosen for a in columns[j].assignments}
        for day in place.days:
            best: Sequence[int] = self.candidates.ranked[day]
            if place.used:
                best = [j for j in best if all(a.cls in used for a in columns[j].assignments)]
            found.update(best[: place.columns])
        return frozenset(found)

    def week(self, chosen: Chosen) -> Week:
        """The week that some columns make, its exercises named."""
        columns = self.model.columns
        return week_of(self.instance, [(columns[j].group, columns[j]) for j in sorted(chosen)])

    def widened(self, wanted: Iterable[Column], signal: StopSignal) -> NeighbourhoodSolver:
        """A solver of its own with some columns added where they lack, all open in every neighbourhood.

        The indices of the columns that there are stay as they are.
        """
        return neighbourhood_solver(self.instance, self.candidates.widened(wanted, always_open=True), signal)


def neighbourhood_solver(instance: Instance, candidates: Candidates, signal: StopSignal) -> NeighbourhoodSolver:
    """A solver over some candidates, with its linear model built."""
    return NeighbourhoodSolver(instance, candidates, day_model(instance, candidates.columns), signal)


def accept_last(seen: Sequence[Chosen], accept: Callable[[Chosen], bool]) -> None:
    """Offer weeks from the last to the first until one is accepted."""
    for columns in reversed(seen):
        if accept(columns):
            return
