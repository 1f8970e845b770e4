"""Every rule has its words, its numbers and both its acts."""

from __future__ import annotations

from importlib import import_module

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import remedy
from setwright.solver.posts import ALWAYS, BY_COLUMNS, FIRST, POSTED_WITH, POSTS
from setwright.solver.rules import CHECKS, EXCLUDERS, MODULES, RULES

CATALOGUE = load_catalogue()


@pytest.mark.parametrize("rule", RULES.values(), ids=lambda r: r.id)
def test_a_rule_is_whole(rule) -> None:
    assert rule.sentence.endswith(".") and rule.remedy and not rule.remedy.endswith(".")
    assert remedy(rule.id) == rule.remedy
    assert (rule.check is None) != (rule.excludes is None)
    assert rule.kind in ("hard", "scored", "data")


@pytest.mark.parametrize("rule", RULES.values(), ids=lambda r: r.id)
def test_a_rule_stands_in_the_model_once(rule) -> None:
    assert [rule.id in place for place in (POSTS, BY_COLUMNS, POSTED_WITH)].count(True) == 1
    if rule.excludes:
        assert rule.id in BY_COLUMNS
    if rule.id in POSTED_WITH:
        assert POSTED_WITH[rule.id] in POSTS


@pytest.mark.parametrize("rule", RULES.values(), ids=lambda r: r.id)
def test_a_scored_rule_has_a_cost_and_a_hard_one_none(rule) -> None:
    numbers = CATALOGUE.rules.get(rule.id)
    if rule.kind == "scored":
        assert numbers is not None and numbers.cost is not None and numbers.cost >= 0
    elif numbers is not None:
        assert numbers.cost is None and numbers.limit is not None


def test_every_rule_number_belongs_to_a_rule() -> None:
    assert set(CATALOGUE.rules) <= set(RULES)


def test_a_rule_is_named_as_its_module() -> None:
    assert [name.replace("_", "-") for name in MODULES] == list(RULES)
    assert set(FIRST) <= set(ALWAYS) <= set(POSTS)
    assert {rule.id for rule in (*CHECKS, *EXCLUDERS)} == set(RULES)


@pytest.mark.parametrize("rule", POSTS)
def test_both_acts_stand_under_one_name(rule) -> None:
    name = rule.replace("-", "_")
    assert import_module(f"setwright.solver.rules.{name}").RULE is RULES[rule]
    assert import_module(f"setwright.solver.posts.{name}").post is POSTS[rule]
