"""What a coach may want to look at in a log, its words, and a session's digest."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime

import pytest
from read_logs import CATALOGUE

from setwright.solver.auditing import Audit, audit
from setwright.solver.brief.file import parse_phrase
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.screen.over_time.log import finding_words, findings_text, session_text, sessions_text
from setwright.solver.uses.log.digest import digest_of
from setwright.solver.uses.log.log_checks import check_log
from setwright.solver.uses.log.missing_sessions import missing_sessions

BENCH, SQUAT, ROW, PLANK = "barbell-bench-press", "barbell-back-squat", "one-arm-dumbbell-row", "plank"
MONDAY, THURSDAY = date(2026, 1, 5), date(2026, 1, 8)
WEEK = Week(
    (
        (Entry(SQUAT, 3, (6, 8), 2, 120), Entry(BENCH, 2, (8, 12), 2, 120, "drop", 2)),
        (Entry(ROW, 3, (8, 12), 2, 90), Entry(PLANK, 2, (10, 15), 2, 60)),
    )
)


def planned() -> Audit:
    return audit(resolve(parse_phrase("mon thu 40 min, commercial gym", CATALOGUE).brief, CATALOGUE), WEEK)


def done(lift: str, *reps: int, load: float | None = 80, **more: object) -> tuple[LoggedSet, ...]:
    return tuple(LoggedSet(lift, number, n, load, **more) for number, n in enumerate(reps, 1))  # type: ignore[arg-type]


def session(on: date, *sets: tuple[LoggedSet, ...], **more: object) -> LoggedSession:
    return LoggedSession(on, sum(sets, ()), **more)  # type: ignore[arg-type]


AS_PLANNED = (
    session(MONDAY, done(SQUAT, 8, 8, 7), done(BENCH, 12, 19)),
    session(THURSDAY, done(ROW, 10, 10, 10), done(PLANK, 15, 15, load=None)),
)


def words(*sessions: LoggedSession, week: Audit | Week | None = None) -> list[str]:
    return [finding_words(finding, CATALOGUE) for finding in check_log(sessions, lambda _: week)]


def test_a_log_as_planned_has_nothing_to_look_at() -> None:
    assert (
        check_log(AS_PLANNED, lambda _: planned())
        == check_log(AS_PLANNED, lambda _: WEEK)
        == check_log(AS_PLANNED)
        == ()
    )
    assert findings_text((), CATALOGUE) == "Nothing to look at.\n"


@pytest.mark.parametrize("load", [825.0, 8.0])
def test_a_load_far_from_the_usual_is_named(load: float) -> None:
    usual = session(MONDAY, done(BENCH, 8, 8, 8, load=82.5))
    slip = session(THURSDAY, done(BENCH, 8, load=load))
    assert words(usual, slip) == [f"Barbell bench press, set 1: {load:g} kg, usually about 82.5 kg"]


def test_a_load_is_judged_within_its_unit_and_from_four_sets_on() -> None:
    few = session(MONDAY, done(BENCH, 8, 8, load=80), done(BENCH, load=825))
    assert words(few, session(THURSDAY, done(BENCH, 8, load=825))) == []
    in_pounds = session(MONDAY, done(BENCH, 8, 8, 8, 8, load=500), unit="lb")
    assert words(session(THURSDAY, done(BENCH, 8, 8, 8, 8, load=60)), in_pounds) == []


def test_sets_unlike_the_plan_and_lines_left_out_are_named() -> None:
    assert words(session(MONDAY, done(SQUAT, 8, 8)), week=planned()) == [
        "Barbell back squat: 2 sets, planned 3",
        "Barbell bench press: 0 sets, planned 2",
    ]


def test_a_lift_that_is_not_in_the_week_is_named() -> None:
    extra = replace(AS_PLANNED[0], sets=(*AS_PLANNED[0].sets, LoggedSet("pull-up", 1, 8)))
    assert words(extra, week=WEEK) == ["Pull-up: is not in the week (1 set done)"]


def test_a_session_on_a_day_off_is_named_and_matched_by_its_lifts() -> None:
    assert words(replace(AS_PLANNED[1], on=date(2026, 1, 10)), week=planned()) == [
        "Saturday is no day of the week's plan"
    ]
    assert words(replace(AS_PLANNED[1], on=date(2026, 1, 10)), week=WEEK) == []


def test_the_sessions_number_goes_before_its_weekday() -> None:
    assert words(replace(AS_PLANNED[1], on=MONDAY, session=2), week=planned()) == []


def test_repetitions_far_from_their_range_are_named() -> None:
    found = words(session(MONDAY, done(SQUAT, 2, 8, 13), done(BENCH, 12, 30)), week=WEEK)
    assert found == [
        "Barbell back squat, set 1: 2 repetitions, asked 6-8",
        "Barbell back squat, set 3: 13 repetitions, asked 6-8",
    ]
    held = session(THURSDAY, done(ROW, 10, 10, 10), done(PLANK, 40, 15, load=None))
    assert words(held, week=WEEK) == ["Plank, set 1: 120 s, asked 30-45"]


def test_a_side_that_is_missing_is_named() -> None:
    one = session(THURSDAY, done(ROW, 10, 10, side="left"), done(ROW, 10, side="right"))
    assert words(one) == ["One-arm dumbbell row: left 2 sets, right 1 set"]


def test_sets_of_two_sides_count_once_against_the_plan() -> None:
    both = done(ROW, 10, 10, 10, side="left") + done(ROW, 10, 10, 10, side="right")
    assert words(session(THURSDAY, both, done(PLANK, 15, 15, load=None)), week=planned()) == []


# ---- what is missing

FRIDAY = date(2026, 1, 9)


def missing(*sessions: LoggedSession, today: date = FRIDAY, week: Audit | None = None) -> list[tuple[date, str]]:
    found = missing_sessions([(MONDAY, week or planned())], sessions, today)
    return [(finding.on, finding_words(finding, CATALOGUE)) for finding in found]


def test_a_planned_session_that_is_not_in_the_log_is_named() -> None:
    first, second = (f"session {n} of the week is not in the log (2 lifts planned)" for n in (1, 2))
    assert missing() == [(MONDAY, first), (THURSDAY, second)]
    assert missing(AS_PLANNED[0]) == [(THURSDAY, second)]
    assert missing(AS_PLANNED[1]) == [(MONDAY, first)]
    assert missing(*AS_PLANNED) == []
    assert missing(replace(AS_PLANNED[0], on=date(2026, 1, 12))) == [(MONDAY, first), (THURSDAY, second)]


def test_today_s_session_may_still_be_held() -> None:
    assert missing(AS_PLANNED[0], today=THURSDAY) == []
    assert missing(today=MONDAY) == []


def test_a_session_held_on_another_day_of_its_week_is_not_missing() -> None:
    assert missing(AS_PLANNED[0], replace(AS_PLANNED[1], on=FRIDAY)) == []
    assert missing(AS_PLANNED[0], replace(AS_PLANNED[1], on=MONDAY, session=2)) == []


def test_days_in_any_order_have_until_the_end_of_their_week() -> None:
    brief = parse_brief({"days": [{"minutes": 40}, {"minutes": 40}], "any_order": True}, CATALOGUE).brief
    free = audit(resolve(brief, CATALOGUE), WEEK)
    assert missing(AS_PLANNED[1], today=date(2026, 1, 11), week=free) == []
    said = "session 1 of the week is not in the log (2 lifts planned)"
    assert missing(AS_PLANNED[1], today=date(2026, 1, 12), week=free) == [(date(2026, 1, 11), said)]


def test_a_day_without_lifts_and_one_that_is_said_to_be_missed_are_not_missing() -> None:
    empty = Week((WEEK.days[0], ()))
    brief = parse_brief(
        {"days": [{"weekday": "mon", "minutes": 40}, {"weekday": "thu", "minutes": 40, "missed": True}]}, CATALOGUE
    ).brief
    for asked, week in ((planned().evaluated.resolved.brief, empty), (brief, empty), (brief, WEEK)):
        assert missing(AS_PLANNED[0], week=audit(resolve(asked, CATALOGUE), week)) == []


# ---- digest


def test_equal_sessions_have_equal_digests_and_any_change_another() -> None:
    one = session(MONDAY, done(SQUAT, 8), started=datetime(2026, 1, 5, 18), minutes=40, note="a")
    same = session(MONDAY, done(SQUAT, 8, load=80.0), started=datetime(2026, 1, 5, 18), minutes=40.0, note="a")
    assert digest_of(one) == digest_of(same)
    changed = [
        replace(one, **change)  # type: ignore[arg-type]
        for change in (
            {"on": THURSDAY},
            {"unit": "lb"},
            {"week": 1},
            {"session": 1},
            {"started": None},
            {"ended": datetime(2026, 1, 5, 19)},
            {"minutes": 41},
            {"how_hard": 7},
            {"note": "b"},
            {"sets": ()},
            {"sets": done(SQUAT, 7)},
            {"sets": done(SQUAT, 8, load=None)},
            {"sets": done(SQUAT, 8, side="left")},
            {"sets": done(SQUAT, 8, rir=2)},
        )
    ]
    assert len({digest_of(s) for s in (one, *changed)}) == len(changed) + 1


def test_the_digest_stays_as_it_is() -> None:
    """Books keep it: another text would make known sessions new ones."""
    known = "250d63097d7b081dba46350dd093ec9d9f137fbef14bc8e6b93b0a805b297847"
    assert digest_of(session(MONDAY, done(SQUAT, 8))) == known


# ---- screen


def test_a_session_is_a_table_of_its_lifts() -> None:
    sets = (
        *done(SQUAT, 8, 8, 7, rir=2),
        LoggedSet(SQUAT, 4, 10, 70),
        *done(ROW, 10, load=30, side="left"),
        *done(ROW, 9, load=30, side="right"),
        *done(PLANK, 15, load=None),
    )
    said = session_text(
        LoggedSession(MONDAY, sets, week=2, session=1, minutes=52, how_hard=7, note="slept\nbadly"), CATALOGUE
    )
    assert said.splitlines() == [
        "Monday 2026-01-05, week 2, session 1: 3 lifts, 7 sets, 52 min, 7 of 10 hard",
        "Lift                  Sets, loads in kg",
        "--------------------  -----------------------------",
        "Barbell back squat    80 x 8, 8, 7 @ 2 RIR; 70 x 10",
        "One-arm dumbbell row  left 30 x 10; right 30 x 9",
        "Plank                 45 s",
        "Note: slept badly",
    ]


def test_sessions_are_a_list() -> None:
    timed = replace(AS_PLANNED[0], started=datetime(2026, 1, 5, 18, 3), ended=datetime(2026, 1, 5, 18, 55), week=1)
    assert sessions_text((timed, AS_PLANNED[1])).splitlines() == [
        "Date        Week  Session  Lifts  Sets  Minutes",
        "----------  ----  -------  -----  ----  -------",
        "2026-01-05     1        -      2     5       52",
        "2026-01-08     -        -      2     5        -",
        "2 sessions",
    ]
    assert sessions_text(()) == "No session.\n"
