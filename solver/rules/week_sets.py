"""Working sets a week."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.linear.linear_model import LinearModel, combined
from setwright.solver.linear.rule import Rule

MOST_OVER = 400
"""Sets above the week's total that no week reaches."""


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding where the week has more working sets than pay at the client's experience."""
    most = round(evaluated.resolved.limit("week-sets", evaluated.resolved.experience))
    total = sum(line.sets for line in evaluated.lines)
    if total > most:
        yield Finding("week-sets", evaluated.resolved.penalty("week-sets", total - most), amount=total, limit=most)


def post(model: LinearModel) -> None:
    """Charge each working set above the week's total."""
    resolved = model.resolved
    most = round(resolved.limit("week-sets", resolved.experience))
    over = model.violation("week-sets", MOST_OVER, resolved.cost("week-sets"))
    model.constrain("week-sets", combined(model.total(lambda e, p: p.sets), {over: -1}), high=most)


RULE = Rule(
    id="week-sets",
    kind="scored",
    sentence="A week should have at most {novice:g}, {intermediate:g} or {advanced:g} working sets (novice, intermediate, advanced).",
    remedy="cut sets, or spread them over weeks",
    post=post,
    check=check,
    says="{sets} in the week",
)
