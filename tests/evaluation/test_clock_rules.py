"""The session clock by worked examples, and the two rules whose edges are seconds."""

from __future__ import annotations

from dataclasses import replace

import pytest
from weeks import CATALOGUE, Days, audited, days, found, terms_of, week_of

from setwright.solver.evaluation.clock import (
    cycle_seconds,
    exercise_seconds,
    half_pair_half_seconds,
    pair_seconds,
    pair_work,
    rest_seen,
    warm_up_seconds,
    work_seconds,
)
from setwright.solver.evaluation.curves import Curves
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.evaluation.prescriptions import Prescription, all_prescriptions, make
from setwright.solver.evaluation.week import Week

NUMBERS = Curves.of(CATALOGUE).numbers
DAY: Days = ("barbell-back-squat 3, barbell-bench-press 3, cable-curl 3 drop",)


@pytest.mark.parametrize(
    ("reps", "alternating", "pace", "seconds"),
    [((8, 12), False, 3.0, 30), ((8, 12), True, 3.0, 60), ((5, 8), False, 3.0, 20), ((6, 8), False, 3.5, 25)],
)
def test_work_is_the_middle_of_the_range_rounded_up(reps, alternating, pace, seconds) -> None:
    assert work_seconds(reps, alternating, pace) == seconds


@pytest.mark.parametrize(
    ("limb", "cycle", "seen"),
    [("both", 130, 100), ("each, then rest", 160, 130), ("each, rest after each", 260, 230)],
)
def test_a_limb_rests_while_the_other_works(limb, cycle, seen) -> None:
    assert (cycle_seconds(30, limb, 100), rest_seen(30, limb, 100)) == (cycle, seen)


def test_the_last_rest_holds_the_change_over() -> None:
    assert exercise_seconds(30, "both", 3, 90, 60) == 3 * 120
    assert exercise_seconds(30, "both", 3, 90, 100) == 3 * 120 + 10


def test_a_drop_set_takes_its_drops_and_the_stripping() -> None:
    drop = round(NUMBERS["drop-seconds"] + NUMBERS["strip-seconds"])
    straight = exercise_seconds(30, "both", 3, 60, 0)
    assert exercise_seconds(30, "both", 3, 60, 0, "drop", 2, NUMBERS) == straight + 2 * drop


@pytest.mark.parametrize("rounds", [2, 3, 4])
@pytest.mark.parametrize("changes", [(45, 60), (30, 100)])
def test_two_halves_are_a_pair(rounds, changes) -> None:
    a, b = pair_work(30, "both"), pair_work(24, "each, then rest")
    halves = [half_pair_half_seconds(w, rounds, 60, c, 15) for w, c in zip((a, b), changes, strict=True)]
    assert sum(halves) == 2 * pair_seconds(a, b, rounds, 60, *changes, 15)


@pytest.mark.parametrize("goal", ["growth", "balanced", "efficiency"])
def test_the_warm_up_grows_with_the_day_to_its_most(goal: str) -> None:
    short, least, most = (
        round(NUMBERS[f"warm-up-{k}"]) for k in ("short-day-minutes", f"short-{goal}", f"long-{goal}")
    )
    assert warm_up_seconds(short, goal, NUMBERS) == warm_up_seconds(10, goal, NUMBERS) == least
    assert warm_up_seconds(short + 1, goal, NUMBERS) == min(least + 30, most)
    assert warm_up_seconds(240, goal, NUMBERS) == most


def test_the_less_time_the_goal_asks_for_the_shorter_the_warm_up() -> None:
    """Iversen et al. 2021, doi 10.1007/s40279-021-01490-1 (A): where time is short, the lift's lighter sets alone."""
    growth, balanced, efficiency = (warm_up_seconds(45, g, NUMBERS) for g in ("growth", "balanced", "efficiency"))
    assert growth > balanced > efficiency
    assert balanced <= 180 and efficiency <= 120 and NUMBERS["warm-up-least-efficiency"] == 0


