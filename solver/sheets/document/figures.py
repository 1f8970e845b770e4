"""What any week's document says of it, whoever planned it: index, costs, sessions, muscles, what it misses."""

from __future__ import annotations

from typing import Any

from setwright.solver.auditing import Audit
from setwright.solver.evaluation.evaluated_week import WHOLE, EvaluatedWeek
from setwright.solver.evaluation.resolving import WIDE_OPEN
from setwright.solver.evaluation.uncertainty import intervals, week_interval
from setwright.solver.rulebook import sentence_of
from setwright.solver.sheets.common.costs import missed, points
from setwright.solver.sheets.common.findings import finding_words
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.loads.load_words import Words, line_load_words, ramp_load_words
from setwright.solver.sheets.document.day_parts import day_part
from setwright.solver.uses.edits.card_swaps import CardSwaps, swaps_on_cards


def evaluated_part(audit: Audit, loads: Words | None = None, swaps: CardSwaps | None = None) -> dict[str, Any]:
    """The figures of an audited week; scores, costs and the week index in index points.

    `loads`, (day, place) from 0 to words with their unit, takes the place of the loads that the brief's lifts give.
    `swaps` are those of the lines where they are known, or where none are to be looked for.
    """
    evaluated = audit.evaluated
    if swaps is None:
        swaps = swaps_on_cards(audit)
    said = line_load_words(evaluated) if loads is None else loads
    ramps = ramp_load_words(evaluated) if loads is None else {}
    days = [day_part(evaluated, day.index, swaps, said, ramps) for day in evaluated.resolved.days]
    return {
        "stimulus": rounded(audit.stimulus),
        "interval": list(week_interval(evaluated)),
        "costs": [{"rule": rule, "cost": rounded(points(cost))} for rule, cost in sorted(audit.costs().items())],
        "days": days,
        "muscles": muscles_part(evaluated),
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
