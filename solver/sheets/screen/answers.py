"""Answers of `why` that were solved anew, in words and as documents."""

from __future__ import annotations

from typing import Any

from setwright.catalogue.entries import Exercise
from setwright.solver.evaluation.finding import ClashMember
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.planning import Unsolved
from setwright.solver.rulebook import RULES, sentence_of
from setwright.solver.sheets.common.addresses import address
from setwright.solver.sheets.common.findings import member_words, wish_words
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import day_name, held, listed, wrapped
from setwright.solver.sheets.document.json_values import rounded
from setwright.solver.sheets.screen.changes import (
    changed_document,
    difference_lines,
    effect_document,
    signed,
    signed_clock,
)
from setwright.solver.sheets.screen.week_table import ENDS
from setwright.solver.uses.explain.reasons import Reason
from setwright.solver.uses.explain.what_if import Answer, Closed, MoreMinutes

WITHOUT, WITH, MINUTES = "setwright.why-without/1", "setwright.why-with/1", "setwright.why-minutes/1"
ROUNDING = 0.005


def answer_document(answer: Answer) -> dict[str, Any]:
    """An answer as JSON: both weeks' difference, the lines that changed, and what is proven."""
    effect = answer.effect
    return {
        "does": effect_document(effect),
        "score": [rounded(effect.before.score), rounded(effect.after.score)],
        "changes": changed_document(effect.before.evaluated, effect.after.evaluated),
        "gap": rounded(answer.gap),
        "ended_by": answer.ended_by,
    }


def member_document(member: ClashMember, resolved: ResolvedBrief) -> dict[str, Any]:
    """A member of a clash as JSON: its rule, and the wish in words where it is one."""
    return {"rule": member.rule, "words": wish_words(member.wish, resolved) if member.wish else ""}


def unsolved_document(schema: str, end: Unsolved) -> dict[str, Any]:
    conflicts = [member_document(c, end.resolved) for c in end.conflicts]
    return {"schema": schema, "solved": False, "conflicts": conflicts, "ended_by": end.ended_by}


def unsolved_words(end: Unsolved) -> str:
    """Why no week was found."""
    if not end.conflicts:
        return f"no week was found ({ENDS.get(end.ended_by, end.ended_by)})."
    clash = listed(member_words(c, end.resolved) for c in end.conflicts)
    return f"no week is possible; these clash: {clash}"


def proven_words(answer: Answer) -> str:
    """How far a better answer is not ruled out."""
    if answer.gap < ROUNDING:
        return "Proven best within the model."
    if answer.gap > 1000:
        return "Nothing is proven of how much better it could be."
    return f"A score up to {answer.gap:.2f} points better is not ruled out."


# ---- without


def without_text(rows: list[tuple[Reason, Answer | Unsolved]], width: int) -> str:
    """Each line's exercise left out of the week and the rest solved anew, beside the exact reckoning of the line."""
    width = held(width)
    how = (
        "By solving anew: the exercise is left out of the whole week and everything else may change; "
        "beside it the line alone taken out, the rest left as it is."
    )
    parts = [wrapped(how, width)]
    parts += [without_lines(reason, end, width) for reason, end in rows]
    return "\n\n".join("\n".join(part) for part in parts) + "\n"


def without_lines(reason: Reason, end: Answer | Unsolved, width: int) -> list[str]:
    line = reason.line
    lead = f"Without {line.exercise.name}: "
    if isinstance(end, Unsolved):
        return wrapped(f"{lead}{unsolved_words(end)}", width, "  ")
    effect = end.effect
    verdict = f"solved anew the score changes by {signed(effect.score, 2)}; "
    alone = f"{line.exercise.name} alone taken out on {day_name(line.day)}"
    verdict += f"{alone} it changes by {signed(reason.effect.score, 2)}."
    if end.pin_dropped:
        verdict += " Its pin was dropped for this."
    if effect.score > ROUNDING:
        verdict += " The search found a better week without it: the week in hand is not the best."
    lines = wrapped(f"{lead}{verdict} {proven_words(end)}", width, "  ")
    return lines + [f"  {text}" for text in difference_lines(effect, width - 2)]


