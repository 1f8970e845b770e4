"""From how many minutes a session longer rests give as much as shorter ones, in words and as numbers."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from setwright.solver.planning import Solved
from setwright.solver.sheets.common.json_values import rounded

if TYPE_CHECKING:
    from setwright.solver.uses.compare.break_even import BreakEven
    from setwright.solver.uses.compare.comparison import Comparison


def break_even_words(comparison: Comparison) -> list[str]:
    """One sentence or two for each goal whose longer rests give less in the same minutes."""
    return [break_even_sentences(comparison, found) for found in comparison.break_evens]


def break_even_documents(comparison: Comparison) -> list[dict[str, Any]]:
    """The same as numbers: further minutes a session that were tried and the two indices there."""
    return [
        {
            "longer_rests": found.longer,
            "shorter_rests": found.shorter,
            "stimuli": [rounded(s) for s in found.stimuli],
            "more_minutes_a_session": found.more,
            "within_more_minutes": found.within,
            "tried": [{"more_minutes": m, "longer_rests": a, "shorter_rests": b} for m, a, b in found.tried],
            "words": break_even_sentences(comparison, found),
        }
        for found in comparison.break_evens
    ]


def break_even_sentences(comparison: Comparison, found: BreakEven) -> str:
    """What the two goals give in the brief's minutes, and from which session length the longer rests give as much."""
    longer, shorter = comparison.briefs[found.longer].label, comparison.briefs[found.shorter].label
    here = _sessions(comparison, found.longer, 0)
    cut = " (all its minutes used)" if comparison.briefs[found.shorter].goal == "efficiency" else ""
    end = comparison.ends[found.shorter]
    paired = isinstance(end, Solved) and any(entry.partner for entry in end.audit.evaluated.week.entries)
    ways = "shorter rests and pairs" if paired else "shorter rests"
    begin = (
        f"In {here} {ways} give more: {longer} reaches a week index of {found.stimuli[0]:.1f}, "
        f"{shorter}{cut} {found.stimuli[1]:.1f}."
    )
    if not found.within:
        return f"{begin} No longer sessions can be tried."
    minutes = _sessions(comparison, found.longer, found.within if found.more is None else found.more)
    if found.more is None:
        return f"{begin} Quick searches find no session length up to {minutes} at which {longer} gives as much."
    return f"{begin} Quick searches find that {longer} gives as much from about {minutes}."


def _sessions(comparison: Comparison, brief: int, more: int) -> str:
    """So many minutes a session; for uneven days how many more than now."""
    minutes = [day.minutes for day in comparison.briefs[brief].parsed.brief.days]
    if len(set(minutes)) == 1:
        return f"{minutes[0] + more} min a session"
    return f"{more} more min in each session" if more else "these minutes"
