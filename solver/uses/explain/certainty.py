"""How sure two claims about a week are: what its rests keep of longer rests' growth, and that its pairs still pay."""

from __future__ import annotations

from dataclasses import dataclass, replace

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.pairing.partner_effect import PAIR_LOSSES
from setwright.solver.evaluation.uncertainty import share_interval, week_draws
from setwright.solver.evaluation.week import Week


@dataclass(frozen=True)
class RestsKept:
    """What the rests and pairs of a week keep of the growth of the same sets, each fully rested and none in pairs."""

    share: float
    """The week index over that of the rested sets."""
    interval: tuple[float, float]
    """The same at the 5th and 95th hundredth of the draws, both weeks evaluated with the same numbers."""
    seconds: int
    """The seconds that the rested sets take in the week."""


def rests_kept(evaluated: EvaluatedWeek) -> RestsKept | None:
    """The share kept; None where nothing is trained or every rest is as long already."""
    rested = EvaluatedWeek(evaluated.resolved, _rested(evaluated))
    if rested.week == evaluated.week or not rested.stimulus:
        return None
    share = evaluated.stimulus / rested.stimulus
    return RestsKept(share, share_interval(evaluated, rested), rested.week_seconds)


def most_that_pairs_cost(evaluated: EvaluatedWeek) -> float:
    """Index points lost if partners tire each other as much as the published ranges allow, beyond what is reckoned."""
    import numpy

    numbers = evaluated.resolved.curves.numbers
    as_planned = {key: numpy.full(1, value) for key, value in numbers.items()}
    evidence = evaluated.resolved.catalogue.evidence
    worst = {key: numpy.full(1, evidence[key].high or numbers[key]) for key in PAIR_LOSSES}
    return float((week_draws(evaluated, as_planned) - week_draws(evaluated, as_planned | worst))[0])


def _rested(evaluated: EvaluatedWeek) -> Week:
    """The same sets with full rests, none in pairs."""
    full = evaluated.resolved.catalogue.defaults.full_rest
    return Week(
        tuple(
            tuple(replace(entry, rest=max(entry.rest, full), partner=None) for entry in entries)
            for entries in evaluated.week.days
        )
    )
