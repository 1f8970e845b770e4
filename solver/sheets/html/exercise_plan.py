"""A week in the words of schema.org: an ExercisePlan of sessions of exercises, safe to embed in a page."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from setwright.solver.sheets.handout.values import CardLine, Handout, Session

STRENGTH = "strength training"
UNSAFE = {ord(letter): f"\\u{ord(letter):04x}" for letter in "<>&\u2028\u2029"}
"""Letters that could end the script element that holds the JSON."""


def schema_org_plan(handout: Handout) -> dict[str, Any]:
    """The week as schema.org/ExercisePlan; without the client's code, the coach and everything private."""
    sessions = [session for session in handout.sessions if session.lines]
    return {
        "@context": "https://schema.org",
        **_plan(handout.title),
        "inLanguage": handout.coach.language,
        "description": handout.goal,
        "activityFrequency": _measured(len(sessions), "sessions a week"),
        "hasPart": [_session_plan(session) for session in sessions],
    }


def _session_plan(session: Session) -> dict[str, Any]:
    """One session; its length as an ISO 8601 duration."""
    return {
        **_plan(session.title),
        "activityDuration": f"PT{session.minutes}M",
        "hasPart": [line_plan(place, line) for place, line in enumerate(session.lines, 1)],
    }


def line_plan(place: int, line: CardLine) -> dict[str, Any]:
    """One exercise; repetitions are those of one set, rests and holds in seconds (UN/CEFACT code SEC)."""
    said = [f"{line.sets} sets", *(["reps are for each side"] if line.per_side else [])]
    said += [text for text in (line.technique, line.load and f"load: {line.load}") if text]
    return {
        **_plan(line.name),
        "position": place,
        **_one_set(line),
        "restPeriods": {"@type": "QuantitativeValue", "value": line.rest_seconds, "unitCode": "SEC"},
        "intensity": _measured(line.rir, "repetitions in reserve"),
        "additionalVariable": "; ".join(said),
    }


def _one_set(line: CardLine) -> dict[str, Any]:
    """How often, or how long, the exercise is done in one set."""
    low, high = line.amount
    ends = {"@type": "QuantitativeValue", "minValue": low, "maxValue": high}
    return {"activityDuration": {**ends, "unitCode": "SEC"}} if line.timed else {"repetitions": ends}


def _plan(name: str) -> dict[str, Any]:
    """What every part says of itself."""
    return {"@type": "ExercisePlan", "name": name, "exerciseType": STRENGTH}


def _measured(value: float, unit: str) -> dict[str, Any]:
    """A number with its unit in words."""
    return {"@type": "QuantitativeValue", "value": value, "unitText": unit}


def embedded(document: dict[str, Any]) -> str:
    """JSON that no text in it can end early, in a fixed order of keys."""
    return json.dumps(document, sort_keys=True, ensure_ascii=False, allow_nan=False).translate(UNSAFE)
