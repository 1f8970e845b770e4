"""Weeks as people type them: headings, ranges, RPE, labels, names of sessions, workbooks; and what cannot be read."""

from __future__ import annotations

import io
from collections.abc import Sequence
from datetime import date, time
from typing import Any

import pytest
from openpyxl import Workbook

from setwright.catalogue.faults import SetwrightError, UsageFault
from setwright.catalogue.load import load_catalogue
from setwright.solver.evaluation.week import Entry
from setwright.solver.foreign.foreign_week import LoadedWeek, read_any
from setwright.solver.foreign.rows.typed_cells import counted_sets, repetitions, reserve, rest

CATALOGUE = load_catalogue()
UPPER_LOWER = """Session;Lift;Sets;Reps;RPE;Rest
Upper A;Bench Press;3-4;6-8;8;3 min
Upper A;Barbell rows;3 x 8-10;;8;2-3 min
Upper A;Lateral raise;4;12-15;drop set;60 s
Lower A;Back Squat;4;5\N{EN DASH}8;8;3'
Lower A;RDL;3;8-10;8;2'30
;Standing calf raises;4;AMRAP;;1,5 min
Upper B;Pull-ups;3;AMRAP;9;2
"""


def read(text: str | bytes) -> LoadedWeek:
    return read_any(text if isinstance(text, bytes) else text.encode(), "week.csv", CATALOGUE)


def fault(text: str | bytes) -> str:
    with pytest.raises(SetwrightError) as error:
        read(text)
    return str(error.value)


def entries(found: LoadedWeek) -> dict[str, Entry]:
    return {entry.exercise: entry for entry in found.week.entries}


def workbook(sheets: dict[str, Sequence[Sequence[Any]]], merged: str = "") -> bytes:
    book = Workbook()
    book.remove(book.active)
    for title, rows in sheets.items():
        sheet = book.create_sheet(title)
        for row in rows:
            sheet.append(list(row))
        if merged:
            sheet.merge_cells(merged)
    file = io.BytesIO()
    book.save(file)
    return file.getvalue()


# ---- what is read


def test_a_week_of_sessions_with_names() -> None:
    found = read(UPPER_LOWER)
    assert [len(day) for day in found.week.days] == [3, 3, 1]
    lifts = entries(found)
    bench, row, raise_ = (lifts[n] for n in ("barbell-bench-press", "barbell-row-to-chest", "dumbbell-side-raise"))
    assert (bench.sets, bench.reps, bench.rir, bench.rest) == (3, (6, 8), 2, 180)
    assert (row.sets, row.reps, row.rest) == (3, (8, 10), 150)
    assert (raise_.technique, raise_.drops) == ("drop", 1)
    squat, hinge, calves = (
        lifts[n] for n in ("barbell-back-squat", "barbell-romanian-deadlift", "standing-calf-raise")
    )
    assert (squat.reps, squat.rest, hinge.rest, calves.rest, calves.rir) == ((5, 8), 180, 150, 90, 0)
    assert (lifts["pull-up"].rir, lifts["pull-up"].rest) == (1, 120)


def test_every_reading_is_said() -> None:
    notes = " | ".join(read(UPPER_LOWER).notes)
    for said in (
        "line 2: '3-4' sets were counted as 3",
        "RPE 8 was read as 2 RIR",
        "rests of '2-3 min' were counted as 150 s",
        "a rest of 2 without a unit was read as minutes",
        "as many repetitions as possible were read as 0 RIR",
        "days: Upper A is day 1, Lower A is day 2 and Upper B is day 3",
        "the kit is the smallest that has all it needs, commercial gym",
    ):
        assert said in notes


def test_the_brief_of_a_week_has_its_themes_and_its_kit() -> None:
    brief = read(UPPER_LOWER).parsed.brief
    assert [day.focus for day in brief.days] == ["upper", "lower", None]
    home = read("day,exercise,sets\nmon,DB row,3\nmon,Goblet squat,3\nmon,DB floor press,3\n").parsed.brief
    assert home.equipment == "home-dumbbells"
    assert home.owned.dumbbell_max is not None


