"""Over which amounts of time a curve may be made."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

RANGES: Final[Mapping[str, tuple[int, int, int]]] = MappingProxyType(
    {"minutes": (10, 240, 10), "weekly": (10, 1680, 30), "days": (1, 7, 1)}
)
"""What varies -> its least and most amount, and the step where none is said."""
MOST_AMOUNTS: Final = 40
"""Amounts in one range: each may cost a search."""


def amounts_from(first: int, last: int, step: int) -> tuple[int, ...]:
    """Rising amounts from the first by steps, the last always among them."""
    return tuple(dict.fromkeys((*range(first, last + 1, step), last)))
