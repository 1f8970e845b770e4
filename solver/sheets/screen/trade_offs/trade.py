"""The trade-off in words: how much of the time for how much of the growth, as the index reckons it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from setwright.solver.sheets.common.json_values import rounded

if TYPE_CHECKING:
    from setwright.solver.planning import Solved
    from setwright.solver.uses.compare.comparison import Comparison, TradeOff

SAME = 0.01
"""Shares of time nearer to the whole than this are called the same time."""


def trade_words(comparison: Comparison) -> list[str]:
    """One sentence a week: its share of the time of the longest for its share of the growth."""
    said = [_capital(_trade_sentence(comparison, trade_off)) for trade_off in comparison.trade_offs]
    return said + [_cut_words(comparison.briefs[i].label, end) for i, end in comparison.solved if end.shortest]


def trade_documents(comparison: Comparison) -> list[dict[str, Any]]:
    """The same as numbers, each with its sentence."""
    return [
        {
            "case": trade_off.week,
            "beside": trade_off.reference,
            "time_share": rounded(trade_off.time_share),
            "stimulus_share": rounded(trade_off.stimulus_share) if trade_off.same_weights else None,
            "stimulus_share_interval": [rounded(end) for end in trade_off.stimulus_interval]
            if trade_off.same_weights
            else None,
            "words": _trade_sentence(comparison, trade_off),
        }
        for trade_off in comparison.trade_offs
    ]


def _trade_sentence(comparison: Comparison, trade_off: TradeOff) -> str:
    this, that = comparison.briefs[trade_off.week].label, comparison.briefs[trade_off.reference].label
    if not trade_off.same_weights:
        return (
            f"{this} takes {_percent(trade_off.time_share)} of the time of {that}; the two weigh the muscles "
            "differently, so compare them muscle by muscle."
        )
    low, high = (f"{100 * end:.0f}" for end in trade_off.stimulus_interval)
    share = f"{_percent(trade_off.stimulus_share)} (interval {low} to {high} %)"
    if trade_off.time_share > 1.0 - SAME:
        return f"{this} takes the same time as {that} and gives {share} of its growth."
    more = ": more from less time" if trade_off.stimulus_share > 1.005 else ""
    return f"{this} takes {_percent(trade_off.time_share)} of the time of {that} for {share} of its growth{more}."


def _cut_words(label: str, end: Solved) -> str:
    """That a week's minutes were cut, and to what share of the best."""
    kept = _percent(end.resolved.keep_share)
    return f"The minutes of {label} were cut while {kept} of the stimulus of its best week was kept."


def _capital(sentence: str) -> str:
    return sentence[:1].upper() + sentence[1:]


def _percent(share: float) -> str:
    return f"{100 * share:.0f} %"
