"""What may stand in a line's place: open exercises for the same work, each re-timed and audited in its week."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from setwright.catalogue.entries import Exercise
from setwright.solver.reckoning.audit import Audit
from setwright.solver.reckoning.options import Option, options_of
from setwright.solver.reckoning.pairs import fits
from setwright.solver.reckoning.view import Line, View
from setwright.solver.reckoning.week import Entry
from setwright.solver.uses.editing import entry_as, exchanged
from setwright.solver.uses.effects import TIME, Effect, effect
from setwright.solver.uses.room import Cut, room_for


@dataclass(frozen=True)
class Swap:
    """One exercise in another's place: its line as it would be done, and what that does to the week."""

    exercise: Exercise
    entry: Entry
    effect: Effect
    room: Cut | None = None
    """What else is cut that day so that it fits."""


def swaps(audited: Audit, line: Line, most: int = 2) -> tuple[Swap, ...]:
    """Up to `most` swaps that break no rule the week keeps, best first.

    Exercises of the same movement come first, then others for the same muscles; of each kind those away from a taken
    station, that tire no more, at the same sets, of the same slot, of the better rank. None is avoided, disliked or
    closed by a caution, and none loads the spine more than the lift it replaces.
    """
    found: list[Swap] = []
    for exercise in candidates(audited.view, line):
        swap = swapped(audited, line, exercise)
        if swap is not None:
            found.append(swap)
            if sum(s.entry.sets == line.sets for s in found) == most:
                break
    return tuple(sorted(found, key=lambda swap: swap.entry.sets != line.sets)[:most])


def swapped(audited: Audit, line: Line, exercise: Exercise) -> Swap | None:
    """The best way to do an exercise in a line's place without breaking a rule, at sets as near as there are."""
    best: Swap | None = None
    for sets, trials in ways(audited, line, exercise):
        for trial in trials:
            if not trial.effect.broken and (best is None or better(trial, best)):
                best = trial
        if best is not None and best.entry.sets == sets:
            return best
    return None


def better(a: Swap, b: Swap) -> bool:
    """The higher score first, then the fewer seconds."""
    return (a.effect.after.score_units, -a.effect.seconds) > (b.effect.after.score_units, -b.effect.seconds)


def ways(audited: Audit, line: Line, exercise: Exercise) -> Iterator[tuple[int, Iterator[Swap]]]:
    """The ways to do an exercise in a line's place, by number of sets, the nearest to the line's own first."""
    terms, partner = audited.view.terms, line.entry.partner
    options = [o for o in options_of(terms, exercise, line.day) if o.paired == (partner is not None)]
    if partner is not None:
        options = [o for o in options if (o.sets, o.rest) == (line.sets, line.entry.rest)]
    for sets in sorted({o.sets for o in options}, key=lambda n: (abs(n - line.sets), -n)):
        yield sets, (tried(audited, line, exercise, o) for o in options if o.sets == sets)


def tried(audited: Audit, line: Line, exercise: Exercise, option: Option) -> Swap:
    entry = entry_as(audited.view.terms, exercise, line.day, option, line.entry.partner)
    return Swap(exercise, entry, effect(audited, exchanged(audited.view, line, entry)))


# ---- which exercises


def candidates(view: View, line: Line) -> list[Exercise]:
    """The open exercises that do a line's work, the likeliest first."""
    terms, old = view.terms, line.exercise
    partner = terms.catalogue.exercises.get(line.entry.partner or "")
    others = [x for x in view.on[line.day.index] if x.place != line.place]
    here = {x.exercise.id for x in others} | {old.id}
    slots = {x.exercise.slot.id for x in others}
    able = [
        e
        for e in terms.open_on[line.day.index]
        if e.id not in here
        and e.id not in terms.brief.dislike
        and e.slot.id not in slots
        and same_work(view, e, old)
        and e.axial <= old.axial
        and (partner is None or fits(terms, e, partner))
    ]
    elsewhere = leaves_station(view, old)
    able.sort(
        key=lambda e: (
            e.movement != old.movement,
            not elsewhere(e),
            tires_more(e, old),
            e.slot.id != old.slot.id,
            terms.rank(e, line.day),
        )
    )
    return able


