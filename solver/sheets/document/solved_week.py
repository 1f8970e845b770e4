"""The week as JSON: one document, integers in stated units, sorted keys, the same bytes for the same week."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from setwright.solver.auditing import Audit
from setwright.solver.brief.parsed_brief import ParsedBrief, raw_of
from setwright.solver.brief.schema import PRIVATE, Brief
from setwright.solver.evaluation.resolved_brief import ResolvedBrief
from setwright.solver.rulebook import RULES, sentence_of
from setwright.solver.sheets.common.caution import clearance_needed
from setwright.solver.sheets.common.costs import points
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.loads.load_words import Words
from setwright.solver.sheets.document.day_parts import swaps_digest
from setwright.solver.sheets.document.figures import evaluated_part
from setwright.solver.sheets.document.provenance import made_by
from setwright.solver.sheets.document.week_model import SCHEMA
from setwright.solver.uses.edits.card_swaps import CardSwaps

if TYPE_CHECKING:
    from setwright.solver.planning import Solved

UNPROVEN = math.inf
"""The bound of a week of which nothing was proven; documents say null."""


def week_document(solved: Solved, private: bool = False, loads: Words | None = None) -> dict[str, Any]:
    """The solved week as design and programs read it; cautions and clearance only when `private`.

    `loads`, (day, place) from 0 to words with their unit, takes the place of the loads that the brief's lifts give.
    """
    proven = solved.bound < UNPROVEN
    return {
        **brief_and_week(solved.parsed, solved.audit, private, loads),
        "made_by": made_by(solved),
        "score": rounded(solved.score),
        "bound": rounded(solved.bound) if proven else None,
        "gap": rounded(solved.gap) if proven else None,
        "gap_share": rounded(solved.gap_share, 6) if proven else None,
        "ended_by": solved.ended_by,
        "best_without_pairs": None if solved.best_without_pairs is None else rounded(solved.best_without_pairs),
        "shortened": shortened_part(solved),
    }


def brief_and_week(
    parsed: ParsedBrief, audit: Audit, private: bool, loads: Words | None = None, swaps: CardSwaps | None = None
) -> dict[str, Any]:
    """What a week's document says of brief and week, whether it was solved or changed by hand."""
    resolved, client = audit.evaluated.resolved, parsed.brief.client
    evaluated = evaluated_part(audit, loads, swaps)
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
        "private_left_out": not private and any(bool(getattr(client, field)) for field in PRIVATE),
    }


def brief_part(brief: Brief, private: bool) -> dict[str, Any]:
    """The brief as understood, without health notes unless `private`."""
    raw = raw_of(brief)
    if not private:
        raw["client"] = {key: value for key, value in raw["client"].items() if key not in PRIVATE}
    return raw


def assumed_of(parsed: ParsedBrief, private: bool) -> list[str]:
    """The sentences of the assumptions; health notes only when `private`."""
    return [said.text for said in parsed.assumed if private or said.kind != "health"]


def overridden(resolved: ResolvedBrief) -> list[dict[str, Any]]:
    """The rules that the brief turned off, made hard or priced itself."""
    said = sorted(resolved.brief.rules.items())
    return [
        {"id": rule, "said": value, "sentence": sentence_of(rule, resolved)} for rule, value in said if rule in RULES
    ]


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
