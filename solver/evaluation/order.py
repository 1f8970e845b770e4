"""The order of a day's exercises: one function of what stands in the day, whatever order it is given in."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.answered_once import answered_once
from setwright.solver.evaluation.resolved_brief import ResolvedBrief

Block = tuple[Exercise, ...]
HEAVY = 2
"""Axial load of squats and hinges with a bar."""
TRUNK_LAST = 8
"""Trunk work's class: too far from the others to go between them."""


def in_order(resolved: ResolvedBrief, day: Iterable[tuple[Exercise, str | None]]) -> list[Exercise]:
    """The exercises of a day in the order they are done; a pair (exercise, partner id) stays together."""
    exercises = resolved.catalogue.exercises
    ids = _ids_in_order(resolved, tuple(sorted((exercise.id, partner or "") for exercise, partner in day)))
    return [exercises[one] for one in ids]


@answered_once
def _ids_in_order(resolved: ResolvedBrief, day: tuple[tuple[str, str], ...]) -> tuple[str, ...]:
    """The ids of a day's exercises, given with those of their partners, in the order they are done."""
    lifts = [(resolved.catalogue.exercises[one], partner or None) for one, partner in day]
    waiting = sorted(blocks(resolved, lifts), key=lambda block: key(resolved, block))
    done: list[Block] = []
    while waiting:
        block = next_block(resolved, waiting, done[-1][-1] if done else None)
        waiting.remove(block)
        done.append(block)
    return tuple(exercise.id for block in priority_early(resolved, parted(resolved, done)) for exercise in block)


def parted(resolved: ResolvedBrief, done: list[Block]) -> list[Block]:
    """The blocks with one moved, where that parts two that hinder each other and passes no more than one class.

    Nothing but a squat or leg press is moved before a heavy lift.
    """
    found = done
    if not hindered(found):
        return found
    classes = [key(resolved, block)[0] for block in done]
    for place, block in enumerate(done):
        rest = [*done[:place], *done[place + 1 :]]
        squat = block[0].main_lift and block[0].movement == "knee"
        for target in range(place if heavy(block) else len(done)):
            between = slice(min(place, target), max(place, target) + 1)
            near = all(abs(passed - classes[place]) <= 1 for passed in classes[between])
            near = near and (squat or not (target < place and any(heavy(p) for p in done[between][:-1])))
            trial = [*rest[:target], block, *rest[target:]]
            if near and hindered(trial) < hindered(found):
                found = trial
    return found


def heavy(block: Block) -> bool:
    """Whether a block loads the spine so much that it is neither put off nor overtaken."""
    return any(e.main_lift and e.axial >= HEAVY for e in block)


def hindered(done: list[Block]) -> int:
    """How many blocks follow one that hinders them."""
    return sum(hinders(a[-1], b[0]) for a, b in pairwise(done))


def blocks(resolved: ResolvedBrief, day: Iterable[tuple[Exercise, str | None]]) -> list[Block]:
    """Single exercises and pairs, the heavier member of a pair first."""
    lifts = {e.id: (e, partner) for e, partner in day}
    found: list[Block] = []
    while lifts:
        exercise, partner = lifts.pop(min(lifts))
        if partner not in lifts:
            partner = next((other for other, (_, said) in sorted(lifts.items()) if said == exercise.id), None)
        if partner is None:
            found.append((exercise,))
        else:
            found.append(tuple(sorted((exercise, lifts.pop(partner)[0]), key=lambda e: key(resolved, (e,)))))
    return found


@answered_once
def groups(resolved: ResolvedBrief) -> dict[str, int]:
    """The class that each exercise of the catalogue is sorted in, by id."""
    return {exercise.id: group(resolved, exercise) for exercise in resolved.catalogue.exercises.values()}


def group(resolved: ResolvedBrief, exercise: Exercise) -> int:
    """The class an exercise is sorted in: main and priority lifts first, trunk work last."""
    priority = any(m in resolved.priorities for m in exercise.direct)
    if exercise.movement in ("trunk", "trunk-side", "carry", "back-extension"):
        return TRUNK_LAST
    if exercise.main_lift:
        return 0 if priority else 1
    if exercise.multi_joint:
        return 1 if priority else 2
    if exercise.movement in ("calf", "wrist"):
        return 4 if priority else 5
    return 3 if priority else 4


def key(resolved: ResolvedBrief, block: Block) -> tuple[int, bool, bool, int, str]:
    """What blocks are sorted by: class, lower body first, both limbs before one, load on the spine, then id."""
    upper, one_limb = (e.region != "lower" for e in block), (e.limb != "both" for e in block)
    best = min(groups(resolved)[e.id] for e in block)
    return best, all(upper), all(one_limb), -max(e.axial for e in block), block[0].id


def next_block(resolved: ResolvedBrief, waiting: list[Block], last: Exercise | None) -> Block:
    """The first waiting block of the best class that does not tire what the last exercise tired.

    Where there is none, a block of the next class may go between two that hinder each other, and a large lift of it
    between two large ones of a region, such as two presses.
    """
    first = waiting[0]
    if last is None:
        return first
    best = key(resolved, first)[0]
    near = [block for block in waiting if key(resolved, block)[0] <= best + 1]
    fresh = [block for block in near if key(resolved, block)[0] == best and not tires(last, block[0])]
    if not fresh and may_wait(resolved, last, first):
        fresh = [block for block in near if block[0].multi_joint and not tires(last, block[0])]
    if not fresh and hinders(last, first[0]):
        fresh = [block for block in near if not hinders(last, block[0])]
    return fresh[0] if fresh else first


def may_wait(resolved: ResolvedBrief, last: Exercise, first: Block) -> bool:
    """Whether a large lift waits for one of another region to go between: not a heavy or a priority one."""
    priority = any(m in resolved.priorities for e in first for m in e.direct)
    return first[0].multi_joint and last.region == first[0].region and not priority and not heavy(first)


def tires(last: Exercise, following: Exercise) -> bool:
    """Whether an exercise follows badly: same region, same grip or the same squat pattern."""
    same_region = last.region == following.region and last.region != "other"
    return same_region or hinders(last, following) or bool(last.direct & following.direct)


def hinders(last: Exercise, following: Exercise) -> bool:
    """Whether an exercise follows so badly that another class may go between."""
    grip = last.grip_limited and following.grip_limited
    return grip or (last.movement == following.movement == "knee")


def priority_early(resolved: ResolvedBrief, done: list[Block]) -> list[Block]:
    """The blocks with work for a priority muscle among the first two, where the day has any.

    Curls and grip work never go before a hinge or a main row, which need the grip and the arms fresh.
    """

    def serves(block: Block) -> bool:
        return any(m in resolved.priorities for e in block for m in e.direct)

    places = [i for i, block in enumerate(done) if serves(block)]
    if places and places[0] > 1:
        block = done.pop(places[0])
        spent = any(e.region == "arms" or e.grip_limited for e in block) and not heavy(block)
        fresh = [i for i, other in enumerate(done[: places[0]]) if spent and any(needs_grip(e) for e in other)]
        done.insert(max([1, *(i + 1 for i in fresh)]), block)
    return done


def needs_grip(exercise: Exercise) -> bool:
    """Whether tired arms or a tired grip spoil an exercise: a hinge, or a pull that is a main lift."""
    return exercise.movement == "hinge" or (exercise.main_lift and exercise.region == "pull")
