"""What may stand in a line's place: open exercises for the same work, each re-timed and audited in its week."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import islice

from setwright.catalogue.entries import Exercise
from setwright.solver.auditing import Audit, audit
from setwright.solver.evaluation.evaluated_week import Line
from setwright.solver.evaluation.prescriptions import Prescription, prescriptions_of
from setwright.solver.evaluation.week import Entry
from setwright.solver.uses.edits.editing import entry_as, exchanged
from setwright.solver.uses.edits.effects import TIME, Effect, effect
from setwright.solver.uses.edits.make_room import Cut, room_for
from setwright.solver.uses.edits.pinning import with_pin, with_pins_moved
from setwright.solver.uses.edits.substitutes import candidates


@dataclass(frozen=True)
class Swap:
    """One exercise in another's place: its line as it would be done, and what that does to the week."""

    exercise: Exercise
    entry: Entry
    effect: Effect
    room: Cut | None = None
    """What else is cut that day so that it fits."""
    named: bool = False
    """Whether it is pinned in the week after: as a stand-in, or because the line's pin goes over to it."""


def swaps(audited: Audit, line: Line, most: int = 2) -> tuple[Swap, ...]:
    """Up to `most` swaps that break no rule the week keeps, best first.

    Exercises of the same movement come first, those that fit only with room made after them, then others for the
    same muscles; of each kind those away from a taken station, that tire no more, at the same sets, of the same slot,
    of the better rank. None is avoided, disliked or closed by a caution, none loads the spine more than the lift it
    replaces.
    """
    same, others = candidates(audited.evaluated, line)
    found = _fitting(audited, line, same, most)
    if len(found) < most:
        found += _with_room(audited, line, same, most - len(found))
    if len(found) < most:
        found += _fitting(audited, line, others, most - len(found))
    return tuple(found)


def _fitting(audited: Audit, line: Line, exercises: Iterable[Exercise], most: int) -> list[Swap]:
    """Up to `most` of some exercises that fit as they are, those at the line's own sets first."""
    found: list[Swap] = []
    for exercise in exercises:
        swap = swapped(audited, line, exercise)
        if swap is not None:
            found.append(swap)
            if sum(s.entry.sets == line.sets for s in found) == most:
                break
    return sorted(found, key=lambda swap: swap.entry.sets != line.sets)[:most]


def swapped(audited: Audit, line: Line, exercise: Exercise) -> Swap | None:
    """The best way to do an exercise in a line's place without breaking a rule, at sets as near as there are."""
    best: Swap | None = None
    for sets, trials in ways(audited, line, exercise):
        for trial in trials:
            if not trial.effect.broken and (best is None or _better(trial, best)):
                best = trial
        if best is not None and best.entry.sets == sets:
            return best
    return None


def _as_named(audited: Audit, line: Line, exercise: Exercise) -> Audit:
    """The week audited as a swap by name has it: pins of the line go over to the exercise, and what only a name opens
    is pinned there."""
    resolved = with_pins_moved(audited.evaluated, line, exercise)
    if resolved.excluded_by(exercise, line.day):
        resolved = with_pin(resolved, exercise, line.day.weekday)
    return audited if resolved is audited.evaluated.resolved else audit(resolved, audited.evaluated.week)


def _better(a: Swap, b: Swap) -> bool:
    """The higher score first, then the fewer seconds."""
    return (a.effect.after.score_units, -a.effect.seconds) > (b.effect.after.score_units, -b.effect.seconds)


def ways(audited: Audit, line: Line, exercise: Exercise) -> Iterator[tuple[int, Iterator[Swap]]]:
    """The ways to do an exercise in a line's place, by number of sets, the nearest to the line's own first."""
    base, partner = _as_named(audited, line, exercise), line.entry.partner
    prescriptions = [
        o for o in prescriptions_of(base.evaluated.resolved, exercise, line.day) if o.paired == (partner is not None)
    ]
    if partner is not None:
        prescriptions = [o for o in prescriptions if (o.sets, o.rest) == (line.sets, line.entry.rest)]

    def tried(prescription: Prescription) -> Swap:
        entry = entry_as(base.evaluated.resolved, exercise, line.day, prescription, partner)
        done = effect(base, exchanged(base.evaluated, line, entry))
        return Swap(exercise, entry, done, named=base is not audited)

    for sets in sorted({o.sets for o in prescriptions}, key=lambda n: (abs(n - line.sets), -n)):
        yield sets, (tried(o) for o in prescriptions if o.sets == sets)


# ---- where the day is full


def _with_room(audited: Audit, line: Line, exercises: Iterable[Exercise], most: int) -> list[Swap]:
    """Swaps that only the day's minutes forbid, each with the cut of another line that lets it fit at least cost."""
    full = (swap for swap in refused(audited, line, exercises) if rules_broken(swap) == (TIME,))
    found = (with_cut(line, swap) for swap in full)
    return list(islice((swap for swap in found if swap is not None), most))


def with_cut(line: Line, swap: Swap) -> Swap | None:
    """A swap into a full day with the cut of another line that makes room; None where no cut does."""
    made = room_for(swap.effect.before, swap.effect.after, line.day.index, swap.exercise.id)
    return None if made is None else replace(swap, effect=made[1], room=made[0])


def rules_broken(swap: Swap) -> tuple[str, ...]:
    """The rules a swap would break, sorted, each once."""
    return tuple(sorted({f.rule for f in swap.effect.broken}))


# ---- what was refused, and a swap by name


def refused(audited: Audit, line: Line, exercises: Iterable[Exercise]) -> Iterator[Swap]:
    """Those of some exercises that would break a rule, each done in the way that breaks least."""
    for exercise in exercises:
        swap = _least_broken(audited, line, exercise)
        if swap is not None and swap.effect.broken:
            yield swap


def least_breaking(trials: Iterable[Swap]) -> Swap | None:
    """Of some ways to do a swap the one that breaks fewest rules, then the quickest; None of none."""
    return min(
        trials, key=lambda t: (len(t.effect.broken), t.effect.seconds, -t.effect.after.score_units), default=None
    )


def _least_broken(audited: Audit, line: Line, exercise: Exercise) -> Swap | None:
    """The way to do an exercise in a line's place that breaks fewest rules; None where its partner allows none."""
    return least_breaking(trial for _, trials in ways(audited, line, exercise) for trial in trials)


def swap_to(audited: Audit, line: Line, exercise: Exercise) -> Swap | None:
    """One exercise in a line's place, done in the best way that breaks nothing, else in the one that breaks least."""
    return swapped(audited, line, exercise) or _least_broken(audited, line, exercise)
