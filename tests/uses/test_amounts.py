"""A brief given another amount of time."""

from __future__ import annotations

import pytest
from side_weeks import brief_of

from setwright.catalogue.faults import UsageFault
from setwright.solver.uses.time_budget.amounts import each_session, each_week, shared, so_many_days

UNEVEN = [
    {"weekday": "mon", "minutes": 30},
    {"weekday": "wed", "minutes": 60, "focus": "lower"},
    {"weekday": "sat", "minutes": 90},
]


def test_shares_add_up_and_no_day_loses_a_minute_when_the_week_gains_one() -> None:
    before = shared(29, (30, 60, 90))
    for minutes in range(30, 241):
        after = shared(minutes, (30, 60, 90))
        assert sum(after) == minutes
        assert all(a >= b for a, b in zip(after, before, strict=True))
        before = after


def test_shares_are_in_proportion() -> None:
    assert shared(180, (30, 60, 90)) == (30, 60, 90)
    assert shared(90, (30, 60, 90)) == (15, 30, 45)
    assert shared(100, (40, 40, 40)) == (34, 33, 33)


def test_the_days_keep_all_but_their_minutes() -> None:
    again = each_week(brief_of(days=UNEVEN), 90).brief
    assert [(d.weekday, d.minutes, d.focus) for d in again.days] == [
        ("mon", 15, None),
        ("wed", 30, "lower"),
        ("sat", 45, None),
    ]
    assert [d.minutes for d in each_session(brief_of(days=UNEVEN), 45).brief.days] == [45, 45, 45]


def test_minutes_that_no_day_can_have_are_a_fault() -> None:
    with pytest.raises(UsageFault, match=r"5 minutes a session, expected 10 to 240"):
        each_session(brief_of(), 5)


def test_days_are_spread_anew_and_the_briefs_own_number_is_left_alone() -> None:
    own = brief_of(days=[{"weekday": "tue", "minutes": 40}, {"weekday": "sat", "minutes": 40}])
    assert so_many_days(own, 2) is own
    assert [day.weekday for day in so_many_days(own, 3).brief.days] == ["mon", "wed", "fri"]


def test_days_that_differ_cannot_be_multiplied() -> None:
    with pytest.raises(UsageFault, match="differ in more than the weekday"):
        so_many_days(brief_of(days=UNEVEN), 4)


def test_what_each_day_leaves_out_is_kept_and_what_one_trains_cannot_be_multiplied() -> None:
    alike = [{"weekday": day, "minutes": 40, "rested": ["calves"]} for day in ("mon", "wed", "fri")]
    assert [day.rested for day in so_many_days(brief_of(days=alike), 4).brief.days] == [("calves",)] * 4
    one = [*alike[:2], {"weekday": "fri", "minutes": 40, "trained": ["chest"]}]
    with pytest.raises(UsageFault, match="differ in more than the weekday"):
        so_many_days(brief_of(days=one), 2)


def test_a_pin_on_a_day_that_is_gone_is_a_fault() -> None:
    pinned = brief_of(pins=[{"exercise": "barbell-curl", "day": "thu"}])
    with pytest.raises(UsageFault, match="on 3 days"):
        so_many_days(pinned, 3)
