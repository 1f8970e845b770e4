"""How hard the search works, in a user's words and as amounts of work, never as promises of time."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True)
class Limits:
    """Amounts of work: neighbourhoods tried, CP-SAT's work in each, HiGHS's nodes; seconds are a net."""

    name: str
    rounds: int
    """Neighbourhoods tried after the first week."""
    work: float
    """CP-SAT's deterministic time in one neighbourhood."""
    columns: int
    """Columns open on each free day of a neighbourhood."""
    nodes: int
    """HiGHS nodes for the bound of a week of up to three days."""
    theme_nodes: int
    """The same for longer weeks, whose bound goes by themes of days."""
    seconds: float
    """The net: the search stops here whatever work is left, and says so."""


SEARCHES: MappingProxyType[str, Limits] = MappingProxyType(
    {
        "quick": Limits("quick", rounds=8, work=0.25, columns=50, nodes=20, theme_nodes=1, seconds=60.0),
        "normal": Limits("normal", rounds=28, work=0.5, columns=60, nodes=200, theme_nodes=8, seconds=120.0),
        "thorough": Limits("thorough", rounds=150, work=0.8, columns=80, nodes=3000, theme_nodes=200, seconds=600.0),
    }
)
DEFAULT = "normal"
