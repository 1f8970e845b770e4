"""The week as JSON: one document, integers in stated units, sorted keys, the same bytes for the same week."""

from __future__ import annotations

import hashlib
from typing import TYPE_CHECKING, Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.version import own_version
from setwright.solver.auditing import Audit
from setwright.solver.brief.parsed_brief import ParsedBrief, raw_of
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.evaluation.resolving import WIDE_OPEN
from setwright.solver.evaluation.uncertainty import intervals, week_interval
from setwright.solver.rules import RULES
from setwright.solver.sheets.common.caution import clearance_needed
from setwright.solver.sheets.common.costs import missed, points
from setwright.solver.sheets.document.day_parts import day_part, swaps_digest
from setwright.solver.sheets.document.json_values import rounded
from setwright.solver.sheets.document.week_model import SCHEMA

if TYPE_CHECKING:
    from setwright.solver.planning import Solved
    from setwright.solver.search.limits import Limits

UNPROVEN = 1e6
"""Index points: a bound as high as this was never brought down."""
PRIVATE = ("cautions", "clearance")
"""The client's fields that are health notes."""


def week_document(solved: Solved, private: bool = False) -> dict[str, Any]:
    """The solved week as design and programs read it; cautions and clearance only when `private`."""
    proven = solved.bound < UNPROVEN
    return {
        **brief_and_week(solved.parsed, solved.audit, private),
        "made_by": made_by(solved),
        "score": rounded(solved.score),
        "bound": rounded(solved.bound) if proven else None,
        "gap": rounded(solved.gap) if proven else None,
        "gap_share": rounded(solved.gap_share, 6) if proven else None,
        "ended_by": solved.ended_by,
        "pairs_would_add": None if solved.pairs_would_add is None else rounded(solved.pairs_would_add),
        "shortened": shortened_part(solved),
    }


def brief_and_week(parsed: ParsedBrief, audit: Audit, private: bool) -> dict[str, Any]:
    """What a week's document says of brief and week, whether it was solved or changed by hand."""
    resolved, client = audit.evaluated.resolved, parsed.brief.client
    evaluated = evaluated_part(audit)
    lines = [[(line["exercise"], line["swaps"]) for line in day["entries"]] for day in evaluated["days"]]
    return {
        "schema": SCHEMA,
        "brief": brief_part(parsed.brief, private),
        "assumed": assumed_of(parsed, private),
        "goal": resolved.goal,
        **evaluated,
        "swaps_digest": swaps_digest(lines),
        "overridden": overridden(resolved),
        "clearance_needed": clearance_needed(parsed.brief, resolved.catalogue),
        "private_left_out": not private and bool(client.cautions or client.clearance),
    }


def evaluated_part(audit: Audit) -> dict[str, Any]:
    """What any week's document says of it, whoever planned it."""
    evaluated = audit.evaluated
    days = [day_part(evaluated, day.index) for day in evaluated.resolved.days]
    return {
        "stimulus": rounded(audit.stimulus),
        "interval": list(week_interval(evaluated)),
        "costs": [{"rule": rule, "cost": rounded(points(cost))} for rule, cost in sorted(audit.costs().items())],
        "days": days,
        "muscles": muscles_part(evaluated),
        "missed": [
            {"id": f.rule, "sentence": RULES[f.rule].sentence, "text": f.text, "cost": rounded(points(f.cost))}
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
        "limits": limits_part(solved.limits),
    }


def limits_part(limits: Limits) -> dict[str, str | int | float]:
    """How hard the search worked, by the names of the document's first version."""
    return {
        "search": limits.name,
        "rounds": limits.rounds,
        "work": limits.work,
        "columns": limits.columns,
        "nodes": limits.nodes,
        "theme_nodes": limits.pattern_nodes,
        "leap_nodes": limits.heuristic_nodes,
        "settle_nodes": limits.fixing_nodes,
        "seconds": limits.seconds,
    }


def evidence_digest(catalogue: Catalogue) -> str:
    """Twelve letters that change with any number's value or interval."""
    said = "\n".join(f"{n.id} {n.value!r} {n.low!r} {n.high!r}" for n in catalogue.evidence.values())
    return hashlib.sha256(said.encode()).hexdigest()[:12]


def brief_part(brief: Brief, private: bool) -> dict[str, Any]:
    """The brief as understood, without health notes unless `private`."""
    raw = raw_of(brief)
    if not private:
        raw["client"] = {key: value for key, value in raw["client"].items() if key not in PRIVATE}
    return raw


def assumed_of(parsed: ParsedBrief, private: bool) -> list[str]:
    """The sentences of the assumptions; health notes only when `private`."""
    return [said.text for said in parsed.assumed if private or said.kind != "health"]


def muscles_part(evaluated: EvaluatedWeek) -> list[dict[str, Any]]:
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
    return [{"id": rule, "said": value, "sentence": RULES[rule].sentence} for rule, value in said if rule in RULES]


def shortened_part(solved: Solved) -> dict[str, Any] | None:
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