@pytest.mark.parametrize("label", ["A1,A2", "A,A", "a1,a2"])
@pytest.mark.parametrize("column", ["superset", "label", "order", "#"])
def test_two_lines_of_one_letter_are_a_pair(label: str, column: str) -> None:
    one, two = label.split(",")
    found = read(f"day,{column},exercise,sets\nmon,{one},Leg extension,3\nmon,{two},Leg curl,3\nmon,B,Crunch,2\n")
    lifts = entries(found)
    assert lifts["leg-extension"].partner == "seated-leg-curl"
    assert lifts["seated-leg-curl"].partner == "leg-extension"
    assert lifts["crunch"].partner is None


@pytest.mark.parametrize(
    "joined", ["Leg extension + Leg curl", "Leg extension / leg curl", "Leg extension ss leg curl"]
)
def test_two_lifts_in_one_cell_are_a_pair(joined: str) -> None:
    lifts = entries(read(f"day,exercise,sets,reps\nmon,{joined},3,10-12 / 12-15\n"))
    assert lifts["leg-extension"].partner == "seated-leg-curl"
    assert (lifts["leg-extension"].reps, lifts["seated-leg-curl"].reps) == ((10, 12), (12, 15))


def test_labels_and_bullets_before_a_name() -> None:
    found = read("day,exercise,sets\nmon,A1. Bench press,3\nmon,A2) Row (seal),3\nmon,- Crunches,2\nmon,3. Dips,2\n")
    lifts = entries(found)
    assert lifts["barbell-bench-press"].partner
    assert {"crunch", "parallel-bar-dip"} <= set(lifts)


def test_titles_in_place_of_a_column_of_days() -> None:
    text = "My plan,,\nexercise,sets,reps\nMonday,,\nBench press,3,8\nexercise,sets,reps\nThursday,,\nSquat,3,8\n"
    assert [d.weekday for d in read(text).parsed.brief.days] == ["mon", "thu"]


def test_weekdays_and_numbers_with_more_behind_them() -> None:
    text = "day,exercise,sets\nMon - Upper,Bench press,3\nThu: Lower,Squat,3\n"
    assert [d.weekday for d in read(text).parsed.brief.days] == ["mon", "thu"]
    assert read("day,exercise,sets\nDay 1 - Push,Dips,3\nDay 2 - Legs,Squat,3\n").parsed.brief.any_order


def test_a_workbook_with_a_sheet_for_each_day_and_one_for_notes() -> None:
    head = ("Exercise", "Sets", "Reps")
    data = workbook(
        {
            "Push": [head, ("Bench press", 3, "8-12"), ("Dips", 2.0, 10)],
            "Legs": [("Leg day",), head, ("Squat", 4, "6-8")],
            "Notes": [("sleep well",)],
        }
    )
    found = read_any(data, "week.xlsx", CATALOGUE)
    assert [[e.sets for e in day] for day in found.week.days] == [[3, 2], [4]]
    assert any("the sheet 'Notes'" in note for note in found.notes)


def test_a_merged_cell_of_the_day_holds_for_its_lines() -> None:
    rows = [("Day", "Exercise", "Sets"), ("Mon", "Squat", 3), (None, "Dips", 3), (None, "Crunch", 2)]
    found = read_any(workbook({"Week": rows}, "A2:A4"), "week.xlsx", CATALOGUE)
    assert [len(day) for day in found.week.days] == [3]


def test_a_rest_that_a_spreadsheet_took_for_a_time_of_day() -> None:
    rows = [("Day", "Exercise", "Sets", "Rest"), ("Mon", "Squat", 3, time(1, 30)), (None, "Dips", 3, time(0, 2, 30))]
    found = read_any(workbook({"Week": rows}), "week.xlsx", CATALOGUE)
    assert [entry.rest for entry in found.week.entries] == [90, 150]


@pytest.mark.parametrize(("heading", "rests"), [("rest (s)", 5), ("rest min", 300), ("rest", 300)])
def test_the_unit_of_a_heading_holds_for_bare_numbers(heading: str, rests: int) -> None:
    found = read(f"day,exercise,sets,{heading}\nmon,Squat,3,5\n")
    assert [entry.rest for entry in found.week.entries] == [rests]


def test_letters_of_windows_and_smart_quotes() -> None:
    text = "day;exercise;sets;reps\nmon;Farmer\u2019s walk;3;30\u201345 s\n"
    assert "dumbbell-farmers-carry" in entries(read(text.encode("cp1252")))
    assert "dumbbell-farmers-carry" in entries(read(text.encode("utf-16")))


