"""The week on screen: plain text that a coach reads from the top, at most 100 columns wide."""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.resolved_brief import MuscleTarget, ResolvedBrief
from setwright.solver.evaluation.resolving import WIDE_OPEN
from setwright.solver.evaluation.uncertainty import intervals, week_interval
from setwright.solver.sheets.common.caution import CAUTION, CLEARANCE, caution_sentences, clearance_needed
from setwright.solver.sheets.common.choices import swaps
from setwright.solver.sheets.common.costs import points, shown
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.ramp import ramp_ups, ramp_words
from setwright.solver.sheets.common.time_breakdown import session_minutes
from setwright.solver.sheets.common.words import (
    clock,
    day_name,
    held,
    listed,
    note,
    sets_by_reps,
    span,
    whole_minutes,
    wrapped,
)
from setwright.solver.sheets.document.card_labels import line_labels
from setwright.solver.sheets.document.solved_week import UNPROVEN, assumed_of, overridden
from setwright.solver.sheets.screen.headline import headline

if TYPE_CHECKING:
    from setwright.solver.planning import Solved

WHAT_INDEX_IS = (
    "Index 100: the stimulus of ten good weekly sets. Intervals come from the ranges of the published numbers; "
    "they are means of groups, no promise to one person."
)
NOTE = 20
OTHER_COLUMNS = 26 + 2 * 5 + NOTE
"""Columns of a day beside the exercise: mark 2, sets 16, RIR 3, rest 5, five gaps, note."""
ENDS = {
    "work limit": "the search had spent its work",
    "time limit": "the time limit ended the search",
    "stopped": "the search was stopped",
}
ENDING_GAP = 0.01
"""The smallest gap shown, in hundredths of the stimulus."""


