"""The week as JSON: one document, integers in stated units, sorted keys, the same bytes for the same week."""

from __future__ import annotations

import hashlib
import json
import math
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.version import own_version
from setwright.solver.auditing import Audit
from setwright.solver.brief.parsed_brief import ParsedBrief, raw_of
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek, Line
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolving import WIDE_OPEN
from setwright.solver.evaluation.uncertainty import intervals, week_interval
from setwright.solver.rulebook import RULES, sentence_of
from setwright.solver.sheets.common.caution import clearance_needed
from setwright.solver.sheets.common.choices import swaps, why
from setwright.solver.sheets.common.costs import missed, points
from setwright.solver.sheets.common.findings import finding_words
from setwright.solver.sheets.common.ramp import ramp_ups
from setwright.solver.sheets.common.time_breakdown import seconds_by_kind

if TYPE_CHECKING:
    from setwright.solver.planning import Solved

SCHEMA = "setwright.week/1"
UNPROVEN = math.inf
"""The bound of a week of which nothing was proven; documents say null."""
PRIVATE = ("cautions", "clearance")


def dumped(document: dict[str, Any]) -> str:
    """A document's text: sorted keys, one space of indent, a newline at the end."""
    return json.dumps(document, sort_keys=True, indent=1, ensure_ascii=False, allow_nan=False) + "\n"


def week_document(solved: Solved, private: bool = False) -> dict[str, Any]:
    """The solved week as design and programs read it; cautions and clearance only when `private`."""
    proven = solved.bound < UNPROVEN
    return {
        **said_of(solved.parsed, solved.audit, private),
        "made_by": made_by(solved),
        "score": rounded(solved.score),
        "bound": rounded(solved.bound) if proven else None,
        "gap": rounded(solved.gap) if proven else None,
        "gap_share": rounded(solved.gap_share, 6) if proven else None,
        "ended_by": solved.ended_by,
        "pairs_would_add": None if solved.pairs_would_add is None else rounded(solved.pairs_would_add),
        "shortened": shortest(solved),
    }


def said_of(parsed: ParsedBrief, audit: Audit, private: bool) -> dict[str, Any]:
    """What a week's document says of brief and week, whether it was solved or changed by hand."""
    resolved, client = audit.evaluated.resolved, parsed.brief.client
    return {
        "schema": SCHEMA,
        "brief": brief_of(parsed.brief, private),
        "assumed": assumed_of(parsed, private),
        "goal": resolved.goal,
        **reckoned(audit),
        "overridden": overridden(resolved),
        "clearance_needed": clearance_needed(parsed.brief, resolved.catalogue),
        "private_left_out": not private and bool(client.cautions or client.clearance),
    }


def reckoned(audit: Audit) -> dict[str, Any]:
    """What any week's document says of it, whoever planned it."""
    evaluated = audit.evaluated
    return {
        "stimulus": rounded(audit.stimulus),
        "interval": list(week_interval(evaluated)),
        "costs": [{"rule": rule, "cost": rounded(points(cost))} for rule, cost in sorted(audit.costs().items())],
        "days": [day_of(evaluated, day.index) for day in evaluated.resolved.days],
        "muscles": muscles_of(evaluated),
        "missed": [
            {
                "id": f.rule,
                "sentence": sentence_of(f.rule, evaluated.resolved),
                "text": finding_words(f, evaluated.resolved),
                "cost": rounded(points(f.cost)),
            }
            for f in missed(audit)
        ],
    }


def made_by(solved: Solved) -> dict[str, Any]:
    """What the week was made with: the same of all these gives the same week."""
    from setwright.solver.engines.cpsat import SEED

    return {
        "version": own_version(),
        "catalogue": solved.resolved.catalogue.digest,
        "evidence": evidence_digest(solved.resolved.catalogue),
        "seed": SEED,
        "limits": {"search" if name == "name" else name: value for name, value in asdict(solved.limits).items()},
    }


def evidence_digest(catalogue: Catalogue) -> str:
    """Twelve letters that change with any number's value or interval."""
    said = "\n".join(f"{n.id} {n.value!r} {n.low!r} {n.high!r}" for n in catalogue.evidence.values())
    return hashlib.sha256(said.encode()).hexdigest()[:12]


def brief_of(brief: Brief, private: bool) -> dict[str, Any]:
    """The brief as understood, without health notes unless `private`."""
    raw = raw_of(brief)
    if not private:
        raw["client"] = {key: value for key, value in raw["client"].items() if key not in PRIVATE}
    return raw


