"""The JSON Schema of a week's document, made from the models that read it."""

from __future__ import annotations

from typing import Any

from pydantic.json_schema import GenerateJsonSchema, JsonSchemaMode, JsonSchemaValue
from pydantic_core import core_schema

from setwright.solver.brief.schema_json import brief_schema
from setwright.solver.sheets.document.week_model import WeekDocument


class _WithoutDefaults(GenerateJsonSchema):
    """What stands in for a field that was left out is read by nothing, so that it is not printed."""

    def default_schema(self, schema: core_schema.WithDefaultSchema) -> JsonSchemaValue:
        """The schema of a field with a default, without it."""
        return self.generate_inner(schema["schema"])


def week_schema(mode: JsonSchemaMode = "validation") -> dict[str, Any]:
    """The schema of what is read as a week; its brief is the schema of a brief file.

    With "serialization" every field is required that `setwright week --json` writes.
    """
    week = WeekDocument.model_json_schema(schema_generator=_WithoutDefaults, mode=mode)
    brief = brief_schema()
    week["$defs"] |= brief.pop("$defs")
    week["$defs"]["Brief"] = {name: part for name, part in brief.items() if name != "$schema"}
    week["properties"]["brief"] = {"$ref": "#/$defs/Brief"}
    if mode == "serialization":
        week["required"] = [name for name in week["required"] if name not in ("alternatives", "replan")]
    return {"$schema": brief["$schema"], **week, "title": "A lifting week"}
