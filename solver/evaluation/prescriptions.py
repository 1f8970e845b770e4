"""The ways an exercise may be done on a day (prescriptions), with their seconds and credits as integers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from setwright.catalogue.check import REP_RANGES
from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.clock import (
    exercise_seconds,
    half_pair_half_seconds,
    pair_work,
    rest_seen,
    work_seconds,
)
from setwright.solver.evaluation.curves import SetConditions
from setwright.solver.evaluation.pairing.partner_effect import (
    NO_EFFECT,
    PartnerEffect,
    pair_change_seconds,
    pair_rest_seen,
)
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay

MOST_WITH_TECHNIQUE = 3
LIGHT_REPS = (15, 30)
RANGES = tuple(sorted(REP_RANGES, key=lambda r: (r[0] + r[1], r)))


@dataclass(frozen=True, order=True)
class Prescription:
    """One way to do an exercise; half seconds, hundredths of credited and thousandths of effective sets."""

    sets: int
    rest: int
    technique: str
    drops: int
    paired: bool
    half_seconds: int
    credited: int
    effective: int


def reps_of(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> tuple[int, int]:
    """The repetitions printed: the catalogue's range, moved for a novice, by liking, light loads, or a caution."""
    usual = _wished_reps(resolved, exercise, day)
    return usual if exercise.timed else _from(resolved.client_limits.reps_least, usual)


