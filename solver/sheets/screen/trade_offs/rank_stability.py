"""How stable an order of weeks is, in words and as numbers."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from setwright.solver.planning import Solved
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.words import listed
from setwright.solver.sheets.document.solved_week import UNPROVEN

if TYPE_CHECKING:
    from setwright.solver.uses.compare.comparison import Comparison
    from setwright.solver.uses.compare.rank_stability import RankedPair
    from setwright.solver.uses.compare.sensitivity import Sensitivity

REVERSALS = {
    "rest": ("rest between sets mattered {by} {way}", "more", "less"),
    "effort": ("stopping short of failure cost {by} {way}", "more", "less"),
    "session": ("a session held {by} {way} of a muscle's sets before they count less", "more", "fewer"),
    "flattening": ("the exponent of weekly sets were {by} {way}", "higher", "lower"),
    "indirect": ("an indirect set counted {by} {way}", "more", "less"),
    "rest-pause": ("a rest-pause set counted {by} {way}", "more", "less"),
    "pairs": ("what the partners of a pair take from each other were {by} {way}", "more", "less"),
    "drops": ("a drop counted {by} {way}", "more", "less"),
}
"""Parameter -> what it would take to reverse an order, and the words for a higher and a lower value."""
NEAREST = 2
"""Parameters named in one sentence; the document has them all."""


def ranking_words(comparison: Comparison) -> list[str]:
    """The share of draws in which the order holds; for each two neighbours what alone would reverse them."""
    ranking = comparison.ranking
    if ranking is None:
        if len(comparison.solved) > 1:
            return ["How sure: the briefs weigh the muscles differently, so their week indices have no order."]
        return []
    places = [i for i, _ in comparison.solved]
    if len(ranking.pairs) == 1:
        return [f"How sure: {_pair_words(comparison, ranking.pairs[0], places, ranking.draws)}"]
    names = ", ".join(comparison.briefs[places[i]].label for i in ranking.ranked)
    said = [
        f"How sure: the order {names} holds in {share_words(ranking.share)} of {ranking.draws:,} draws of all "
        "numbers together over their published ranges."
    ]
    return said + [f"  {_pair_words(comparison, pair, places)}" for pair in ranking.pairs]


def _pair_words(comparison: Comparison, pair: RankedPair, places: list[int], draws: int | None = None) -> str:
    """How two neighbours stand; `draws` where the sentence stands alone and says how many there were."""
    higher, lower = places[pair.higher], places[pair.lower]
    first, second = comparison.briefs[higher].label, comparison.briefs[lower].label
    of_all = f"of {draws:,} draws of all numbers together over their published ranges" if draws else "of them"
    said = (
        f"{first} over {second} (by {pair.difference:.1f}) holds in {share_words(pair.share)} {of_all}; "
        f"{_reversal_words(pair.sensitivities)}."
    )
    gap = max(_gap(comparison, higher), _gap(comparison, lower))
    if pair.difference >= gap:
        return said
    return f"{said} The searches left up to {gap:.1f} points open, which is more: a longer search may change the order."


def _gap(comparison: Comparison, place: int) -> float:
    """What the search of one brief left open, in index points."""
    end = comparison.ends[place]
    return end.gap if isinstance(end, Solved) and end.bound < UNPROVEN else 0.0


def share_words(value: float) -> str:
    """A share of draws: never 100 % of a thing that is not certain."""
    return "all" if value >= 1.0 else f"{min(99.0, 100 * value):.0f} %"


def _reversal_words(found: tuple[Sensitivity, ...]) -> str:
    """What alone would reverse the order, the nearest first."""
    said = [_one_reversal(s, s.reversal_factor) for s in found if s.reversal_factor is not None]
    if not said:
        return "no number alone reverses it, moved up to ten-fold within what it can mean"
    return f"it would reverse if {listed(said[:NEAREST], 'or if')}"


def _one_reversal(found: Sensitivity, factor: float) -> str:
    """One parameter: by how much, from what to what, inside its published range or not."""
    text, more, less = REVERSALS[found.parameter.name]
    said = text.format(by=factor_words(factor), way=more if factor > 1 else less)
    now, then = (listed(f"{v * f:.{digits}g}" for v in found.values) for f, digits in ((1.0, 6), (factor, 3)))
    where = "inside" if found.inside else "outside"
    return f"{said} ({then} instead of {now}, {where} the published range)"


def factor_words(factor: float) -> str:
    """A factor: in hundredths when near 1, else so many times."""
    ratio = factor if factor > 1 else 1.0 / factor
    if ratio < 1.5:
        return f"{100 * abs(factor - 1.0):.0f} %"
    return f"{ratio:.1f} times"


# ---- as numbers


def ranking_document(comparison: Comparison) -> dict[str, Any] | None:
    """The order, its shares, and for each two neighbours what every parameter alone does."""
    ranking = comparison.ranking
    if ranking is None:
        return None
    places = [i for i, _ in comparison.solved]
    alone = ranking.draws if len(ranking.pairs) == 1 else None
    return {
        "ranked": [places[i] for i in ranking.ranked],
        "share": rounded(ranking.share),
        "draws": ranking.draws,
        "steps": [
            {
                "higher": places[pair.higher],
                "lower": places[pair.lower],
                "difference": rounded(pair.difference),
                "share": rounded(pair.share),
                "numbers": [_sensitivity_document(found) for found in pair.sensitivities],
                "words": _pair_words(comparison, pair, places, alone),
            }
            for pair in ranking.pairs
        ],
        "words": ranking_words(comparison),
    }


def _sensitivity_document(found: Sensitivity) -> dict[str, Any]:
    """One parameter: the difference at its published ends, and where the order reverses."""
    factor = found.reversal_factor
    return {
        "numbers": list(found.parameter.keys),
        "values": list(found.values),
        "difference_at_ends": list(found.at_ends),
        "turns_at": None if factor is None else [rounded(v * factor) for v in found.values],
        "factor": None if factor is None else rounded(factor),
        "inside_published_range": found.inside,
    }
