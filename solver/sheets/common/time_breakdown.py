"""How long sessions take, and where their seconds go."""

from __future__ import annotations

from setwright.solver.evaluation.clock import pair_work, technique_seconds, work_seconds
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.pairing.partner_effect import pair_change_seconds
from setwright.solver.evaluation.prescriptions import change_over
from setwright.solver.sheets.common.words import whole_minutes


def session_minutes(evaluated: EvaluatedWeek) -> list[int]:
    """Each session's whole minutes, rounded up as they are printed; days without one left out."""
    return [whole_minutes(evaluated.seconds(day.index)) for day in evaluated.resolved.days if evaluated.on[day.index]]


def seconds_by_kind(evaluated: EvaluatedWeek, day: int) -> dict[str, int]:
    """The session in whole seconds: warm-up, ramp-up, lifting, resting, change-over; they add up to it.

    A day without lines has no session: each is 0.
    """
    if not evaluated.on[day]:
        return dict.fromkeys(("warm_up", "ramp_up", "lifting", "resting", "change_over"), 0)
    ramps = sum(seconds for (d, _), seconds in evaluated.ramp_up.items() if d == day)
    lifting = sum(_lifting_seconds(evaluated, line) for line in evaluated.on[day])
    changing = sum(_changing_half_seconds(evaluated, line) for line in evaluated.on[day]) // 2
    return {
        "warm_up": evaluated.warm_up(day),
        "ramp_up": ramps,
        "lifting": lifting,
        "resting": evaluated.work_seconds(day) - ramps - lifting - changing,
        "change_over": changing,
    }


def _lifting_seconds(evaluated: EvaluatedWeek, line: Line) -> int:
    """The seconds under load of one line, both sides and the technique of its last set included."""
    entry, exercise, numbers = line.entry, line.exercise, evaluated.resolved.curves.numbers
    work = work_seconds(entry.reps, exercise.alternating, numbers["seconds-per-rep"])
    extra = technique_seconds(work, entry.technique, entry.drops, numbers) - work if entry.partner is None else 0
    return entry.sets * pair_work(work, exercise.limb) + extra


def _changing_half_seconds(evaluated: EvaluatedWeek, line: Line) -> int:
    """The half seconds that moving to and between stations takes beyond the rests."""
    moving = 2 * max(0, change_over(evaluated.resolved, line.exercise) - line.entry.rest)
    if line.entry.partner is None:
        return moving
    return moving + line.entry.sets * pair_change_seconds(evaluated.resolved, line.partner.apart)
