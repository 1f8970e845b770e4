"""Swaps and single changes in words and as documents, and a week changed by hand, on a fixed week."""

from __future__ import annotations

import json

import pytest

from setwright.catalogue.faults import SetwrightError, UsageFault
from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.planning import Solved
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.common.json_values import dumped
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.document.solved_week import week_document
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.screen.addresses import line_at
from setwright.solver.sheets.screen.edits.asked_swap import swap_asked, swapped_text
from setwright.solver.sheets.screen.edits.single_changes import changes_document, changes_text
from setwright.solver.sheets.screen.edits.swaps import swaps_document, swaps_text
from setwright.solver.uses.edits.ranked_swaps import ranked_swaps_of
from setwright.solver.uses.edits.single_changes import best_changes
from setwright.solver.uses.edits.swaps import swaps


def widest(text: str) -> int:
    return max(map(len, text.splitlines()))


def test_swaps_are_a_table_and_a_document(solved: Solved) -> None:
    ranked = ranked_swaps_of(solved.audit, solved.audit.evaluated.lines)
    text = swaps_text(solved.audit, ranked, 100)
    assert widest(text) <= 100
    document = swaps_document(solved.audit, ranked)
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


def test_changes_in_words(solved: Solved) -> None:
    changes = best_changes(solved.audit, 2)
    text = changes_text(solved.audit, changes, 100)
    assert widest(text) <= 100
    assert len(changes_document(changes)) == len(changes)
    for number, _ in enumerate(changes, 1):
        assert f"{number}. " in text
