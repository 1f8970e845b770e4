"""A desk on which every page has something to show: clients, weeks, a block with its log, and searches that ended.

Nothing is searched for: weeks are stored ones, what searches found is of tests/desk/found (see tests/desk_found.py).
All people are invented. Days stand around today, because the pages tell what is due today.
"""

from __future__ import annotations

import json
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from pathlib import Path
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import audit
from setwright.solver.book.clients import Client, add_client, rest
from setwright.solver.book.opened import Book, open_book
from setwright.solver.book.planned import keep_block, keep_week
from setwright.solver.book.sessions import log_sessions
from setwright.solver.brief.parsed_brief import raw_of
from setwright.solver.desk.desk import Desk
from setwright.solver.desk.entry.guard import Keys
from setwright.solver.desk.searches.crew import Crew, Search
from setwright.solver.desk.searches.task import Task, Told
from setwright.solver.log.values import LoggedSession, LoggedSet
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.document.blocks.block_document import block_document
from setwright.solver.sheets.document.changed_week import changed_week_document
from setwright.solver.sheets.document.week_reader import read_week
from setwright.solver.sheets.screen.addresses import line_at
from setwright.solver.sheets.screen.edits.coach_edits import edit_asked
from setwright.solver.sheets.screen.edits.edited_week import edit_document, edited_week_document
from setwright.solver.uses.blocks.ask import BlockAsk
from setwright.solver.uses.blocks.block import Block
from setwright.solver.uses.blocks.planning import plan_block

TESTS: Final = Path(__file__).parents[1]
FOUND: Final = TESTS / "desk" / "found"
WEEKS: Final = TESTS / "sheets" / "weeks"
WEEK: Final = timedelta(weeks=1)
BEFORE, LONG = 5, 8
"""Weeks of M's block that are over, and all of them."""
LOADS: Final = {
    "leg curl": 40.0,
    "Cable": 30.0,
    "cable": 20.0,
    "Dumbbell side": 8.0,
    "rear raise": 8.0,
    "umbbell": 18.0,
    "achine": 50.0,
    "barbell": 70.0,
    "Curl-bar": 30.0,
}
"""Part of a lift's name -> the load that M uses, kg, where the brief knows none (invented)."""
STILL: Final = "barbell-bench-press"
"""The lift that stays as it is; the repetitions of all others rise."""


@dataclass(frozen=True)
class Filled:
    """A desk with its filled pages: name -> address."""

    desk: Desk
    pages: Mapping[str, str]


def filled_desk(folder: Path) -> Filled:
    """The desk of a new book in a folder."""
    catalogue, monday = load_catalogue(), _monday(date.today())
    shutil.copytree(FOUND / "book.templates", folder / "book.templates")
    with open_book(folder / "book.db", through="the desk") as book:
        block = _client_with_block(book, catalogue, monday)
        _client_with_pairs(book, catalogue, monday)
        _other_clients(book, catalogue, monday)
    desk = Desk(folder / "book.db", catalogue, Crew(1), Keys())
    found = {name: _ended(desk, name, *what) for name, what in _told(block, catalogue, monday).items()}
    return Filled(desk, {**_pages(monday), **found})


def _pages(monday: date) -> dict[str, str]:
    """The pages that show what the book has."""
    week = f"/clients/P/weeks/{monday}"
    return {
        "clients": "/",
        "client": "/clients/M",
        "brief": "/clients/P/brief",
        "weeks": "/clients/M/weeks",
        "week": week,
        "line": f"{week}/line?entry=thu:heel-raised-goblet-squat",
        "why": f"{week}/why",
        "sheets": f"/clients/M/weeks/{monday}/sheets",
        "block": "/clients/M/block",
        "next": "/clients/M/next",
        "happened": "/clients/M/replan",
        "log": "/clients/M/log",
        "gym": f"/clients/M/log/{date.today()}",
        "import": "/clients/M/log/import",
        "looked-through": "/clients/M/log/check",
        "pace": "/clients/M/log/pace",
        "ask-compare": "/clients/M/compare",
        "ask-minutes": "/clients/M/minutes",
        "ask-season": "/clients/M/season",
        "check": "/clients/M/check",
        "templates": "/templates",
        "variants": "/templates/short-days",
        "phone": "/phone",
        "nowhere": "/nowhere",
    }


def _told(block: Block, catalogue: Catalogue, monday: date) -> dict[str, tuple[str, Mapping[str, Any] | None, Any]]:
    """Name of a page -> the task of its search, what it found, and what was asked."""
    week = _week_of_m()
    why, settled = _settled(catalogue)
    quick = {"search": "quick"}
    return {
        "found-week": ("week", week, quick),
        "clash": ("week", _found("clash"), quick),
        "compare": ("compare", _found("compare"), quick),
        "minutes": ("curve", _found("curve"), quick),
        "season": ("season", _found("season"), {}),
        "others": ("others", _found("others"), {**quick, "count": 3}),
        "question": ("question", _found("below"), {"question": "below", "value": "", "monday": str(monday)}),
        "replan": ("replan", _found("replan"), {"starts": str(monday), "why": "thu 35 min", "stamp": "0"}),
        "settle": ("settle", settled, {"starts": str(monday), "why": why, "stamp": "0"}),
        "found-block": ("block", block_document(block), quick),
        "found-variants": ("variants", _found("variants"), quick),
        "under-way": ("week", None, quick),
    }


