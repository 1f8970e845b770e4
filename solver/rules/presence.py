"""Rules that ask for at least one lift of a kind in the week, and charge each kind that is missing."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.answered_once import answered_once
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.finding import Finding
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.linear_model import Expression, LinearModel, combined
from setwright.solver.linear.rule import Rule

Serves = Callable[[Exercise, ResolvedDay], bool]
"""Whether an exercise on a day is of the kind asked for."""
Wanted = Callable[[ResolvedBrief], Iterator[tuple[str, Serves]]]
"""The kinds that a brief's week should have: (what it is called, which lifts serve)."""

COVERED: tuple[tuple[str, tuple[str, ...], tuple[str, ...]], ...] = (
    ("knee lift", ("knee",), ("quads",)),
    ("hip lift", ("hinge", "thrust"), ("hamstrings", "glutes")),
    ("horizontal press", ("horizontal-press",), ("chest",)),
    ("row", ("row",), ("upper-back", "lats")),
    ("vertical pull", ("vertical-pull",), ("lats",)),
    ("vertical press", ("vertical-press",), ("front-delts",)),
)
"""(name, movements that count, muscles one of which is sought where the movement is wanted)."""
MAIN_REGIONS = (
    ("push", ("horizontal-press", "vertical-press")),
    ("pull", ("row", "vertical-pull")),
    ("lower", ("knee", "hinge", "thrust")),
)
MAIN_MOVEMENTS = (
    ("horizontal press", ("horizontal-press",)),
    ("vertical press", ("vertical-press",)),
    ("row", ("row",)),
    ("vertical pull", ("vertical-pull",)),
    ("knee", ("knee",)),
    ("hinge", ("hinge",)),
)
"""(name, movements that count) of the main lifts that a week should have, by region or by movement."""


def covered(resolved: ResolvedBrief) -> Iterator[tuple[str, Serves]]:
    """The movements that every week should have, where brief and kit allow."""
    listed = [(name, ids) for name, ids, muscles in COVERED if any(resolved.sought(m) for m in muscles)]
    if "glutes" in resolved.priorities:
        listed.append(("hip thrust", ("thrust",)))
    for name, ids in listed:
        if resolved.can_somewhere(lambda e, ids=ids: e.multi_joint and e.movement in ids):
            yield name, lambda e, day, ids=ids: e.multi_joint and e.movement in ids


def direct_work(resolved: ResolvedBrief) -> Iterator[tuple[str, Serves]]:
    """The muscles that should have a direct set: sought, and trainable with what is at hand."""
    for muscle in resolved.muscles:
        wanted = resolved.sought(muscle) and muscle != "front-delts"
        if wanted and resolved.can_somewhere(lambda e, m=muscle: m in e.direct):
            yield muscle, lambda e, day, m=muscle: m in e.direct


def leg_curl(resolved: ResolvedBrief) -> Iterator[tuple[str, Serves]]:
    """A leg curl, where hamstrings are sought and the kit has one."""
    if resolved.sought("hamstrings") and resolved.can_somewhere(lambda e: e.movement == "knee-flexion"):
        yield "leg curl", lambda e, day: e.movement == "knee-flexion"


def leg_extension(resolved: ResolvedBrief) -> Iterator[tuple[str, Serves]]:
    """A leg extension, where quads are a priority and the kit has one: presses and squats spare the rectus femoris."""
    if "quads" in resolved.priorities and resolved.can_somewhere(lambda e: e.movement == "knee-extension"):
        yield "leg extension", lambda e, day: e.movement == "knee-extension"


def flat_press(resolved: ResolvedBrief) -> Iterator[tuple[str, Serves]]:
    """A flat press or a dip, where chest is sought and the kit has one."""
    if resolved.sought("chest") and resolved.can_somewhere(lambda e: e.slot.id in ("flat-press", "dip")):
        yield "flat press or dip", lambda e, day: e.slot.id in ("flat-press", "dip")


