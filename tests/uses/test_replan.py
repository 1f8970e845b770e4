"""A week replanned after what happened: what is done stays to the letter, and few lines of the rest change."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from weeks import CATALOGUE, Days, audited, days, terms_of

from setwright.solver.auditing import Audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.brief.schema import Pin
from setwright.solver.engines.held_columns import columns_as_done
from setwright.solver.evaluation.evaluated_week import WHOLE
from setwright.solver.evaluation.line_changes import LineChange, changed_lines, line_changes
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.linear.instance import instance_of
from setwright.solver.planning import Clash
from setwright.solver.search.candidates import SINGLES
from setwright.solver.search.secondary.standing_week import StandingWeek, candidates_beside
from setwright.solver.search.solve_options import SolveOptions
from setwright.solver.uses.replan.changed_brief import brief_after
from setwright.solver.uses.replan.happened import DayChange, Happened, done_before
from setwright.solver.uses.replan.replanned import Replanned, kept_share, replanned

MON, TUE, THU, FRI = range(4)
DONE = frozenset((MON, TUE))
FOUR: Days = (
    "barbell-bench-press 3 rest=120, barbell-row-to-hip 3 rest=120, seated-dumbbell-shoulder-press 3 rest=90, "
    "dumbbell-side-raise 3",
    "barbell-back-squat 2 rest=120, barbell-romanian-deadlift 3 rest=120, standing-calf-raise 3, cable-crunch 3",
    "machine-chest-press 3 rest=90, wide-grip-pulldown 3 rest=90, dumbbell-curl 3, overhead-cable-extension 3",
    "leg-press 3 rest=120, seated-leg-curl 3, leg-extension 3, machine-chest-supported-row 3 rest=90, cable-crunch 2",
)


def planned(lines: Days = FOUR, **brief: object) -> Audit:
    return audited(terms_of(**{"days": days("mon tue thu fri", 45), **brief}), lines)


def replan(before: Audit, happened: Happened) -> Replanned | Clash:
    found = replanned(ParsedBrief(before.evaluated.resolved.brief, ()), before, happened, SolveOptions())
    assert isinstance(found, Replanned | Clash)
    return found


def solved(before: Audit, happened: Happened) -> Replanned:
    """Replanned, with what holds of every replanned week checked."""
    found = replan(before, happened)
    assert isinstance(found, Replanned)
    week, was = found.after.evaluated.week, before.evaluated.week
    assert all(week.days[day] == was.days[day] for day in happened.done)
    assert all(not week.days[day] for day in happened.missed)
    assert not found.after.broken
    return found


def names(found: Replanned, day: int) -> set[str]:
    return {line.exercise.id for line in found.after.evaluated.on[day]}


@pytest.fixture(scope="module")
def before() -> Audit:
    found = planned()
    assert not found.broken
    return found


# ---- what happens


def test_a_missed_session_changes_few_lines_and_chases_nothing(before: Audit) -> None:
    found = solved(before, Happened(DONE, frozenset((THU,))))
    assert found.changed_lines <= 3
    sets = [sum(line.sets for line in audit.evaluated.on[FRI]) for audit in (before, found.after)]
    assert sets[1] <= sets[0]
    now = found.parsed.brief.days
    assert [day.missed for day in now] == [None, None, True, None]


def test_a_shorter_day_fits_and_keeps_a_big_lift(before: Audit) -> None:
    found = solved(before, Happened(DONE, frozenset(), {FRI: DayChange(minutes=25)}))
    assert before.evaluated.seconds(FRI) > 25 * 60 >= found.after.evaluated.seconds(FRI)
    assert names(found, FRI) & {"leg-press", "machine-chest-supported-row"}
    assert found.after.evaluated.week.days[THU] == before.evaluated.week.days[THU]


def test_a_taken_station_is_left_alone_and_replaced(before: Audit) -> None:
    found = solved(before, Happened(DONE, frozenset(), {FRI: DayChange(without=("leg-press",))}))
    assert "leg-press" not in names(found, FRI)
    assert any(line.exercise.movement == "knee" for line in found.after.evaluated.on[FRI])
    assert found.changed_lines <= 2


def test_another_place_has_its_own_kit(before: Audit) -> None:
    there = {day: DayChange(kit="hotel-gym") for day in (THU, FRI)}
    found = solved(before, Happened(DONE, frozenset(), there))
    items = CATALOGUE.kits["hotel-gym"].items
    assert all(items.issuperset(line.exercise.needs) for day in (THU, FRI) for line in found.after.evaluated.on[day])
    assert {"dumbbell-curl", "overhead-cable-extension"} & names(found, THU)


def test_a_sore_muscle_gets_no_direct_and_little_indirect_work(before: Audit) -> None:
    found = solved(before, Happened(DONE, frozenset(), {THU: DayChange(rested=("chest", "arms"))}))
    after = found.after.evaluated
    for muscle in ("chest", "biceps", "triceps"):
        assert after.direct_day_sets(muscle, THU) == 0
        assert after.day_sets(muscle, THU) <= 2 * WHOLE


def test_a_pin_stands_and_an_avoided_lift_is_gone(before: Audit) -> None:
    avoid = {day: DayChange(avoid=("leg-press",)) for day in (THU, FRI)}
    found = solved(before, Happened(DONE, frozenset(), avoid, (Pin(exercise="hack-squat", day="fri"),)))
    assert "hack-squat" in names(found, FRI) and "leg-press" not in names(found, FRI)
    assert found.parsed.brief.pins == (Pin(exercise="hack-squat", day="fri"),)
    assert found.changed_lines <= 2


def test_nothing_left_to_plan_leaves_the_missed_day_empty(before: Audit) -> None:
    found = solved(before, Happened(frozenset((MON, TUE, THU)), frozenset((FRI,))))
    assert found.left == () and found.changes == () and found.given_up == 0
    below = {m.muscle: m for m in found.below_band}
    assert set(below) == {m.id for m in found.after.evaluated.below_band}
    assert all(m.sets < m.low and m.sets <= m.planned for m in below.values())


def test_a_pin_of_a_missed_day_goes_with_it() -> None:
    pins = [{"exercise": "wide-grip-pulldown", "day": "thu"}, {"exercise": "leg-press", "day": "fri"}]
    before = planned(pins=pins)
    found = solved(before, Happened(DONE, frozenset((THU,))))
    assert [pin.exercise for pin in found.pins_dropped] == ["wide-grip-pulldown"]
    assert [pin.exercise for pin in found.parsed.brief.pins] == ["leg-press"]


def test_what_cannot_be_met_is_a_clash_that_names_the_wish(before: Audit) -> None:
    end = replan(
        before,
        Happened(DONE, frozenset(), {FRI: DayChange(without=("leg-press",))}, (Pin(exercise="leg-press", day="fri"),)),
    )
    assert isinstance(end, Clash)
    assert [member.wish.subject for member in end.conflicts if member.wish] == ["leg-press"]


def test_a_done_session_that_breaks_a_rule_stays_and_the_rest_is_planned() -> None:
    long = (
        "barbell-bench-press 4 rest=150, barbell-row-to-hip 4 rest=150, seated-dumbbell-shoulder-press 4 rest=120, "
        "dumbbell-side-raise 4 rest=90",
        *FOUR[1:],
    )
    before = planned(long)
    assert {f.rule for f in before.broken} == {"day-minutes"}
    found = replan(before, Happened(DONE, frozenset(), {FRI: DayChange(without=("leg-press",))}))
    assert isinstance(found, Replanned)
    assert found.after.evaluated.week.days[MON] == before.evaluated.week.days[MON]
    assert {f.days for f in found.after.broken} == {(MON,)}
    assert "leg-press" not in names(found, FRI)


def test_in_efficiency_the_missed_day_takes_no_share_of_the_minutes() -> None:
    before = planned(goal="efficiency", pairs=False)
    found = replan(before, Happened(DONE, frozenset((THU,))))
    assert isinstance(found, Replanned)
    assert not [f for f in found.after.broken if THU in f.days]
    assert kept_share(found.after.evaluated.resolved) == 0.9


def test_the_same_input_gives_the_same_week(before: Audit) -> None:
    happened = Happened(DONE, frozenset(), {FRI: DayChange(without=("leg-press",))})
    assert solved(before, happened).after.evaluated.week == solved(before, happened).after.evaluated.week


# ---- the parts


@pytest.mark.parametrize(
    ("missed", "today", "done"),
    [((2,), (), (0, 1)), ((1, 3), (), (0, 2)), ((0,), (2,), (1,)), ((3,), (1,), (0,)), ((0,), (), ()), ((), (), ())],
)
def test_sessions_before_today_or_the_last_missed_one_are_taken_as_done(
    missed: tuple[int, ...], today: tuple[int, ...], done: tuple[int, ...]
) -> None:
    assert done_before(4, frozenset(missed), frozenset(today)) == frozenset(done)


def test_free_days_that_are_alike_are_ranked_alike(before: Audit) -> None:
    resolved = before.evaluated.resolved
    instance = instance_of(resolved, frozenset(entry.exercise for entry in before.evaluated.week.entries))
    standing = StandingWeek(before.evaluated.week, DONE, (THU, FRI), {}, {}, before)
    found = candidates_beside(instance, columns_as_done(instance, before), standing)
    thu, fri = ([found.columns[j].assignments for j in found.ranked[day][:SINGLES]] for day in (THU, FRI))
    assert thu == fri and len(thu) == SINGLES
    assert not any(found.ranked[day] for day in DONE)


def test_what_is_given_up_is_within_the_share_that_was_said(before: Audit) -> None:
    found = solved(before, Happened(DONE, frozenset(), {FRI: DayChange(minutes=25)}))
    whole = min(found.best_units, before.score_units)
    assert found.after.score_units >= whole - (1 - found.share) * before.stimulus_units


def test_a_brief_gets_only_what_happened(before: Audit) -> None:
    brief = before.evaluated.resolved.brief
    assert brief_after(brief, Happened(DONE), CATALOGUE) == brief
    twice = brief
    for item in ("cable", "leg-press"):
        twice = brief_after(twice, Happened(DONE, frozenset(), {FRI: DayChange(without=(item, "cable"))}), CATALOGUE)
    assert twice.days[FRI].without == ("cable", "leg-press")
    assert twice.days[:FRI] == brief.days[:FRI]


def entry(name: str, **more: int | str | None) -> Entry:
    fields: Mapping[str, object] = {"sets": 3, "reps": (8, 12), "rir": 2, "rest": 90, **more}
    return Entry(name, **fields)  # type: ignore[arg-type]


def test_a_line_exchanged_is_one_changed_line_and_a_new_partner_none() -> None:
    old = Week(((entry("a"), entry("b", partner="c"), entry("c", partner="b")),))
    new = Week(((entry("a", rest=60), entry("b", partner="d"), entry("d", partner="b")),))
    changes = line_changes(old, new, (0,))
    assert changes == (
        LineChange(0, old.days[0][2], None),
        LineChange(0, old.days[0][0], new.days[0][0]),
        LineChange(0, None, new.days[0][2]),
    )
    assert changed_lines(changes) == 2
    assert changed_lines(line_changes(old, Week(((),)), (0,))) == 3


def test_a_muscle_that_a_missed_or_sore_day_was_to_have_is_asked_for_no_longer() -> None:
    asked = days("mon tue thu fri", 45)
    asked[THU] = {**asked[THU], "trained": ["chest", "biceps"]}
    before = planned(days=asked)
    missed = brief_after(before.evaluated.resolved.brief, Happened(DONE, frozenset((THU,)), {}), CATALOGUE)
    assert missed.days[THU].trained is None
    for rested, left in (("chest", ("biceps",)), ("arms", ("chest",))):
        change = Happened(DONE, frozenset(), {THU: DayChange(rested=(rested,))})
        sore = brief_after(before.evaluated.resolved.brief, change, CATALOGUE)
        assert sore.days[THU].trained == left
