"""How long a run may take: measured seconds of one variant by days and search, spread over the workers."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from types import MappingProxyType

from setwright.solver.uses.variants.matrix import Variant, VariantMatrix

SECONDS: Mapping[str, tuple[float, ...]] = MappingProxyType(
    {
        "quick": (2.5, 4.0, 5.0, 10.0, 13.0, 16.0, 19.0),
        "normal": (5.0, 18.0, 18.0, 40.0, 45.0, 50.0, 60.0),
        "thorough": (8.0, 40.0, 60.0, 200.0, 240.0, 280.0, 320.0),
    }
)
"""Seconds of one core for a variant of 1 to 7 days: 1 to 4 days measured on two shared cores, the rest estimates."""
EXTENDING = 1.5
"""What settling near a shorter variant makes of a variant's time (an estimate from a few variants)."""


def seconds_of(variant: Variant, search: str) -> float:
    """One processor's seconds for one variant."""
    days = max(1, len(json.loads(variant.brief).get("days", ())))
    return SECONDS[search][days - 1] * (1.0 if variant.extends is None else EXTENDING)


def expected_seconds(matrix: VariantMatrix, places: Iterable[int], search: str, workers: int) -> float:
    """The wall time: all work over the workers, but no less than the longest chain."""
    wanted = set(places)
    chains = [sum(seconds_of(matrix.variants[p], search) for p in chain if p in wanted) for chain in matrix.chains]
    return max(sum(chains) / workers, max(chains, default=0.0))
