"""Searches anew what the filled desk of tests and pictures shows: `python -m tests.desk_found`, some minutes long.

Documents go to tests/desk/found, the results of a template into the folder of it there. M's brief is the one of the
stored week barbell-loads, of an invented person.
"""

from __future__ import annotations

import json
import shutil
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[1]
sys.path[:0] = [str(ROOT / ".names")]
FOUND = ROOT / "tests" / "desk" / "found"
FOLDER = FOUND / "book.templates"
"""The folder of templates beside a book."""
WEEK = ROOT / "tests" / "sheets" / "weeks" / "barbell-loads.json"
CLASH = (
    "2 days x 20 min, barbell garage, pin deadlift, pin back squat, pin bench press, must vertical pull, "
    "chest at least 12 sets"
)
TEMPLATE = """title = "Two or three short days"
name = "{days} x {minutes}"

[vary]
days = [2, 3]
minutes = [30, 45, 60]

[brief]
goal = "balanced"
"""
CALLED = "short-days"


class Unheard:
    """A `Telling` to which nobody listens."""

    def due(self) -> bool:
        return False

    def progress(self, **what: Any) -> None:
        """Nothing."""

    def stopped(self) -> bool:
        return False


def searched() -> dict[str, tuple[str, dict[str, Any]]]:
    """Name of a document -> the task that finds it and its arguments."""
    week = json.loads(WEEK.read_text(encoding="utf-8"))
    brief, quick = week["brief"], {"search": "quick"}
    from setwright.catalogue.load import load_catalogue
    from setwright.solver.brief.file import parse_phrase
    from setwright.solver.brief.parsed_brief import raw_of
    from setwright.solver.rulebook import RULES

    clashing = raw_of(parse_phrase(CLASH, load_catalogue(), tuple(RULES)).brief)
    return {
        "clash": ("week", {"brief": clashing, **quick}),
        "compare": ("compare", {"brief": brief, "goals": ["growth", "efficiency", "balanced"], **quick}),
        "curve": ("curve", {"brief": brief, "by": "minutes", "amounts": [20, 30, 40, 50, 70, 90], **quick}),
        "others": ("others", {"brief": brief, "count": 3, **quick}),
        "season": (
            "season",
            {
                "brief": brief,
                "start": "2026-01-05",
                "weeks": 26,
                "block_weeks": [4, 6],
                "calendar": "",
                "emphasis": ["chest", "back"],
            },
        ),
    }


def asked_of_the_week() -> dict[str, tuple[str, dict[str, Any]]]:
    """The same for what is asked of the week that the comparison found under the brief's own goal."""
    cases = json.loads((FOUND / "compare.json").read_text(encoding="utf-8"))["cases"]
    week = next(case["week"] for case in cases if case["goal"] == "balanced")
    happened = {"fields": {"minutes-sat": "35", "taken": "hack squat machine"}, "done": ["mon"], "missed": []}
    return {
        "below": ("question", {"document": week, "question": "below", "value": "", "search": "quick"}),
        "replan": ("replan", {"week": week, "brief": week["brief"], **happened, "search": "quick"}),
    }


def find(name: str, arguments: Mapping[str, Any]) -> Mapping[str, Any]:
    """What a task finds, done in this process."""
    from setwright.catalogue.load import load_catalogue
    from setwright.solver.desk.searches.tasks import TASKS

    return TASKS[name]()(arguments, load_catalogue(), Unheard())


def run_template() -> Mapping[str, Any]:
    """The document of a run of the template, whose results are left in their folder; what is made of them is not."""
    FOLDER.mkdir(parents=True, exist_ok=True)
    template = FOLDER / f"{CALLED}.toml"
    template.write_text(TEMPLATE, encoding="utf-8")
    asked = {"called": CALLED, "template": str(template), "folder": str(FOLDER / CALLED), "overlay": None}
    found = find("variants", {**asked, "search": "quick"})
    shutil.rmtree(FOLDER / CALLED / "weeks")
    for written in ("changes.csv", "matrix.csv", "matrix.html"):
        (FOLDER / CALLED / written).unlink()
    return found


def write(name: str, document: Mapping[str, Any]) -> None:
    text = json.dumps(document, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    (FOUND / f"{name}.json").write_text(text + "\n", encoding="utf-8")


if __name__ == "__main__":
    for documents in (searched, asked_of_the_week):
        for name, (task, arguments) in documents().items():
            write(name, find(task, arguments))
    write("variants", run_template())
