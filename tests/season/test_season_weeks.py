"""The weeks of a season by date against Python's own calendar, and which spans of them may be a block."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.brief.schema import Brief
from setwright.solver.uses.season.block_spans import spans_of
from setwright.solver.uses.season.season_weeks import CalendarRow, weeks_of

MONDAY = date(2026, 1, 5)
WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


def brief(**raw: object) -> Brief:
    asked = {"days": [{"minutes": 40}] * 3, **raw}
    return parse_brief(asked, load_catalogue(), "test").brief


@pytest.mark.parametrize("start", [MONDAY, date(2024, 2, 26), date(2020, 12, 28)])
def test_weeks_from_a_monday_are_the_weeks_of_iso_8601(start: date) -> None:
    weeks = weeks_of(brief(), start, 60)
    numbers = [week.first.isocalendar() for week in weeks]
    assert all(number.weekday == 1 for number in numbers)
    assert [(n.year, n.week) for n in numbers] == [
        (n.year, n.week) for n in ((start + timedelta(days=7 * i)).isocalendar() for i in range(60))
    ]
    assert all((after.first - before.first).days == 7 for before, after in pairwise(weeks))
    assert all(week.last.isocalendar()[:2] == week.first.isocalendar()[:2] for week in weeks)


@pytest.mark.parametrize("offset", range(7))
def test_a_week_from_any_weekday_has_the_same_sessions(offset: int) -> None:
    week = weeks_of(brief(), MONDAY + timedelta(days=offset), 1)[0]
    assert [day.weekday for day in week.days] == ["mon", "wed", "fri"]


def test_a_calendar_holds_from_its_first_date_to_its_last() -> None:
    rows = (CalendarRow(date(2026, 1, 14), date(2026, 1, 20), 0, 0),)
    weeks = weeks_of(brief(), MONDAY, 4, rows)
    assert [[day.weekday for day in week.days] for week in weeks] == [
        ["mon", "wed", "fri"],
        ["mon"],
        ["wed", "fri"],
        ["mon", "wed", "fri"],
    ]


@pytest.mark.parametrize("days", range(1, 8))
def test_sessions_fall_on_dates_of_their_own_weekday(days: int) -> None:
    row = CalendarRow(date(2026, 1, 7), date(2026, 2, 3), days, 25, "bands")
    for week in weeks_of(brief(), MONDAY, 6, (row,)):
        for day in week.days:
            on = next(
                on for on in (week.first + timedelta(days=i) for i in range(7)) if WEEKDAYS[on.weekday()] == day.weekday
            )
            inside = row.first <= on <= row.last
            assert (day.minutes, day.equipment) == ((25, "bands") if inside else (40, None))


def test_a_row_of_as_many_days_keeps_the_briefs_weekdays_and_themes() -> None:
    own = brief(days=[{"weekday": "tue", "minutes": 60, "focus": "upper"}, {"weekday": "sat", "minutes": 30}])
    week = weeks_of(own, MONDAY, 1, (CalendarRow(MONDAY, date(2026, 2, 1), 2, 45),))[0]
    assert [(d.weekday, d.minutes, d.focus) for d in week.days] == [("tue", 45, "upper"), ("sat", 45, None)]
    assert week.minutes == 90


def test_a_brief_in_any_order_is_spread_over_the_week() -> None:
    week = weeks_of(brief(any_order=True), MONDAY, 1)[0]
    assert [day.weekday for day in week.days] == ["mon", "wed", "fri"]


def test_no_block_holds_a_week_off_or_two_kits() -> None:
    off = CalendarRow(date(2026, 2, 9), date(2026, 2, 15), 0, 0)
    elsewhere = CalendarRow(date(2026, 3, 16), date(2026, 3, 29), 3, 40, "bands")
    weeks = weeks_of(brief(), MONDAY, 20, (off, elsewhere))
    spans = spans_of(weeks, (4, 7), 0.5)
    assert spans
    for span in spans:
        inside = weeks[span.first : span.first + span.weeks]
        assert 4 <= len(inside) <= 7
        assert all(week.days for week in inside)
        assert len({day.equipment for week in inside for day in week.days}) == 1
        assert weeks[span.leanest].minutes == min(week.minutes for week in inside[:-1])


def test_the_lighter_week_may_have_half_the_minutes_and_no_fewer() -> None:
    for minutes, able in ((20, True), (15, False)):
        weeks = weeks_of(brief(), MONDAY, 4, (CalendarRow(date(2026, 1, 26), date(2026, 2, 1), 3, minutes),))
        assert bool(spans_of(weeks, (4, 4), 0.5)) is able


def test_blocks_have_by_default_the_whole_weeks_within_the_published_habit() -> None:
    """5.6 +- 2.3 weeks: Rogerson et al. 2024, Sports Med Open 10:26, doi 10.1186/s40798-024-00691-y."""
    least, most = load_catalogue().defaults.season.block_weeks
    whole = [weeks for weeks in range(1, 20) if 5.6 - 2.3 <= weeks <= 5.6 + 2.3]
    assert [least, most] == [whole[0], whole[-1]]
    numbers = load_catalogue().evidence
    assert (numbers["rogerson-2024-every"].value, numbers["rogerson-2024-every-spread"].value) == (5.6, 2.3)
