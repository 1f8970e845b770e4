"""A day's order: one function of what stands in it, pairs together, priority early, squat patterns apart."""

from __future__ import annotations

import itertools
import random

import pytest
from weeks import CATALOGUE, audited, days, found, terms_of

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.order import in_order, needs_grip
from setwright.solver.evaluation.pairing.pairs import fits
from setwright.solver.evaluation.resolved_brief import ResolvedBrief

TRUNK = ("trunk", "trunk-side", "carry", "back-extension")
Day = list[tuple[Exercise, str | None]]


def lone(text: str) -> Day:
    return [(CATALOGUE.exercises[name], None) for name in text.split()]


def random_day(resolved: ResolvedBrief, random_: random.Random) -> Day:
    """Six exercises of six slots, two of them paired where they fit."""
    found: dict[str, Exercise] = {}
    for e in random_.sample(resolved.open_on[0], min(40, len(resolved.open_on[0]))):
        found.setdefault(e.slot.id, e)
    chosen = list(found.values())[:6]
    for a, b in itertools.combinations(chosen, 2):
        if fits(resolved, a, b):
            return [(e, b.id if e is a else a.id if e is b else None) for e in chosen]
    return [(e, None) for e in chosen]


def test_a_heavy_squat_is_never_put_off_to_part_two_grip_limited_lifts() -> None:
    lifts = "barbell-back-squat barbell-overhead-press dumbbell-romanian-deadlift pull-up chest-supported-dumbbell-row"
    assert in_order(terms_of(), lone(lifts))[0].id == "barbell-back-squat"
    overtaken = "barbell-back-squat standing-t-bar-row pull-up cable-face-pull"
    assert in_order(terms_of(), lone(overtaken))[0].id == "barbell-back-squat"


@pytest.mark.parametrize(
    ("lifts", "due"),
    [
        (
            "dumbbell-bench-press seated-dumbbell-shoulder-press dumbbell-front-squat",
            "dumbbell-bench-press dumbbell-front-squat seated-dumbbell-shoulder-press",
        ),
        (
            "hack-squat dumbbell-bench-press seated-dumbbell-shoulder-press machine-chest-supported-row dumbbell-curl",
            "hack-squat dumbbell-bench-press machine-chest-supported-row seated-dumbbell-shoulder-press dumbbell-curl",
        ),
        ("barbell-row-to-chest hack-squat dumbbell-curl", "hack-squat barbell-row-to-chest dumbbell-curl"),
        ("dumbbell-rear-foot-elevated-split-squat hack-squat", "hack-squat dumbbell-rear-foot-elevated-split-squat"),
        ("barbell-romanian-deadlift hack-squat leg-press", "hack-squat barbell-romanian-deadlift leg-press"),
        ("barbell-deadlift hack-squat dumbbell-bench-press", "barbell-deadlift dumbbell-bench-press hack-squat"),
    ],
)  # fmt: skip
def test_legs_first_and_two_presses_or_two_squats_apart(lifts: str, due: str) -> None:
    """Common practice, no source: large before small, and a lift of another region between two of one."""
    assert [e.id for e in in_order(terms_of(), lone(lifts))] == due.split()


def test_two_presses_for_a_priority_stand_together_at_the_front() -> None:
    lifts = "dumbbell-bench-press incline-dumbbell-press machine-chest-supported-row"
    due = in_order(terms_of(muscles={"chest": "priority"}), lone(lifts))
    assert {e.id for e in due[:2]} == {"dumbbell-bench-press", "incline-dumbbell-press"}


BRIEFS = {
    "plain": {},
    "pairs": {"pairs": True},
    "arms first": {"pairs": True, "muscles": {"arms": "priority"}},
    "calves first": {"muscles": {"calves": "priority"}},
    "bands": {"equipment": "bands", "pairs": True, "muscles": {"quads": "priority"}},
}


@pytest.mark.parametrize("name", BRIEFS)
def test_order_is_of_what_stands_there_alone(name) -> None:
    resolved = terms_of(**BRIEFS[name])
    random_ = random.Random(name)
    for _ in range(60):
        day = random_day(resolved, random_)
        due = in_order(resolved, day)
        assert sorted(e.id for e in due) == sorted(e.id for e, _ in day)
        for _ in range(4):
            random_.shuffle(day)
            assert in_order(resolved, day) == due


