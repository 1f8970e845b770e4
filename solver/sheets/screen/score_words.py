"""What a planned week is worth, in sentences: its index, its score, and what is proven of both."""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.solver.evaluation.uncertainty import week_interval
from setwright.solver.sheets.common.time_breakdown import session_minutes
from setwright.solver.sheets.common.words import wrapped
from setwright.solver.sheets.document.solved_week import UNPROVEN
from setwright.solver.uses.explain.certainty import most_that_pairs_cost, rests_kept

if TYPE_CHECKING:
    from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
    from setwright.solver.planning import Solved

ENDS = {
    "work limit": "the search used its work limit",
    "time limit": "the time limit ended the search",
    "stopped": "the search was stopped",
}
ENDING_GAP = 0.01
"""The smallest gap shown, in hundredths of the stimulus."""
LEAST_GAIN = 0.05
"""Points of score below which what pairs bring is not worth a number."""


def ended_words(ended_by: str) -> str:
    """What ended a search: work limit -> the search used its work limit."""
    return ENDS.get(ended_by, ended_by)


def score_lines(solved: Solved, width: int) -> list[str]:
    """The week index, the minutes, the score with what is proven of it, and what pairs bring."""
    evaluated = solved.audit.evaluated
    low, high = week_interval(evaluated)
    lines = [
        f"Week index {solved.stimulus:.1f} (interval {low} to {high}), in {sum(session_minutes(evaluated))} minutes a "
        "week.",
        *wrapped(f"{_proven_score(solved)}{_proven_minutes(solved)}", width, "  "),
    ]
    for said in (_rests_words(evaluated), _pairs_words(solved)):
        lines += wrapped(said, width, "  ") if said else []
    return lines


def _rests_words(evaluated: EvaluatedWeek) -> str:
    """What the week's rests keep of the growth of rested sets, with its interval, and the minutes they save."""
    kept = rests_kept(evaluated)
    if kept is None:
        return ""
    low, high = (f"{100 * end:.0f}" for end in kept.interval)
    full = evaluated.resolved.catalogue.defaults.full_rest
    return (
        f"The same sets one after another with rests of {full // 60} minutes would take {kept.seconds // 60} "
        f"minutes a week; as planned they keep {100 * kept.share:.0f} % of that growth (interval {low} to {high} %)."
    )


def _pairs_words(solved: Solved) -> str:
    """What pairs bring, how sure that is, and what they cost.

    They feel harder: Andersen et al. 2022, doi 10.3389/fpsyg.2022.912368.
    """
    bring = solved.pairs_bring
    if bring is None:
        return ""
    if bring < LEAST_GAIN:
        least, sure = "little that could be proven", ""
    else:
        least = f"at least {bring:.1f} points of score"
        worst = bring - most_that_pairs_cost(solved.audit.evaluated)
        sure = ", perhaps nothing" if worst < LEAST_GAIN else f", and at least {worst:.1f}"
        sure = ", and as much" if bring - worst < LEAST_GAIN else sure
        sure += " if partners tire each other as much as the ranges allow"
    return (
        f"Pairs (two exercises done in turn) bring {least} in the same minutes{sure}. Such sessions feel somewhat "
        "harder; for a week without them add 'no pairs' to the brief."
    )


def _proven_score(solved: Solved) -> str:
    """The score, and how far from the best possible it can be at most."""
    cut = solved.shortest
    score = cut.best_score if cut else solved.score
    said = f"Score {score:.1f} (the index less the costs below)"
    if cut:
        kept = f"{100 * solved.resolved.keep_share:g} %"
        said = f"The minutes were cut while {kept} of the best week was kept: score {solved.score:.1f} of {score:.1f}"
    ended = ended_words(solved.ended_by)
    if solved.bound >= UNPROVEN:
        return f"{said}; it is not proven yet how much higher the best possible score is ({ended})."
    gap = solved.bound - score
    share = 100 * gap / solved.stimulus if solved.stimulus > 0 else 0.0
    best = "that best week" if cut else "it"
    if solved.ended_by == "proved":
        return f"{said}; {best} is proven best to within {max(share, ENDING_GAP):.2f} %."
    shown = f"{max(gap, ENDING_GAP):.2f} points ({max(share, ENDING_GAP):.2f} % of the index)"
    return f"{said}; {best} is proven within {shown} of the best possible; {ended}."


def _proven_minutes(solved: Solved) -> str:
    """Where minutes were cut, what no week that keeps the score takes less than; nothing where it is not known."""
    cut = solved.shortest
    if cut is None or not cut.least_seconds:
        return ""
    share = max(100 * cut.gap_share, ENDING_GAP)
    return f" No week that keeps it takes under {cut.least_seconds / 60:.1f} min, {share:.2f} % less than this one."
