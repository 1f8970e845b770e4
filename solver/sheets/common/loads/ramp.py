"""The ramp-up sets a card names: which lifts of a day have them, and how they are done."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line, ramp_levels
from setwright.solver.sheets.common.words import warm_up_words

Step = tuple[int, int]
"""(hundredths of the working load, repetitions)."""
SECONDS_A_SET = 40
"""About what one ramp-up set takes with its load change (common practice, no source)."""


def ramp_ups(evaluated: EvaluatedWeek, day: int) -> dict[int, tuple[Step, ...]]:
    """Place in the day -> the ramp-up sets before that lift; lifts without any are absent."""
    found: dict[int, tuple[Step, ...]] = {}
    for region in ("lower", "push", "pull"):
        lifts = [x for x in evaluated.on[day] if x.exercise.multi_joint and x.exercise.region == region]
        if not lifts:
            continue
        second = round(evaluated.resolved.number("ramp-second-seconds"))
        later = [x for x in lifts if _heavy(x)][1:]
        first = evaluated.ramp_up[day, region] - second * len(later)
        found |= {x.place: _usual(evaluated)[1:2] for x in later if second}
        found |= {_heaviest(evaluated, region, lifts).place: _steps(evaluated, first)} if first > 0 else {}
    return dict(sorted(found.items()))


def warm_up_said(evaluated: EvaluatedWeek, day: int) -> str:
    """A day's general warm-up in words; it is left to the first lift's lighter sets only where the card names some."""
    shortest = evaluated.resolved.catalogue.defaults.warm_up_shortest
    return warm_up_words(evaluated.warm_up(day), shortest, 0 in ramp_ups(evaluated, day))


def _heaviest(evaluated: EvaluatedWeek, region: str, lifts: list[Line]) -> Line:
    """The first of the lifts that ask for the most ramp-up: it gets the region's sets."""
    levels = ramp_levels(evaluated.resolved, region, lifts[0].day)
    return max(lifts, key=lambda x: (max(s for wanted, s in levels if wanted(x.exercise)), -x.place))


def _heavy(line: Line) -> bool:
    """Whether a lift gets ramp-up sets of its own though its region is warm."""
    return line.exercise.main_lift and line.exercise.barbell


def _steps(evaluated: EvaluatedWeek, seconds: int) -> tuple[Step, ...]:
    """As many of the usual ramp-up sets as the seconds hold, one at least, the lightest first."""
    return _usual(evaluated)[: max(1, seconds // SECONDS_A_SET)]


def _usual(evaluated: EvaluatedWeek) -> tuple[Step, ...]:
    """The ramp-up sets of a cold lift, from the catalogue."""
    return evaluated.resolved.catalogue.defaults.ramp


def ramp_steps(exercise: Exercise, sets: tuple[Step, ...]) -> str:
    """The ramp-up sets of one lift in words: half load x 8, 70 % x 5."""
    if not exercise.has_load:
        easier = "an easier form" if exercise.load == "bodyweight" else "a lighter band"
        return f"{easier} x {', '.join(str(reps) for _, reps in sets)}"
    return ", ".join(f"{'half load' if share == 50 else f'{share} %'} x {reps}" for share, reps in sets)
