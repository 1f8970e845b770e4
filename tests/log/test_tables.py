"""Tables of sets as people keep them: which column is which, what a cell says, what holds for the rows below."""

from __future__ import annotations

import csv
import io
from datetime import date, datetime

import pytest
from read_logs import CATALOGUE, faults, one_cell, only, read, sets

from setwright.solver.log.unread import UnreadRow

BENCH, SQUAT = "barbell-bench-press", "barbell-back-squat"
TABLE = """Datum;Lift;Weight;Reps;RIR
05.01.2026;Bench press;82,5;8;2
;;82,5;7;1
;Back squat;100;5;
07.01.2026;Bench press;85;6;0
"""


def test_columns_are_named_by_the_caller_and_cells_below_a_date_belong_to_it() -> None:
    found = read(TABLE, columns={"date": "Datum", "load": "Weight"})
    assert [session.on for session in found.sessions] == [date(2026, 1, 5), date(2026, 1, 7)]
    assert sets(found.sessions[0]) == [(BENCH, 82.5, 8, 2), (BENCH, 82.5, 7, 1), (SQUAT, 100, 5, None)]
    assert [done.number for done in found.sessions[0].sets] == [1, 2, 1]
    assert found.unread == () and found.notes == ()


@pytest.mark.parametrize("mark", [",", ";", "\t", "|"])
def test_any_mark_may_stand_between_the_cells(mark: str) -> None:
    text = mark.join(["date", "exercise", "load", "reps"]) + "\n" + mark.join(["2026-01-05", "bench press", "80", "8"])
    assert only(text) == [(BENCH, 80, 8, None)]


@pytest.mark.parametrize(
    "letters", ["utf-8", "utf-8-sig", "utf-16", "cp1252"], ids=["utf-8", "with mark", "utf-16", "windows"]
)
def test_any_common_letters_are_read(letters: str) -> None:
    text = "date,exercise,load,reps,note\n2026-01-05,bench press,80,8,caf\u00e9\n"
    (session,) = read(text.encode(letters)).sessions
    assert session.note == "Barbell bench press: caf\u00e9"


# Quoting as RFC 4180, section 2, rules 5 to 7, has it: "aaa","b CRLF bb","ccc" and "aaa","b""bb","ccc".
@pytest.mark.parametrize(
    ("cell", "note"), [('"b \r\nbb"', "b \r\nbb"), ('"b""bb"', 'b"bb'), ('"a,b"', "a,b"), ('" a "', "a")]
)
def test_quoted_cells_are_read_as_rfc_4180_has_them(cell: str, note: str) -> None:
    text = f'"date","exercise","load","reps","note"\r\n"2026-01-05","bench press","80","8",{cell}\r\n'
    assert read(text).sessions[0].note == f"Barbell bench press: {note}"


def test_an_open_quote_is_a_fault_that_names_its_line() -> None:
    (said,) = faults('date,exercise,load,reps\n2026-01-05,"bench press,80,8\n')
    assert said == "line 2: is not CSV: unexpected end of data; close each quote, or save it again"


@pytest.mark.parametrize(
    ("cell", "done"),
    [
        ("80x8", [(80, 8, None)]),
        ("80 x 8", [(80, 8, None)]),
        ("80\N{MULTIPLICATION SIGN}8", [(80, 8, None)]),
        ("82,5x8", [(82.5, 8, None)]),
        ("80x8x3", 3 * [(80, 8, None)]),
        ("80 kg x 8 @ 2 RIR", [(80, 8, 2)]),
        ("80kgx8 RPE 8", [(80, 8, 2)]),
        ("80x8 @ RPE 8.5", [(80, 8, 1)]),
        ("80x8 @9", [(80, 8, 1)]),
        ("80x8, 80x7", [(80, 8, None), (80, 7, None)]),
        ("80x8,80x7", [(80, 8, None), (80, 7, None)]),
        ("80x8; 82,5x6", [(80, 8, None), (82.5, 6, None)]),
        ("80 x 8, 8, 7 @ 2 RIR", [(80, 8, 2), (80, 8, 2), (80, 7, 2)]),
        ("80x8 @ 2 RIR, 80x7 @ 1 RIR", [(80, 8, 2), (80, 7, 1)]),
        ("80 x 8 @ 2 RIR, 7 @ 1 RIR", [(80, 8, 2), (80, 7, 1)]),
    ],
)
def test_the_notation_of_a_diary_is_read(cell: str, done: list[tuple[float, int, int | None]]) -> None:
    assert one_cell(cell) == [(BENCH, *one) for one in done]


