"""The trade in words: how much of the time for how much of the stimulus, and when longer rests pay."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from setwright.solver.sheets.document.json_values import rounded

if TYPE_CHECKING:
    from setwright.solver.planning import Solved
    from setwright.solver.uses.compare.break_even import Pays
    from setwright.solver.uses.compare.comparison import Beside, Compared

ALIKE = 0.01
"""Shares of time nearer to the whole than this are called the same time."""


def trade_words(compared: Compared) -> list[str]:
    """One sentence a week: its share of the time of the longest for its share of the stimulus."""
    said = [begun(beside_words(compared, beside)) for beside in compared.beside]
    return said + [cut_words(compared.cases[i].label, end) for i, end in compared.solved if end.shortest]


def cut_words(label: str, end: Solved) -> str:
    """That a week's minutes were cut, and to what share of the best."""
    return f"The minutes of {label} were cut while {percent(end.resolved.keep_share)} of its best week was kept."


def begun(sentence: str) -> str:
    """A sentence with its first letter as a sentence has it."""
    return sentence[:1].upper() + sentence[1:]


def beside_words(compared: Compared, beside: Beside) -> str:
    this, that = compared.cases[beside.case].label, compared.cases[beside.beside].label
    if not beside.same_weights:
        return (
            f"{this} takes {percent(beside.time)} of the time of {that}; the two weigh the muscles differently, "
            "so compare them muscle by muscle."
        )
    share = percent(beside.stimulus)
    if beside.time > 1.0 - ALIKE:
        return f"{this} takes the same time as {that} and gives {share} of its stimulus."
    more = ": more from less time" if beside.stimulus > 1.005 else ""
    return f"{this} takes {percent(beside.time)} of the time of {that} for {share} of its stimulus{more}."


def percent(share: float) -> str:
    return f"{100 * share:.0f} %"


def trade_document(compared: Compared) -> list[dict[str, Any]]:
    """The same as numbers, with the sentence."""
    return [
        {
            "case": b.case,
            "beside": b.beside,
            "time_share": rounded(b.time),
            "stimulus_share": rounded(b.stimulus) if b.same_weights else None,
            "words": beside_words(compared, b),
        }
        for b in compared.beside
    ]


# ---- when longer rests pay


def pays_words(compared: Compared) -> list[str]:
    """One sentence for each goal whose longer rests give less in the same minutes."""
    return [pay_words(compared, found) for found in compared.pays]


def pay_words(compared: Compared, found: Pays) -> str:
    longer, shorter = compared.cases[found.longer].label, compared.cases[found.shorter].label
    here = session_words(compared, found.longer, 0)
    cut = " (all its minutes used)" if compared.cases[found.shorter].goal == "efficiency" else ""
    begin = (
        f"In {here} shorter rests buy more: {longer} gives an index of {found.stimuli[0]:.1f}, "
        f"{shorter}{cut} {found.stimuli[1]:.1f}."
    )
    if not found.within:
        return f"{begin} No longer sessions can be tried."
    verdict = "pay from about" if found.more is not None else "do not pay within"
    minutes = session_words(compared, found.longer, found.within if found.more is None else found.more)
    return f"{begin} By quick searches the longer rests of {longer} {verdict} {minutes}."


def session_words(compared: Compared, case: int, more: int) -> str:
    """So many minutes a session; for uneven days how many more than now."""
    minutes = [day.minutes for day in compared.cases[case].parsed.brief.days]
    if len(set(minutes)) == 1:
        return f"{minutes[0] + more} min a session"
    return f"{more} more min in each session" if more else "these minutes"


def pays_document(compared: Compared) -> list[dict[str, Any]]:
    """The same as numbers: minutes a session tried and the two indices there."""
    return [
        {
            "longer_rests": p.longer,
            "shorter_rests": p.shorter,
            "stimuli": [rounded(s) for s in p.stimuli],
            "more_minutes_a_session": p.more,
            "within_more_minutes": p.within,
            "tried": [{"more_minutes": m, "longer_rests": a, "shorter_rests": b} for m, a, b in p.tried],
            "words": pay_words(compared, p),
        }
        for p in compared.pays
    ]
