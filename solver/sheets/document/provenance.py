"""What a week was made with: versions, digests and how hard the search worked."""

from __future__ import annotations

import hashlib
from typing import TYPE_CHECKING, Any

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.version import own_version

if TYPE_CHECKING:
    from setwright.solver.planning import Solved
    from setwright.solver.search.limits import Limits


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
    }


def evidence_digest(catalogue: Catalogue) -> str:
    """Twelve letters that change with any number's value or interval."""
    said = "\n".join(f"{n.id} {n.value!r} {n.low!r} {n.high!r}" for n in catalogue.evidence.values())
    return hashlib.sha256(said.encode()).hexdigest()[:12]