def week_text(solved: Solved, width: int = 100, private: bool = False) -> str:
    """The week for a coach: days, muscles, what it is worth, what was given up, the caution."""
    width = held(width)
    audit, evaluated = solved.audit, solved.audit.evaluated
    parts = [
        before(solved, width, private),
        wrapped(headline(solved.resolved), width),
        *(day_lines(evaluated, day.index, width) for day in evaluated.resolved.days),
        muscle_lines(audit, width),
        worth(solved, width),
        given_up(audit, width),
        bulleted("Assumed", assumed_of(solved.parsed, private), width),
        bulleted("Overridden", overridden_words(solved.resolved), width),
        wrapped(f"Caution: {CAUTION}", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def before(solved: Solved, width: int, private: bool) -> list[str]:
    """What is said before the week: clearance that is missing, and the brief's own cautions when private."""
    brief, catalogue = solved.parsed.brief, solved.resolved.catalogue
    lines = wrapped(CLEARANCE, width) if clearance_needed(brief, catalogue) else []
    for sentence in caution_sentences(brief, catalogue) if private else ():
        lines += wrapped(sentence, width, "  ")
    return lines


# ---- a day


def day_lines(evaluated: EvaluatedWeek, day: int, width: int) -> list[str]:
    """One session: its minutes, its lines, the warm-up and ramp-up sets in words, the swaps."""
    resolved, lines = evaluated.resolved.days[day], evaluated.on[day]
    focus = f", {resolved.focus}" if resolved.focus else ""
    if not lines:
        return [f"{day_name(resolved)}{focus}: nothing ({resolved.minutes} min given)"]
    return [
        f"{day_name(resolved)}{focus}: {whole_minutes(evaluated.seconds(day))} of {resolved.minutes} min",
        *rows(evaluated, day, width),
        *warm_up_lines(evaluated, day, width),
        *swap_lines(evaluated, day, width),
    ]


def labels(evaluated: EvaluatedWeek, day: int) -> list[str]:
    """A, B, and A1, A2 for a pair."""
    return [str(label) for label in line_labels(evaluated, day)]


def rows(evaluated: EvaluatedWeek, day: int, width: int) -> list[str]:
    """The lines of a card as a table."""
    table = []
    marks = labels(evaluated, day)
    for mark, line in zip(marks, evaluated.on[day], strict=True):
        in_turn = mark.endswith("1") and len(mark) > 1
        rest = "0:00" if in_turn else clock(line.entry.rest)
        doing = sets_by_reps(line.entry, line.exercise)
        table.append([mark, line.exercise.name, doing, str(line.entry.rir), rest, note(line.entry, line.exercise)])
    widest = [None, max(16, width - OTHER_COLUMNS), None, None, None, NOTE]
    return grid(["", "Exercise", "Sets x reps", "RIR", "Rest", "Note"], table, "lllrrl", widest)


def warm_up_lines(evaluated: EvaluatedWeek, day: int, width: int) -> list[str]:
    """The general warm-up, then each lift's ramp-up sets."""
    done, planned = evaluated.warm_up(day), evaluated.resolved.days[day].warm_up
    cut = f" (cut from {clock(planned)} to fit the day)" if done < planned else ""
    lines = [f"Warm-up: {clock(done)} easy whole-body movement{cut}"]
    for place, sets in ramp_ups(evaluated, day).items():
        lines += wrapped(f"Ramp-up before {ramp_words(evaluated.on[day][place].exercise, sets)}", width, "  ")
    return lines


def swap_lines(evaluated: EvaluatedWeek, day: int, width: int) -> list[str]:
    """What may stand in for each line, in one paragraph."""
    found = [
        f"{mark} {listed((e.name for e in instead), 'or')}"
        for mark, line in zip(labels(evaluated, day), evaluated.on[day], strict=True)
        if (instead := swaps(evaluated, line))
    ]
    return wrapped(f"Swaps: {'; '.join(found)}", width, "  ") if found else []


# ---- muscles


def muscle_lines(audit: Audit, width: int) -> list[str]:
    """Sets, band and index of every muscle that is sought or trained."""
    evaluated = audit.evaluated
    sure = intervals(evaluated)
    table = []
    for m in evaluated.resolved.muscles.values():
        sets = evaluated.weekly_sets(m.id) / WHOLE
        if not sets and not m.weight:
            continue
        low, high = sure[m.id]
        table.append(
            [
                evaluated.resolved.catalogue.muscles[m.id].name,
                m.emphasis,
                f"{sets:.2f}".rstrip("0").rstrip("."),
                str(evaluated.direct_days(m.id)),
                band_words(m),
                f"{evaluated.index(m.id):.0f}",
                f"{low} to {high}",
                mark(m, sets),
            ]
        )
    headings = ["Muscle", "Emphasis", "Sets", "Days", "Band", "Index", "Interval", ""]
    return [*grid(headings, table, "llrrrrrl"), *wrapped(WHAT_INDEX_IS, width)]


def band_words(muscle: MuscleTarget) -> str:
    """A muscle's band of weekly sets; ends that the brief fixes are hard."""
    if muscle.high >= WIDE_OPEN:
        return f"from {muscle.low:g}" if muscle.low else ""
    return span(muscle.low, muscle.high)


def mark(muscle: MuscleTarget, sets: float) -> str:
    """Where the sets stand when outside the band."""
    return "below" if sets < muscle.low else "above" if sets > muscle.high else ""


# ---- worth


def worth(solved: Solved, width: int) -> list[str]:
    """The week index, the score with what is proven of it, the minutes, and what pairs would add."""
    evaluated = solved.audit.evaluated
    low, high = week_interval(evaluated)
    minutes = sum(session_minutes(evaluated))
    lines = [
        f"Week index {solved.stimulus:.1f} (interval {low} to {high}), in {minutes} minutes a week.",
        *wrapped(proven(solved), width, "  "),
    ]
    if solved.pairs_would_add is not None and solved.pairs_would_add >= 0.05:
        text = f"Pairs (two exercises done in turn) would add about {solved.pairs_would_add:.1f} index points "
        lines += wrapped(f"{text}in the same minutes: add 'with pairs' to the brief.", width, "  ")
    return lines


def proven(solved: Solved) -> str:
    """The score, how far from the best possible it can be at most, and how few minutes a week can be."""
    return f"{proven_score(solved)}{proven_minutes(solved)}"


def proven_minutes(solved: Solved) -> str:
    """Where minutes were cut, what no week that keeps the score takes less than; nothing where it is not known."""
    cut = solved.shortest
    if cut is None or not cut.least_seconds:
        return ""
    share = max(100 * cut.gap_share, ENDING_GAP)
    return f" No week that keeps it takes under {cut.least_seconds / 60:.1f} min, {share:.2f} % less than this one."


def proven_score(solved: Solved) -> str:
    """The score, and how far from the best possible it can be at most."""
    cut = solved.shortest
    score = cut.best_score if cut else solved.score
    said = f"Score {score:.1f} (the index less the costs below)"
    if cut:
        kept = f"{100 * solved.resolved.keep_share:g} %"
        said = f"The minutes were cut while {kept} of the best week was kept: score {solved.score:.1f} of {score:.1f}"
    if solved.bound >= UNPROVEN:
        return f"{said}; nothing is proven yet of how far the best possible score is ({why_ended(solved)})."
    gap = solved.bound - score
    share = 100 * gap / solved.stimulus if solved.stimulus > 0 else 0.0
    best = "that best week" if cut else "it"
    if solved.ended_by == "proved":
        return f"{said}; {best} is proven best to within {max(share, ENDING_GAP):.2f} %."
    shown = f"{max(gap, ENDING_GAP):.2f} points ({max(share, ENDING_GAP):.2f} % of the index)"
    return f"{said}; {best} is proven within {shown} of the best possible; {why_ended(solved)}."


def why_ended(solved: Solved) -> str:
    return ENDS.get(solved.ended_by, solved.ended_by)


# ---- what it cost, what was taken for granted


def given_up(audit: Audit, width: int) -> list[str]:
    """Every cost in the score, dearest first, in index points; what was earned is below zero."""
    costs = shown(audit)
    if not costs:
        return []
    lines = [f"Given up, in index points ({points(audit.cost_units):.1f} in all):"]
    for cost in costs:
        lines += wrapped(f"{cost.points:6.1f}  {cost.rule}: {cost.text}", width, " " * 10)
    return lines


def bulleted(title: str, sentences: list[str], width: int) -> list[str]:
    """A titled list, or nothing."""
    lines = [line for said in sentences for line in wrapped(f"  - {said}", width, "    ")]
    return [f"{title}:", *lines] if lines else []


def overridden_words(resolved: ResolvedBrief) -> list[str]:
    """The rules that the brief turned off, made hard or priced itself."""
    words = {"off": "turned off", "hard": "made hard"}
    return [
        f"{row['id']} {words.get(str(row['said']), 'set to ' + str(row['said']))}: {row['sentence']}"
        for row in overridden(resolved)
    ]
