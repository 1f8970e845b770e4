"""Weeks made elsewhere, read from tables and JSON."""

from __future__ import annotations

import json

import pytest

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import UsageFault
from setwright.solver.auditing import audit
from setwright.solver.brief.file import parse_phrase
from setwright.solver.foreign.foreign_week import LoadedWeek, read_any
from setwright.solver.foreign.rows.cells import rep_range, rest_seconds
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.screen.audit import audit_document, audit_text

HEAD = "day,exercise,sets,reps,RIR,rest,technique,pair\n"
TABLE = HEAD + (
    "mon,Barbell back squat,3,6-8,2,2:00,,\n"
    "mon,dumbbell-curl,2,8 to 12,1,60,drop 2,\n"
    "thu,RDL,3,6-10,2,120 s,straight,\n"
    "thu,Dumbbell side raise,2,12-15,1,0,,Lying leg curl\n"
    "thu,Lying leg curl,2,8-12,1,90,,\n"
)


def read(text: str, catalogue: Catalogue, near: bool = False, phrase: str | None = None) -> LoadedWeek:
    asked = parse_phrase(phrase, catalogue) if phrase else None
    return read_any(text.encode(), "week.csv", catalogue, asked, near)


def faults(text: str, catalogue: Catalogue, phrase: str | None = None) -> str:
    with pytest.raises(UsageFault) as error:
        read(text, catalogue, phrase=phrase)
    return str(error.value)


def test_a_table_is_read_by_names_aliases_and_ids(catalogue: Catalogue) -> None:
    found = read(TABLE, catalogue)
    monday, thursday = found.week.days
    assert [e.exercise for e in monday] == ["barbell-back-squat", "dumbbell-curl"]
    assert [e.exercise for e in thursday] == ["barbell-romanian-deadlift", "dumbbell-side-raise", "lying-leg-curl"]
    squat, curl = monday
    assert (squat.sets, squat.reps, squat.rir, squat.rest) == (3, (6, 8), 2, 120)
    assert (curl.technique, curl.drops, curl.reps) == ("drop", 2, (8, 12))


def test_a_pair_is_said_by_both_and_rests_alike_with_a_note(catalogue: Catalogue) -> None:
    found = read(TABLE, catalogue)
    raise_, curl = found.week.days[1][1:]
    assert (raise_.partner, curl.partner) == ("lying-leg-curl", "dumbbell-side-raise")
    assert raise_.rest == curl.rest == 90
    assert any("rests 1:30, as its pair does" in note for note in found.notes)


def test_the_implied_brief_has_the_weeks_own_days_and_the_fewest_minutes(catalogue: Catalogue) -> None:
    found = read(TABLE, catalogue)
    assert [d.weekday for d in found.parsed.brief.days] == ["mon", "thu"]
    resolved = resolve(found.parsed.brief, catalogue)
    evaluated = audit(resolved, found.week).evaluated
    for day in resolved.days:
        assert evaluated.seconds(day.index) <= day.limit
        assert evaluated.warm_up(day.index) == day.warm_up
        assert evaluated.seconds(day.index) > 60 * (day.minutes - 2)
    assert found.parsed.brief.pairs and found.parsed.brief.techniques


def test_semicolons_tabs_a_mark_and_extra_columns(catalogue: Catalogue) -> None:
    plain = read(TABLE, catalogue).week
    assert read("\ufeff" + TABLE.replace(",", ";"), catalogue).week == plain
    assert read(TABLE.replace(",", "\t"), catalogue).week == plain
    wide = "\n".join(line + (",tempo,name" if i == 0 else ",3-1-1,'=x") for i, line in enumerate(TABLE.splitlines()))
    found = read(wide, catalogue)
    assert found.week == plain
    assert "not read: the column tempo" in found.notes


def test_a_near_name_is_asked_about_and_taken_only_when_told(catalogue: Catalogue) -> None:
    text = HEAD + "mon,dumbel curl,2,,,,,\nmon,barbell back squt,3,,,,,\n"
    said = faults(text, catalogue)
    assert "line 2, exercise: 'dumbel curl' is not in the catalogue" in said
    assert "did you mean 'Dumbbell curl'" in said
    assert "line 3, exercise" in said
    found = read(text, catalogue, near=True)
    assert [e.exercise for e in found.week.entries] == ["dumbbell-curl", "barbell-back-squat"]
    assert "line 2: 'dumbel curl' was read as Dumbbell curl" in found.notes


def test_a_name_that_is_near_nothing_is_never_taken(catalogue: Catalogue) -> None:
    with pytest.raises(UsageFault, match="xqzw"):
        read(HEAD + "mon,xqzw,2,,,,,\n", catalogue, near=True)


def test_what_is_not_said_is_as_planned_and_noted(catalogue: Catalogue) -> None:
    found = read("day,exercise,sets\n1,Leg press,3\n2,Leg press,3\n", catalogue)
    assert found.parsed.brief.any_order
    assert not audit(resolve(found.parsed.brief, catalogue), found.week).broken
    assert any(note.startswith("reps was not said in 2 lines") for note in found.notes)


def test_every_fault_at_once(catalogue: Catalogue) -> None:
    said = faults(HEAD + "mon,Leg press,many,6-8,2,60,,\ntue,Leg press,3,heavy,-1,soon,triple,\n", catalogue)
    for part in ("line 2, sets", "line 3, reps", "line 3, RIR", "line 3, rest", "line 3, technique"):
        assert part in said


