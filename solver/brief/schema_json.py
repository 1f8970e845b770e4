"""The brief's JSON Schema, for editors and other programs."""

from __future__ import annotations

from typing import Any

from setwright.solver.brief.schema import Brief


def brief_schema() -> dict[str, Any]:
    """The JSON Schema of a brief file; a muscle may also be its emphasis alone, a lift words."""
    schema = Brief.model_json_schema()
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    muscles = schema["properties"]["muscles"]
    emphases = schema["$defs"]["MuscleAsk"]["properties"]["emphasis"]["enum"]
    muscles["additionalProperties"] = {"anyOf": [{"enum": emphases, "type": "string"}, {"$ref": "#/$defs/MuscleAsk"}]}
    lifts = schema["properties"]["lifts"]["anyOf"][0]
    lifts["additionalProperties"] = {"anyOf": [{"type": "string"}, {"$ref": "#/$defs/LiftAsk"}]}
    return schema
