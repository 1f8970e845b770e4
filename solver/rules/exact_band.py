"""Weekly sets within the band the brief says."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.finding import Finding, Wish
from setwright.solver.linear.linear_model import LinearModel
from setwright.solver.linear.rule import Rule
from setwright.solver.linear.weekly_sets import sets_of


def check(evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each end of a band of the brief's own that a muscle does not keep."""
    for muscle in evaluated.resolved.muscles.values():
        sets = evaluated.weekly_sets(muscle.id) / WHOLE
        if muscle.exact_low and sets < muscle.low:
            yield Finding("exact-band", case="at least", subject=muscle.id, amount=sets, limit=muscle.low)
        if muscle.exact_high and sets > muscle.high:
            yield Finding("exact-band", case="at most", subject=muscle.id, amount=sets, limit=muscle.high)


def post(model: LinearModel) -> None:
    """Hold each muscle's weekly sets within the ends that the brief says; a lower end is a wish."""
    for muscle in model.resolved.muscles.values():
        found = sets_of(model, muscle.id)
        if muscle.exact_low:
            model.demand(Wish("exact-band", muscle.id, muscle.low), found, round(muscle.low * WHOLE))
        if muscle.exact_high:
            model.constrain("exact-band", found, high=round(muscle.high * WHOLE))


RULE = Rule(
    id="exact-band",
    kind="hard",
    sentence="A muscle's weekly sets stay within the ends that the brief says.",
    remedy="widen the band, or give the week more time",
    post=post,
    check=check,
    says={"at least": "{subject}: {sets}, at least {limit}", "at most": "{subject}: {sets}, at most {limit}"},
)
