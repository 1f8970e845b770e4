"""What a pydantic model refuses, said as faults."""

from __future__ import annotations

from typing import Annotated, Any, Literal

import pytest
from pydantic import AfterValidator, BaseModel, ConfigDict, Field, ValidationError

from setwright.solver.brief.fault_words import Form
from setwright.solver.brief.validation_faults import model_faults, refusal


def _even(value: int) -> int:
    if value % 2:
        raise refusal(f"got {value}, expected an even number", "add one")
    return value


class Part(BaseModel):
    model_config = ConfigDict(strict=True, extra="ignore")

    word: Literal["left", "right"]
    share: Annotated[float, Field(ge=0)] | None = None


class Whole(BaseModel):
    model_config = ConfigDict(strict=True, extra="forbid")

    count: Annotated[int, Field(ge=1, le=20)]
    name: str = ""
    even: Annotated[int, AfterValidator(_even)] = 0
    parts: Annotated[tuple[Part, ...], Field(strict=False, min_length=1, max_length=2)] = ()
    on: bool = False
    days: dict[Literal["mon", "tue"], int] = Field(default_factory=dict)


def faults(raw: Any, form: Form = "json") -> list[str]:
    with pytest.raises(ValidationError) as caught:
        Whole.model_validate(raw)
    return [str(fault) for fault in model_faults(caught.value, Whole, raw, "w.json", form)]


@pytest.mark.parametrize(
    ("raw", "said"),
    [
        ({"count": "3"}, "w.json: count: got '3', expected a whole number from 1 to 20"),
        ({"count": 2.5}, "w.json: count: got 2.5, expected a whole number from 1 to 20"),
        ({"count": True}, "w.json: count: got true, expected a whole number from 1 to 20"),
        ({"count": 21}, "w.json: count: got 21, expected a whole number from 1 to 20"),
        ({"count": None}, "w.json: count: got null, expected a whole number from 1 to 20"),
        ({}, "w.json: count: is missing, expected a whole number from 1 to 20"),
        ({"count": 1, "name": []}, "w.json: name: got [], expected text"),
        ({"count": 1, "name": {}}, "w.json: name: got an object, expected text"),
        ({"count": 1, "nmae": "x"}, "w.json: nmae: is not known here; did you mean 'name'?"),
        ({"count": 1, "x": 1}, "w.json: x: is not known here; known: count, name, even, parts, on, days"),
        ({"count": 1, "even": 3}, "w.json: even: got 3, expected an even number; add one"),
        ({"count": 1, "on": "yes"}, "w.json: on: got 'yes', expected true or false"),
        ({"count": 1, "parts": "x"}, "w.json: parts: got 'x', expected a list"),
        ({"count": 1, "parts": []}, "w.json: parts: has 0 values, expected 1 to 2"),
        (
            {"count": 1, "parts": [{"word": "rihgt"}]},
            "w.json: parts[0].word: got 'rihgt', expected 'left' or 'right'; did you mean 'right'?",
        ),
        (
            {"count": 1, "parts": [{"word": "left", "share": -1.5}]},
            "w.json: parts[0].share: got -1.5, expected a number of 0 or more or null",
        ),
        ({"count": 1, "days": {"mo": 1}}, "w.json: days.mo: is not known here; did you mean 'mon'?"),
        ({"count": 1, "name": 10**5000}, "w.json: name: got a number of more than 60 digits, expected text"),
        ([], "w.json: got [], expected an object"),
    ],
)
def test_a_fault_names_place_value_what_is_expected_and_the_nearest_word(raw: Any, said: str) -> None:
    assert faults(raw) == [said]


def test_a_missing_field_is_looked_for_among_those_that_are_not_known() -> None:
    raw = {"count": 1, "parts": [{"wrod": "left"}]}
    assert faults(raw) == ["w.json: parts[0].word: is missing, expected 'left' or 'right'; is it 'wrod'?"]


def test_every_fault_at_once_in_the_order_of_the_file() -> None:
    raw = {"parts": [{"word": 1}, {"word": "left", "share": "x"}], "zzz": 0, "name": 3, "count": 0}
    places = [said.split(": ")[1] for said in faults(raw)]
    assert places == ["parts[0].word", "parts[1].share", "zzz", "name", "count"]


def test_toml_has_tables_and_no_null() -> None:
    raw = {"count": 1, "name": {}, "parts": [{"word": "left", "share": "x"}]}
    assert faults(raw, "toml") == [
        "w.json: name: got a table, expected text in quotes",
        "w.json: parts[0].share: got 'x', expected a number of 0 or more",
    ]
