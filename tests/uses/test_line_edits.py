"""What a coach changes on one line, held against audits of weeks written by hand."""

from __future__ import annotations

import pytest
from hand_weeks import line
from weeks import audited, days, terms_of

from setwright.solver.auditing import Audit, audit
from setwright.solver.uses.edits.fixed_lines import reoptimised_lines
from setwright.solver.uses.edits.line_edits import (
    against_rules,
    against_wishes,
    closed,
    moved,
    pinned,
    taken_out,
    unpinned,
    with_sets,
)

HOME = {"days": days("mon thu", 40), "equipment": "home-dumbbells", "pairs": True}


@pytest.fixture(scope="module")
def week() -> Audit:
    mon = "goblet-squat 3, dumbbell-bench-press 3, dumbbell-curl 3 with=dumbbell-calf-raise, "
    mon += "dumbbell-calf-raise 3 with=dumbbell-curl"
    thu = "goblet-squat 3, seated-dumbbell-shoulder-press 3, chest-supported-dumbbell-row 3"
    return audited(terms_of(**HOME), (mon, thu))


def names(found: Audit, day: int) -> list[str]:
    return sorted(entry.exercise for entry in found.evaluated.week.days[day])


def test_a_move_takes_no_set_and_no_repetition_away(week: Audit) -> None:
    done = moved(week, line(week, "dumbbell-bench-press", 0), week.evaluated.resolved.days[1])
    entry = line(done.after, "dumbbell-bench-press", 1).entry
    assert entry.sets == 3 and "dumbbell-bench-press" not in names(done.after, 0)
    assert done.after.evaluated.weekly_sets("chest") == week.evaluated.weekly_sets("chest")


def test_partners_part_or_go_together(week: Audit) -> None:
    curl, thursday = line(week, "dumbbell-curl", 0), week.evaluated.resolved.days[1]
    alone, both = moved(week, curl, thursday).after, moved(week, curl, thursday, with_partner=True).after
    assert line(alone, "dumbbell-curl", 1).entry.partner is None
    assert line(alone, "dumbbell-calf-raise", 0).entry.partner is None
    assert line(both, "dumbbell-curl", 1).entry.partner == "dumbbell-calf-raise"
    assert names(both, 0) == ["dumbbell-bench-press", "goblet-squat"]


def test_the_pin_of_a_weekday_goes_along(week: Audit) -> None:
    pins = [{"exercise": "dumbbell-bench-press", "day": "mon"}]
    held = audit(terms_of(**HOME, pins=pins), week.evaluated.week)
    done = moved(held, line(held, "dumbbell-bench-press", 0), held.evaluated.resolved.days[1])
    assert [pin.day for pin in done.after.evaluated.resolved.brief.pins] == ["thu"]
    assert against_wishes(done) == ()


def test_a_pinned_line_taken_out_misses_a_wish_and_breaks_no_rule(week: Audit) -> None:
    held = pinned(week, line(week, "dumbbell-bench-press", 0)).after
    done = taken_out(held, line(held, "dumbbell-bench-press", 0))
    assert [finding.rule for finding in against_wishes(done)] == ["pinned"]
    assert "pinned" not in {finding.rule for finding in against_rules(done)}
    assert unpinned(held, line(held, "dumbbell-bench-press", 0)).after.evaluated.resolved.brief.pins == ()


def test_a_closed_lift_is_gone_from_every_day_and_from_the_brief(week: Audit) -> None:
    done = closed(week, line(week, "goblet-squat", 0))
    assert "goblet-squat" not in names(done.after, 0) + names(done.after, 1)
    assert done.after.evaluated.resolved.brief.avoid == ("goblet-squat",)
    assert not any(finding.rule == "avoid" for finding in done.broken)


def test_partners_have_the_same_sets(week: Audit) -> None:
    after = with_sets(week, line(week, "dumbbell-curl", 0), 2).after
    assert [line(after, name, 0).sets for name in ("dumbbell-curl", "dumbbell-calf-raise")] == [2, 2]


def test_sets_that_are_said_stay_when_the_rest_is_solved_anew(week: Audit) -> None:
    place = (0, "dumbbell-bench-press")
    for sets in (2, 4):
        found = reoptimised_lines(week.evaluated.resolved, week.evaluated.week, (place,), {place: sets})
        assert found is not None and line(found, place[1]).sets == sets and not found.broken
    assert reoptimised_lines(week.evaluated.resolved, week.evaluated.week, (place,), {place: 9}) is None
