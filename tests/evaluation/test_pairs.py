"""Two lifts that would hold two stations of which there is one each are no pair."""

from __future__ import annotations

from itertools import combinations

from weeks import CATALOGUE, terms_of

from setwright.solver.evaluation.pairing.pairs import Misfit, places, unfit
from setwright.solver.evaluation.resolved_brief import ResolvedBrief

EXERCISES = tuple(CATALOGUE.exercises.values())


def misfits(resolved: ResolvedBrief) -> dict[tuple[str, str], list[Misfit]]:
    """(exercise, exercise) -> why the two may not be a pair, over the whole catalogue."""
    return {(a.id, b.id): list(unfit(resolved, a, b)) for a, b in combinations(EXERCISES, 2)}


def test_two_single_stations_make_no_pair() -> None:
    """Every pair of before that holds a bench and a rack is gone once there is one of each, and no other."""
    before, after = misfits(terms_of(pairs=True)), misfits(terms_of(pairs=True, owned={"single": ["bench", "rack"]}))
    lost = {pair for pair in before if not before[pair] and after[pair]}
    both = {
        pair
        for pair in before
        if not before[pair]
        and {frozenset(CATALOGUE.exercises[e].needs) & {"bench", "rack"} for e in pair}
        == {frozenset({"bench"}), frozenset({"rack"})}
    }
    assert lost == both and lost
    assert all(after[pair] == [Misfit("single-stations")] for pair in lost)


def test_one_single_station_for_both_is_no_hindrance() -> None:
    bench = [e for e in EXERCISES if "bench" in e.needs]
    resolved = terms_of(pairs=True, owned={"single": ["bench"]})
    assert not any(Misfit("single-stations") in unfit(resolved, a, b) for a, b in combinations(bench, 2))


def test_stations_are_items_with_a_place() -> None:
    resolved = terms_of()
    assert places(resolved, CATALOGUE.exercises["barbell-bench-press"], "fixed", "place")
