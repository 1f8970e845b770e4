"""Rules that exclude an exercise by one plain fact of it, of the day or of the client."""

from __future__ import annotations

from setwright.catalogue.entries import Exercise
from setwright.catalogue.positions import positions_of
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolved_day import ResolvedDay
from setwright.solver.linear.rule import Excludes, Missing, Rule, Scope, held_by_columns


def _lacks_kit(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return not day.items.issuperset(exercise.needs)


def _lacks_ability(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return exercise.ability and resolved.experience == "novice" and exercise.id not in resolved.pinned


def _pins_someone_alone(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return exercise.can_pin and resolved.brief.client.trains_alone and bool(_missing_safeties(resolved, exercise, day))


def _missing_safeties(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> tuple[str, ...]:
    """The items without which nothing stops the load: safeties, and a rack or a guided bar that holds them."""
    held = resolved.brief.owned.safeties or "smith" in exercise.needs or "rack" in day.items
    return (*(() if held else ("rack",)), *(() if "safeties" in day.items else ("safeties",)))


def _missing_kit(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> tuple[str, ...]:
    """The items that an exercise needs and the day has not."""
    return tuple(sorted(set(exercise.needs) - day.items))


def _is_avoided(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return exercise.id in resolved.avoided or exercise.id in day.avoided


def _on_a_missed_day(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return day.missed


def _loads_a_joint_under_caution(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return not resolved.client_limits.closes_joints.isdisjoint(exercise.joints)


def _is_in_a_closed_position(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    closed = resolved.client_limits.closes_positions
    return bool(closed) and not closed.isdisjoint(positions_of(exercise, resolved.catalogue))


def _serves_a_muscle_at_none(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    sole = resolved.own_muscle(exercise)
    return sole is not None and resolved.muscles[sole].emphasis == "none" and exercise.id not in resolved.pinned


def _outside_the_focus(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    if day.focus is None or exercise.id in resolved.pinned:
        return False
    return day.focus not in exercise.slot.focus


def _too_near_another_activity(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    return exercise.fatigue == "high" and exercise.region in day.closed_regions


def _rests_after_each_side(resolved: ResolvedBrief, exercise: Exercise, day: ResolvedDay) -> bool:
    efficiency = resolved.goal == "efficiency"
    return efficiency and exercise.limb == "each, rest after each" and exercise.id not in resolved.pinned


def _exclusion(
    rule: str, excludes: Excludes, sentence: str, remedy: str, scope: Scope = "any week", missing: Missing | None = None
) -> Rule:
    says = "{day}: {exercise}: {sentence}" if missing is None else "{day}: {exercise} lacks {others}"
    return Rule(
        rule, "hard", sentence, remedy, held_by_columns, excludes=excludes, says=says, scope=scope, missing=missing
    )


RULES = (
    _exclusion(
        "equipment",
        _lacks_kit,
        "An exercise uses only equipment that is at hand that day.",
        "add the equipment to the day, or take a swap",
        missing=_missing_kit,
    ),
    _exclusion(
        "ability",
        _lacks_ability,
        "A novice gets a lift that takes practice, such as a pull-up, only when the brief pins it.",
        "pin it if the client can do it, or take an easier swap",
        scope="planned weeks",
    ),
    _exclusion(
        "lone-lifter",
        _pins_someone_alone,
        "Someone who trains alone gets a lift that can trap them under the load only with safeties.",
        "set safeties, or take a swap that can be put down",
        missing=_missing_safeties,
    ),
    _exclusion(
        "avoided",
        _is_avoided,
        "An exercise that the brief says to avoid, in the week or on a day, is never used there.",
        "take it out of `avoid`, or take a swap",
    ),
    _exclusion(
        "missed-session",
        _on_a_missed_day,
        "A session that the brief says is missed has no exercises.",
        "take `missed` off the day",
    ),
    _exclusion(
        "caution",
        _loads_a_joint_under_caution,
        "An exercise that loads a joint named in a caution is never used.",
        "take a swap, or have a professional set the limits",
    ),
    _exclusion(
        "caution-position",
        _is_in_a_closed_position,
        "An exercise in a position that a caution closes, such as lying face down in pregnancy, is never used.",
        "take a swap in another position, or have a professional set the limits",
    ),
    _exclusion(
        "muscle-none",
        _serves_a_muscle_at_none,
        "An exercise is never used if the only muscle it trains directly has the emphasis none.",
        "give the muscle another emphasis, or drop the exercise",
    ),
    _exclusion(
        "day-focus",
        _outside_the_focus,
        "A day with a focus has only exercises of that focus.",
        "move it to another day, or drop the focus",
    ),
    _exclusion(
        "other-activity",
        _too_near_another_activity,
        "A region has no high-fatigue lift on a day of sport or labour for that region, nor on the day before.",
        "move the session or the lift",
    ),
    _exclusion(
        "each-side-rest",
        _rests_after_each_side,
        "Under the goal efficiency no exercise rests after each side.",
        "take its both-limb twin, or another goal",
        scope="planned weeks",
    ),
)