@pytest.mark.parametrize("name", BRIEFS)
def test_partners_stand_side_by_side(name) -> None:
    resolved = terms_of(**BRIEFS[name])
    random_ = random.Random(name)
    for _ in range(60):
        day = random_day(resolved, random_)
        ids = [e.id for e in in_order(resolved, day)]
        for exercise, partner in day:
            if partner:
                assert abs(ids.index(exercise.id) - ids.index(partner)) == 1


@pytest.mark.parametrize("name", [n for n in BRIEFS if "first" in n or n == "bands"])
def test_priority_work_stands_in_the_first_two_blocks(name) -> None:
    resolved = terms_of(**BRIEFS[name])
    random_ = random.Random(name)
    for _ in range(60):
        day = random_day(resolved, random_)
        partners = {e.id: p for e, p in day}
        due = in_order(resolved, day)
        serving = [i for i, e in enumerate(due) if e.direct & set(resolved.priorities)]
        if serving:
            early = 0
            for i, e in enumerate(due[: serving[0]]):
                early += not (i and partners[e.id] == due[i - 1].id)
            first = due[serving[0]]
            # Curls and grip work, and what is done in turn with them, wait for the hinges and main pulls.
            block = [first, *(e for e in due if partners[first.id] == e.id)]
            spoilt = any(e.region == "arms" or e.grip_limited for e in block)
            waits = [i for i, e in enumerate(due[: serving[0]]) if spoilt and needs_grip(e)]
            early -= max(waits, default=0)
            assert early <= 1 or (partners[first.id] == due[serving[0] - 1].id and early <= 2)


@pytest.mark.parametrize("name", ["plain", "pairs"])
def test_main_lifts_before_single_joint_ones_and_trunk_after_both(name) -> None:
    resolved = terms_of(**BRIEFS[name])
    random_ = random.Random(name)
    for _ in range(60):
        day = [(e, None) for e, _ in random_day(resolved, random_)]
        due = in_order(resolved, day)
        trunk = [e.movement in TRUNK for e in due if e.movement not in ("calf", "wrist")]
        assert trunk == sorted(trunk)
        last_main = max((i for i, e in enumerate(due) if e.main_lift), default=-1)
        first_small = next((i for i, e in enumerate(due) if not e.multi_joint), len(due))
        assert last_main < first_small


def test_trunk_work_stands_last() -> None:
    due = in_order(terms_of(), lone("dumbbell-shrug dumbbell-wrist-curl cable-crunch"))
    assert due[-1].movement in TRUNK


@pytest.mark.parametrize(
    "text",
    [
        "barbell-back-squat leg-press barbell-bench-press",
        "hack-squat leg-press dumbbell-bench-press barbell-row-to-hip",
        "leg-press belt-squat barbell-bench-press",
        "band-squat band-split-squat band-chest-press",
    ],
)
def test_two_squat_patterns_stand_apart_where_another_lift_can_go_between(text) -> None:
    due = in_order(terms_of(), lone(text))
    knees = [e.movement == "knee" for e in due]
    assert not any(a and b for a, b in itertools.pairwise(knees))


def test_two_grips_do_not_follow_each_other_where_another_lift_can_go_between() -> None:
    due = in_order(terms_of(), lone("barbell-romanian-deadlift barbell-row-to-hip barbell-bench-press"))
    grips = [e.grip_limited for e in due]
    assert not any(a and b for a, b in itertools.pairwise(grips))


@pytest.mark.parametrize(("first", "second"), [("dumbbell-curl", "rope-pushdown"), ("rope-pushdown", "dumbbell-curl")])
def test_a_pair_said_by_one_side_loses_nothing(first, second) -> None:
    day = [(CATALOGUE.exercises[first], second), (CATALOGUE.exercises[second], None)]
    assert sorted(e.id for e in in_order(terms_of(pairs=True), day)) == sorted((first, second))


def test_a_week_out_of_order_is_told_the_due_order() -> None:
    resolved = terms_of(days=days("mon", 60))
    result = audited(resolved, ("cable-curl 3, barbell-back-squat 3",), sort=False)
    assert [(f.days, f.others) for f in found(result, "order")] == [((0,), ("barbell-back-squat", "cable-curl"))]
