"""A question about a brief is answered once for each brief and the other arguments."""

from __future__ import annotations

from dataclasses import replace

from weeks import days, terms_of

from setwright.solver.evaluation.answered_once import answered_once
from setwright.solver.evaluation.resolved_brief import ResolvedBrief


def test_each_brief_and_argument_is_answered_once_and_another_brief_anew() -> None:
    asked: list[tuple[str, str]] = []

    @answered_once
    def question(resolved: ResolvedBrief, of: str) -> str:
        asked.append((resolved.goal, of))
        return f"{resolved.goal} {of}"

    growth = terms_of(days=days("mon", 30), goal="growth")
    changed = replace(growth, goal="balanced")
    for _ in range(2):
        assert question(growth, "a") == "growth a" and question(growth, of="b") == "growth b"
        assert question(changed, "a") == "balanced a"
    assert asked == [("growth", "a"), ("growth", "b"), ("balanced", "a")]