def test_a_day_adds_up_by_hand() -> None:
    """Two squat sets and two curl sets: work, rests but the last minute of them, one ramp-up, the warm-up."""
    resolved = terms_of(days=days("mon", 60), clock={"seconds_per_rep": 3.0, "ramp_lower": 200, "warm_up": 240})
    evaluated = EvaluatedWeek(resolved, week_of(resolved, ("barbell-back-squat 2, cable-curl 2",)))
    due = 200 + 240 - 60
    for line in evaluated.lines:
        low, high = line.entry.reps
        work = -(-(low + high) * 3 // 2)
        due += 2 * (work + line.entry.rest) + max(0, line.exercise.change_over - line.entry.rest)
    assert evaluated.seconds(0) == due


def test_no_more_than_a_sessions_shortest_rest_is_left_out_at_its_end() -> None:
    """As planned the goal's minute goes; a line that rests 20 s gives up 20 s, one without rest nothing."""
    resolved = terms_of(days=days("mon", 60), clock={"seconds_per_rep": 3.0, "warm_up": 240})
    week = week_of(resolved, ("cable-curl 2",))
    ((entry,),) = week.days
    for rest in (0, 20, 60, 90):
        evaluated = EvaluatedWeek(resolved, Week(((replace(entry, rest=rest),),)))
        low, high = entry.reps
        change_over = max(0, evaluated.lines[0].exercise.change_over - rest)
        assert evaluated.seconds(0) == 240 + 2 * (-(-(low + high) * 3 // 2) + rest) + change_over - min(rest, 60)


def test_ramp_up_is_once_a_region_and_more_for_a_second_heavy_bar() -> None:
    resolved = terms_of(days=days("mon", 60))
    one, two = (
        EvaluatedWeek(resolved, week_of(resolved, (day,))).ramp_up[0, "lower"]
        for day in ("barbell-back-squat 3, leg-press 3", "barbell-back-squat 3, barbell-romanian-deadlift 3")
    )
    assert one == round(NUMBERS["ramp-lower-seconds"])
    assert two == one + round(NUMBERS["ramp-second-seconds"])


def test_lifts_without_a_bar_that_tire_little_ask_for_one_easier_set() -> None:
    """A bar asks for the whole ramp-up, what tires much without one for half of it."""
    resolved = terms_of(days=days("mon", 60))
    light, machine, strong, bar = (
        EvaluatedWeek(resolved, week_of(resolved, (day,))).ramp_up[0, "push"]
        for day in ("push-up 3", "push-up 3, machine-chest-press 3", "parallel-bar-dip 3", "barbell-bench-press 3")
    )
    assert light == machine == round(NUMBERS["ramp-light-seconds"])
    assert bar == round(NUMBERS["ramp-push-seconds"]) == 2 * strong
    own = terms_of(days=days("mon", 60), clock={"ramp_light": 25})
    assert EvaluatedWeek(own, week_of(own, ("push-up 3",))).ramp_up[0, "push"] == 25


def test_efficiency_halves_the_ramp_up_of_light_lifts() -> None:
    resolved = terms_of(days=days("mon", 60), goal="efficiency")
    light, heavy = (
        EvaluatedWeek(resolved, week_of(resolved, (day,))).ramp_up[0, "lower"]
        for day in ("leg-press 3", "barbell-back-squat 3")
    )
    assert light == heavy // 2


# ---- the two rules


def terms_with(limit: int, **raw):
    """Terms of a day of an hour that may take just so many seconds."""
    return terms_of(days=days("mon", 60), clock={"spare": 3600 - limit}, **raw)


def full_seconds() -> tuple[int, int]:
    """The seconds of the fixed day with its whole warm-up, and what the warm-up may give."""
    resolved = terms_of(days=days("mon", 60))
    return EvaluatedWeek(resolved, week_of(resolved, DAY)).seconds(0), resolved.days[0].warm_up_give


def test_a_day_fits_to_the_second() -> None:
    seconds, give = full_seconds()
    assert give > 0
    assert not found(audited(terms_with(seconds - give), DAY), "day-minutes")
    assert found(audited(terms_with(seconds - give - 1), DAY), "day-minutes")
    assert not found(audited(terms_with(seconds - give - 1), ("",)), "day-minutes")
    assert not found(audited(terms_with(seconds - give - 1, rules={"day-minutes": "off"}), DAY), "day-minutes")


def test_a_full_day_gives_up_warm_up_second_by_second() -> None:
    seconds, give = full_seconds()
    assert not found(audited(terms_with(seconds), DAY), "warm-up-given")
    for given in (1, give):
        resolved = terms_with(seconds - given)
        assert [f.cost for f in found(audited(resolved, DAY), "warm-up-given")] == [
            resolved.penalty("warm-up-given", given)
        ]
    assert not found(audited(terms_with(seconds - 1, rules={"warm-up-given": "off"}), DAY), "warm-up-given")
    hard = audited(terms_with(seconds - 1, rules={"warm-up-given": "hard"}), DAY)
    assert any(f.rule == "warm-up-given" for f in hard.broken)


def test_a_caution_keeps_the_whole_warm_up() -> None:
    assert terms_of(client={"cautions": [{"tag": "knee"}]}).days[0].warm_up_give == 0


# ---- options and credits


@pytest.mark.parametrize("goal", ["growth", "balanced", "efficiency"])
def test_more_sets_and_longer_rests_take_longer_and_give_more(goal) -> None:
    resolved = terms_of(days=days("mon", 60), goal=goal)
    day = resolved.days[0]
    for name in ("barbell-back-squat", "one-arm-dumbbell-row", "cable-curl"):
        prescriptions = [
            o for o in all_prescriptions(resolved, CATALOGUE.exercises[name], day) if not o.paired and not o.drops
        ]
        for one in prescriptions:
            for two in prescriptions:
                if (one.sets, one.technique) == (two.sets, two.technique) and one.rest < two.rest:
                    assert one.effective < two.effective and one.half_seconds < two.half_seconds
                if (one.rest, one.technique) == (two.rest, two.technique) and one.sets < two.sets:
                    assert one.effective < two.effective and one.credited < two.credited


def test_effective_sets_never_pass_credited_ones() -> None:
    resolved = terms_of(days=days("mon", 60), pairs=True)
    for exercise in CATALOGUE.exercises.values():
        for prescription in all_prescriptions(resolved, exercise, resolved.days[0]):
            assert 10 * prescription.credited >= prescription.effective > 0


def test_an_option_made_anew_is_the_same() -> None:
    resolved = terms_of(days=days("mon", 60), pairs=True)
    curl = CATALOGUE.exercises["cable-curl"]
    for o in all_prescriptions(resolved, curl, resolved.days[0]):
        again: Prescription = make(resolved, curl, resolved.days[0], o.sets, o.rest, o.technique, o.drops, o.paired)
        assert again == o
