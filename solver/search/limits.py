"""How much work a search may do: the three named searches as amounts of work, never as promises of time."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType

SHORT_DAYS = 3
"""Weeks of up to so many days are short: HiGHS branches on all their columns after fewer neighbourhoods."""
MANY_COLUMNS = 2_400
"""Columns above which the rest of HiGHS's root, from its rounding of the middle on, takes longer than all before it."""


@dataclass(frozen=True)
class Limits:
    """Amounts of work: neighbourhoods tried, CP-SAT's work in each, HiGHS's nodes. The same amounts, the same week."""

    name: str
    """quick | normal | thorough: the named search that the amounts are of, or were changed from."""
    first_work: float
    """CP-SAT's deterministic time in filling one day of the first week; the week as a whole gets twice as much."""
    rounds: int
    """Neighbourhoods tried after the first week, at most."""
    idle_rounds: int
    """Neighbourhoods that found nothing better, one after the other, after which no more are tried until one is."""
    work: float
    """CP-SAT's deterministic time in one neighbourhood, about two seconds each on a usual core."""
    short_times: float
    """Times that work in a week of up to three days, in which fewer neighbourhoods are tried."""
    columns: int
    """Columns open on each free day of a neighbourhood."""
    nodes: int
    """HiGHS nodes for the bound of a week of up to three days; 0 leaves it at the relaxation."""
    pattern_nodes: int
    """The same for longer weeks, whose bound goes by region patterns of days; 0 leaves it at the relaxation."""
    root_looks: int | None
    """HiGHS's looks at its limits after which it ends on a week of many columns, within its root; None: it goes on."""
    heuristic_nodes: int
    """HiGHS nodes for each improvement of the week at hand on few columns; 0 leaves them out."""
    fixing_nodes: int
    """HiGHS nodes for branching after reduced-cost fixing on a thousand columns, in a week of up to three days."""
    fixing_columns: int
    """Open columns up to which reduced-cost fixing branches, twice as many where the gap is wide; 0 leaves it out."""
    near_enough: float
    """The share of the stimulus between score and bound within which nothing more is tried."""

    def looks_for(self, columns: int) -> int | None:
        """HiGHS's looks at its limits on the week without days, where that has so many columns; None: no limit."""
        return self.root_looks if columns > MANY_COLUMNS else None

    def rounds_for(self, days: int) -> int:
        """The neighbourhoods tried in a week of so many days."""
        return self.rounds if days > SHORT_DAYS else self.rounds // 3

    def work_for(self, days: int) -> float:
        """CP-SAT's deterministic time in one neighbourhood of a week of so many days."""
        return self.work if days > SHORT_DAYS else self.short_times * self.work


_NAMED = {
    "quick": Limits(
        "quick",
        first_work=0.5,
        rounds=8,
        idle_rounds=6,
        work=0.25,
        short_times=2.0,
        columns=80,
        nodes=1,
        root_looks=8,
        pattern_nodes=0,
        heuristic_nodes=0,
        fixing_nodes=1,
        fixing_columns=250,
        near_enough=0.0025,
    ),
    "normal": Limits(
        "normal",
        first_work=0.5,
        rounds=40,
        idle_rounds=5,
        work=0.5,
        short_times=1.0,
        columns=60,
        nodes=20,
        root_looks=None,
        pattern_nodes=1,
        heuristic_nodes=5,
        fixing_nodes=600,
        fixing_columns=1_500,
        near_enough=0.0025,
    ),
    "thorough": Limits(
        "thorough",
        first_work=0.5,
        rounds=150,
        idle_rounds=20,
        work=0.8,
        short_times=1.0,
        columns=80,
        nodes=400,
        root_looks=None,
        pattern_nodes=2000,
        heuristic_nodes=50,
        fixing_nodes=5000,
        fixing_columns=5_000,
        near_enough=0.0005,
    ),
}
SEARCHES: MappingProxyType[str, Limits] = MappingProxyType(_NAMED)
DEFAULT = "normal"
WALL_CLOCK_LIMITS: MappingProxyType[str, float] = MappingProxyType(
    {"quick": 120.0, "normal": 300.0, "thorough": 1800.0}
)
"""Seconds after which a named search stops whatever work is left, and says so."""
