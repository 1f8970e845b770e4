"""The rules of the next load, each one function: what it decides on a case, or None where it does not apply."""

from __future__ import annotations

import math
from collections.abc import Callable
from statistics import median

from setwright.solver.uses.loads.buildable import Built
from setwright.solver.uses.loads.next_step import step_share
from setwright.solver.uses.loads.working_load import DoneSet, working_load
from setwright.solver.uses.progress.case import Case, Decision, aims_from, hold
from setwright.solver.uses.progress.exposure import Exposure
from setwright.solver.uses.progress.reason import Reason, Why
from setwright.solver.uses.progress.step_up import step_up

Rule = Callable[[Case], Decision | None]


def never_done(case: Case) -> Decision | None:
    """Nothing logged: the load is to be found, beginning light."""
    return None if case.past else Decision(None, _all_at(case, case.low), Reason("never-done"))


def long_gap(case: Case) -> Decision | None:
    """Not done for three weeks or more: 10 % lighter, at the lower end (convention)."""
    days = (case.on - case.last.on).days
    if days < case.numbers.gap_days:
        return None
    return _back(case, "long-gap", case.numbers.gap_back, case.last, days=days)


def load_unsaid(case: Case) -> Decision | None:
    """Logged without its load: the load is to be written down or found, at the lower end."""
    if case.ladder is None or case.last.load is not None:
        return None
    return Decision(None, _all_at(case, case.low), case.reason(Reason("load-unsaid"), case.last))


def technique_only(case: Case) -> Decision | None:
    """The only set has drops or pauses, so that its repetitions say nothing of the range: the same load."""
    if case.entry.technique == "straight" or case.entry.sets > 1:
        return None
    return _hold(case, "technique-only", _all_at(case, case.low))


def far_from_range(case: Case) -> Decision | None:
    """So far under the range that it speaks of another load: what both formulas give for it, in one step."""
    middle = median(case.last.at_rir(case.entry.rir))
    if middle > case.low - case.numbers.range_far or not _near_asked_effort(case, case.last):
        return None
    return _back(case, "far-from-range", 1 - _share_by_formula(case), case.last)


def under_range_twice(case: Case) -> Decision | None:
    """Most sets under the range at the asked RIR, two sessions running: 5 to 10 % back (common practice)."""
    sessions = case.recent(case.numbers.under_sessions)
    if len(sessions) < case.numbers.under_sessions or not all(_under(case, done) for done in sessions):
        return None
    return _back(case, "under-range-twice", case.numbers.back, *sessions)


def under_range_once(case: Case) -> Decision | None:
    """Most sets under the range in one session: the same load once more."""
    return _hold(case, "under-range-once", _all_at(case, case.low)) if _under(case, case.last) else None


def closer_to_failure(case: Case) -> Decision | None:
    """Far fewer repetitions left than asked, or no set with room for one more: the same load and repetitions.

    One fewer in some set is within what people misjudge (Halperin et al. 2022: 0.95 repetitions on average).
    """
    last, asked = case.last, case.entry.rir
    short = max((asked - rir for rir in last.rirs if rir is not None), default=0)
    if short <= 0 or (short < case.numbers.rir_far and (_has_room(case) or min(last.at_rir(asked)) >= case.high)):
        return None
    return _hold(case, "closer-to-failure", aims_from(case, (0,) * len(last.reps), case.high))


def _has_room(case: Case) -> bool:
    """Whether some set is below the top of the range without having left less than was asked."""
    pairs = zip(case.last.reps, case.last.rirs, strict=True)
    return any(reps < case.high and (rir is None or rir >= case.entry.rir) for reps, rir in pairs)


def far_too_easy(case: Case) -> Decision | None:
    """Far more left than asked in every set: the load that the formulas give, up to 20 % more (convention)."""
    last, asked, far = case.last, case.entry.rir, case.numbers.easy_far
    able = math.floor(min(last.at_rir(asked), default=0))
    if able < case.high + far or any(rir is None or rir < asked + far for rir in last.rirs):
        return None
    if case.ladder is None or last.load is None or not case.ladder.share_known(last.load):
        return None
    wanted = min(_by_formulas(case, able) or 0.0, last.load * (1 + case.numbers.easy_most))
    built = case.ladder.kit.at_most(wanted)
    if built is None or built.load <= last.load:
        return None
    reason = Reason("far-too-easy", step=step_share(last.load, built))
    return Decision(built, _all_at(case, case.low), case.reason(reason, last))


