"""Reasons, swaps and answers in words and as documents, on a fixed week."""

from __future__ import annotations

import json

import pytest

from setwright.catalogue.faults import SetwrightError, UsageFault
from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.planning import Solved
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.common.addresses import address, line_at
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.document.json_values import dumped
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.screen.answers import minutes_text, with_text, without_text
from setwright.solver.sheets.screen.mending import changes_document, changes_text
from setwright.solver.sheets.screen.swaps import slots_of, swap_asked, swapped_text, swaps_document, swaps_text
from setwright.solver.sheets.screen.why import why_document, why_text
from setwright.solver.uses.edits.editing import without
from setwright.solver.uses.edits.effects import Effect, effect
from setwright.solver.uses.edits.single_changes import best_changes
from setwright.solver.uses.edits.swaps import swaps
from setwright.solver.uses.explain.bottlenecks import held_below
from setwright.solver.uses.explain.reasons import reasons
from setwright.solver.uses.explain.what_if import Answer, Closed, Longer, MoreMinutes


def widest(text: str) -> int:
    return max(map(len, text.splitlines()))


def test_an_address_is_a_day_and_a_mark_or_an_exercise(solved: Solved) -> None:
    evaluated = solved.audit.evaluated
    for line in evaluated.lines:
        where = address(evaluated, line)
        day = where.split(":")[0]
        for said in (where, where.lower(), f"{day}:{line.exercise.id}", f"{day}:{line.exercise.name}"):
            assert line_at(evaluated, said) == line
    assert line_at(evaluated, "Monday:A") == evaluated.on[0][0]
    assert line_at(evaluated, "2:A") == evaluated.on[1][0]


@pytest.mark.parametrize(
    ("said", "heard"),
    [
        ("mon", "expected a day and a line"),
        ("sun:A", "no day 'sun'"),
        ("mon:Z", "no line 'Z'"),
        ("mon:dumbel-curl", "did you mean 'mon:dumbbell-curl'?"),
    ],
)
def test_a_wrong_address_names_what_there_is(solved: Solved, said: str, heard: str) -> None:
    with pytest.raises(UsageFault, match="entry") as error:
        line_at(solved.audit.evaluated, said)
    assert heard in str(error.value)


def test_every_line_has_its_reason_and_the_numbers_of_the_audit(solved: Solved) -> None:
    found, holds = reasons(solved.audit), held_below(solved.audit)
    text = why_text(solved.audit, found, holds, 100)
    assert widest(text) <= 100
    assert "By exact reckoning" in text
    for told in found:
        assert told.line.exercise.name in text
        assert f"{told.effect.score:+.1f}" in text
    document = why_document(solved.audit, found, holds)
    assert dumped(document)
    assert [row["exercise"] for row in document["reasons"]] == [x.exercise.id for x in solved.audit.evaluated.lines]
    row = document["reasons"][0]
    assert row["without"]["score"] == pytest.approx(found[0].effect.score, abs=1e-3)
    below = {m["muscle"] for m in week_document(solved)["muscles"] if m["band"] and m["sets"] < m["band"][0]}
    assert {row["muscle"] for row in document["below"]} == below & {h.muscle.id for h in holds}


def test_swaps_are_a_table_and_a_document(solved: Solved) -> None:
    slots = slots_of(solved.audit, solved.audit.evaluated.lines)
    text = swaps_text(solved.audit, slots, 100)
    assert widest(text) <= 100
    document = swaps_document(solved.audit, slots)
    json.loads(dumped(document))
    assert len(document["entries"]) == len(solved.audit.evaluated.lines)
    for row in document["entries"]:
        assert len(row["swaps"]) >= 2 or row["refused"] or "nothing else that is open" in " ".join(text.split())
        for swap in row["swaps"]:
            assert not swap["does"]["broken"]


def test_a_changed_week_reads_back_as_itself(solved: Solved) -> None:
    evaluated = solved.audit.evaluated
    swap = swaps(solved.audit, evaluated.on[0][0])[0]
    document = changed_week_document(week_document(solved), solved.parsed, swap.effect.after)
    assert document["ended_by"] == "changed by hand" and document["bound"] is None
    assert set(document) == set(week_document(solved))
    parsed, week = read_week(json.loads(dumped(document)), evaluated.resolved.catalogue)
    assert week == swap.effect.after.evaluated.week
    assert audit(evaluated.resolved, week).score_units == swap.effect.after.score_units
    assert parsed.brief == solved.parsed.brief
    assert "What changes" in swapped_text(solved.audit, swap.effect.after, 0, 80)


def test_health_notes_stay_out_of_a_changed_week_unless_they_were_in_it(solved_as, catalogue) -> None:
    raw = {"days": [{"weekday": "mon", "minutes": 60}, {"weekday": "thu", "minutes": 60}], "pairs": True}
    parsed = parse_brief({**raw, "client": {"cautions": [{"tag": "knee", "said_by": "Dr Q"}]}}, catalogue)
    unwell = solved_as(parsed=parsed)
    public, private = week_document(unwell), week_document(unwell, private=True)
    assert public["private_left_out"] and not private["private_left_out"]
    assert "Dr Q" not in dumped(changed_week_document(public, parsed, unwell.audit))
    assert "Dr Q" in dumped(changed_week_document(private, parsed, unwell.audit))


def test_a_swap_that_is_closed_or_there_already_is_refused(solved: Solved) -> None:
    evaluated = solved.audit.evaluated
    exercises = evaluated.resolved.catalogue.exercises
    with pytest.raises(UsageFault, match="stands on that day already"):
        swap_asked(solved.audit, evaluated.on[0][0], exercises["dumbbell-bench-press"], False)
    avoiding = resolve(
        evaluated.resolved.brief.model_copy(update={"avoid": ("leg-press",)}), evaluated.resolved.catalogue
    )
    with pytest.raises(UsageFault, match="not open that day"):
        swap_asked(audit(avoiding, evaluated.week), evaluated.on[0][0], exercises["leg-press"], False)
    with pytest.raises(SetwrightError, match="cannot be done in turn"):
        swap_asked(solved.audit, line_at(evaluated, "mon:dumbbell-curl"), exercises["leg-press"], False)


def test_answers_in_words(solved: Solved) -> None:
    evaluated = solved.audit.evaluated
    gone = effect(solved.audit, without(evaluated, evaluated.on[0][0]))
    answer = Answer(gone, 0.4, "work limit")
    told = reasons(solved.audit)[0]
    text = without_text([(told, answer)], 100)
    assert "A score up to 0.40 points better is not ruled out." in " ".join(text.split())
    assert "Monday: out Barbell back squat (3)" in text
    squat = evaluated.on[0][0].exercise
    assert "costs" in with_text(squat, answer, (), 100)
    same = Answer(Effect(solved.audit, solved.audit), 0.0, "proved")
    held = " ".join(with_text(squat, same, ("Monday",), 100).split())
    assert "stands in the week already, on Monday" in held and "costs nothing. Proven best" in held
    assert "closed on every day" in with_text(squat, Closed(("equipment",)), (), 100)
    longer = MoreMinutes(5, Effect(solved.audit, solved.audit), (Longer(evaluated.resolved.days[0], same),))
    assert "Nothing is bought" in minutes_text(longer, 100)


def test_changes_in_words(solved: Solved) -> None:
    changes = best_changes(solved.audit, 2)
    text = changes_text(solved.audit, changes, 100)
    assert widest(text) <= 100
    assert len(changes_document(changes)) == len(changes)
    for number, _ in enumerate(changes, 1):
        assert f"{number}. " in text
