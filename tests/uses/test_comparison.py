"""Weeks side by side: shares of time and stimulus, what each alone has, and when longer rests give as much."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import pytest
from side_weeks import CATALOGUE, brief_of, view_of

from setwright.solver.auditing import audit
from setwright.solver.planning import Clash, Solved
from setwright.solver.search.limits import SEARCHES
from setwright.solver.sheets.screen.trade_offs.break_even import break_even_sentences
from setwright.solver.sheets.screen.trade_offs.comparison import comparison_document, comparison_text
from setwright.solver.sheets.screen.trade_offs.rank_stability import factor_words, ranking_words, share_words
from setwright.solver.sheets.screen.trade_offs.trade import trade_words
from setwright.solver.uses.compare.break_even import (
    BreakEven,
    crossing,
    most_further_minutes,
    neighbours_by_rest,
    stimulus_before_cut,
)
from setwright.solver.uses.compare.compared_brief import compared_briefs
from setwright.solver.uses.compare.comparison import Comparison, only_in, trade_offs, weights
from setwright.solver.uses.compare.rank_stability import ranking_of

LONG = ((("barbell-back-squat", 4, 180), ("barbell-bench-press", 4, 180)), (("wide-grip-pulldown", 4, 120),))
SHORT = ((("barbell-back-squat", 3, 90), ("wide-grip-pulldown", 3, 60)), (("dumbbell-curl", 3, 45),))


def solved(rows: Any, **raw: Any) -> Solved:
    evaluated = view_of(rows, **raw)
    found = audit(evaluated.resolved, evaluated.week)
    parsed = brief_of(days=[d.model_dump() for d in evaluated.resolved.brief.days], **raw)
    return Solved(parsed, evaluated.resolved, found, found.score_units + 5_000, "work limit", SEARCHES["quick"])


def compared(*ends: Solved, break_evens: tuple[BreakEven, ...] = ()) -> Comparison:
    briefs = tuple(
        brief for i, end in enumerate(ends) for brief in compared_briefs([end.parsed], [("growth", "balanced")[i % 2]])
    )
    weeks = [end.audit.evaluated for end in ends]
    ranking = ranking_of(weeks) if all(weights(week) == weights(weeks[0]) for week in weeks) else None
    return Comparison(briefs, ends, trade_offs(list(enumerate(ends))), ranking, break_evens)


TWO = compared(solved(LONG, goal="growth"), solved(SHORT))


def test_what_is_compared_is_every_brief_under_every_goal() -> None:
    briefs = [brief_of(), brief_of(goal="growth")]
    assert [c.label for c in compared_briefs(briefs, ())] == ["A balanced", "B growth"]
    assert [c.label for c in compared_briefs(briefs, ("growth", "efficiency"))] == [
        "A growth",
        "A efficiency",
        "B growth",
        "B efficiency",
    ]
    assert [c.label for c in compared_briefs(briefs[:1], ("growth", "balanced"))] == ["growth", "balanced"]
    assert [c.parsed.brief.goal for c in compared_briefs(briefs[:1], ("efficiency",))] == ["efficiency"]


def test_the_shares_are_of_the_week_that_takes_the_most_time() -> None:
    long, short = (end for _, end in TWO.solved)
    seconds = [sum(e.audit.evaluated.seconds(d) for d in range(2)) for e in (long, short)]
    (found,) = TWO.trade_offs
    assert (found.week, found.reference) == (1, 0)
    assert found.time_share == pytest.approx(seconds[1] / seconds[0])
    assert found.stimulus_share == pytest.approx(short.stimulus / long.stimulus)
    (said,) = trade_words(TWO)
    time, stimulus = (f"{100 * part:.0f} %" for part in (found.time_share, found.stimulus_share))
    low, high = (f"{100 * part:.0f}" for part in found.stimulus_interval)
    assert said == (
        f"Balanced takes {time} of the time of growth for {stimulus} (interval {low} to {high} %) of its growth."
    )
    assert found.stimulus_interval[0] < found.stimulus_share < found.stimulus_interval[1]


def test_what_one_has_that_the_other_has_not() -> None:
    assert only_in(TWO.solved) == ((0, ("barbell-bench-press",)), (1, ("dumbbell-curl",)))


@pytest.mark.parametrize("width", [60, 80, 100])
def test_the_text_fits_its_width_and_names_what_it_must(width: int) -> None:
    text = comparison_text(TWO, width)
    assert max(map(len, text.splitlines())) <= width
    for said in ("Minutes a week", "Resting", "Ramp-up", "Change-over", "Rests", "Index per minute", "Only in growth"):
        assert said in text
    assert "not medical advice" in " ".join(text.split())


def test_six_weeks_stand_in_tables_that_fit() -> None:
    many = compared(*(solved(rows, goal="growth") for rows in (LONG, SHORT) * 3))
    assert max(map(len, comparison_text(many, 100).splitlines())) <= 100


def test_the_document_has_every_week_and_how_sure() -> None:
    document = comparison_document(TWO)
    assert [case["week"]["schema"] for case in document["cases"]] == ["setwright.week/1"] * 2
    assert document["order"]["draws"] >= 1000
    assert {n["numbers"][0] for n in document["order"]["steps"][0]["numbers"]} >= {"rest-loss-high", "rir-slope"}


def test_weeks_that_weigh_muscles_differently_have_no_order() -> None:
    apart = compared(solved(LONG, muscles={"chest": "priority"}), solved(SHORT))
    assert apart.ranking is None
    assert "weigh the muscles differently" in ranking_words(apart)[0]
    assert "muscle by muscle" in trade_words(apart)[0]


def test_a_minimum_dose_weighs_every_muscle_half_and_so_alike() -> None:
    """All at hold is all at half the weight: the week index is a mean, so the weeks can be compared."""
    assert compared(solved(LONG, dose="minimum"), solved(SHORT)).ranking is not None


def test_a_clash_is_told_and_the_rest_compared() -> None:
    one = TWO.ends[0]
    assert isinstance(one, Solved)
    mixed = Comparison(TWO.briefs, (one, Clash(one.parsed, one.resolved, ())), (), None, ())
    assert "balanced: no week can meet this brief" in comparison_text(mixed)
    assert [case["week"] is None for case in comparison_document(mixed)["cases"]] == [False, True]


def test_shares_and_factors_never_say_more_than_they_know() -> None:
    assert share_words(0.9996) == "99 %" and share_words(1.0) == "all" and share_words(0.944) == "94 %"
    assert factor_words(1 / 3) == "3.0 times" and factor_words(0.9) == "10 %" and factor_words(1.2) == "20 %"


# ---- when longer rests give as much


@dataclass
class Straight:
    """An index that rises with the minutes along a line, in place of searches."""

    at: float
    slope: float

    def stimulus(self, more: int) -> float:
        return self.at + self.slope * more

    def stopped(self) -> bool:
        return False


def test_the_crossing_is_found_by_halving() -> None:
    """60 + m/2 passes 70 + m/4 at m = 40: the first quarter of an hour at which it gives as much is 45."""
    more, within, tried = crossing(Straight(60, 0.5), Straight(70, 0.25), 60)  # type: ignore[arg-type]
    assert (more, within) == (45, 60)
    assert [m for m, _, _ in tried] == [30, 45, 60]


def test_longer_rests_that_never_give_as_much_are_said_so() -> None:
    more, within, tried = crossing(Straight(60, 0.1), Straight(70, 0.1), 60)  # type: ignore[arg-type]
    assert (more, within, len(tried)) == (None, 60, 1)
    assert "no session length up to 120 min a session" in break_even_sentences(
        TWO, BreakEven(0, 1, (60.0, 70.0), None, 60, tried)
    )
    assert "growth gives as much from about 105 min a session" in break_even_sentences(
        TWO, BreakEven(0, 1, (60.0, 70.0), 45, 60, tried)
    )


def test_longer_rests_are_tried_as_far_as_a_day_can_go() -> None:
    assert most_further_minutes(brief_of()) == 60
    assert most_further_minutes(brief_of(days=[{"weekday": "mon", "minutes": 215}])) == 15
    assert crossing(Straight(1, 0), Straight(2, 0), 0) == (None, 0, ())  # type: ignore[arg-type]


def test_goals_are_paired_with_their_neighbours_by_rest() -> None:
    briefs = compared_briefs([brief_of(), brief_of()], ("growth", "efficiency", "balanced"))
    assert neighbours_by_rest(briefs) == ((2, 1), (0, 2), (5, 4), (3, 5))


def test_the_goals_stand_by_rest_as_the_catalogue_has_them() -> None:
    from setwright.solver.uses.compare.break_even import BY_REST

    rests = CATALOGUE.defaults.rests
    for kind in ("main", "multi", "single"):
        most = [max(rests[goal][kind]) for goal in BY_REST]
        assert most == sorted(most)


def test_efficiencys_index_before_its_minutes_were_cut_follows_from_its_floor() -> None:
    from dataclasses import replace

    from setwright.solver.search.secondary.fewest_minutes import ShortestWeek

    end = solved(SHORT, goal="efficiency")
    best = end.audit
    floor = best.score_units - round(0.1 * best.stimulus_units)
    cut = replace(end, shortest=ShortestWeek(best, best.score_units, floor, 0, 0))
    both = compared(solved(LONG), cut)
    assert (
        trade_words(both)[-1]
        == "The minutes of balanced were cut while 90 % of the stimulus of its best week was kept."
    )
    assert stimulus_before_cut(cut) == pytest.approx(best.stimulus, abs=0.01)
    assert stimulus_before_cut(end) == end.stimulus