def same_work(view: View, new: Exercise, old: Exercise) -> bool:
    """Whether an exercise trains what another does: the same movement for a direct muscle of it, or failing that one
    of the region, no heavier, that trains directly the muscle the other is there for."""
    if new.movement == old.movement:
        return bool(new.direct & old.direct)
    own = view.terms.own_muscle(old)
    shared = new.direct & old.direct if own is None else new.direct & {own}
    return bool(shared) and new.region == old.region and new.multi_joint == old.multi_joint and not tires_more(new, old)


def tires_more(new: Exercise, old: Exercise) -> bool:
    return new.fatigue == "high" and old.fatigue == "low"


def leaves_station(view: View, old: Exercise) -> Callable[[Exercise], bool]:
    """At peak hour a taken fixed station is swapped for work away from any; else every swap is alike."""
    items = view.terms.catalogue.items

    def fixed(exercise: Exercise) -> bool:
        return any(i in items and items[i].place == "fixed" for i in exercise.needs)

    if not view.terms.brief.owned.busy or not fixed(old):
        return lambda _: True
    return lambda exercise: not fixed(exercise)


# ---- where the day is full


def with_room(audited: Audit, line: Line, taken: tuple[Swap, ...], most: int) -> tuple[Swap, ...]:
    """Swaps that only the day's minutes forbid, each with the cut of another line that lets it fit at least cost."""
    full = (swap for swap in refused(audited, line, taken) if rules_broken(swap) == (TIME,))
    found = (roomed(audited, line, swap) for swap in full)
    return tuple(swap for swap in found if swap is not None)[:most]


def roomed(audited: Audit, line: Line, swap: Swap) -> Swap | None:
    """A swap with room made for it."""
    made = room_for(audited, swap.effect.after, line.day.index, swap.exercise.id)
    return None if made is None else Swap(swap.exercise, swap.entry, made[1], made[0])


def stand_ins(audited: Audit, line: Line, most: int) -> tuple[Exercise, ...]:
    """For a card: swaps that break nothing, then those that only run a full day over its minutes."""
    able = swaps(audited, line, most)
    names = [swap.exercise for swap in able]
    if len(names) < most:
        over = refused(audited, line, able)
        names += [swap.exercise for swap in over if rules_broken(swap) == (TIME,)]
    return tuple(names[:most])


def rules_broken(swap: Swap) -> tuple[str, ...]:
    """The rules a swap would break, sorted, each once."""
    return tuple(sorted({f.rule for f in swap.effect.broken}))


# ---- what was refused, and a swap by name


def refused(audited: Audit, line: Line, taken: tuple[Swap, ...]) -> Iterator[Swap]:
    """Open exercises for the same work that would break a rule, each done in the way that breaks least."""
    names = {swap.exercise.id for swap in taken}
    for exercise in candidates(audited.view, line):
        swap = None if exercise.id in names else least_broken(audited, line, exercise)
        if swap is not None and swap.effect.broken:
            yield swap


def least_broken(audited: Audit, line: Line, exercise: Exercise) -> Swap | None:
    """The way to do an exercise in a line's place that breaks fewest rules; None where its partner allows none."""
    every = [trial for _, trials in ways(audited, line, exercise) for trial in trials]
    return min(every, key=lambda t: (len(t.effect.broken), t.effect.seconds, -t.effect.after.score_units), default=None)


def swap_to(audited: Audit, line: Line, exercise: Exercise) -> Swap | None:
    """One exercise in a line's place, done in the best way that breaks nothing, else in the one that breaks least."""
    return swapped(audited, line, exercise) or least_broken(audited, line, exercise)
