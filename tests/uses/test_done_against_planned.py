"""Done against planned: each number counted by hand."""

from __future__ import annotations

from datetime import date, datetime, timedelta

import pytest
from logs import BENCH, FIRST, RAISE, sets_of
from weeks import audited, days, terms_of

from setwright.catalogue.faults import UsageFault
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.uses.progress.done_against_planned import minutes_taken, muscles_done, sessions_done
from setwright.solver.uses.progress.matching import day_of

ROW = "one-arm-dumbbell-row"
WEEK = audited(
    terms_of(days=days("mon thu", 60)),
    ("barbell-bench-press 3 reps=6-8, one-arm-dumbbell-row 2", "barbell-back-squat 3, dumbbell-side-raise 2"),
).evaluated


def test_a_session_is_set_beside_its_day_line_by_line() -> None:
    """Bench 3 x 6-8 planned, 2 done at 80 kg (8 and 7): 15 repetitions, 80 x 15 = 1200 kg; the row left out."""
    session = LoggedSession(FIRST, (*sets_of(BENCH, "80x8,7"), *sets_of(RAISE, "x12")), session=1, minutes=50)
    found = sessions_done(WEEK, [session])[0]
    lines = {line.exercise: line for line in found.lines}
    assert found.day == 0 and (found.sets, found.planned_sets) == (3, 5)
    assert (lines[BENCH].sets, lines[BENCH].reps, lines[BENCH].load) == (2, 15, 1200)
    assert (lines[BENCH].planned_sets, lines[BENCH].planned_reps) == (3, (18, 24))
    assert lines[ROW].sets == 0 and lines[ROW].planned_sets == 2 and lines[ROW].load is None
    assert lines[RAISE].planned_sets == 0 and lines[RAISE].load is None
    assert found.minutes == 50 and found.planned_minutes == WEEK.seconds(0) / 60


def test_two_sides_are_one_set() -> None:
    sets = tuple(LoggedSet(ROW, n, 10, 20.0, side="left" if n % 2 else "right") for n in (1, 2, 3, 4))
    found = sessions_done(WEEK, [LoggedSession(FIRST, sets, session=1)])[0]
    assert next(line for line in found.lines if line.exercise == ROW).sets == 2


def test_minutes_come_from_the_times_before_what_is_written_down() -> None:
    start = datetime(2026, 3, 2, 18)
    assert minutes_taken(LoggedSession(FIRST, (), started=start, ended=start + timedelta(minutes=47), minutes=60)) == 47
    assert minutes_taken(LoggedSession(FIRST, (), started=start, minutes=60)) == 60
    assert minutes_taken(LoggedSession(FIRST, ())) is None


def test_a_session_that_does_not_say_which_it_was_is_told_by_its_sets() -> None:
    assert day_of(LoggedSession(FIRST, (*sets_of(BENCH, "80x8,8"), *sets_of(RAISE, "8x12"))), WEEK.week) == 0
    assert day_of(LoggedSession(FIRST, sets_of(RAISE, "8x12")), WEEK.week) == 1
    assert day_of(LoggedSession(FIRST, sets_of("leg-press", "80x8")), WEEK.week) is None
    assert day_of(LoggedSession(FIRST, sets_of(BENCH, "80x8"), session=2), WEEK.week) == 1
    assert day_of(LoggedSession(FIRST, sets_of(BENCH, "80x8"), session=9), WEEK.week) == 0


def test_weekly_sets_of_muscles_count_as_planned_ones_do() -> None:
    """Three bench sets are three of chest and half of that of triceps; the week begins on Monday, 2 March 2026."""
    sessions = [
        LoggedSession(date(2026, 3, 5), sets_of(BENCH, "80x8,8,8")),
        LoggedSession(date(2026, 3, 9), sets_of(BENCH, "80x8,8")),
    ]
    found = {(one.week, one.muscle): one for one in muscles_done(WEEK, sessions)}
    first = found[date(2026, 3, 2), "chest"]
    assert (first.sets, first.planned_sets) == (3, 3)
    assert found[date(2026, 3, 9), "chest"].sets == 2
    assert found[date(2026, 3, 2), "triceps"].sets == 1.5
    assert found[date(2026, 3, 2), "lats"].sets == 0 < found[date(2026, 3, 2), "lats"].planned_sets


def test_an_exercise_that_is_not_in_the_catalogue_is_refused_by_name() -> None:
    session = LoggedSession(FIRST, (LoggedSet("barbell-bench-pres", 1, 8, 80.0),))
    with pytest.raises(UsageFault, match="barbell-bench-press"):
        muscles_done(WEEK, [session])
