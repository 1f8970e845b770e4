"""The JSON Schema of a week document."""

from __future__ import annotations

from typing import Any

from setwright.solver.brief.schema_json import brief_schema
from setwright.solver.sheets.document.week_document import SCHEMA
from setwright.solver.sheets.document.week_reader import TECHNIQUES

WHOLE = {"type": "integer"}
SECONDS = {"type": "integer", "minimum": 0}
NUMBER = {"type": "number"}
MAYBE = {"type": ["number", "null"]}
WORDS = {"type": "string"}
MAYBE_WORDS = {"type": ["string", "null"]}
SPAN = {"type": "array", "items": WHOLE, "minItems": 2, "maxItems": 2}


def thing(**properties: Any) -> dict[str, Any]:
    """An object with all of these; more may come within the same number of the schema."""
    return {"type": "object", "properties": properties, "required": sorted(properties)}


def many(items: dict[str, Any]) -> dict[str, Any]:
    return {"type": "array", "items": items}


ENTRY = thing(
    order=WHOLE,
    group=WORDS,
    place={"enum": [1, 2]},
    exercise=WORDS,
    name=WORDS,
    sets=WHOLE,
    reps=SPAN,
    rir=WHOLE,
    rest_seconds=SECONDS,
    technique={"enum": list(TECHNIQUES)},
    drops=WHOLE,
    limb={"enum": ["both", "each, then rest", "each, rest after each"]},
    paired_with=MAYBE_WORDS,
    ramp_up_sets=WHOLE,
    seconds=SECONDS,
    load=MAYBE,
    why=WORDS,
    swaps=many(WORDS),
)
DAY = thing(
    weekday=MAYBE_WORDS,
    minutes=WHOLE,
    seconds=SECONDS,
    warm_up_seconds=SECONDS,
    ramp_up_seconds=SECONDS,
    seconds_by_kind=thing(warm_up=SECONDS, ramp_up=SECONDS, lifting=SECONDS, resting=SECONDS, change_over=SECONDS),
    entries=many(ENTRY),
)
BAND = {"type": ["array", "null"], "items": MAYBE, "minItems": 2, "maxItems": 2}
MUSCLE = thing(
    muscle=WORDS,
    emphasis={"enum": ["priority", "normal", "hold", "none", "counted"]},
    sets=NUMBER,
    direct_sets=NUMBER,
    days=WHOLE,
    band=BAND,
    index=WHOLE,
    interval=SPAN,
)
LIMITS = thing(
    search=WORDS,
    rounds=WHOLE,
    work=NUMBER,
    columns=WHOLE,
    nodes=WHOLE,
    pattern_nodes=WHOLE,
    heuristic_nodes=WHOLE,
    fixing_nodes=WHOLE,
    seconds=NUMBER,
)
ALTERNATIVE = thing(
    rank=WHOLE,
    score=NUMBER,
    stimulus=NUMBER,
    cost=NUMBER,
    stimulus_cost=NUMBER,
    seconds_more=WHOLE,
    distance=NUMBER,
    gains=many(WORDS),
    lacks=many(WORDS),
    sets_more=many(thing(muscle=WORDS, sets=NUMBER)),
    days=many(DAY),
    muscles=many(MUSCLE),
)
"""Stands in a week's document only where alternatives were asked for."""
SHORTENED = thing(best_score=NUMBER, floor=NUMBER, keep_share=NUMBER, seconds=SECONDS, least_seconds=SECONDS)


def week_schema() -> dict[str, Any]:
    """The schema of `setwright week --json`; its brief is the schema of a brief file."""
    brief = brief_schema()
    definitions = brief.pop("$defs", {})
    brief.pop("$schema", None)
    week = thing(
        schema={"const": SCHEMA},
        made_by=thing(version=WORDS, catalogue=WORDS, evidence=WORDS, seed=WHOLE, limits=LIMITS),
        brief=brief,
        assumed=many(WORDS),
        goal={"enum": ["growth", "efficiency", "balanced"]},
        stimulus=NUMBER,
        interval=SPAN,
        score=NUMBER,
        bound=MAYBE,
        gap=MAYBE,
        gap_share=MAYBE,
        ended_by={"enum": ["proved", "work limit", "time limit", "stopped", "changed by hand"]},
        costs=many(thing(rule=WORDS, cost=NUMBER)),
        days=many(DAY),
        muscles=many(MUSCLE),
        overridden=many(thing(id=WORDS, said={"type": ["string", "number"]}, sentence=WORDS)),
        missed=many(thing(id=WORDS, sentence=WORDS, text=WORDS, cost=NUMBER)),
        clearance_needed={"type": "boolean"},
        private_left_out={"type": "boolean"},
        pairs_would_add=MAYBE,
        shortest={"anyOf": [SHORTENED, {"type": "null"}]},
    )
    week["properties"]["alternatives"] = many(ALTERNATIVE)
    dialect = "https://json-schema.org/draft/2020-12/schema"
    return {"$schema": dialect, "title": "A lifting week", **week, "$defs": definitions}
