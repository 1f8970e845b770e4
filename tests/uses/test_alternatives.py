"""`week --alternatives`: what the command prints and writes."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner

from setwright.solver.cli.commands.week import command

ASK = ["1 day x 20 min, growth, home dumbbells", "--search", "quick", "--alternatives", "1", "--within", "0.05"]


@pytest.fixture(scope="module")
def documents() -> list[str]:
    return [CliRunner().invoke(command, [*ASK, "--json"], catch_exceptions=False).stdout for _ in range(2)]


def test_two_runs_give_the_same_bytes(documents: list[str]) -> None:
    assert documents[0] == documents[1]


def test_each_alternative_is_a_week_with_its_cost(documents: list[str]) -> None:
    week = json.loads(documents[0])
    (other,) = week["alternatives"]
    assert other["rank"] == 1 and other["distance"] >= 0.3 and other["gains"] and other["lacks"]
    assert other["cost"] == pytest.approx(week["score"] - other["score"], abs=2e-4)
    assert other["cost"] <= 0.05 * week["stimulus"] + 1e-4
    assert other["stimulus_cost"] == pytest.approx(week["stimulus"] - other["stimulus"], abs=2e-4)
    here = {entry["exercise"] for day in week["days"] for entry in day["entries"]}
    there = {entry["exercise"] for day in other["days"] for entry in day["entries"]}
    assert set(other["gains"]) <= there - here and set(other["lacks"]) <= here - there


def test_the_text_says_what_is_other_and_what_it_costs() -> None:
    text = CliRunner().invoke(command, ASK, catch_exceptions=False).stdout
    _, _, after = text.partition("\nAlternatives: ")
    assert "clearly different" in after and "Alternative 1: score" in after
    assert "Has instead:" in after and "Leaves out:" in after
    assert max(map(len, after.splitlines())) <= 100


def test_without_the_option_there_is_no_list() -> None:
    found = CliRunner().invoke(command, [*ASK[:3], "--json"], catch_exceptions=False).stdout
    assert "alternatives" not in json.loads(found)
