"""An overlay file that is malformed ends in faults that name the place, never in a traceback."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.catalogue.check import check_catalogue
from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import CatalogueFault
from setwright.catalogue.load import DATA, load_catalogue, merge, raise_if, read_toml
from setwright.catalogue.overlay import lay_over
from setwright.catalogue.parse import parse_catalogue
from setwright.catalogue.toml_text import toml_tables

DEEP = 2_000


@pytest.fixture
def own(tmp_path: Path) -> Path:
    return tmp_path / "own.toml"


def loaded(path: Path, content: str | bytes) -> Catalogue:
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return load_catalogue(path)


def faults_of(path: Path, content: str | bytes) -> list[str]:
    with pytest.raises(CatalogueFault) as caught:
        loaded(path, content)
    return [str(fault).replace(f"{path}: ", "own.toml: ") for fault in caught.value.faults]


def test_one_number_of_more_leaves_the_others(own: Path, catalogue: Catalogue) -> None:
    """The rule's other numbers stay, and only the changed one is told."""
    laid = loaded(own, "[rule.exercise-count]\nmore = { novice = 5 }\n")
    assert laid.rules["exercise-count"].more == {**catalogue.rules["exercise-count"].more, "novice": 5.0}
    assert laid.changed == ("own.toml changes rule exercise-count: more.novice 6 -> 5",)


def test_a_number_of_more_that_the_rule_does_not_have(own: Path) -> None:
    assert faults_of(own, "[rule.exercise-count]\nmore = { novise = 5 }\n[rule.line]\nmore = { sets = 5 }\n") == [
        "own.toml: rule.exercise-count.more.novise: is no number of this rule; did you mean 'novice'?",
        "own.toml: rule.line.more.sets: is no number of this rule; it has only its cost or its limit",
    ]


@pytest.mark.parametrize(
    ("value", "said"),
    [
        ("'six'", "more.novice is 'six'; expected a number"),
        ("[5, 6]", "more.novice is [5, 6]; expected a number"),
        ("true", "more.novice is true; expected a number"),
        ("nan", "more.novice is nan; expected a finite number"),
        ("inf", "more.novice is inf; expected a finite number"),
        ("1" + "0" * 400, "more.novice is a number of more than 60 digits; expected a finite number"),
    ],
)
def test_a_number_of_more_of_another_kind(own: Path, value: str, said: str) -> None:
    faults = faults_of(own, f"[rule.exercise-count]\nmore = {{ novice = {value} }}\n")
    assert faults == [f"own.toml: rule exercise-count: {said}"]


@pytest.mark.parametrize("value", ["'six'", "[5]", "5"])
def test_more_that_is_no_table(own: Path, value: str) -> None:
    (line,) = faults_of(own, f"[rule.exercise-count]\nmore = {value}\n")
    assert line.endswith("; expected a table")


DIVISORS = (
    "rest-tau-high",
    "rest-tau-low",
    "session-scale",
    "index-reference",
    "rest-loss-high",
    "rest-loss-low",
    "rir-slope",
    "session-knee",
    "indirect-part",
    "drop-credit",
)


@pytest.mark.parametrize("value", [0, -1])
@pytest.mark.parametrize("name", DIVISORS)
def test_a_number_that_is_divided_by_is_above_zero(own: Path, name: str, value: int) -> None:
    (line,) = faults_of(own, f"[number.{name}]\nvalue = {value}\nlow = {value}\n")
    assert line == f"evidence {name}: {value} is divided by; give a number above 0"


@pytest.mark.parametrize("value", [0, 1, 2])
def test_the_exponent_of_the_week_lies_between_zero_and_one(own: Path, value: int) -> None:
    """At 0 and at 1 the bound of the model would divide by zero; above 1 the curve is no longer concave."""
    (line,) = faults_of(own, f"[number.week-exponent]\nvalue = {value}\nlow = {value}\nhigh = {value}\n")
    assert line == f"evidence week-exponent: {value} does not lie between 0 and 1; give a number above 0 and below 1"


def test_a_muscle_that_weighs_nothing(own: Path) -> None:
    """Weights are divided by their sum."""
    faults = faults_of(own, '[[muscle]]\nid = "chest"\ndefault_weight = 0\n')
    assert faults == ["muscle chest: default_weight 0; give a number above 0"]


def test_a_cost_below_zero(own: Path) -> None:
    assert faults_of(own, "[rule.line]\ncost = -1\n") == ["rule line: cost -1; give 0 or more"]


