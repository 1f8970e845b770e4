"""What is compared: one brief under one goal."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.brief.schema import Goal


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


def letter_of(place: int) -> str:
    """The letter of the brief at a place: A, B, C."""
    return chr(ord("A") + place)