def _ended(desk: Desk, name: str, task: str, document: Mapping[str, Any] | None, asked: Mapping[str, Any]) -> str:
    """A search in the desk's memory that has ended, or still runs where it has found nothing; its address."""
    told = Told("running", 12.0, index=88.1, gap=4.2, count=1) if document is None else Told("done", document=document)
    asker = "P" if task == "settle" else "M"
    desk.crew._searches[name] = Search(name, asker, Task(task, asked), told)
    return f"/searches/{name}"


# ---- the clients


def _client_with_block(book: Book, catalogue: Catalogue, monday: date) -> Block:
    """M: a block of which the first weeks are over and logged, its week at hand kept anew."""
    stored = _week_of_m()
    brief = {**stored["brief"], "client": {**stored["brief"]["client"], "code": "M"}}
    parsed, week = read_week({**stored, "brief": brief}, catalogue)
    first = monday - BEFORE * WEEK
    block = plan_block(parsed, catalogue, BlockAsk(LONG, first, lighter_every=0), base=week)
    assert isinstance(block, Block)
    client = add_client(book, "M", raw_of(parsed.brief))
    keep_block(book, client, first, first + LONG * WEEK - timedelta(days=1), block_document(block))
    log_sessions(book, client, _sessions(stored, first))
    document = changed_week_document({}, parsed, audit(resolve(parsed.brief, catalogue), week))
    keep_week(book, client, monday, document, "Saturday moved, as asked")
    return block


def _sessions(stored: Mapping[str, Any], first: date) -> list[LoggedSession]:
    """What M did in each session before today but the last Saturday: a repetition more each week, but for one lift."""
    found = []
    for week in range(BEFORE + 1):
        for number, day in enumerate(stored["days"], 1):
            on = first + week * WEEK + timedelta(days=("mon", "tue", "wed", "thu", "fri", "sat").index(day["weekday"]))
            if on >= date.today() or (week == BEFORE - 1 and number == len(stored["days"])):
                continue
            found.append(_session(stored, day["entries"], on, week, number))
    return found


def _session(stored: Mapping[str, Any], lines: list[Any], on: date, week: int, number: int) -> LoggedSession:
    begun = datetime.combine(on, time(18, 0))
    at, sets = begun + timedelta(minutes=6), []
    for line in lines:
        load = _load(stored, line)
        for place in range(1, line["sets"] + 1):
            at += timedelta(seconds=40 + line["rest_seconds"] + 3 * place)
            low, high = line["reps"]
            reps = low + 2 if line["exercise"] == STILL else min(high, low + week) - (place == line["sets"])
            sets.append(LoggedSet(line["exercise"], place, reps, load=load, rir=line["rir"], ended=at))
    return LoggedSession(on, tuple(sets), "kg", session=number, started=begun, minutes=48.0, how_hard=7)


def _load(stored: Mapping[str, Any], line: Mapping[str, Any]) -> float | None:
    known = stored["brief"]["lifts"].get(line["exercise"])
    return known["load"] if known else next((kg for part, kg in LOADS.items() if part in line["name"]), None)


def _client_with_pairs(book: Book, catalogue: Catalogue, monday: date) -> None:
    """P: a caution, and a kept week of two days in pairs."""
    stored = _stored("pairs-private")
    brief = {**stored["brief"], "client": {**stored["brief"]["client"], "code": "P"}}
    parsed, week = read_week({**stored, "brief": brief}, catalogue)
    document = changed_week_document({}, parsed, audit(resolve(parsed.brief, catalogue), week))
    keep_week(book, add_client(book, "P", raw_of(parsed.brief)), monday, document, "found on the desk")


def _other_clients(book: Book, catalogue: Catalogue, monday: date) -> None:
    """One whose block is over, one for whom nothing is planned, one at rest."""
    stored = _stored("three-40")
    parsed, week = read_week(stored, catalogue)
    over = add_client(book, "D", _of(stored, "D"))
    first = monday - 6 * WEEK
    block = plan_block(parsed, catalogue, BlockAsk(5, first, lighter_every=0), base=week)
    assert isinstance(block, Block)
    keep_block(book, over, first, first + 5 * WEEK - timedelta(days=1), block_document(block))
    add_client(book, "T", _of(_stored("six-90"), "T"))
    resting: Client = add_client(book, "R", _of(stored, "R"))
    rest(book, resting, monday - 3 * WEEK)


def _of(stored: Mapping[str, Any], code: str) -> dict[str, Any]:
    return {**stored["brief"], "client": {**stored["brief"]["client"], "code": code}}


# ---- what searches found


def _settled(catalogue: Catalogue) -> tuple[str, dict[str, Any]]:
    """P's week with a set less of a lift, as "make it fit" has it, and why."""
    stored = _stored("pairs-private")
    parsed, week = read_week(stored, catalogue)
    before = audit(resolve(parsed.brief, catalogue), week)
    line = line_at(before.evaluated, "thu:heel-raised-goblet-squat")
    asked = edit_asked(before, line, "sets", "3")
    document = edited_week_document(stored, parsed, asked.effect)
    return asked.said, {**document, "edit": edit_document(asked.said, asked.effect)}


def _week_of_m() -> dict[str, Any]:
    """The week that the comparison found under the brief's own goal."""
    case = next(case for case in _found("compare")["cases"] if case["goal"] == "balanced")
    found: dict[str, Any] = case["week"]
    return found


def _stored(name: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads((WEEKS / f"{name}.json").read_text(encoding="utf-8"))
    return found


def _found(name: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads((FOUND / f"{name}.json").read_text(encoding="utf-8"))
    return found


def _monday(day: date) -> date:
    return day - timedelta(days=day.weekday())
