"""Reasons and answers that were solved anew, in words and as documents, on a fixed week."""

from __future__ import annotations

import pytest

from setwright.solver.planning import Solved
from setwright.solver.sheets.common.json_values import dumped
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.screen.explain.more_minutes import minutes_text
from setwright.solver.sheets.screen.explain.why import why_document, why_text
from setwright.solver.sheets.screen.explain.with_exercise import with_text
from setwright.solver.sheets.screen.explain.without_line import without_text
from setwright.solver.uses.edits.editing import without
from setwright.solver.uses.edits.effects import Effect, effect
from setwright.solver.uses.explain.bottlenecks import bottlenecks_of
from setwright.solver.uses.explain.reasons import reason_of
from setwright.solver.uses.explain.what_if import Answer, Excluded, LongerDay, MoreMinutes


def widest(text: str) -> int:
    return max(map(len, text.splitlines()))


def test_every_line_has_its_reason_and_the_numbers_of_the_audit(solved: Solved) -> None:
    found = tuple(reason_of(solved.audit, line) for line in solved.audit.evaluated.lines)
    bottlenecks = bottlenecks_of(solved.audit)
    text = why_text(solved.audit, found, bottlenecks, 100)
    assert widest(text) <= 100
    assert "the numbers are exact" in " ".join(text.split())
    for told in found:
        assert told.line.exercise.name in text
        assert f"{told.effect.score:+.1f}" in text
    document = why_document(solved.audit, found, bottlenecks)
    assert dumped(document)
    assert [row["exercise"] for row in document["reasons"]] == [x.exercise.id for x in solved.audit.evaluated.lines]
    row = document["reasons"][0]
    assert row["without"]["score"] == pytest.approx(found[0].effect.score, abs=1e-3)
    below = {m["muscle"] for m in week_document(solved)["muscles"] if m["band"] and m["sets"] < m["band"][0]}
    assert {row["muscle"] for row in document["below"]} == below & {b.muscle.id for b in bottlenecks}


def test_answers_in_words(solved: Solved) -> None:
    evaluated = solved.audit.evaluated
    gone = effect(solved.audit, without(evaluated, evaluated.on[0][0]))
    answer = Answer(gone, 0.4, "work limit")
    told = reason_of(solved.audit, evaluated.on[0][0])
    text = without_text([(told, answer)], 100)
    assert "A score up to 0.40 points better is not ruled out." in " ".join(text.split())
    assert "Monday: out: Barbell back squat (3)" in text
    squat = evaluated.on[0][0].exercise
    assert "costs" in with_text(squat, answer, (), 100)
    same = Answer(Effect(solved.audit, solved.audit), 0.0, "proved")
    held = " ".join(with_text(squat, same, ("Monday",), 100).split())
    assert "stands in the week already, on Monday" in held
    assert "costs nothing. It is proven that the model allows none better." in held
    assert "rules exclude it on every day" in with_text(squat, Excluded(("equipment",), evaluated.resolved), (), 100)
    longer = MoreMinutes(5, Effect(solved.audit, solved.audit), (LongerDay(evaluated.resolved.days[0], same),))
    assert "No day's extra minutes raise the score" in minutes_text(longer, 100)
