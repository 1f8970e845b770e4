"""What `setwright schema week` prints, against what is written and what is read."""

from __future__ import annotations

import copy
import json
from collections.abc import Callable
from typing import Any

import pytest
from handed import PAIRS, THREE, document, shipped
from jsonschema import Draft202012Validator
from pydantic import BaseModel

from setwright.catalogue.faults import UsageFault
from setwright.solver.planning import Solved
from setwright.solver.sheets.document.printed_schema import week_schema
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.document.week_model import WeekDocument
from setwright.solver.sheets.document.week_reader import read_week

READ = Draft202012Validator(week_schema())
WRITTEN = Draft202012Validator(week_schema("serialization"))
"""The same with every field required that is written."""


def test_it_is_a_json_schema() -> None:
    Draft202012Validator.check_schema(week_schema())


def test_a_written_week_fits_and_has_every_field(solved: Solved) -> None:
    said = week_document(solved)
    assert list(READ.iter_errors(said)) == []
    assert list(WRITTEN.iter_errors(said)) == []


def test_every_field_that_is_written_is_in_the_schema(solved: Solved) -> None:
    assert unknown(week_document(solved), WeekDocument) == []


def unknown(said: dict[str, Any], model: type[BaseModel], path: str = "") -> list[str]:
    """The fields of a document that its model does not name, in the parts that every week has."""
    names = {field.alias or name: name for name, field in model.model_fields.items()}
    found = [f"{path}{name}" for name in said if name not in names]
    read = model.model_validate(said)
    for name in set(said) & set(names):
        value = getattr(read, names[name])
        for place, part in enumerate(value if isinstance(value, tuple) else (value,)):
            if isinstance(part, BaseModel):
                row = said[name][place] if isinstance(value, tuple) else said[name]
                found += unknown(row, type(part), f"{path}{name}.")
    return found


@pytest.mark.parametrize("name", [THREE, PAIRS, "six-90"])
def test_weeks_of_earlier_versions_fit(name: str) -> None:
    assert list(READ.iter_errors(document(name))) == []
    read_week(document(name), shipped())


def test_fields_that_are_not_known_are_passed_over() -> None:
    said = document()
    said["new"] = 1
    said["days"][0]["entries"][0]["new"] = [None]
    assert READ.is_valid(said)
    read_week(said, shipped())


def first_line(said: dict[str, Any]) -> dict[str, Any]:
    line: dict[str, Any] = said["days"][0]["entries"][0]
    return line


SPOILT: dict[str, Callable[[dict[str, Any]], object]] = {
    "load as text": lambda said: first_line(said).update(load="20 kg"),
    "load as nothing": lambda said: first_line(said).update(load=None),
    "load as a number": lambda said: first_line(said).update(load=20),
    "no brief": lambda said: said.pop("brief"),
    "no days": lambda said: said.pop("days"),
    "no muscles": lambda said: said.pop("muscles"),
    "no client": lambda said: said["brief"].pop("client"),
    "no sets": lambda said: first_line(said).pop("sets"),
    "no reason": lambda said: first_line(said).pop("why"),
    "sets as text": lambda said: first_line(said).update(sets="3"),
    "half a set": lambda said: first_line(said).update(sets=2.5),
    "sets true": lambda said: first_line(said).update(sets=True),
    "many sets": lambda said: first_line(said).update(sets=21),
    "three ends": lambda said: first_line(said).update(reps=[8, 10, 12]),
    "one end": lambda said: first_line(said).update(reps=[8]),
    "another technique": lambda said: first_line(said).update(technique="cluster"),
    "no swaps": lambda said: first_line(said).update(swaps=[]),
    "swaps as text": lambda said: first_line(said).update(swaps="leg-press"),
    "a cost without its rule": lambda said: said["costs"][0].pop("rule"),
    "index as text": lambda said: said.update(stimulus="57"),
    "index as nothing": lambda said: said.update(stimulus=None),
    "no bound": lambda said: said.update(bound=None),
    "another end": lambda said: said.update(ended_by="tired"),
    "a rule at a price": lambda said: said.update(overridden=[{"id": "third-day", "said": 2.5, "sentence": "x"}]),
    "a rule at a word": lambda said: said.update(overridden=[{"id": "third-day", "said": "soft", "sentence": "x"}]),
    "another weekday": lambda said: said["days"][0].update(weekday="monday"),
    "assumptions as text": lambda said: said.update(assumed="days"),
    "clearance as text": lambda said: said.update(clearance_needed="no"),
    "another version": lambda said: said.update(schema="setwright.week/2"),
}


@pytest.mark.parametrize("name", SPOILT)
def test_what_is_read_is_what_fits(name: str) -> None:
    """The printed schema, checked by jsonschema, and the reader agree on each of these."""
    said = copy.deepcopy(document())
    SPOILT[name](said)
    said = json.loads(json.dumps(said))
    try:
        read_week(said, shipped())
    except UsageFault:
        assert not READ.is_valid(said)
    else:
        assert READ.is_valid(said)


def test_a_load_is_text_or_null() -> None:
    line = week_schema()["$defs"]["WeekLine"]["properties"]["load"]
    assert [kind["type"] for kind in line["anyOf"]] == ["string", "null"]