def two_for_two(case: Case) -> Decision | None:
    """Two or more over the goal in the last set, two sessions running: the next load (Baechle and Earle)."""
    sessions = case.recent(case.numbers.two_for_two_sessions)
    over = case.high + case.numbers.two_for_two_reps
    if len(sessions) < case.numbers.two_for_two_sessions or not all(done.reps[-1] >= over for done in sessions):
        return None
    return step_up(case, "two-for-two", *sessions)


def top_of_range(case: Case) -> Decision | None:
    """All planned sets at the top with the asked RIR: the next load (ACSM 2009: 2 to 10 %)."""
    last = case.last
    if min(*last.reps, *last.at_rir(case.entry.rir)) < case.high:
        return None
    if len(last.reps) < case.straight:
        return _hold(case, "fewer-sets", aims_from(case, (0,) * len(last.reps), case.high))
    return step_up(case, "top-of-range", last)


def more_reps(case: Case) -> Decision:
    """Repetitions first, inside the range: one more in each set, or as many as were left over what was asked."""
    gains = tuple(_gain(rir, case.entry.rir) for rir in case.last.rirs)
    return _hold(case, "more-reps", aims_from(case, gains, case.high))


def _gain(rir: int | None, asked: int) -> int:
    """Repetitions more than last time: none where less was left than asked."""
    if rir is None or rir == asked:
        return 1
    return max(0, rir - asked)


RULES: tuple[Rule, ...] = (
    never_done,
    long_gap,
    load_unsaid,
    technique_only,
    far_from_range,
    under_range_twice,
    under_range_once,
    closer_to_failure,
    far_too_easy,
    two_for_two,
    top_of_range,
)
"""In the order they are asked; the first that decides is the reason. Where none does, `more_reps` is."""


def decide(case: Case) -> Decision:
    """The decision of the first rule that applies."""
    for rule in RULES:
        decision = rule(case)
        if decision is not None:
            return decision
    return more_reps(case)


def _all_at(case: Case, reps: int) -> tuple[int, ...]:
    return (reps,) * case.entry.sets


def _under(case: Case, done: Exposure) -> bool:
    """Whether most sets ended under the range without being stopped early."""
    under = sum(1 for reps in done.reps if reps < case.low)
    return 2 * under > len(done.reps) and _near_asked_effort(case, done)


def _near_asked_effort(case: Case, done: Exposure) -> bool:
    """Whether some set left no more than was asked, or does not say: not all were stopped early."""
    return any(rir is None or rir <= case.entry.rir for rir in done.rirs)


def _share_by_formula(case: Case) -> float:
    """The part of the last load that the formulas give for the lower end, no less back than any load goes."""
    usual = 1 - case.numbers.back
    if case.ladder is None or case.last.load is None or not case.ladder.share_known(case.last.load):
        return usual
    found = _by_formulas(case, math.floor(median(case.last.at_rir(case.entry.rir))))
    return usual if found is None else min(usual, found / case.last.load)


def _by_formulas(case: Case, reps: int) -> float | None:
    """The lower of the loads that the formulas give for the lower end, from `reps` done at the asked RIR."""
    if case.ladder is None or case.last.load is None:
        return None
    done = DoneSet(case.last.load, max(1, reps), case.entry.rir)
    found = working_load(case.exercise, done, case.entry.reps, case.entry.rir, case.ladder.kit, case.numbers.catalogue)
    return found.wanted.lower


def _hold(case: Case, why: Why, aims: tuple[int, ...]) -> Decision:
    return hold(case, Reason(why), aims, case.last)


def _back(case: Case, why: Why, share: float, *rested_on: Exposure, days: int | None = None) -> Decision:
    """The hardest load at least so much easier; the lower end of the range in every set."""
    load: Built | None = None
    step: float | None = None
    if case.ladder is not None and case.last.load is not None:
        load = case.ladder.easier(case.last.load, share)
        if load is not None and case.last.load > 0:
            step = (load.load - case.last.load) / case.last.load
    if load is None and why == "long-gap":
        return hold(case, Reason(why, step=0.0, days=days), _all_at(case, case.low), *rested_on)
    missing = case.ladder is not None and load is None
    said = Reason(why, step=step, nothing_lighter=missing, days=days)
    return Decision(load, _all_at(case, case.low), case.reason(said, *rested_on))
