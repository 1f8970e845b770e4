"""How sure a week's claims are: its rests against rested sets, by hand; pairs at the far end of their ranges."""

from __future__ import annotations

import pytest
from hand_weeks import GYM, PAIRED
from weeks import audited, days, terms_of

from setwright.catalogue.load import load_catalogue
from setwright.solver.uses.explain.certainty import most_that_pairs_cost, rests_kept

FULL = load_catalogue().defaults.full_rest
ALONE = ("lying-dumbbell-triceps-extension 2 rest={rest}", "machine-chest-press 3 rest={rest}")


def test_rested_sets_keep_nothing_to_gain() -> None:
    """A week that rests as long already has nothing to compare with; nor has an empty one."""
    lines = ", ".join(ALONE).format(rest=FULL)
    assert rests_kept(audited(terms_of(days=days("mon", 60)), [lines]).evaluated) is None
    assert rests_kept(audited(terms_of(days=days("mon", 60)), [""]).evaluated) is None


def test_the_share_kept_is_that_of_the_two_weeks_audited_apart() -> None:
    resolved = terms_of(days=days("mon", 60))
    short = audited(resolved, [", ".join(ALONE).format(rest=60)])
    rested = audited(resolved, [", ".join(ALONE).format(rest=FULL)])
    kept = rests_kept(short.evaluated)
    assert kept is not None
    assert kept.share == pytest.approx(short.stimulus / rested.stimulus, abs=1e-4)
    assert kept.interval[0] < kept.share < kept.interval[1] < 1
    assert kept.seconds == rested.evaluated.week_seconds


def test_shorter_rests_keep_less_and_less_surely() -> None:
    resolved = terms_of(days=days("mon", 60))
    kept = [rests_kept(audited(resolved, [", ".join(ALONE).format(rest=r)]).evaluated) for r in (30, 60, 120)]
    shares = [k.share for k in kept if k]
    widths = [k.interval[1] - k.interval[0] for k in kept if k]
    assert shares == sorted(shares) and widths == sorted(widths, reverse=True) and len(shares) == 3


def test_pairs_cost_more_at_the_far_end_only_where_partners_tire_each_other() -> None:
    resolved = terms_of(days=days("mon", 60), pairs=True)
    opposed = audited(resolved, PAIRED).evaluated
    row, press = "chest-supported-dumbbell-row", "machine-chest-press"
    large = audited(resolved, [f"{press} 3 with={row}, {row} 3 with={press}"]).evaluated
    assert most_that_pairs_cost(audited(terms_of(days=days("mon thu", 45)), GYM).evaluated) == 0
    assert most_that_pairs_cost(large) > most_that_pairs_cost(opposed) == 0