@pytest.mark.parametrize("cell", ["8, 8, 7", "bw x 8, 8, 7", "8/8/7", "BWx8; 8; 7"])
def test_repetitions_alone_are_sets_of_a_bodyweight_lift(cell: str) -> None:
    assert one_cell(cell, "pull-up") == [
        ("pull-up", None, 8, None),
        ("pull-up", None, 8, None),
        ("pull-up", None, 7, None),
    ]


def test_bodyweight_with_a_load_is_that_load() -> None:
    assert one_cell("bw+10x8", "pull-up") == [("pull-up", 10, 8, None)]


@pytest.mark.parametrize(
    ("cell", "said"),
    [
        ("80", "expected load x repetitions such as 80x8"),
        ("heavy", "expected load x repetitions such as 80x8"),
        ("-80x8", "expected load x repetitions such as 80x8"),
        ("3x8x80", "expected load x repetitions x sets; write the load first: 80x8x3"),
        ("80x8x0", "expected load x repetitions x sets"),
        ("80x8 @ 2", "which says neither RIR nor RPE; write @ 2 RIR, or @ RPE 8"),
        ("80x8 @ 12 RIR", "from 0 to 10"),
        ("1200x8", "expected a load from 0 to 1000"),
        ("80x101", "expected at most 100 repetitions"),
        ("80x45 s", "expected at most 100 repetitions"),
    ],
)
def test_notation_that_is_none_or_could_mean_another_thing_is_refused(cell: str, said: str) -> None:
    (fault,) = faults(f'date,exercise,done\n2026-01-05,bench press,"{cell}"\n')
    assert fault.startswith("line 2, done: got ") and said in fault


@pytest.mark.parametrize("cell", ["45", "45 s", "0:45", "15 breaths"])
def test_a_hold_is_counted_in_breaths_of_three_seconds(cell: str) -> None:
    assert only(f"date,exercise,reps\n2026-01-05,plank,{cell}\n") == [("plank", None, 15, None)]


def test_a_row_may_hold_the_sets_of_a_lift() -> None:
    head = "date,exercise,load,reps,sets,rir\n"
    assert only(head + "2026-01-05,bench press,80,8,3,2") == 3 * [(BENCH, 80, 8, 2)]
    assert only(head + "2026-01-05,bench press,80,8/8/7,,2/1/0") == [
        (BENCH, 80, 8, 2),
        (BENCH, 80, 8, 1),
        (BENCH, 80, 7, 0),
    ]
    assert only(head + "2026-01-05,bench press,80/85,8/6,2,") == [(BENCH, 80, 8, None), (BENCH, 85, 6, None)]
    (said,) = faults(head + "2026-01-05,bench press,80/85,8/8/7,,")
    assert said.startswith("line 2, reps: has 3 numbers of repetitions, 2 loads")


@pytest.mark.parametrize(
    ("head", "cells"), [("sets x reps,weight", "3x5,100"), ("sets,load", "3 x 5,100"), ("sets,load", "3 sets of 5,100")]
)
def test_sets_by_repetitions_beside_a_load_are_no_load(head: str, cells: str) -> None:
    assert only(f"date,exercise,{head}\n2026-01-05,squat,{cells}\n") == 3 * [(SQUAT, 100, 5, None)]


