"""How uncertain an index is: every number drawn over its published range at once, and the week evaluated with each."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.pairing.partner_effect import PAIR_LOSSES

if TYPE_CHECKING:
    import numpy as np

    Values = np.ndarray[Any, Any]

DRAWN = (
    "rest-loss-high",
    "rest-loss-low",
    "rir-slope",
    "session-knee",
    "week-exponent",
    "indirect-part",
    "drop-credit",
    "rest-pause-credit",
    *PAIR_LOSSES,
)
DRAWS = 1000
SEED = 5
ENDS = (5.0, 95.0)


def intervals(evaluated: EvaluatedWeek) -> dict[str, tuple[int, int]]:
    """Muscle id -> its index at the 5th and the 95th hundredth of the draws, in whole points."""
    draws = drawn(evaluated)
    return {muscle: _ends(values) for muscle, values in indices(evaluated, draws).items()}


def week_interval(evaluated: EvaluatedWeek) -> tuple[int, int]:
    """The week index at the same ends, in whole points."""
    return _ends(week_draws(evaluated, drawn(evaluated)))


def share_interval(evaluated: EvaluatedWeek, reference: EvaluatedWeek) -> tuple[float, float]:
    """One week's index as a share of another's at the same ends, both with the same draws; 0 where there is none."""
    import numpy

    draws = drawn(evaluated)
    whole = week_draws(reference, draws)
    if not numpy.all(whole > 0):
        return 0.0, 0.0
    low, high = numpy.percentile(week_draws(evaluated, draws) / whole, ENDS)
    return float(low), float(high)


def _ends(values: Values) -> tuple[int, int]:
    # Imported late in every function here: a command that prints no interval starts without numpy.
    import numpy

    low, high = numpy.percentile(values, ENDS)
    return round(float(low)), round(float(high))


def week_draws(evaluated: EvaluatedWeek, draws: dict[str, Values]) -> Values:
    """The week index in every draw."""
    values = indices(evaluated, draws)
    muscles = [m for m in evaluated.resolved.muscles.values() if m.weight]
    whole: Any = sum(m.weight * values[m.id] for m in muscles)
    week: Values = whole / evaluated.resolved.weight_sum
    return week


def drawn(evaluated: EvaluatedWeek, count: int = DRAWS) -> dict[str, Values]:
    """`count` draws of every number: uniform between the ends of those that have a range, the value itself else."""
    import numpy

    random = numpy.random.default_rng(SEED)
    found = {key: numpy.full(count, value) for key, value in evaluated.resolved.curves.numbers.items()}
    for key in DRAWN:
        number = evaluated.resolved.catalogue.evidence[key]
        if number.low is not None and number.high is not None:
            found[key] = random.uniform(number.low, number.high, count)
    return found


def indices(evaluated: EvaluatedWeek, draws: dict[str, Values]) -> dict[str, Values]:
    """Muscle id -> its index in every draw."""
    import numpy

    sets: dict[tuple[str, int], Any] = {}
    for line in evaluated.lines:
        effective = effective_draws(line, evaluated, draws)
        for muscle, part in line.exercise.contributions:
            share = draws["indirect-part"] * part / 50 if part < 100 else 1.0
            key = (muscle, line.day.index)
            sets[key] = sets.get(key, 0.0) + share * effective
    knee, scale = draws["session-knee"], draws["session-scale"]
    found: dict[str, Values] = {}
    for muscle in evaluated.resolved.muscles:
        weekly = numpy.zeros(knee.shape)
        for (name, _), s in sets.items():
            if name == muscle:
                over = numpy.maximum(s - knee, 0.0)
                weekly = weekly + numpy.where(s <= knee, s, knee + scale * (1.0 - numpy.exp(-over / scale)))
        found[muscle] = 100.0 * (weekly / draws["index-reference"]) ** draws["week-exponent"]
    return found


def effective_draws(line: Line, evaluated: EvaluatedWeek, draws: dict[str, Values]) -> Values:
    """The effective sets of one line in every draw: what `Curves.effective` says, with draws for its numbers."""
    import numpy

    done, numbers = line.done, evaluated.resolved.curves.numbers
    fatigue = line.exercise.fatigue

    def quality(seconds: float) -> Values:
        lost = draws[f"rest-loss-{fatigue}"] * numpy.exp(-seconds / draws[f"rest-tau-{fatigue}"])
        credit: Values = numpy.maximum(0.0, 1.0 - lost)
        return credit

    extra: Any = 0.0
    if line.entry.technique == "drop":
        extra = numpy.minimum(draws["drop-credit"] * line.entry.drops, numbers["drop-credit-most"] - 1.0)
    elif line.entry.technique == "rest-pause":
        extra = draws["rest-pause-credit"] - 1.0
    whole = quality(done.first_rest) + quality(done.rest) * (done.sets - 1) + extra
    effort = 1.0 - draws["rir-slope"] * (done.rir - done.usual_rir)
    effective: Values = effort * (1.0 - line.partner.loss(draws)) * whole
    return effective
