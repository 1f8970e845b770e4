"""Sets per exercise and day."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.prescriptions import MOST_WITH_TECHNIQUE, set_span
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.linear.rule import Rule, held_by_columns


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each line with more or fewer sets than its kind of lift has; see also caution-sets."""
    cap = evaluated.resolved.client_limits.sets_most
    for line in evaluated.lines:
        least, most = set_span(evaluated.resolved, line.exercise)
        if line.entry.technique != "straight":
            most = min(most, MOST_WITH_TECHNIQUE)
        if not least <= line.sets <= most and (cap is None or line.sets <= cap):
            yield Finding(
                "set-range",
                amount=line.sets,
                limit=(least, most),
                days=(line.day.index,),
                exercise=line.exercise.id,
            )


def figures(resolved: ResolvedBrief) -> Mapping[str, object]:
    """The catalogue's numbers of sets by kind of lift."""
    sets = resolved.catalogue.defaults.sets
    least, most = sets.multi
    dose_least, dose_most = sets.minimum_dose
    return {
        "least": least,
        "most": most,
        "multi_most": sets.multi_most,
        "trunk": sets.trunk[1],
        "dose_least": dose_least,
        "dose_most": dose_most,
    }


RULE = Rule(
    id="set-range",
    kind="hard",
    scope="planned weeks",
    sentence="An exercise has {least} to {most} sets in a day; up to {multi_most} for a multi-joint lift in growth (not in a one-day week) or for a priority muscle; at most {trunk} for trunk work, deadlifts and drop or rest-pause sets; {dose_least} to {dose_most} in a minimum dose and in a lighter week.",
    remedy="change the sets",
    post=held_by_columns,
    check=check,
    says="{day}: {exercise} has {sets}, not {limit_span}",
    figures=figures,
)