def test_headings_days_and_pairs_that_make_no_sense(catalogue: Catalogue) -> None:
    assert "the column 'sets' is missing" in faults("day,exercise\nmon,Leg press\n", catalogue)
    assert "is it 'excercise'?" in faults("day,excercise,sets\nmon,Leg press,3\n", catalogue)
    assert "use one or the other" in faults("day,exercise,sets\nmon,Leg press,3\n2,Leg press,3\n", catalogue)
    assert "and 'someday'" in faults("day,exercise,sets\nsomeday,Leg press,3\nmon,Leg press,3\n", catalogue)
    assert "name each other" in faults(HEAD + "mon,Leg press,3,,,,,Dumbbell curl\n", catalogue)
    assert "is empty" in faults(" ", catalogue)
    assert "has no lines" in faults(HEAD, catalogue)


def test_a_brief_names_the_days(catalogue: Catalogue) -> None:
    found = read(TABLE, catalogue, phrase="mon wed thu 45 min, hold abs")
    assert [len(day) for day in found.week.days] == [2, 0, 3]
    assert "stands on thu, the brief has mon and tue" in faults(TABLE, catalogue, phrase="mon tue 45 min")


def test_json_lines_and_days_read_as_the_table(catalogue: Catalogue) -> None:
    rows = [
        {"day": "mon", "Exercise": "Leg press", "sets": 3, "reps": [8, 12], "rest": "1:30"},
        {"day": "thu", "exercise": "leg-press", "sets": 2, "rest": 90},
    ]
    found = read(json.dumps(rows), catalogue)
    assert [e.sets for e in found.week.entries] == [3, 2]
    days = [{"weekday": r["day"], "entries": [{k: v for k, v in r.items() if k != "day"}]} for r in rows]
    assert read(json.dumps({"days": days}), catalogue).week == found.week


@pytest.mark.parametrize(
    ("said", "heard"), [("1:30", 90), ("90", 90), ("90 s", 90), ("2 min", 120), ("1.5 min", 90), ("soon", None)]
)
def test_rests_as_coaches_write_them(said: str, heard: object) -> None:
    assert rest_seconds(said) == heard


@pytest.mark.parametrize(
    ("said", "heard"), [("8-12", [8, 12]), ("8 to 12", [8, 12]), ("10", [10, 10]), ("8\u201312/side", [8, 12])]
)
def test_repetitions_as_coaches_write_them(said: str, heard: object) -> None:
    assert rep_range(said) == heard


def test_lines_are_reckoned_as_printed_not_as_planned(catalogue: Catalogue) -> None:
    """Effort 1 - slope*(RIR - 1): 5 RIR on every line takes the index down by the root of 1 - 4*slope."""
    near, far = (read(f"day,exercise,sets,RIR\nmon,Dumbbell curl,3,{rir}\n", catalogue) for rir in (1, 5))
    indices = [audit(resolve(r.parsed.brief, catalogue), r.week).evaluated.index("biceps") for r in (near, far)]
    assert indices[1] / indices[0] == pytest.approx((1 - 4 * catalogue.evidence["rir-slope"].value) ** 0.5, abs=1e-3)
    few, many = (read(f"day,exercise,sets,reps\nmon,Dumbbell curl,3,{reps}\n", catalogue) for reps in (5, 15))
    times = [audit(resolve(r.parsed.brief, catalogue), r.week).evaluated.work_seconds(0) for r in (few, many)]
    assert times[1] - times[0] == 3 * 10 * 3


NOVICE = "day,exercise,sets,reps,RIR,rest\n" + "".join(
    f"{day},{exercise},{sets},{reps},2,{rest}\n"
    for day in ("mon", "thu")
    for exercise, sets, reps, rest in (
        ("Leg press", 2, "8-12", "2:00"),
        ("Machine chest press", 2, "8-12", "2:00"),
        ("Wide-grip pulldown", 2, "8-12", "2:00"),
        ("Machine shoulder press", 2, "8-12", "2:00"),
        ("Lying leg curl", 2, "8-12", "1:00"),
        ("Dumbbell curl", 2, "8-12", "1:00"),
        ("Rope pushdown", 2, "8-12", "1:00"),
        ("Cable crunch", 2, "8-12", "1:00"),
    )
)


def test_a_guideline_programme_for_novices_is_audited_without_an_error(catalogue: Catalogue) -> None:
    """ACSM 2009, Med Sci Sports Exerc 41:687: novices 2-3 days a week, multi-joint before single-joint, large before
    small; 2-3 min rest on multi-joint and 1-2 min on single-joint lifts. From memory: 8-10 exercises, 1-3 sets of
    8-12. The choice of exercises is invented.
    """
    found = read(NOVICE, catalogue, phrase="mon thu 60 min, novice")
    reckoned = audit(resolve(found.parsed.brief, catalogue), found.week)
    assert len(reckoned.evaluated.lines) == 16
    text = audit_text(reckoned, 100)
    assert "Time: warm-up" in text and max(map(len, text.splitlines())) <= 100
    assert "Nothing is broken" in text
    assert audit_document(reckoned)["broken"] == []
    assert {f["id"] for f in audit_document(reckoned)["differs"]} <= {
        "order",
        "exercise-count",
        "stand-in",
        "repetitions",
    }
    chest = reckoned.evaluated.weekly_sets("chest") / 10_000
    assert chest == 4
    assert reckoned.evaluated.index("chest") > 50
