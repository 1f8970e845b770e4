"""What is compared: one brief under one goal."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.brief.schema import Goal

FEWEST_CASES: Final = 2
MOST_CASES: Final = 12
"""Weeks in one comparison: each is a search (convention)."""


@dataclass(frozen=True)
class ComparedBrief:
    """A brief under a goal; `place` says which of the briefs given it is, from 0."""

    label: str
    """A letter where several briefs are compared, and the goal."""
    place: int
    parsed: ParsedBrief

    @property
    def goal(self) -> Goal:
        """The goal it is planned under."""
        return self.parsed.brief.goal or "balanced"


def compared_briefs(briefs: Sequence[ParsedBrief], goals: Sequence[Goal]) -> tuple[ComparedBrief, ...]:
    """Every brief under every goal, or under its own where no goal is named."""
    found: list[ComparedBrief] = []
    for place, parsed in enumerate(briefs):
        letter = letter_of(place) if len(briefs) > 1 else ""
        for goal in goals or (parsed.brief.goal or "balanced",):
            brief = parsed.brief.model_copy(update={"goal": goal})
            found.append(ComparedBrief(f"{letter} {goal}".strip(), place, replace(parsed, brief=brief)))
    return tuple(found)


def checked_cases(briefs: Sequence[ParsedBrief], goals: Sequence[Goal]) -> tuple[ComparedBrief, ...]:
    """The same; raises UsageFault where there are too few weeks to compare, or more than anybody sets side by side."""
    cases = compared_briefs(briefs, goals)
    if not FEWEST_CASES <= len(cases) <= MOST_CASES:
        raise UsageFault(
            Fault(
                "compare",
                f"makes {len(cases)} week{'' if len(cases) == 1 else 's'}, expected {FEWEST_CASES} to {MOST_CASES}",
                "name another number of briefs or of goals",
            )
        )
    return cases


def letter_of(place: int) -> str:
    """The letter of the brief at a place: A, B, C."""
    return chr(ord("A") + place)