def test_a_lone_small_number_before_repetitions_is_asked_about() -> None:
    for lift in ("pull-up", "dumbbell curl"):
        (said,) = faults(f"date,exercise,done\n2026-01-05,{lift},3x8\n")
        assert "which may be a load or a number of sets; write 3 kg x 8 for the load" in said
    assert one_cell("3 kg x 8", "dumbbell curl") == [("dumbbell-curl", 3, 8, None)]
    assert one_cell("5x12, 5x10", "dumbbell curl") == [("dumbbell-curl", 5, 12, None), ("dumbbell-curl", 5, 10, None)]
    assert only("date,exercise,set 1\n2026-01-05,dumbbell curl,5x12\n") == [("dumbbell-curl", 5, 12, None)]
    (said,) = faults("date,exercise,done,load\n2026-01-05,squat,100x5,100\n")
    assert said.startswith("line 2, done: got '100x5', and a load in its own column")


def test_bursts_are_one_set_with_all_their_repetitions() -> None:
    assert only("date,exercise,load,reps\n2026-01-05,bench press,80,8+3+2\n") == [(BENCH, 80, 13, None)]


@pytest.mark.parametrize("rpe", range(5, 11))
def test_rpe_is_ten_less_what_is_left(rpe: int) -> None:
    """Zourdos et al. 2016, J Strength Cond Res 30:267: the scale based on repetitions in reserve."""
    assert only(f"date,exercise,load,reps,rpe\n2026-01-05,bench press,80,8,{rpe}\n") == [(BENCH, 80, 8, 10 - rpe)]


def test_numbered_columns_hold_a_set_each() -> None:
    head = "date,exercise,load-1,reps-1,rir-1,load-2,reps-2,Set 3\n"
    found = only(head + "2026-01-05,bench press,80,8,2,80,7,75x9\n,pull-up,,8,,,,\n")
    assert found == [(BENCH, 80, 8, 2), (BENCH, 80, 7, None), (BENCH, 75, 9, None), ("pull-up", None, 8, None)]


def test_sides_are_kept_and_numbered_apart() -> None:
    rows = "".join(
        f"2026-01-05,one-arm dumbbell row,30,{reps},{side}\n" for reps, side in ((10, "L"), (9, "right"), (8, "both"))
    )
    (session,) = read("date,exercise,load,reps,side\n" + rows).sessions
    assert [(done.side, done.number, done.reps) for done in session.sets] == [
        ("left", 1, 10),
        ("right", 1, 9),
        (None, 1, 8),
    ]


def test_sets_are_in_the_order_of_their_numbers_and_of_their_ends() -> None:
    numbered = "date,exercise,set,reps\n" + "".join(f"2026-01-05,pull-up,{n},{n}\n" for n in (3, 2, 1))
    assert [done.reps for done in read(numbered).sessions[0].sets] == [1, 2, 3]
    ended = "date,exercise,reps,set ended\n2026-01-05,pull-up,8,18:20\n2026-01-05,bench press,5,18:10\n"
    assert [done.ended for done in read(ended).sessions[0].sets] == [
        datetime(2026, 1, 5, 18, 10),
        datetime(2026, 1, 5, 18, 20),
    ]


def test_what_rows_say_of_their_session_is_kept() -> None:
    head = "date,session,week,exercise,load,reps,started,ended,minutes,how hard,note\n"
    text = head + "2026-01-05,Session 2,3,bench press,80,8,18:03,6:55 pm,52,7,slept badly\n,,,,80,8,,,,,\n"
    (session,) = read(text).sessions
    assert (session.week, session.session, session.minutes, session.how_hard) == (3, 2, 52, 7)
    assert (session.started, session.ended) == (datetime(2026, 1, 5, 18, 3), datetime(2026, 1, 5, 18, 55))
    assert session.note == "Barbell bench press: slept badly" and len(session.sets) == 2


def test_two_sessions_of_a_day_are_told_apart_by_a_column() -> None:
    text = "date,session,exercise,reps\n2026-01-05,morning,pull-up,8\n2026-01-05,evening,pull-up,8\n"
    assert [session.note for session in read(text).sessions] == ["morning", "evening"]


