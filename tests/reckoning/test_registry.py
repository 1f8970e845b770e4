"""Every rule has its words, its numbers and both its acts."""

from __future__ import annotations

import pytest

from setwright.catalogue.load import load_catalogue
from setwright.solver.model.rules import BY_COLUMNS, POSTED_WITH, POSTS
from setwright.solver.reckoning.rules import RULES

CATALOGUE = load_catalogue()


@pytest.mark.parametrize("rule", RULES.values(), ids=lambda r: r.id)
def test_a_rule_is_whole(rule) -> None:
    assert rule.sentence.endswith(".") and rule.remedy and not rule.remedy.endswith(".")
    assert (rule.check is None) != (rule.closes is None)
    assert rule.id in POSTS or rule.id in BY_COLUMNS or rule.id in POSTED_WITH
    if rule.kind == "scored":
        assert CATALOGUE.rules[rule.id].cost is not None


def test_every_rule_number_belongs_to_a_rule() -> None:
    assert set(CATALOGUE.rules) <= set(RULES)