def deadlift(resolved: ResolvedBrief) -> Iterator[tuple[str, Serves]]:
    """A deadlift, which needs no rack and no safeties, where it is the heaviest leg work that is open."""
    if resolved.goal == "efficiency" or resolved.minimum_dose:
        return
    sought = resolved.sought("glutes") or resolved.sought("hamstrings")
    squats = resolved.can_somewhere(lambda e: e.slot.id == "squat" and e.main_lift)
    if sought and not squats and resolved.can_somewhere(lambda e: e.slot.id == "deadlift"):
        yield "deadlift", lambda e, day: e.slot.id == "deadlift"


def main_lifts(resolved: ResolvedBrief) -> Iterator[tuple[str, Serves]]:
    """The regions that should have a main lift, in longer weeks their movements but for a novice."""
    if resolved.goal == "efficiency" or resolved.minimum_dose:
        return
    long = len(resolved.days) >= resolved.limit("region-main-lift", "movements-days")
    for name, movements in MAIN_MOVEMENTS if long and resolved.experience != "novice" else MAIN_REGIONS:

        def serves(exercise: Exercise, day: ResolvedDay, movements: tuple[str, ...] = movements) -> bool:
            return exercise.movement in movements and resolved.builds(exercise, day)

        def able(day: ResolvedDay, serves: Serves = serves) -> bool:
            # A first or second choice that counts is open on the day and trains a muscle that is sought.
            return resolved.can(
                day,
                lambda e: serves(e, day) and resolved.rank(e, day) < 3 and any(resolved.sought(m) for m in e.direct),
            )

        if any(able(day) for day in resolved.days):
            yield name, serves


@answered_once
def kinds(resolved: ResolvedBrief, wanted: Wanted) -> tuple[tuple[str, Serves], ...]:
    """The kinds that a brief's week should have, in order."""
    return tuple(wanted(resolved))


def check(rule: str, wanted: Wanted, evaluated: EvaluatedWeek) -> Iterator[Finding]:
    """A finding for each kind of which the week has no lift."""
    for name, serves in kinds(evaluated.resolved, wanted):
        if not any(serves(line.exercise, line.day) for line in evaluated.lines):
            yield Finding(rule, evaluated.resolved.penalty(rule, 1), subject=name)


def post(rule: str, wanted: Wanted, model: LinearModel) -> None:
    """Charge each kind of which no column is chosen."""
    for _, serves in kinds(model.resolved, wanted):
        found: Expression = {}
        for group in model.groups:
            day = model.resolved.days[group.days[0]]
            found = combined(found, model.count(lambda e, d=day, s=serves: s(e, d), group.index))
        missing = model.violation(rule, 1, model.resolved.cost(rule))
        model.constrain(rule, combined(found, {missing: 1}), low=1)


def _rule(rule: str, wanted: Wanted, sentence: str, remedy: str, says: str = "no {subject} in the week") -> Rule:
    return Rule(rule, "scored", sentence, remedy, partial(post, rule, wanted), partial(check, rule, wanted), says=says)


RULES = (
    _rule(
        "coverage",
        covered,
        "A week should have a knee lift, a hip lift, a horizontal press, a row, a vertical pull and a vertical press as far as kit and brief allow, and a hip thrust when glutes are a priority.",
        "give the week one lift of that movement",
    ),
    _rule(
        "direct-work",
        direct_work,
        "A muscle at normal or priority emphasis, front delts apart, should have at least one exercise that trains it directly.",
        "give it one exercise of its own",
        "no direct set for {subject}",
    ),
    _rule(
        "knee-flexion",
        leg_curl,
        "A week in which hamstrings are at normal or priority emphasis should have a leg curl.",
        "give the week a leg curl",
    ),
    _rule(
        "knee-extension",
        leg_extension,
        "A week in which quads are at priority emphasis should have a leg extension.",
        "give the week a leg extension",
    ),
    _rule(
        "flat-press",
        flat_press,
        "A week in which chest is at normal or priority emphasis should have a flat press or a dip.",
        "make one press flat",
    ),
    _rule(
        "deadlift",
        deadlift,
        "A week with a bar but without a heavy squat available should have a deadlift from the floor (not in efficiency).",
        "give one day a deadlift",
    ),
    _rule(
        "region-main-lift",
        main_lifts,
        "Each region should have a main lift in the week; in weeks of {movements_days:g} or more days each of its movements (not for a novice, nor in efficiency).",
        "make one of its lifts a free-weight lift",
        "no main {subject} lift in the week",
    ),
)
