"""Logs of a client whose true pace is known: a planned week walked through set by set, with noise from a fixed seed."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta

import numpy as np

from setwright.solver.evaluation.evaluated_week import EvaluatedWeek, Line
from setwright.solver.evaluation.prescriptions import change_over
from setwright.solver.log.values import LoggedSession, LoggedSet

FIRST = date(2026, 3, 2)


@dataclass(frozen=True)
class Truth:
    """A client's own clock, in seconds, and how much it varies."""

    warm_up: float = 420.0
    seconds_per_rep: float = 3.6
    pair_change: float = 24.0
    rest_drift: float = 18.0
    change_drift: float = 25.0
    rest_share: float = 0.0
    """The share by which long rests drift more than short ones."""
    rest_noise: float = 15.0
    session_noise: float = 5.0
    """How much all rests of one session differ together."""
    rep_noise: float = 0.25
    warm_up_noise: float = 40.0


def simulated_log(
    evaluated: EvaluatedWeek, truth: Truth, weeks: int, seed: int, set_ends: bool = True
) -> list[LoggedSession]:
    """Every session of so many weeks, done whole."""
    draw = np.random.default_rng(seed)
    return [
        _session(evaluated, truth, week, day.index, draw, set_ends)
        for week in range(weeks)
        for day in evaluated.resolved.days
    ]


def _session(
    evaluated: EvaluatedWeek, truth: Truth, week: int, day: int, draw: np.random.Generator, set_ends: bool
) -> LoggedSession:
    on = FIRST + timedelta(days=7 * week + 3 * day)
    started = datetime(on.year, on.month, on.day, 18, 0)
    mood = draw.normal(0, truth.session_noise)
    clock = max(60.0, draw.normal(truth.warm_up, truth.warm_up_noise))
    ramped: set[str] = set()
    done: list[LoggedSet] = []

    def rest(asked: float) -> float:
        wanted = asked * (1 + truth.rest_share) + truth.rest_drift + mood + draw.normal(0, truth.rest_noise)
        return max(5.0, wanted)

    def work(line: Line, number: int, side: str | None = None) -> None:
        nonlocal clock
        low, high = line.entry.reps
        reps = int(draw.integers(low, high + 1))
        twice = line.exercise.alternating or line.exercise.limb != "both"
        clock += (2 if twice else 1) * reps * max(1.0, draw.normal(truth.seconds_per_rep, truth.rep_noise))
        ended = started + timedelta(seconds=round(clock)) if set_ends else None
        done.append(LoggedSet(line.exercise.id, number, reps, 20.0, 2, ended=ended))

    def set_up(line: Line) -> float:
        region, extra = line.exercise.region, 0.0
        if line.exercise.multi_joint and region not in ramped:
            ramped.add(region)
            extra = evaluated.ramp_up[day, region]
        return extra + max(0, change_over(evaluated.resolved, line.exercise) - line.entry.rest)

    lines = list(evaluated.on[day])
    before: Line | None = None
    while lines:
        line = lines.pop(0)
        partner = next((other for other in lines if other.exercise.id == line.entry.partner), None)
        if before is not None:
            clock += rest(before.entry.rest) + truth.change_drift
        clock += set_up(line)
        if partner is not None:
            lines.remove(partner)
        for number in range(1, line.entry.sets + 1):
            if number > 1:
                clock += rest(line.entry.rest)
            work(line, number)
            if partner is not None:
                walk = evaluated.resolved.number("pair-walk-seconds") if partner.partner.apart else 0
                clock += max(3.0, draw.normal(truth.pair_change, 5.0)) + walk + (set_up(partner) if number == 1 else 0)
                work(partner, number)
        before = partner or line
    ended = started + timedelta(seconds=round(clock + 60))
    return LoggedSession(on, tuple(done), week=week + 1, session=day + 1, started=started, ended=ended)


def with_call(session: LoggedSession, after: int, minutes: float) -> LoggedSession:
    """The same session with a telephone call of some minutes after its set number `after`."""
    late = timedelta(minutes=minutes)
    sets = tuple(
        replace(one, ended=one.ended + late) if place > after and one.ended else one
        for place, one in enumerate(session.sets)
    )
    return replace(session, sets=sets, ended=session.ended + late if session.ended else None)
