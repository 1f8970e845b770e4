"""What follows when a heavier load is due: the next one, or repetitions beyond the range where the step is too big."""

from __future__ import annotations

import math

from setwright.solver.uses.loads.buildable import Built
from setwright.solver.uses.loads.maximum import Formulas
from setwright.solver.uses.loads.next_step import step_share
from setwright.solver.uses.progress.case import Case, Decision, aims_from, hold
from setwright.solver.uses.progress.exposure import Exposure
from setwright.solver.uses.progress.reason import Reason, Why


def step_up(case: Case, why: Why, *rested_on: Exposure) -> Decision:
    """The next load at the lower end of the range; repetitions beyond the range first where it is over 10 % more."""
    if case.ladder is None or case.last.load is None:
        return _beyond(case, "harder-form", None, *rested_on)
    load = case.last.load
    harder = case.ladder.harder(load)
    if harder is None:
        return _beyond(case, "no-heavier", None, *rested_on)
    step = step_share(load, harder) if case.ladder.share_known(load) else None
    if not case.ladder.too_big(load, harder):
        return _taken(case, harder, Reason(why, step=step), *rested_on)
    needed = reps_for_step(case, load, harder)
    if min(case.last.reps) >= needed and len(case.last.reps) >= case.straight:
        return _taken(case, harder, Reason("big-step-earned", step=step, reps_needed=needed), *rested_on)
    out_of_reach = needed > _most(case) and min(case.last.reps) >= _most(case)
    return _beyond(case, "step-out-of-reach" if out_of_reach else "step-too-big", harder, *rested_on)


def reps_for_step(case: Case, load: float, harder: Built) -> int:
    """Repetitions with `load` from which the lower end of the range is possible with `harder`, at the same RIR.

    By Epley 1985, which of the two formulas asks for more above ten repetitions; at least one beyond the range.
    """
    formulas = Formulas.of(case.numbers.catalogue)
    wanted = harder.load / load * formulas.epley(case.low + case.entry.rir)
    needed = math.ceil(formulas.epley_reps * (wanted - 1) - case.entry.rir - SLACK)
    return max(needed, case.high + 1)


def _taken(case: Case, harder: Built, said: Reason, *rested_on: Exposure) -> Decision:
    return Decision(harder, (case.low,) * case.entry.sets, case.reason(said, *rested_on))


def _beyond(case: Case, why: Why, harder: Built | None, *rested_on: Exposure) -> Decision:
    """The same load with one repetition more in each set, up to what a step needs or to the most that is asked for."""
    most, step = _most(case), None
    if harder is not None and case.last.load is not None:
        step = step_share(case.last.load, harder)
        most = min(most, reps_for_step(case, case.last.load, harder))
    said = Reason(why, step=step, reps_needed=most)
    return hold(case, said, aims_from(case, (1,) * len(case.last.reps), most), *rested_on)


def _most(case: Case) -> int:
    """The most repetitions that are asked for beyond the range."""
    return case.high + case.numbers.reps_beyond


SLACK = 1e-9
"""What a number of repetitions may be off by in floating point."""