def test_a_lift_of_another_sport_is_counted_in_minutes_and_turned_into_nothing_else() -> None:
    found = read("day,exercise,sets,reps\nmon,Power clean,5,5\nmon,Snatch,5,5\n")
    assert [e.exercise for e in found.week.entries] == ["power-clean", "power-snatch"]


# ---- cells


@pytest.mark.parametrize(
    ("said", "exertion", "heard"),
    [
        ("8", True, 2),
        ("8-9", True, 2),
        ("7.5", True, 3),
        ("@8", False, 2),
        ("RPE 9", False, 1),
        ("1-2", False, 2),
        ("2 RIR", True, 2),
        ("to failure", False, 0),
        ("hard", False, "hard"),
        ("75", True, "75"),
        ("-1", False, "-1"),
    ],
)
def test_effort_as_people_write_it(said: str, exertion: bool, heard: object) -> None:
    """RIR = 10 - RPE: Zourdos et al. 2016, J Strength Cond Res 30:267 (M)."""
    assert reserve(said, exertion)[0] == heard


@pytest.mark.parametrize(
    ("said", "heard"),
    [("AMRAP", None), ("12/10/8", "8-12"), ("12, 10, 8", "8-12"), ("8 ea", "8/side"), ("5+", "5"), ("10 reps", "10")],
)
def test_repetitions_as_people_write_them(said: str, heard: object) -> None:
    assert repetitions(said)[0] == heard


@pytest.mark.parametrize(
    ("said", "heard"), [("2", "2 min"), (90, 90), ("60-90 s", 75), ("2-3", 150), ("1:30-2:00", 105), ("soon", "soon")]
)
def test_rests_as_people_write_them(said: object, heard: object) -> None:
    assert rest(said)[0] == heard


@pytest.mark.parametrize(("said", "heard"), [("3 sets", "3"), ("2-3", 2), (4, 4), ("three", "three")])
def test_sets_as_people_write_them(said: object, heard: object) -> None:
    assert counted_sets(said)[0] == heard


# ---- what is refused


def test_what_a_spreadsheet_spoilt_is_named() -> None:
    assert "the spreadsheet took a range such as 3-4 for one" in fault("day,exercise,sets\nmon,Squat,03-Apr\n")
    data = workbook({"Week": [("Day", "Exercise", "Sets"), ("Mon", "Squat", date(2026, 4, 3))]})
    with pytest.raises(UsageFault, match="is a date"):
        read_any(data, "week.xlsx", CATALOGUE)
    data = workbook({"Week": [("Day", "Exercise", "Sets"), ("Mon", "Squat", "=1+2")]})
    with pytest.raises(UsageFault, match="C2: is a formula without its value"):
        read_any(data, "week.xlsx", CATALOGUE)
    assert "is a formula" in fault("day,exercise,sets\nmon,Squat,=3\n")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("day,exercise,sets\nmon,Squat,three\n", "line 2, sets: got 'three', expected a whole number from 1 to 20"),
        ("day,exercise,sets\nmon,Squat,0\n", "line 2, sets: got 0"),
        ("day,exercise,sets\nmon,Kniebeuge,3\n", "'Kniebeuge' is not in the catalogue"),
        ("day,pair,exercise,sets\nmon,A,Dips,2\nmon,A,Squat,2\nmon,A,Crunch,2\n", "has 3 lines with the letter A"),
        ("day,exercise,sets,pair\nmon,Dips,2,Dips\n", "is paired with itself"),
        ("week,day,exercise,sets\n1,mon,Squat,3\n2,mon,Squat,3\n", "holds 2 weeks, one is read"),
        ("day,exercise,sets\n" + "mon,Squat,3\n" * 10_000, "has 10000 lines, at most 500 are read"),
        ("day,exercise,sets\nmon,Squat,400\n", "expected a whole number from 1 to 20"),
        ("exercise,sets\nSquat,3\n", "the column 'day' is missing"),
        ("day,exercise,sets,rir,RIR\nmon,Squat,3,1,2\n", "the column 'rir' stands twice"),
        (b"PK\x03\x04 nonsense", "is no xlsx workbook"),
        (b"day,exercise\x00,sets\nmon,Squat,3\n", "is not text"),
    ],
)
def test_a_table_that_cannot_be_read_is_named_with_its_place(text: str | bytes, said: str) -> None:
    assert said in fault(text)


def test_marks_that_are_mixed_are_a_fault_and_lose_nothing() -> None:
    assert "line 3" in fault("day;exercise;sets\nmon;Squat;3\nthu\tDips\t3\n")
