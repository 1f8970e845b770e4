"""Why a next load is what it is: one short sentence for each reason."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.solver.sheets.common.words import counted
from setwright.solver.sheets.screen.progress.amounts import per_cent
from setwright.solver.uses.progress.next_targets import NextTarget

BY_REPS_ALONE = "*"
"""Stands after a reason that rests on repetitions alone; a line under the table says what it means."""


def why_sentence(target: NextTarget, exercise: Exercise) -> str:
    """The reason of one target as a sentence."""
    mark = BY_REPS_ALONE if target.reason.by_reps_alone else ""
    lacking = " Nothing so light can be built: take an easier form." if target.reason.nothing_lighter else ""
    return _sentence(target, exercise) + mark + lacking


def _sentence(target: NextTarget, exercise: Exercise) -> str:
    reason, (low, high), rir = target.reason, target.reps, target.rir
    if reason.why in ("long-gap", "far-from-range", "under-range-twice"):
        return f"{_ground(target)}{_back_words(target, exercise)}."
    if reason.why in ("step-too-big", "step-out-of-reach", "big-step-earned"):
        return _big_step(target)
    done = 0 if target.last is None else len(target.last.reps)
    return {
        "never-done": f"New: find the load. Begin light, go up until {_left(rir)}.",
        "load-unsaid": "The log names no load: find it as for a new lift.",
        "under-range-once": f"Most sets under {low}: the same load once more.",
        "closer-to-failure": f"Fewer left than {rir}: the same again, and stop earlier.",
        "two-for-two": f"Two or more over {high} in the last set, two sessions running.",
        "top-of-range": f"All sets reached {high} with {rir} left or more.",
        "no-heavier": "Nothing heavier can be built: more repetitions, then a harder lift.",
        "harder-form": "At the top: more repetitions, or a harder form.",
        "fewer-sets": f"At the top, but in {done} of {counted(target.sets, 'set')}: all sets first.",
        "technique-only": "The set has drops or pauses, so its repetitions decide nothing: the same load.",
        "far-too-easy": f"Far more left than {rir} in every set: {per_cent(reason.step or 0.0)} more.",
        "more-reps": f"Repetitions first, up to {high}.",
        "as-planned": "Nothing logged yet: as the block plans it.",
        "lighter-week": "A lighter week: fewer sets, a lighter load, more left.",
    }[reason.why]


def _left(rir: int) -> str:
    return "1 is left" if rir == 1 else f"{rir} are left"


def _ground(target: NextTarget) -> str:
    """What a load goes back for."""
    reason = target.reason
    if reason.why == "long-gap":
        return f"{counted(reason.days or 0, 'day')} without it"
    if reason.why == "far-from-range":
        return f"Far under {target.reps[0]} at this load"
    return f"Most sets under {target.reps[0]}, {counted(len(reason.sessions), 'session')} running"


def _back_words(target: NextTarget, exercise: Exercise) -> str:
    """How far it goes back."""
    if target.load is None:
        return "" if target.reason.nothing_lighter else ": take an easier form"
    if target.reason.step == 0:
        return ": the least there is"
    if exercise.body_weight is not None or target.reason.step is None:
        return ": one step easier"
    return f": {per_cent(target.reason.step)} lighter"


def _big_step(target: NextTarget) -> str:
    reason = target.reason
    step, needed = per_cent(reason.step or 0.0), reason.reps_needed
    if reason.why == "big-step-earned":
        return f"{needed} in all sets: enough for a step of {step}."
    if reason.why == "step-too-big":
        return f"The next load is {step} more: {needed} in all sets first."
    return f"The next load is {step} more, too far: add a set, use smaller plates or swap the lift."
