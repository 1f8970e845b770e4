"""Audits, clashes, exercises and evidence."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.file import parse_phrase
from setwright.solver.evaluation.finding import ClashMember, Wish
from setwright.solver.planning import Clash, Solved
from setwright.solver.rulebook import RULES, resolve
from setwright.solver.sheets.common.json_values import dumped
from setwright.solver.sheets.screen.audit import audit_document, audit_text
from setwright.solver.sheets.screen.clash import clash_document, clash_text
from setwright.solver.sheets.screen.listing import (
    MARKS,
    evidence_document,
    evidence_text,
    exercise_text,
    exercises_document,
    exercises_text,
)


def widest(text: str) -> int:
    return max(map(len, text.splitlines()))


def test_an_audit_names_the_rules_broken_with_their_remedy(solved_as: Callable[..., Solved]) -> None:
    broken = solved_as("mon 10 min", ((("barbell-back-squat", 9, 300),),)).audit
    text = audit_text(broken, 100)
    assert "day-minutes" in text
    assert RULES["day-minutes"].remedy in " ".join(text.split())
    assert widest(text) <= 100
    assert "day-minutes" in [row["id"] for row in audit_document(broken)["broken"]]
    assert dumped(audit_document(broken))


def test_a_clash_names_wishes_then_rules_each_with_a_remedy(catalogue: Catalogue) -> None:
    parsed = parse_phrase("1 day x 30 min", catalogue)
    conflicts = (ClashMember("day-minutes"), ClashMember("must", Wish("must", "vertical-pull")))
    clash = Clash(parsed, resolve(parsed.brief, catalogue), conflicts)
    text = clash_text(clash, 80)
    assert text.index("the movement vertical pull") < text.index("rule day-minutes")
    assert RULES["must"].remedy in " ".join(text.split())
    assert widest(text) <= 80
    assert [row["rule"] for row in clash_document(clash)["conflicts"]] == ["day-minutes", "must"]


def test_a_wish_that_the_kit_cannot_meet_names_what_closes_it(catalogue: Catalogue) -> None:
    parsed = parse_phrase("2x40 at home with dumbbells, must vertical-pull", catalogue)
    clash = Clash(parsed, resolve(parsed.brief, catalogue), (ClashMember("must", Wish("must", "vertical-pull")),))
    text = clash_text(clash, 80)
    assert "This cannot be met" in text
    assert "closed by equipment" in text
    assert clash_document(clash)["conflicts"][0]["closed_by"][0] == "equipment"


@pytest.mark.parametrize(
    ("phrase", "rule", "wish"),
    [
        ("2x40, pin leg press 4 sets, long inactivity", "caution-sets", Wish("pinned", "leg-press", 4.0)),
        (
            "2x40, pin barbell curl with rope pushdown, high blood pressure",
            "caution-rest",
            Wish("pinned", "barbell-curl", 0.0, "", "rope-pushdown"),
        ),
        ("2x40, pin lying leg curl, pregnant", "caution-position", Wish("pinned", "lying-leg-curl")),
    ],
)
def test_a_pin_that_a_caution_leaves_no_room_for_names_it(
    phrase: str, rule: str, wish: Wish, catalogue: Catalogue
) -> None:
    parsed = parse_phrase(phrase, catalogue)
    clash = Clash(parsed, resolve(parsed.brief, catalogue), (ClashMember("pinned", wish),))
    assert clash_document(clash)["conflicts"][0]["closed_by"] == [rule]
    assert f"closed by {rule}: " in clash_text(clash, 80)


def test_every_exercise_is_listed_and_can_be_shown(catalogue: Catalogue) -> None:
    exercises = list(catalogue.exercises.values())
    text = exercises_text(exercises, catalogue)
    assert widest(text) <= 100
    for exercise in exercises:
        assert exercise.id in text
        assert widest(exercise_text(exercise, catalogue)) <= 100
    assert len(exercises_document(exercises)["exercises"]) == len(exercises)


def test_every_number_has_its_unit_mark_and_source(catalogue: Catalogue) -> None:
    numbers = list(catalogue.evidence.values())
    text = evidence_text(numbers)
    assert widest(text) <= 100
    assert text.count("source:") == len(numbers)
    for row in evidence_document(numbers)["numbers"]:
        assert row["mark"] in MARKS
        assert row["id"] in text
