"""What stands beside a week on its page: curves and comparisons read back from their JSON."""

from __future__ import annotations

from typing import Any

import pytest
from handed import shipped

from setwright.catalogue.faults import UsageFault
from setwright.solver.sheets.formats import written
from setwright.solver.sheets.html.beside import plots_of_documents

CURVE: dict[str, Any] = {
    "schema": "setwright.curve/1",
    "bend": 40,
    "rows": [
        {"amount": 20, "minutes_given": 60, "stimulus": None, "interval": None},
        {"amount": 40, "minutes_given": 120, "stimulus": 70.5, "interval": [63, 77]},
        {"amount": 60, "minutes_given": 180, "stimulus": 80.0, "interval": [72, 88]},
    ],
}


def compared(*goals: str) -> dict[str, Any]:
    weeks = [{"muscles": [{"muscle": "chest", "sets": 4.0 + i, "emphasis": "normal"}]} for i in range(len(goals))]
    cases = [{"label": "caution shoulder", "goal": g, "week": w} for g, w in zip(goals, weeks, strict=True)]
    return {"schema": "setwright.compare/1", "cases": [*cases, {"label": "x", "goal": "growth", "week": None}]}


def test_a_curve_gives_its_rows_that_have_a_week() -> None:
    plots = plots_of_documents([("c.json", CURVE)], shipped())
    assert plots.curve == ((120.0, 70.5), (180.0, 80.0))
    assert plots.intervals == ((63.0, 77.0), (72.0, 88.0))
    assert plots.bend == 120.0


def test_weeks_are_named_by_goal_or_number_and_never_by_a_brief() -> None:
    assert plots_of_documents([("a", compared("growth", "balanced"))], shipped()).names == ("growth", "balanced")
    twins = plots_of_documents([("a", compared("growth", "growth"))], shipped())
    assert twins.names == ("week 1", "week 2")
    assert twins.rows == (("Chest", (4.0, 5.0)),)


def test_both_stand_on_the_page() -> None:
    pytest.importorskip("jinja2")
    from handed import handed

    plots = plots_of_documents([("c", CURVE), ("a", compared("growth", "balanced"))], shipped())
    page = written("html", handed(), plots).decode()
    assert "70.5" in page
    assert "caution shoulder" not in page
    assert len(page) > len(written("html", handed()).decode())


@pytest.mark.parametrize(
    ("document", "said"),
    [
        ({"schema": "setwright.week/1"}, "expected 'setwright.curve/1' or 'setwright.compare/1'"),
        ([], r"is \[\], expected"),
        ({"schema": "setwright.curve/1"}, "x.json: rows: is missing, expected a list"),
        ({**CURVE, "bend": 20}, "bend: got 20, expected the amount of a row that has a week"),
        (
            {**CURVE, "rows": [{**CURVE["rows"][1], "stimulus": "high"}]},
            r"rows\[0\].stimulus: got 'high', expected a number",
        ),
        ({**CURVE, "rows": []}, "no row has a week"),
        (compared("growth"), "1 weeks, expected 2 to 4"),
    ],
)
def test_what_is_neither_is_a_fault(document: Any, said: str) -> None:
    with pytest.raises(UsageFault, match=said):
        plots_of_documents([("x.json", document)], shipped())
