"""The kind of value that says which column of a log is which."""

from __future__ import annotations

import csv
from typing import Any

import click

from setwright.solver.cli.option_types import OptionType


class ColumnsType(OptionType):
    """date=Datum,load=Weight as field -> heading; a heading with a comma stands in quotes with its field."""

    name = "columns"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> dict[str, str]:
        """The headings by field; raises click.BadParameter that names every part that is amiss."""
        if isinstance(value, dict):
            return value
        parts = [part.strip() for part in next(csv.reader([value], skipinitialspace=True), []) if part.strip()]
        found: dict[str, str] = {}
        wrong = []
        for part in parts:
            field, equals, heading = (piece.strip() for piece in part.partition("="))
            if not (field and equals and heading):
                wrong.append(f"got {part!r}, expected FIELD=HEADING such as date=Datum")
            elif field in found or heading in found.values():
                wrong.append(f"{part!r} names {field if field in found else heading!r} a second time")
            else:
                found[field] = heading
        if wrong or not parts:
            self.fail("\n".join(wrong) or "names no column; write FIELD=HEADING such as date=Datum", param, ctx)
        return found
