"""A client's pace from simulated logs whose truth is known: bias, coverage, outliers, too little data, what is kept."""

from __future__ import annotations

import sys
from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest
from simulated_logs import Truth, simulated_log, with_call
from weeks import audited, days, terms_of

from setwright.catalogue.faults import UsageFault
from setwright.solver.auditing import Audit
from setwright.solver.log.values import LoggedSession
from setwright.solver.uses.pace.client_pace import ClientPace, NotEnough, Part
from setwright.solver.uses.pace.clock_table import with_clock
from setwright.solver.uses.pace.intervals import intervals_of
from setwright.solver.uses.pace.reading import client_pace
from setwright.solver.uses.pace.robust_fit import robust_fit

BOTH = (
    "dumbbell-curl 3 reps=10-15 with=lying-dumbbell-triceps-extension rest=60, "
    "lying-dumbbell-triceps-extension 3 reps=10-15 with=dumbbell-curl rest=60"
)
LINES = (
    f"barbell-back-squat 4 reps=5-5, barbell-bench-press 4 reps=5-8, dumbbell-side-raise 4 reps=15-20, {BOTH}",
    f"barbell-romanian-deadlift 3 reps=6-8, wide-grip-pulldown 3 reps=8-12, machine-side-raise 4 reps=15-30, {BOTH}",
)
FITTED: tuple[Part, ...] = ("warm_up", "seconds_per_rep", "pair_change", "rest_drift", "change_drift")
LOGS = 200


@pytest.fixture(scope="module")
def week() -> Audit:
    return audited(terms_of(days=days("mon thu", 60), goal="balanced", pairs=True), LINES)


def truth_of(truth: Truth, part: Part) -> float:
    """A change of exercise holds a rest, which drifts too."""
    return truth.rest_drift + truth.change_drift if part == "change_drift" else float(getattr(truth, part))


def drawn(seed: int) -> Truth:
    """A client of whom the published interval of the seconds of a repetition holds: 3.0, 90 % from 2.25 to 3.75."""
    draw = np.random.default_rng(90_000 + seed)
    return Truth(
        warm_up=draw.uniform(240, 600),
        seconds_per_rep=draw.normal(3.0, 0.456),
        pair_change=draw.uniform(8, 40),
        rest_drift=draw.uniform(-10, 40),
        change_drift=draw.uniform(-10, 50),
    )


def pace_of(audit: Audit, sessions: list[LoggedSession], check: bool = False) -> ClientPace:
    found = client_pace(audit, sessions, check)
    assert isinstance(found, ClientPace)
    return found


@pytest.mark.slow
def test_the_truth_is_recovered_without_bias_and_the_intervals_hold_it(
    week: Audit, record_property: pytest.RecordProperty
) -> None:
    """200 clients, 6 sessions each, drawn from the published interval and wide ranges; fixed seeds.

    A 90 % interval of 200 draws holds the truth 169 to 191 times (binomial, 99.9 %); the bounds are wider still.
    """
    missed: dict[Part, list[float]] = {part: [] for part in FITTED}
    held: dict[Part, list[bool]] = {part: [] for part in FITTED}
    for seed in range(LOGS):
        truth = drawn(seed)
        pace = pace_of(week, simulated_log(week.evaluated, truth, 3, seed))
        for part in FITTED:
            fitted, true = pace.part(part), truth_of(truth, part)
            if fitted is not None:
                missed[part].append(fitted.value - true)
                held[part].append(fitted.low <= true <= fitted.high)
    bounds = {"warm_up": 6.0, "seconds_per_rep": 0.1, "pair_change": 2.0, "rest_drift": 2.0, "change_drift": 3.0}
    for part in FITTED:
        bias, coverage = float(np.mean(missed[part])), float(np.mean(held[part]))
        spread = float(np.std(missed[part]))
        said = f"{part}: {len(missed[part])} told, bias {bias:+.2f} s, spread {spread:.2f} s, coverage {coverage:.3f}"
        record_property(part, said)
        print(said)
        assert len(missed[part]) >= 0.8 * LOGS
        assert abs(bias) < bounds[part], said
        assert 0.80 <= coverage <= 0.99, said


def test_planned_minutes_come_nearer_in_sessions_held_back(week: Audit) -> None:
    """Of twelve sessions the last four are not read from; the plan was too short by a rest drift of 18 s and more."""
    found = pace_of(week, simulated_log(week.evaluated, Truth(), 6, 5), check=True).held_back
    assert found is not None and (found.fitted_on, found.sessions) == (8, 4)
    assert found.error_before > 8 and abs(found.error_after) < 2
    assert found.distance_after < found.distance_before / 4


