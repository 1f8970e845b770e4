"""A client's pace read from a log: by the ends of sets where they are logged, else by the minutes of sessions."""

from __future__ import annotations

from collections.abc import Sequence
from statistics import median

import numpy as np

from setwright.solver.auditing import Audit
from setwright.solver.brief.schema import Clock
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.log.values import LoggedSession
from setwright.solver.uses.pace.client_pace import ClientPace, FittedPart, HeldBack, NotEnough, Part, RestTaken
from setwright.solver.uses.pace.clock_table import clock_of, with_clock
from setwright.solver.uses.pace.intervals import Interval, Kind, intervals_of
from setwright.solver.uses.pace.robust_fit import Prior, robust_fit
from setwright.solver.uses.pace.session_minutes import WholeSession, whole_sessions

PARTS: tuple[tuple[Part, Kind], ...] = (
    ("warm_up", "warm-up"),
    ("rest_drift", "rest"),
    ("pair_change", "pair"),
    ("change_drift", "change"),
)
"""Each part with the kind of interval it is told by; the seconds of a repetition are told by all of them."""


def client_pace(audit: Audit, sessions: Sequence[LoggedSession], check: bool = True) -> ClientPace | NotEnough:
    """The pace of a client who did the audited week, from sessions in any order; `NotEnough` where little is logged.

    With `check` the last third of the sessions is held back once, to see how well the others foretell it.
    """
    evaluated = audit.evaluated
    number = evaluated.resolved.catalogue.number
    least, sets_least = round(number("pace-sessions-least")), round(number("pace-sets-least"))
    ordered = sorted(sessions, key=lambda one: one.on)
    intervals, left_out = intervals_of(evaluated, ordered)
    timed = len({interval.session for interval in intervals})
    by_sets = timed >= least and len(intervals) >= sets_least
    parts = _parts(evaluated, intervals, least) if by_sets else ()
    clock, limited = clock_of(evaluated.resolved, parts)
    whole = whole_sessions(with_clock(evaluated, clock), ordered)
    if not by_sets and len(whole) < least:
        return NotEnough(timed, len(intervals), len(whole), least, sets_least)
    if len(whole) >= least:
        parts = (*parts, _spare(evaluated, whole))
        clock, limited = clock_of(evaluated.resolved, parts)
    told = {part.part for part in parts}
    return ClientPace(
        basis="set ends" if by_sets else "session minutes",
        sessions=timed if by_sets else len(whole),
        intervals=len(intervals) if by_sets else 0,
        left_out=left_out if by_sets else 0,
        parts=parts,
        untold=tuple(part for part in ALL if part not in told),
        rests=_rests(intervals, parts, evaluated) if by_sets else (),
        clock=clock,
        limited=limited,
        held_back=_held_back(audit, ordered) if check else None,
    )


def _parts(evaluated: EvaluatedWeek, intervals: Sequence[Interval], least: int) -> tuple[FittedPart, ...]:
    """The parts that enough sessions tell, with the seconds of a repetition where repetitions differ enough."""
    kinds = {kind for _, kind in PARTS if len({one.session for one in intervals if one.kind == kind}) >= least}
    used = [one for one in intervals if one.kind in kinds]
    columns = [(part, kind) for part, kind in PARTS if kind in kinds]
    seconds = np.array([one.seconds - one.asked for one in used])
    groups = np.array([one.session for one in used])
    design = np.array([[float(one.rests) * (one.kind == kind) for _, kind in columns] for one in used])
    reps = np.array([one.repetitions for one in used])
    prior = _seconds_per_rep(evaluated)
    fit = robust_fit(np.column_stack([design, reps]), seconds, groups, np.argmax(design, axis=1), prior)
    names: list[Part] = [part for part, _ in columns]
    if fit.half_widths[-1] <= evaluated.resolved.catalogue.number("pace-rep-sure"):
        names.append("seconds_per_rep")
    counts: dict[Part, int] = {part: sum(one.kind == kind for one in used) for part, kind in columns}
    counts["seconds_per_rep"] = len(used)
    return tuple(
        FittedPart(name, value, value - half, value + half, _planned(evaluated, name), counts[name])
        for name, value, half in zip(names, fit.values, fit.half_widths, strict=False)
    )