def assumed_of(parsed: ParsedBrief, private: bool) -> list[str]:
    """The assumptions; those that name a caution only when `private`."""
    return [said for said in parsed.assumed if private or not said.startswith("caution ")]


def day_of(evaluated: EvaluatedWeek, day: int) -> dict[str, Any]:
    """One session."""
    resolved = evaluated.resolved.days[day]
    ramps = ramp_ups(evaluated, day)
    letters = groups(evaluated, day)
    return {
        "weekday": resolved.weekday,
        "minutes": resolved.minutes,
        "seconds": evaluated.seconds(day),
        "warm_up_seconds": evaluated.warm_up(day),
        "ramp_up_seconds": sum(seconds for (d, _), seconds in evaluated.ramp_up.items() if d == day),
        "seconds_by_kind": seconds_by_kind(evaluated, day),
        "entries": [
            {**entry_of(evaluated, line), **letters[line.place], "ramp_up_sets": len(ramps.get(line.place, ()))}
            for line in evaluated.on[day]
        ],
    }


def entry_of(evaluated: EvaluatedWeek, line: Line) -> dict[str, Any]:
    """One line of a card."""
    entry, exercise = line.entry, line.exercise
    halves = line.prescription.half_seconds
    return {
        "order": line.place + 1,
        "exercise": exercise.id,
        "name": exercise.name,
        "sets": entry.sets,
        "reps": list(entry.reps),
        "rir": entry.rir,
        "rest_seconds": entry.rest,
        "technique": entry.technique,
        "drops": entry.drops,
        "limb": exercise.limb,
        "paired_with": entry.partner,
        "seconds": halves // 2 if leads(evaluated, line) is False else (halves + 1) // 2,
        "load": None,
        "why": why(evaluated, line),
        "swaps": [e.id for e in swaps(evaluated, line)],
    }


def leads(evaluated: EvaluatedWeek, line: Line) -> bool | None:
    """Whether a line is the first of its pair; None for a line alone."""
    if line.entry.partner is None:
        return None
    before = evaluated.on[line.day.index][: line.place]
    return not any(x.exercise.id == line.entry.partner for x in before)


def groups(evaluated: EvaluatedWeek, day: int) -> list[dict[str, Any]]:
    """Each line's letter and its place under it: a pair shares a letter."""
    found: list[dict[str, Any]] = []
    letter = -1
    for line in evaluated.on[day]:
        second = leads(evaluated, line) is False and evaluated.on[day][line.place - 1].exercise.id == line.entry.partner
        letter += not second
        found.append({"group": letter_of(letter), "place": 2 if second else 1})
    return found


def letter_of(place: int) -> str:
    """A, B ... Z, AA, AB ..."""
    return (letter_of(place // 26 - 1) if place >= 26 else "") + chr(ord("A") + place % 26)


def muscles_of(evaluated: EvaluatedWeek) -> list[dict[str, Any]]:
    """Every muscle with its weekly sets, band and index."""
    sure = intervals(evaluated)
    return [
        {
            "muscle": m.id,
            "emphasis": m.emphasis,
            "sets": rounded(evaluated.weekly_sets(m.id) / WHOLE),
            "direct_sets": rounded(evaluated.direct_sets(m.id) / WHOLE),
            "days": evaluated.direct_days(m.id),
            "band": None if m.high >= WIDE_OPEN and not m.low else [m.low, None if m.high >= WIDE_OPEN else m.high],
            "index": round(evaluated.index(m.id)),
            "interval": list(sure[m.id]),
        }
        for m in evaluated.resolved.muscles.values()
    ]


def overridden(resolved: ResolvedBrief) -> list[dict[str, Any]]:
    """The rules that the brief turned off, made hard or priced itself."""
    said = sorted(resolved.brief.rules.items())
    return [
        {"id": rule, "said": value, "sentence": sentence_of(rule, resolved)} for rule, value in said if rule in RULES
    ]


def shortest(solved: Solved) -> dict[str, Any] | None:
    """What the minutes were cut from, where the goal cuts them."""
    found = solved.shortest
    if found is None:
        return None
    return {
        "best_score": rounded(found.best_score),
        "floor": rounded(points(found.floor)),
        "keep_share": solved.resolved.keep_share,
        "seconds": found.seconds,
        "least_seconds": found.least_seconds,
    }


def rounded(value: float, places: int = 4) -> float:
    """A number as printed; never minus zero."""
    return round(value, places) + 0.0 if math.isfinite(value) else 0.0
