"""A week changed by hand as JSON: the document of `week`, with nothing proven of it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from setwright.catalogue.version import own_version
from setwright.solver.auditing import Audit
from setwright.solver.brief.parsed_brief import ParsedBrief
from setwright.solver.brief.schema import PRIVATE
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.loads.said_loads import SaidLoads
from setwright.solver.sheets.document.provenance import evidence_digest
from setwright.solver.sheets.document.solved_week import brief_and_week
from setwright.solver.uses.edits.card_swaps import CardSwaps

ENDED_BY = "changed by hand"
NO_SEARCH: dict[str, str | int | float] = {
    "search": "none",
    "rounds": 0,
    "work": 0.0,
    "columns": 0,
    "nodes": 0,
    "theme_nodes": 0,
    "leap_nodes": 0,
    "settle_nodes": 0,
    "seconds": 0.0,
}


def changed_week_document(
    document: Mapping[str, Any],
    parsed: ParsedBrief,
    audit: Audit,
    loads: SaidLoads | None = None,
    swaps: CardSwaps | None = None,
) -> dict[str, Any]:
    """The changed week; cautions and clearance are in it only if they were in the document it came from.

    `loads` takes the place of what is said of the loads that the brief's lifts give, `swaps` that of every line's
    swaps: where they are known, or none are to be looked for.
    """
    client = document.get("brief", {}).get("client")
    private = isinstance(client, Mapping) and any(client.get(key) for key in PRIVATE)
    resolved = audit.evaluated.resolved
    made_by = {"version": own_version(), "catalogue": resolved.catalogue.digest, "seed": 0, "limits": NO_SEARCH}
    return {
        **brief_and_week(parsed, audit, private, loads, swaps),
        "made_by": {"evidence": evidence_digest(resolved.catalogue), **made_by, **document.get("made_by", {})},
        "score": rounded(audit.score),
        "bound": None,
        "gap": None,
        "gap_share": None,
        "ended_by": ENDED_BY,
        "best_without_pairs": None,
        "shortened": None,
    }
