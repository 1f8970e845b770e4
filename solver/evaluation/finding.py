"""What a rule is: one record of words and acts, and what a check finds."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from setwright.catalogue.entries import Exercise

if TYPE_CHECKING:
    pass

Kind = Literal["hard", "scored", "data"]
UNITS = 10_000
"""Score units in one index point: all costs and scores are whole numbers of these."""


@dataclass(frozen=True)
class Finding:
    """One breach of a rule: where, in words, and its cost in score units (0 for a hard or data rule)."""

    rule: str
    text: str
    cost: int = 0


def some_sets(amount: float) -> str:
    """So many sets in words: 1 set, 2.5 sets."""
    return f"{amount:g} set" + ("s" if amount != 1 else "")


Check = Callable[["EvaluatedWeek"], Iterator[Finding]]
Excludes = Callable[["ResolvedBrief", Exercise, "ResolvedDay"], bool]


@dataclass(frozen=True)
class Rule:
    """One rule: id, kind, one sentence, the remedy, and its acts on a week (`check`) or on a choice (`closes`)."""

    id: str
    kind: Kind
    sentence: str
    remedy: str
    check: Check | None = None
    excludes: Excludes | None = None
