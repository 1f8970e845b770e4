"""Weeks side by side, for a coach and as a document: time, sets, rests, indices, the trade in words, how sure it is."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from setwright.solver.evaluation.uncertainty import intervals, week_interval
from setwright.solver.sheets.common.caution import CAUTION
from setwright.solver.sheets.common.findings import member_words
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.time_breakdown import seconds_by_kind
from setwright.solver.sheets.common.words import clock, held, listed, whole_minutes, wrapped
from setwright.solver.sheets.document.json_values import rounded
from setwright.solver.sheets.document.solved_week import UNPROVEN, week_document
from setwright.solver.sheets.screen.rank_stability import order_document, order_words
from setwright.solver.sheets.screen.trade import pays_document, pays_words, trade_document, trade_words
from setwright.solver.sheets.screen.week_table import WHAT_INDEX_IS, headline
from setwright.solver.uses.compare.comparison import only_in

if TYPE_CHECKING:
    from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
    from setwright.solver.planning import End, Solved
    from setwright.solver.uses.compare.comparison import Compared

SCHEMA = "setwright.compare/1"
KINDS = {
    "lifting": "Lifting",
    "resting": "Resting",
    "ramp_up": "Ramp-up sets",
    "change_over": "Change-over",
    "warm_up": "Warm-up",
}
COLUMN = 16
"""Letters of one week's column, gap included; the first column has what is left."""
FIRST = 20
NOT_ACROSS = (
    "Scores hold each goal's own costs and bands: goals are compared on the week index and the muscles' indices only. "
    "Proven gap: index points by which the best possible score can be higher."
)


