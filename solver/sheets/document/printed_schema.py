"""The JSON Schemas of the documents, made from the models that read them."""

from __future__ import annotations

from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaMode, JsonSchemaValue
from pydantic_core import core_schema

from setwright.solver.brief.schema_json import brief_schema
from setwright.solver.sheets.document.blocks.block_model import BlockDocument
from setwright.solver.sheets.document.progress.log_model import LogDocument
from setwright.solver.sheets.document.progress.next_week_document import NextWeekDocument
from setwright.solver.sheets.document.progress.pace_document import PaceDocument
from setwright.solver.sheets.document.season.season_model import SeasonDocument
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
        line = week["$defs"]["WeekLine"]
        line["required"] = [name for name in line["required"] if name not in ("ramp_up", "plates")]
    return {"$schema": brief["$schema"], **week, "title": "A lifting week"}


def block_schema() -> dict[str, Any]:
    """The schema of what is read as a block; its briefs are the schema of a brief file."""
    block = BlockDocument.model_json_schema(schema_generator=_WithoutDefaults)
    brief = brief_schema()
    block["$defs"] |= brief.pop("$defs")
    block["$defs"]["Brief"] = {name: part for name, part in brief.items() if name != "$schema"}
    block["properties"]["brief"] = {"$ref": "#/$defs/Brief"}
    week = block["$defs"]["BlockWeekPart"]["properties"]
    week["brief"] = {"anyOf": [{"$ref": "#/$defs/Brief"}, {"type": "null"}]}
    return {"$schema": brief["$schema"], **block, "title": "A block of lifting weeks"}


def log_schema(mode: JsonSchemaMode = "validation") -> dict[str, Any]:
    """The schema of what is read as a training log.

    With "serialization" every field is required that `setwright log read --json` writes.
    """
    log = LogDocument.model_json_schema(schema_generator=_WithoutDefaults, mode=mode)
    return {"$schema": brief_schema()["$schema"], **log, "title": "A training log"}


def season_schema() -> dict[str, Any]:
    """The schema of what `setwright season --json` writes."""
    return _written(SeasonDocument, "A season of lifting weeks")


def next_schema() -> dict[str, Any]:
    """The schema of what `setwright block next --json` writes."""
    return _written(NextWeekDocument, "What is next for every line of a week")


def pace_schema() -> dict[str, Any]:
    """The schema of what `setwright log pace --json` writes."""
    return _written(PaceDocument, "How long a client takes")


def _written(model: type[BaseModel], title: str) -> dict[str, Any]:
    """The schema of a document that is written and not read."""
    return {"$schema": brief_schema()["$schema"], **model.model_json_schema(mode="serialization"), "title": title}