def _wished_reps(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> tuple[int, int]:
    """The usual range of the client's experience, moved by liking or by light loads."""
    if resolved.light(exercise, day):
        return LIGHT_REPS
    shift = {"lower": -1, "usual": 0, "higher": 1}[resolved.brief.reps]
    place = RANGES.index(_usual_reps(resolved, exercise)) + shift
    return RANGES[min(max(place, 0), len(RANGES) - 1)]


def _usual_reps(resolved: ResolvedBrief, exercise: Exercise) -> tuple[int, int]:
    """The catalogue's range; a novice's begins higher, but for lifts by body weight, whose load is as it is."""
    by_body_weight = exercise.load == "bodyweight"
    if resolved.experience != "novice" or exercise.timed or by_body_weight or exercise.movement == "explosive":
        return exercise.reps
    return _from(round(resolved.number("novice-reps-least")), exercise.reps)


def _from(least: int, reps: tuple[int, int]) -> tuple[int, int]:
    """A range, or the first one that begins at no fewer repetitions than the least."""
    return reps if reps[0] >= least else next(r for r in RANGES if r[0] >= least)


def usual_rir(resolved: ResolvedBrief, exercise: Exercise) -> int:
    """The repetitions in reserve of this kind of lift and this client, at which effort is credited in full.

    It is the reference of the effort curve, so that a lift is never chosen for the reserve that it is printed with.
    """
    kind = "rir-high-fatigue" if exercise.fatigue == "high" else "rir-other"
    usual = resolved.number("rir-novice" if resolved.experience == "novice" else kind)
    return max(round(usual), resolved.client_limits.rir_least)


def rir_of(resolved: ResolvedBrief, exercise: Exercise) -> int:
    """Repetitions in reserve, set and not solved: by the kind of lift; more where caution, age or the brief asks."""
    lone_pin = exercise.can_pin and resolved.brief.client.trains_alone
    usual = usual_rir(resolved, exercise)
    least = max(usual, round(resolved.number("rir-novice"))) if lone_pin else usual
    return max(least + (resolved.brief.rir_more or 0), resolved.reserve_asked)


def change_over(resolved: ResolvedBrief, exercise: Exercise) -> int:
    """Seconds to change to an exercise; a fixed station takes longer at peak hour."""
    fixed = any(resolved.catalogue.items[i].place == "fixed" for i in exercise.needs)
    busy = resolved.brief.owned.busy and fixed
    return exercise.change_over + (round(resolved.number("busy-change-over-seconds")) if busy else 0)


def set_span(resolved: ResolvedBrief, exercise: Exercise) -> tuple[int, int]:
    """Fewest and most sets of an exercise in a day; a caution may ask for fewer."""
    least, most = _usual_set_span(resolved, exercise)
    cap = resolved.client_limits.sets_most
    return (least, most) if cap is None else (min(least, cap), min(most, cap))


def _usual_set_span(resolved: ResolvedBrief, exercise: Exercise) -> tuple[int, int]:
    """Fewest and most sets of an exercise in a day, cautions left aside."""
    sets = resolved.catalogue.defaults.sets
    if resolved.minimum_dose:
        group = resolved.age_group
        return group.dose_sets if group and group.dose_sets else sets.minimum_dose
    if exercise.once_a_week:
        return sets.once_a_week
    if exercise.movement in ("trunk", "trunk-side", "carry"):
        return sets.trunk
    if not exercise.multi_joint:
        return sets.single
    least, most = sets.multi
    wanted = any(m in resolved.priorities for m in sorted(exercise.direct))
    growth = resolved.goal == "growth" and len(resolved.days) > 1
    return (least, sets.multi_most if growth or wanted else most)


def lift_kind(exercise: Exercise) -> str:
    """The kind that an exercise's rests go by: main, multi or single."""
    return "main" if exercise.main_lift else "multi" if exercise.multi_joint or exercise.fatigue == "high" else "single"


def rests_of(resolved: ResolvedBrief, exercise: Exercise) -> tuple[int, ...]:
    """The rests an unpaired exercise may have under the goal, as far as the brief and the cautions allow."""
    return _allowed(resolved, resolved.catalogue.defaults.rests[resolved.goal][lift_kind(exercise)])


def _allowed(resolved: ResolvedBrief, usual: tuple[int, ...]) -> tuple[int, ...]:
    """The usual rests that the brief and the cautions allow; where they allow none, the nearest that they do."""
    least, most = resolved.rest_span
    kept = tuple(rest for rest in usual if least <= rest <= most)
    return kept or tuple(dict.fromkeys(min(max(rest, least), most) for rest in usual))


def pair_rests(resolved: ResolvedBrief, exercise: Exercise) -> tuple[int, ...]:
    """The rests in seconds that a pair with this exercise may have under the goal; the two must have one in common."""
    defaults, goal = resolved.catalogue.defaults, resolved.goal
    heavy = defaults.heavy_pair_rests.get(goal, ())
    if exercise.fatigue == "high":
        return _allowed(resolved, heavy)
    more = heavy if exercise.multi_joint else defaults.single_pair_rests.get(goal, ())
    return _allowed(resolved, defaults.pair_rests[goal] + more)


def pairable(resolved: ResolvedBrief, exercise: Exercise) -> bool:
    """Whether an exercise may be a member of a pair at all, by the goal: in growth lifts of one joint only."""
    if exercise.axial or exercise.limb == "each, rest after each" or exercise.slot.id in ("hinge", "deadlift"):
        return False
    if resolved.goal == "growth":
        return not exercise.multi_joint and exercise.fatigue == "low"
    heavy_upper_body = exercise.region in ("push", "pull") and bool(pair_rests(resolved, exercise))
    return exercise.fatigue == "low" or heavy_upper_body


def techniques_of(resolved: ResolvedBrief, exercise: Exercise) -> tuple[tuple[str, int], ...]:
    """The (technique, drops) that may end an exercise's last set."""
    if not resolved.techniques or exercise.multi_joint or exercise.limb != "both" or not exercise.safe_to_fail:
        return ()
    usual = resolved.catalogue.defaults.drops
    drops = [("drop", k) for k in usual] if "drop" in exercise.techniques else []
    pauses = [("rest-pause", 0)] if "rest-pause" in exercise.techniques else []
    return tuple(drops + pauses)


def make(
    resolved: ResolvedBrief,
    exercise: Exercise,
    day: ResolvedDay,
    sets: int,
    rest: int,
    technique: str,
    drops: int,
    paired: bool,
    reps: tuple[int, int] | None = None,
    rir: int | None = None,
    partner: PartnerEffect = NO_EFFECT,
) -> Prescription:
    """One prescription with its seconds and credits, whether or not a rule allows it.

    `reps` and `rir` are those printed on a line; unsaid they are the brief's own. `partner` is what the other exercise
    of a pair takes from this one; unsaid nothing, which is the most that a pair can give.
    """
    numbers = resolved.curves.numbers
    work, change = _work_seconds(resolved, exercise, day, reps), change_over(resolved, exercise)
    if paired:
        pair_change = pair_change_seconds(resolved, partner.apart)
        halves = half_pair_half_seconds(pair_work(work, exercise.limb), sets, rest, change, pair_change)
    else:
        halves = 2 * exercise_seconds(work, exercise.limb, sets, rest, change, technique, drops, numbers)
    credited = resolved.curves.credited(sets, technique, drops)
    done = conditions(resolved, exercise, day, sets, rest, technique, drops, paired, reps, rir, partner)
    effective = resolved.curves.effective(done, exercise.fatigue)
    return Prescription(sets, rest, technique, drops, paired, halves, round(100 * credited), round(1000 * effective))


def conditions(
    resolved: ResolvedBrief,
    exercise: Exercise,
    day: ResolvedDay,
    sets: int,
    rest: int,
    technique: str,
    drops: int,
    paired: bool,
    reps: tuple[int, int] | None = None,
    rir: int | None = None,
    partner: PartnerEffect = NO_EFFECT,
) -> SetConditions:
    """What the sets of one prescription are credited by; the arguments are those of `make`.

    The first set sees the change-over, or the rest of the exercise before, which is taken to be its own.
    """
    if paired:
        seen = pair_rest_seen(resolved, rest, partner.apart)
    else:
        seen = rest_seen(_work_seconds(resolved, exercise, day, reps), exercise.limb, rest)
    return SetConditions(
        sets=sets,
        first_rest=max(seen, change_over(resolved, exercise)),
        rest=seen,
        rir=rir_of(resolved, exercise) if rir is None else rir,
        usual_rir=usual_rir(resolved, exercise),
        extra=resolved.curves.extra(technique, drops),
        partner_loss=partner.loss(resolved.curves.numbers),
    )


def _work_seconds(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay, reps: tuple[int, int] | None) -> int:
    per_rep = resolved.curves.numbers["seconds-per-rep"]
    return work_seconds(reps or reps_of(resolved, exercise, day), exercise.alternating, per_rep)


def prescriptions_of(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> tuple[Prescription, ...]:
    """Every way the rules of sets, rests and techniques allow, sorted; a worse twin of another is left out."""
    return tuple(sorted(undominated(list(all_prescriptions(resolved, exercise, day)))))


def all_prescriptions(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> Iterator[Prescription]:
    """Every way that the rules of sets, rests and techniques allow, worse twins included."""
    least, most = set_span(resolved, exercise)
    for sets in range(least, most + 1):
        for rest in rests_of(resolved, exercise):
            yield make(resolved, exercise, day, sets, rest, "straight", 0, False)
            if sets <= MOST_WITH_TECHNIQUE:
                for technique, drops in techniques_of(resolved, exercise):
                    yield make(resolved, exercise, day, sets, rest, technique, drops, False)
        if resolved.pairs and pairable(resolved, exercise):
            for rest in pair_rests(resolved, exercise):
                yield make(resolved, exercise, day, sets, rest, "straight", 0, True)


def undominated(prescriptions: list[Prescription]) -> Iterator[Prescription]:
    """Options that no other matches in credited sets and beats in effect and time; paired ones are kept."""
    for prescription in prescriptions:
        beaten = any(
            other != prescription
            and not other.paired
            and not prescription.paired
            and other.technique == prescription.technique
            and other.sets == prescription.sets
            and other.credited == prescription.credited
            and (other.effective, -other.half_seconds, -other.rest)
            > (prescription.effective, -prescription.half_seconds, -prescription.rest)
            and other.effective >= prescription.effective
            and other.half_seconds <= prescription.half_seconds
            for other in prescriptions
        )
        if not beaten:
            yield prescription