def _seconds_per_rep(evaluated: EvaluatedWeek) -> Prior:
    """What is known of the seconds of a repetition: the plan's, as sure as the evidence file's interval (90 %)."""
    known = evaluated.resolved.catalogue.evidence["seconds-per-rep"]
    width = (known.high or known.value) - (known.low or known.value)
    return Prior(_planned(evaluated, "seconds_per_rep"), max(width, SLACK) / (2 * NORMAL_90))


def _planned(evaluated: EvaluatedWeek, part: Part) -> float:
    """What the plan takes a part to be, in seconds; the warm-up of the days it has sessions on, on average."""
    resolved = evaluated.resolved
    if part == "warm_up":
        days = [day.index for day in resolved.days if evaluated.on[day.index]]
        return sum(evaluated.warm_up(day) for day in days) / len(days)
    if part == "seconds_per_rep":
        return resolved.number("seconds-per-rep")
    if part == "pair_change":
        return resolved.number("pair-change-seconds")
    return float(resolved.brief.clock.spare or 0) if part == "spare" else 0.0


def _spare(evaluated: EvaluatedWeek, whole: Sequence[WholeSession]) -> FittedPart:
    """What whole sessions take beyond what the clock says of them."""
    over = np.array([one.taken - one.planned for one in whole])
    fit = robust_fit(np.ones((len(whole), 1)), over, np.arange(len(whole)), np.zeros(len(whole), dtype=np.int64))
    value, half = fit.values[0], fit.half_widths[0]
    return FittedPart("spare", value, value - half, value + half, _planned(evaluated, "spare"), len(whole))


def _rests(
    intervals: Sequence[Interval], parts: Sequence[FittedPart], evaluated: EvaluatedWeek
) -> tuple[RestTaken, ...]:
    """Each rest that was asked for, with the median of what was taken once the repetitions are taken off."""
    told = next((part.value for part in parts if part.part == "seconds_per_rep"), None)
    per_rep = _planned(evaluated, "seconds_per_rep") if told is None else told
    taken: dict[float, list[float]] = {}
    for one in intervals:
        if one.kind == "rest":
            rest = (one.seconds - per_rep * one.repetitions) / one.rests
            taken.setdefault(one.asked / one.rests, []).append(rest)
    return tuple(RestTaken(asked, median(found), len(found)) for asked, found in sorted(taken.items()))


def _held_back(audit: Audit, ordered: Sequence[LoggedSession]) -> HeldBack | None:
    """The pace of the first two thirds tried on the last third; None where either holds too little."""
    least = round(audit.evaluated.resolved.catalogue.number("pace-check-sessions"))
    if len(ordered) < least:
        return None
    cut = len(ordered) - len(ordered) // 3
    pace = client_pace(audit, ordered[:cut], check=False)
    before = whole_sessions(audit.evaluated, ordered[cut:])
    if isinstance(pace, NotEnough) or not before:
        return None
    after = whole_sessions(with_clock(audit.evaluated, pace.clock), ordered[cut:])
    old, new = audit.evaluated.resolved.brief.clock, pace.clock
    (error_before, distance_before), (error_after, distance_after) = _errors(before, old), _errors(after, new)
    return HeldBack(cut, len(before), error_before, error_after, distance_before, distance_after)


def _errors(whole: Sequence[WholeSession], clock: Clock) -> tuple[float, float]:
    over = [(one.taken - one.planned - (clock.spare or 0)) / 60 for one in whole]
    return float(np.mean(over)), float(np.mean(np.abs(over)))


ALL: tuple[Part, ...] = ("warm_up", "seconds_per_rep", "pair_change", "rest_drift", "change_drift", "spare")
NORMAL_90 = 1.645
"""Standard deviations from the middle of a normal distribution that hold 90 % of it, half on each side."""
SLACK = 1e-6