def test_a_client_who_keeps_to_the_clock_is_left_on_it(week: Audit) -> None:
    kept = Truth(
        warm_up=week.evaluated.warm_up(0), seconds_per_rep=3.0, pair_change=15.0, rest_drift=0.0, change_drift=0.0
    )
    pace = pace_of(week, simulated_log(week.evaluated, kept, 5, 1))
    assert pace.clock.seconds_per_rep == pytest.approx(3.0, abs=0.4)
    assert pace.clock.pair_change == pytest.approx(15, abs=5)
    assert pace.clock.spare is not None and pace.clock.spare < 240


def test_a_telephone_call_of_nine_minutes_moves_no_part_by_half_its_standard_error(week: Audit) -> None:
    """Plain least squares would add 540 s / 60 rests, about 9 s, to each rest; see also the test after this one."""
    sessions = simulated_log(week.evaluated, Truth(), 4, 3)
    before = pace_of(week, sessions)
    sessions[2] = with_call(sessions[2], 1, 9)
    after = pace_of(week, sessions)
    limits = {"warm_up": 2.0, "seconds_per_rep": 0.1, "pair_change": 1.0, "rest_drift": 2.0, "change_drift": 2.0}
    for part in FITTED:
        one, other = before.part(part), after.part(part)
        assert (one is None) == (other is None)
        if one is not None and other is not None:
            assert other.value == pytest.approx(one.value, abs=limits[part]), part
    assert before.clock.spare is not None and after.clock.spare is not None
    assert after.clock.spare == pytest.approx(before.clock.spare, abs=60)


def test_plain_least_squares_would_have_been_moved() -> None:
    """The check above can fail: a mean of ten rests goes up by a tenth of the call, the robust value by little."""
    rests = np.array([80.0, 95, 90, 85, 100, 92, 88, 91, 94, 90])
    called = np.append(rests[:-1], 630.0)
    ones, groups, kinds = np.ones((10, 1)), np.arange(10), np.zeros(10, dtype=np.int64)
    robust = [robust_fit(ones, some, groups, kinds).values[0] for some in (rests, called)]
    assert called.mean() - rests.mean() == pytest.approx(54)
    assert robust[1] - robust[0] < 3


def test_the_loss_agrees_with_plain_least_squares_where_nothing_is_an_outlier() -> None:
    """Two rests of 60 and two of 90 s with 10 and 20 repetitions, exact to the second: 3 s each, 12 s of drift."""
    columns = np.array([[1.0, 10], [1, 20], [1, 10], [1, 20]])
    seconds = columns @ np.array([12.0, 3.0])
    found = robust_fit(columns, seconds, np.array([0, 0, 1, 1]), np.zeros(4, dtype=np.int64))
    assert found.values == pytest.approx((12.0, 3.0), abs=1e-6)
    assert max(found.half_widths) < 1e-6


def test_too_little_is_said_and_nothing_is_made_up(week: Audit) -> None:
    found = client_pace(week, simulated_log(week.evaluated, Truth(), 1, 0))
    assert isinstance(found, NotEnough)
    assert (found.sessions_with_set_ends, found.sessions_with_minutes, found.sessions_needed) == (2, 2, 4)
    assert client_pace(week, []) == NotEnough(0, 0, 0, 4, 40)


def test_minutes_alone_tell_only_what_is_spare(week: Audit) -> None:
    """Without set ends the parts cannot be told apart; a single number of seconds can."""
    sessions = simulated_log(week.evaluated, Truth(), 4, 2, set_ends=False)
    pace = pace_of(week, sessions, check=True)
    assert pace.basis == "session minutes" and [part.part for part in pace.parts] == ["spare"]
    assert set(pace.untold) == {*FITTED}
    assert pace.clock.model_dump(exclude_none=True).keys() == {"spare"}
    assert pace.held_back is not None and pace.held_back.distance_after < pace.held_back.distance_before / 3
    written = [replace(one, started=None, ended=None, minutes=75.0) for one in sessions]
    assert pace_of(week, written).basis == "session minutes"


def test_repetitions_that_are_alike_leave_their_seconds_as_planned(week: Audit) -> None:
    """All sets of eight to twelve: how long a repetition takes cannot be told from how long a rest takes."""
    lines = (
        "dumbbell-bench-press 3 reps=8-12, chest-supported-dumbbell-row 3 reps=8-12, dumbbell-curl 3 reps=8-12",
        "machine-shoulder-press 3 reps=8-12, wide-grip-pulldown 3 reps=8-12, dumbbell-side-raise 3 reps=8-12",
    )
    alike = audited(terms_of(days=days("mon thu", 60), goal="balanced"), lines)
    pace = pace_of(alike, simulated_log(alike.evaluated, Truth(), 4, 0))
    assert {"seconds_per_rep", "pair_change"} <= set(pace.untold)
    assert pace.clock.seconds_per_rep is None and pace.clock.pair_change is None
    drift = pace.part("rest_drift")
    assert drift is not None and drift.low < Truth().rest_drift < drift.high