def test_a_table_sorted_by_lift_gives_the_same_sessions() -> None:
    rows = ["2026-01-05,bench press,8", "2026-01-07,bench press,8", "2026-01-05,pull-up,8", "2026-01-07,pull-up,8"]
    found = read("date,exercise,reps\n" + "\n".join(rows))
    assert [[done.exercise for done in session.sets] for session in found.sessions] == 2 * [[BENCH, "pull-up"]]


def test_dates_may_stand_alone_above_their_rows() -> None:
    found = read("Exercise,Load,Reps\n2026-01-05,,\nBench press,80,8\n2026-01-07,,\nBench press,80,9\n")
    assert [(session.on.day, session.sets[0].reps) for session in found.sessions] == [(5, 8), (7, 9)]
    under = read("exercise,reps,date\n,,2026-01-05\npull-up,8,\n")
    assert [(session.on.day, session.sets[0].reps) for session in under.sessions] == [(5, 8)] and not under.unread


def test_what_is_no_set_is_kept_as_unread() -> None:
    text = (
        "My log,,,,\ndate,exercise,load,reps,mood\n2026-01-05,bench press,40,10,\n2026-01-05,bench press,80,8,good\n"
        "Total,,,,\ndate,exercise,load,reps,mood\n2026-01-06,squat,,,\n2026-01-07,bench press,80,8,,beyond\n"
    )
    found = read(text)
    assert found.unread == (
        UnreadRow("line 1", "My log", "stands above the heading"),
        UnreadRow("line 4", "mood: good", "stands in columns that are not read"),
        UnreadRow("line 5", "Total", "says no set"),
        UnreadRow("line 7", "2026-01-06; squat", "says no set"),
        UnreadRow("line 8", "no heading: beyond", "stands in columns that are not read"),
    )
    assert sum(len(session.sets) for session in found.sessions) == 3


def test_ramp_up_sets_are_left_unread_and_other_kinds_are_told() -> None:
    rows = [
        "2026-01-05,bench press,40,10,warm-up",
        "2026-01-05,bench press,80,8,work",
        "2026-01-05,bench press,60,9,drop",
    ]
    found = read("date,exercise,load,reps,type\n" + "\n".join(rows))
    assert sets(found.sessions[0]) == [(BENCH, 80, 8, None), (BENCH, 60, 9, None)]
    assert [row.text for row in found.unread] == ["2026-01-05; bench press; 40; 10; warm-up", "type: drop"]


def test_near_and_short_names_are_asked_about_or_taken() -> None:
    text = "date,exercise,reps\n" + "".join(f"2026-01-05,bench pres,{reps}\n" for reps in (8, 7, 6))
    (said,) = faults(text)
    assert said.startswith(
        "line 2, exercise: 'bench pres' is not in the catalogue, expected an exercise (and so 2 times"
    )
    assert "did you mean 'Barbell bench press'" in said
    found = read(text, accept_near=True)
    assert len(found.sessions[0].sets) == 3 and found.notes == ("'bench pres' was read as Barbell bench press",)


def test_a_name_may_be_led_by_a_label() -> None:
    assert only("date,exercise,reps\n2026-01-05,A1. Bench press,8\n") == [(BENCH, None, 8, None)]


def test_every_lift_of_the_catalogue_is_read_by_id_and_name() -> None:
    out = io.StringIO()
    table = csv.writer(out)
    table.writerow(["date", "exercise", "reps"])
    for place, exercise in enumerate(CATALOGUE.exercises.values()):
        for name in (exercise.id, exercise.name):
            table.writerow([date(2020, 1, 1 + place % 28), name, 30 if exercise.timed else 8])
    lifts = [done.exercise for session in read(out.getvalue()).sessions for done in session.sets]
    assert sorted(lifts) == sorted(2 * list(CATALOGUE.exercises))