def without_document(rows: list[tuple[Reason, Answer | Unsolved]]) -> dict[str, Any]:
    found = []
    for reason, end in rows:
        evaluated = reason.effect.before.evaluated
        row: dict[str, Any] = {"entry": address(evaluated, reason.line), "exercise": reason.line.exercise.id}
        row["exactly"] = effect_document(reason.effect)
        if isinstance(end, Unsolved):
            row["solved"] = unsolved_document(WITHOUT, end)
        else:
            row["solved"] = {**answer_document(end), "solved": True, "pin_dropped": end.pin_dropped}
        found.append(row)
    return {"schema": WITHOUT, "without": found}


# ---- with


def with_text(exercise: Exercise, end: Answer | Unsolved | Closed, days: tuple[str, ...], width: int) -> str:
    """What the best week found with an exercise costs; `days` are those on which it stands already."""
    width = held(width)
    lines = []
    if days:
        lines += wrapped(f"{exercise.name} stands in the week already, on {listed(days)}.", width)
    match end:
        case Closed():
            lines += wrapped(f"No week holds {exercise.name}: it is closed on every day.", width)
            for rule in end.rules:
                lines += wrapped(
                    f"  {rule}: {sentence_of(rule, end.resolved)} Remedy: {RULES[rule].remedy}.", width, "    "
                )
        case Unsolved():
            lines += wrapped(f"With {exercise.name}: {unsolved_words(end)}", width, "  ")
        case Answer():
            verdict = "costs nothing" if abs(end.effect.score) < ROUNDING else f"costs {-end.effect.score:.2f} points"
            if end.effect.score >= ROUNDING:
                verdict = f"scores {end.effect.score:.2f} points more than the week in hand, which is not the best"
            lead = f"The best week found with {exercise.name} {verdict}. {proven_words(end)}"
            lines += [*wrapped(lead, width, "  "), *difference_lines(end.effect, width)]
            if end.alone is not None:
                alone = "By one change alone, the rest left as it is (exact reckoning):"
                lines += ["", *wrapped(alone, width), *difference_lines(end.alone, width)]
            else:
                lines += ["", "No one change alone makes room for it without breaking a rule."]
    return "\n".join(lines) + "\n"


def with_document(exercise: Exercise, end: Answer | Unsolved | Closed, days: tuple[str, ...]) -> dict[str, Any]:
    match end:
        case Closed():
            closed = [{"id": r, "sentence": sentence_of(r, end.resolved), "remedy": RULES[r].remedy} for r in end.rules]
            found: dict[str, Any] = {"schema": WITH, "solved": False, "closed_by": closed}
        case Unsolved():
            found = unsolved_document(WITH, end)
        case Answer():
            alone = None if end.alone is None else effect_document(end.alone)
            found = {"schema": WITH, "solved": True, **answer_document(end), "by_one_change": alone}
    return {**found, "exercise": exercise.id, "already_on": list(days)}


# ---- more minutes


def minutes_text(found: MoreMinutes, width: int) -> str:
    """What more minutes buy on each day, the best day first."""
    width = held(width)
    lines = wrapped(f"{found.minutes} more minutes on one day, the week solved anew each time; best day first:", width)
    table = []
    for row in found.days:
        e = row.answer.effect
        table.append([day_name(row.day), signed(e.score, 2), signed(e.stimulus, 2), signed_clock(e.seconds)])
    lines += grid(["Day", "Score", "Index", "Time"], table, "lrrr")
    if found.already.score > ROUNDING:
        said = (
            f"The same search without more minutes already gains {found.already.score:.2f} points on the week in "
            "hand; the table counts from there."
        )
        lines += wrapped(said, width)
    parts = ["\n".join(lines)]
    for row in found.days:
        if row.answer.effect.score > ROUNDING:
            lead = wrapped(f"{day_name(row.day)}: {proven_words(row.answer)}", width, "  ")
            parts.append("\n".join([*lead, *difference_lines(row.answer.effect, width)]))
    if len(parts) == 1:
        parts.append("Nothing is bought: no day's extra minutes raise the score.")
    return "\n\n".join(parts) + "\n"


def minutes_document(found: MoreMinutes) -> dict[str, Any]:
    return {
        "schema": MINUTES,
        "minutes": found.minutes,
        "already": effect_document(found.already),
        "days": [{"day": row.day.name, **answer_document(row.answer)} for row in found.days],
    }