def test_sessions_cut_short_do_not_count_as_quick(week: Audit) -> None:
    """Half of the sets left out: the minutes of such a session say nothing of the pace."""
    sessions = simulated_log(week.evaluated, Truth(), 4, 2)
    cut = [
        replace(one, sets=one.sets[:8], ended=one.sets[7].ended) if place % 2 else one
        for place, one in enumerate(sessions)
    ]
    whole, mixed = pace_of(week, sessions).clock.spare, pace_of(week, cut).clock.spare
    assert whole is not None and mixed is not None and mixed == pytest.approx(whole, abs=90)


def test_a_spare_is_never_below_nothing_and_a_limit_is_told(week: Audit) -> None:
    quick = Truth(warm_up=150, seconds_per_rep=2.6, pair_change=8, rest_drift=-25, change_drift=-10)
    pace = pace_of(week, simulated_log(week.evaluated, quick, 4, 2))
    assert pace.clock.spare == 0 and "spare" in pace.limited


def test_the_warm_up_of_a_client_who_may_not_shorten_it_stays() -> None:
    """A client of 70 warms up as for growth: a measured shorter one is no ground to plan a shorter one."""
    lines = (
        "leg-press 3 reps=8-12, machine-chest-press 3 reps=8-12, wide-grip-pulldown 3 reps=8-12, machine-side-raise 3",
        "leg-press 3 reps=8-12, machine-chest-press 3 reps=8-12, wide-grip-pulldown 3 reps=8-12, machine-side-raise 3",
    )
    for age, kept in ((70, True), (30, False)):
        audit = audited(terms_of(days=days("mon thu", 60), client={"age": age}), lines)
        pace = pace_of(audit, simulated_log(audit.evaluated, Truth(warm_up=130, warm_up_noise=5), 4, 2))
        planned = audit.evaluated.warm_up(0)
        assert pace.clock.warm_up is not None and (pace.clock.warm_up >= planned) == kept
        assert ("warm_up" in pace.limited) == kept


def test_the_clock_that_is_given_is_one_that_a_brief_takes(week: Audit) -> None:
    pace = pace_of(week, simulated_log(week.evaluated, Truth(), 4, 2))
    again = with_clock(week.evaluated, pace.clock)
    assert again.resolved.number("pair-change-seconds") == pace.clock.pair_change
    assert again.work_seconds(0) > week.evaluated.work_seconds(0)


def test_intervals_are_read_by_what_they_hold(week: Audit) -> None:
    """Squats from the start: warm-up; their next sets: rests; then a change, and pairs in turn, all by hand."""
    sessions = simulated_log(week.evaluated, Truth(), 1, 0)[:1]
    intervals, left_out = intervals_of(week.evaluated, sessions)
    kinds = [one.kind for one in intervals]
    assert left_out == 0
    assert kinds[:5] == ["warm-up", "rest", "rest", "rest", "change"]
    first = kinds.index("pair")
    assert kinds[first - 1 : first + 5] == ["change", "pair", "rest", "pair", "rest", "pair"]
    assert kinds.count("change") == 3 and kinds.count("pair") == 3
    squat = next(line for line in week.evaluated.lines if line.exercise.id == "barbell-back-squat")
    assert intervals[1].asked == squat.entry.rest and intervals[1].repetitions == 5


def test_what_cannot_be_read_is_left_out_and_counted(week: Audit) -> None:
    session = simulated_log(week.evaluated, Truth(), 1, 0)[0]
    sets = list(session.sets)
    sets[2] = replace(sets[2], exercise="leg-press")
    ended = sets[6].ended
    assert ended is not None
    sets[6] = replace(sets[6], ended=ended - timedelta(hours=2))
    intervals, left_out = intervals_of(week.evaluated, [replace(session, sets=tuple(sets))])
    assert left_out == 4
    assert len(intervals) == len(sets) - 4


def test_the_same_log_gives_the_same_pace(week: Audit) -> None:
    sessions = simulated_log(week.evaluated, Truth(), 4, 2)
    assert client_pace(week, sessions) == client_pace(week, list(reversed(sessions)))


def test_rests_that_drift_by_a_share_are_told_one_by_one_and_minutes_come_out_right(week: Audit) -> None:
    """The fit knows a drift of so many seconds only; where longer rests drift more, the list of rests shows it."""
    truth = Truth(rest_drift=0, rest_share=0.3, change_drift=0, seconds_per_rep=3.0)
    pace = pace_of(week, simulated_log(week.evaluated, truth, 6, 2), check=True)
    over = [rest.taken - rest.asked for rest in pace.rests]
    assert len(over) >= 2 and over[-1] > over[0]
    assert pace.held_back is not None and pace.held_back.distance_after < pace.held_back.distance_before / 3


def test_without_scipy_the_remedy_is_named(week: Audit, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "scipy.optimize", None)
    with pytest.raises(UsageFault, match=r"pip install 'setwright\[pace\]'"):
        client_pace(week, simulated_log(week.evaluated, Truth(), 4, 2))