@pytest.mark.parametrize(
    "content",
    [
        "a = " + "[" * DEEP + "]" * DEEP,
        "a = " + "{a=" * DEEP + "1" + "}" * DEEP,
    ],
)
def test_brackets_nested_too_deeply(own: Path, content: str) -> None:
    assert faults_of(own, content) == ["own.toml: is not TOML: nested too deeply; use fewer brackets inside brackets"]


def test_a_deep_table_where_a_text_belongs(own: Path) -> None:
    (line,) = faults_of(own, "[item.band]\nname" + ".a" * DEEP + " = 1\n")
    assert line == "own.toml: item band: name is a table; expected a text"


def test_a_whole_number_too_long_to_read(own: Path) -> None:
    (line,) = faults_of(own, f"[rule.line]\ncost = {'9' * 5_000}\n")
    assert line == "own.toml: is not TOML: a number has more than 4300 digits; write a shorter one"


def test_a_byte_order_mark_is_passed_over(own: Path) -> None:
    laid = loaded(own, b"\xef\xbb\xbf[rule.line]\ncost = 0.2\n")
    assert laid.rules["line"].cost == 0.2


def test_a_section_in_the_wrong_kind_of_brackets(own: Path) -> None:
    """The word is right, so another word is no help."""
    assert faults_of(own, '[exercise]\nid = "x"\n[[rule]]\nid = "line"\n') == [
        "own.toml: exercise: is a single table; write [[exercise]] before each entry",
        "own.toml: rule: is a list; write [rule.ID] before each entry",
    ]


ODD: tuple[Any, ...] = (
    "true", "-1", "0", "1", "0.5", "nan", "inf", "-inf", "1e400", "1" + "0" * 400, "'word'", "''", "[]", "[1]",
    "[1, 2]", "[2, 1]", "['a', 1]", "[[]]", "[{}]", "{}", "{ a = 1 }", "[{ muscle = 1, part = true, why = 'x' }]",
    "2026-01-01", "12:00:00", "['-x', '*']", '"\\u0000"',
)  # fmt: skip
PLACES = (
    *(f"[[exercise]]\nid = 'pull-up'\n{field}" for field in (
        "name", "slot", "rank", "needs", "direct", "indirect", "other", "fatigue", "limb", "reps", "alternating",
        "change_over", "axial", "techniques", "joints", "load", "load_step", "light_below", "setting", "link",
        "aliases",
    )),
    *(f"[[kit]]\nid = 'bands'\n{field}" for field in ("name", "items", "dumbbell_max", "cannot", "aliases")),
    *(f"[[muscle]]\nid = 'chest'\n{field}" for field in ("id", "name", "size", "isolate", "default_weight", "aliases")),
    *(f"[[group]]\nid = 'delts'\n{field}" for field in ("name", "priority", "otherwise", "normal_when_priority")),
    *(f"[[caution]]\nid = 'knee'\n{field}" for field in ("closes_joints", "needs_clearance", "sentence")),
    *(f"[number.session-scale]\n{field}" for field in ("value", "low", "high", "unit", "mark", "colour")),
    *(f"[rule.exercise-count]\n{field}" for field in ("cost", "limit", "more", "more.novice", "unit", "origin")),
    *(f"[slot.squat]\n{field}" for field in ("name", "movement", "region", "multi", "focus")),
    *(f"[item.band]\n{field}" for field in ("name", "place", "aliases")),
    "exercise", "rule", "number", "muscle", "colour", "_from",
)  # fmt: skip


@pytest.fixture(scope="module")
def shipped() -> dict[str, Any]:
    tables: dict[str, Any] = {}
    for path in sorted(DATA.rglob("*.toml")):
        merge(tables, read_toml(path), path.name)
    return tables


@given(st.sampled_from(PLACES), st.sampled_from(ODD))
@settings(max_examples=100, deadline=None)
def test_any_value_anywhere_is_taken_or_faulted(shipped: dict[str, Any], place: str, odd: str) -> None:
    """A catalogue or a CatalogueFault: nothing else comes of a value of the wrong kind."""
    try:
        overlay = toml_tables(f"{place} = {odd}\n", "own.toml", CatalogueFault)
        tables, changed = lay_over(shipped, overlay, "own.toml")
        raise_if(check_catalogue(parse_catalogue(tables, "", changed)))
    except CatalogueFault as fault:
        assert fault.faults
