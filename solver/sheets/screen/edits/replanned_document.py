"""A replanned week as JSON: a changed week's document, its done sessions as they were written, and what changed."""

from __future__ import annotations

from collections.abc import Mapping, Set
from typing import Any

from setwright.solver.auditing import Audit
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.document.day_parts import entry_part, swaps_digest
from setwright.solver.uses.edits.card_swaps import CardSwaps, swaps_on_cards
from setwright.solver.uses.replan.replanned import Replanned


def replanned_document(document: Mapping[str, Any], found: Replanned) -> dict[str, Any]:
    """The week as it is now; `document` is the one it was read from, empty where it was planned for this."""
    as_written = "swaps_digest" in document and document["swaps_digest"] == _digest(document["days"])
    done = found.happened.done if as_written else frozenset()
    said = changed_week_document(document, found.parsed, found.after, swaps=_swaps_but_of(done, found.after))
    if as_written:
        for day in done:
            said["days"][day] = document["days"][day]
        said["swaps_digest"] = _digest(said["days"])
    return {**said, "replan": replan_part(found)}


def _swaps_but_of(done: Set[int], audited: Audit) -> CardSwaps:
    """The swaps of a week's lines, none of those on `done` days."""
    on = audited.evaluated.on
    none = {(line.day.index, line.place): () for day in done for line in on[day]}
    return {**none, **swaps_on_cards(audited, [day for day in range(len(on)) if day not in done])}


def _digest(days: list[dict[str, Any]]) -> str:
    return swaps_digest([[(line["exercise"], line["swaps"]) for line in day["entries"]] for day in days])


def replan_part(found: Replanned) -> dict[str, Any]:
    """What was done and missed, the lines that changed, and the muscles that end below their band."""
    days = found.after.evaluated.resolved.days
    return {
        "done": [days[day].name for day in sorted(found.happened.done)],
        "missed": [days[day].name for day in sorted(found.happened.missed)],
        "replanned": [days[day].name for day in found.left],
        "changed_lines": found.changed_lines,
        "changes": [
            {
                "day": days[change.day].name,
                "before": change.before and entry_part(change.before),
                "after": change.after and entry_part(change.after),
            }
            for change in found.changes
        ],
        "below_band": [
            {"muscle": m.muscle, "sets": rounded(m.sets), "band_from": m.low, "sets_planned": rounded(m.planned)}
            for m in found.below_band
        ],
        "given_up": rounded(found.given_up),
        "keep_share": found.share,
        "pins_dropped": [pin.exercise for pin in found.pins_dropped],
    }