def compare_text(compared: Compared, width: int = 100) -> str:
    """The comparison for a coach: the briefs, the tables, the trade, how sure, what each has alone, the caution."""
    width = held(width)
    parts = [
        *(wrapped(said, width, "  ") for said in heads(compared)),
        *tables(compared, width),
        wrapped(f"{WHAT_INDEX_IS} {NOT_ACROSS}", width),
        paragraphs(trade_words(compared), width),
        paragraphs(pays_words(compared), width),
        paragraphs(order_words(compared), width),
        paragraphs(alone_words(compared), width),
        wrapped(f"Caution: {CAUTION}", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def paragraphs(sentences: Sequence[str], width: int) -> list[str]:
    return [line for said in sentences for line in wrapped(said, width, "  ")]


def heads(compared: Compared) -> list[str]:
    """What is compared: each brief once, and each case without a week with why."""
    found = []
    several = len({case.place for case in compared.cases}) > 1
    for place in dict.fromkeys(case.place for case in compared.cases):
        end = next(e for c, e in zip(compared.cases, compared.ends, strict=True) if c.place == place)
        letter = f"{chr(ord('A') + place)}: " if several else ""
        found.append(letter + without_goal(headline(end.resolved)))
    for case, end in zip(compared.cases, compared.ends, strict=True):
        if why := no_week(end):
            found.append(f"{case.label}: {why}")
    return found


def without_goal(said: str) -> str:
    """A headline without its goal, which the columns name."""
    return "; ".join(part for part in said.split("; ") if not part.startswith("goal "))


def no_week(end: End) -> str:
    """Why a case has no week; empty where it has one."""
    from setwright.solver.planning import Clash, OutOfTime

    if isinstance(end, Clash):
        return f"no week can meet this brief ({listed(member_words(c, end.resolved) for c in end.conflicts)} clash)"
    if isinstance(end, OutOfTime):
        return f"no week was found ({end.ended_by})"
    return ""


# ---- the tables


def tables(compared: Compared, width: int) -> list[list[str]]:
    """Weeks in columns, as many beside each other as the width holds: first time and sets, then the muscles."""
    many = max(2, (width - FIRST) // COLUMN)
    solved = compared.solved
    found = []
    for start in range(0, len(solved), many):
        block = solved[start : start + many]
        names = [compared.cases[i].label for i, _ in block]
        found.append(across(names, [facts(end) for _, end in block]))
        found.append(across(names, [muscles(end) for _, end in block], "Muscle: index"))
    return found


def across(names: list[str], columns: list[dict[str, str]], corner: str = "") -> list[str]:
    """One table: a row for each fact that any column has, in the order of the columns."""
    keys = [key for key in dict.fromkeys(k for column in columns for k in column) if any(c.get(key) for c in columns)]
    rows = [[key, *(column.get(key, "") for column in columns)] for key in keys]
    return grid([corner, *names], rows, "l" + "r" * len(names))


def facts(end: Solved) -> dict[str, str]:
    """One week's column: time by kind, sets, rests, what it is worth."""
    evaluated = end.audit.evaluated
    low, high = week_interval(evaluated)
    kinds = time_by_kind(evaluated)
    used = minutes(evaluated)
    return {
        "Minutes a week": str(sum(used)),
        "Minutes a session": " ".join(map(str, used)) if len(used) <= 4 else f"{min(used)} to {max(used)}",
        **{name: clock(kinds[key]) for key, name in KINDS.items()},
        "Sets": str(sum(entry.sets for entry in evaluated.week.entries)),
        "Lines on the cards": str(len(evaluated.lines)),
        "Exercises": str(len({entry.exercise for entry in evaluated.week.entries})),
        "Rests": rests(evaluated),
        "Pairs; drop sets": f"{pairs(evaluated)}; {drops(evaluated)}",
        "Week index": f"{end.stimulus:.1f}",
        "Index interval": f"{low} to {high}",
        "Index per minute": f"{end.stimulus / sum(used):.2f}" if sum(used) else "",
        "Score (own goal)": f"{end.score:.1f}",
        "Proven gap": f"{end.gap:.1f}" if end.bound < UNPROVEN else "none",
    }


def muscles(end: Solved) -> dict[str, str]:
    """Each muscle's index with its interval; nothing for a muscle neither sought nor trained."""
    evaluated = end.audit.evaluated
    sure = intervals(evaluated)
    found = {}
    for m in evaluated.resolved.muscles.values():
        low, high = sure[m.id]
        name = evaluated.resolved.catalogue.muscles[m.id].name
        found[name] = f"{evaluated.index(m.id):.0f} ({low}-{high})" if m.weight or evaluated.weekly_sets(m.id) else ""
    return found


def minutes(evaluated: EvaluatedWeek) -> list[int]:
    """Each session's whole minutes, rounded up; days without one left out."""
    return [whole_minutes(evaluated.seconds(day.index)) for day in evaluated.resolved.days if evaluated.on[day.index]]


def time_by_kind(evaluated: EvaluatedWeek) -> dict[str, int]:
    """The week's seconds by kind, over the days that have a session."""
    days = [seconds_by_kind(evaluated, day.index) for day in evaluated.resolved.days if evaluated.on[day.index]]
    return {kind: sum(day[kind] for day in days) for kind in KINDS}


def rests(evaluated: EvaluatedWeek) -> str:
    """The shortest and longest rest on the cards."""
    found = [entry.rest for entry in evaluated.week.entries]
    if not found:
        return ""
    low, high = min(found), max(found)
    return clock(low) if low == high else f"{clock(low)}-{clock(high)}"


def pairs(evaluated: EvaluatedWeek) -> int:
    return sum(1 for entry in evaluated.week.entries if entry.partner) // 2


def drops(evaluated: EvaluatedWeek) -> int:
    return sum(1 for entry in evaluated.week.entries if entry.technique == "drop")


# ---- what one has that the others have not


def alone_words(compared: Compared) -> list[str]:
    """For each week the exercises that none of the others has."""
    if len(compared.solved) < 2:
        return []
    said = []
    for i, exercises in only_in(compared.solved):
        names = listed(compared.ends[i].resolved.catalogue.exercises[e].name for e in exercises)
        said.append(
            f"Only in {compared.cases[i].label}: {names}." if names else f"Only in {compared.cases[i].label}: none."
        )
    return said


# ---- the document


def compare_document(compared: Compared) -> dict[str, Any]:
    """The comparison as JSON: each case with its whole week, then how they stand to each other."""
    alone = dict(only_in(compared.solved))
    return {
        "schema": SCHEMA,
        "cases": [
            {
                "label": case.label,
                "brief": case.place,
                "goal": case.goal,
                "no_week": no_week(end) or None,
                "only_here": list(alone.get(i, ())),
                **(case_document(compared, i)),
            }
            for i, (case, end) in enumerate(zip(compared.cases, compared.ends, strict=True))
        ],
        "trade": trade_document(compared),
        "pays": pays_document(compared),
        "order": order_document(compared),
    }


def case_document(compared: Compared, place: int) -> dict[str, Any]:
    """One case's facts and its week, where it has one."""
    end = dict(compared.solved).get(place)
    if end is None:
        return {"week": None}
    evaluated = end.audit.evaluated
    used = minutes(evaluated)
    return {
        "minutes": sum(used),
        "session_minutes": used,
        "seconds_by_kind": time_by_kind(evaluated),
        "sets": sum(entry.sets for entry in evaluated.week.entries),
        "exercises": len({entry.exercise for entry in evaluated.week.entries}),
        "index_per_minute": rounded(end.stimulus / sum(used)) if sum(used) else None,
        "week": week_document(end),
    }
