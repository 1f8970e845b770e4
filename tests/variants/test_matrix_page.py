"""The page of the variants: a field for each, what its steps buy, where its week is; whole in itself, for paper too."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from statistics import mean
from typing import Any

import html5lib
import pytest
from cheap_variants import job

from setwright.solver.batch import matrix_folder
from setwright.solver.sheets.variants import matrix_export
from setwright.solver.sheets.variants.matrix_document import matrix_document
from setwright.solver.sheets.variants.matrix_export import matrix_files
from setwright.solver.sheets.variants.matrix_page import grid_markup, matrix_page
from setwright.solver.sheets.variants.variant_rows import VariantRow, read_variant_rows
from setwright.solver.uses.variants.running import Job, run_variants
from setwright.solver.uses.variants.task import CLASH
from setwright.solver.uses.variants.workers import ExecutorWorkers

RAW: dict[str, Any] = {
    "title": "Price <list> & time",
    "vary": {
        "days": [1, 2, 3],
        "minutes": [30, 45, 60],
        "kits": ["bands", "hotel-gym"],
        "emphases": ["even", "delts"],
    },
    "exclude": [{"days": 1, "minutes": 60}],
}
Ran = tuple[Job, tuple[VariantRow, ...], dict[str, Any]]


@pytest.fixture(scope="module")
def ran(tmp_path_factory: pytest.TempPathFactory) -> Ran:
    what = job(RAW, tmp_path_factory.mktemp("variants"))
    with ThreadPoolExecutor(2) as two:
        run_variants(what, ExecutorWorkers(two, 2))
    first, *others = read_variant_rows(what.matrix, what.store)
    rows = (VariantRow(first.variant, CLASH, "must vertical-pull"), *others)
    return what, rows, matrix_document(what.matrix, rows)


def fields_of(document: dict[str, Any]) -> list[dict[str, Any]]:
    return [field for grid in document["grids"] for row in grid["rows"] for field in row["fields"] if field]


def test_every_variant_has_its_field(ran: Ran) -> None:
    _, rows, document = ran
    assert [grid["of"] for grid in document["grids"]] == [
        {"kit": kit, "emphasis": emphasis} for kit in ("bands", "hotel-gym") for emphasis in ("even", "delts")
    ]
    for grid in document["grids"]:
        assert [row["label"] for row in grid["rows"]] == ["1", "2", "3"]
        assert grid["rows"][0]["fields"][2] is None, "what is left out has no field"
        for row in grid["rows"]:
            for across, field in zip(document["across"], row["fields"], strict=True):
                found = [r for r in rows if r.variant.values == {**grid["of"], "days": row["label"], "minutes": across}]
                assert [r.variant.key for r in found] == ([] if field is None else [field["key"]])
    assert {field["end"] for field in fields_of(document)} == {"solved", "impossible"}
    assert sorted(field["key"] for field in fields_of(document)) == sorted(row.variant.key for row in rows)


def test_a_field_holds_what_the_week_says(ran: Ran) -> None:
    _, rows, document = ran
    by_key = {row.variant.key: row for row in rows}
    for field in fields_of(document):
        row = by_key[field["key"]]
        assert (field["index"], field["minutes"]) == (row.index, row.minutes)
        if row.index is None:
            assert field["end"] == "impossible" and field["why_none"] == "must vertical-pull"
        else:
            days, minutes = int(row.variant.values["days"]), int(row.variant.values["minutes"])
            assert field["given"] == days * minutes and field["interval"] == list(row.interval or ())


def test_a_step_is_the_difference_to_the_next_smaller_week(ran: Ran) -> None:
    _, rows, document = ran
    at = {tuple(sorted(row.variant.values.items())): row for row in rows}
    by_key = {row.variant.key: row for row in rows}
    checked = 0
    for field in fields_of(document):
        for step in field["steps"]:
            assert step["axis"] != "emphasis"
            before = at[tuple(sorted({**by_key[field["key"]].variant.values, step["axis"]: step["from"]}.items()))]
            assert step["index"] == pytest.approx(field["index"] - before.index)
            checked += 1
    assert checked > 20


def test_the_steps_are_summed_over_their_pairs(ran: Ran) -> None:
    document = ran[2]
    for step in document["steps"]:
        found = [
            one["index"]
            for field in fields_of(document)
            for one in field["steps"]
            if (one["axis"], one["from"]) == (step["axis"], step["from"]) and _label(ran, field, step) == step["to"]
        ]
        if step["axis"] == "emphasis":
            assert step["index"] is None and step["pairs"] > 0
        else:
            assert step["pairs"] == len(found) and step["index"]["mean"] == pytest.approx(mean(found), abs=1e-3)
            assert (step["index"]["least"], step["index"]["most"]) == (min(found), max(found))
    assert [step["axis"] for step in document["steps"]][:2] == ["days", "days"]


def _label(ran: Ran, field: dict[str, Any], step: dict[str, Any]) -> str:
    return next(row.variant.values[step["axis"]] for row in ran[1] if row.variant.key == field["key"])


def test_the_page_is_valid_and_needs_nothing_else(ran: Ran) -> None:
    page = matrix_page(ran[2], lambda field: f"weeks/{field['file']}.html")
    html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    text = page.decode()
    assert "Price &lt;list&gt; &amp; time" in text and "<list>" not in text
    for out in ("<script", "<link", "src=", "url(", "@import", "onclick"):
        assert out not in text
    assert "@page" in text and "@media print" in text and "prefers-color-scheme: dark" in text
    for field in fields_of(ran[2]):
        linked = f'href="weeks/{field["file"]}.html"' in text
        assert linked == (field["index"] is not None) and field["name"] in text
    assert "must vertical-pull" in text and "not offered" in text and "Caution." in text


def test_the_same_grid_stands_on_another_page_with_its_sheets(ran: Ran) -> None:
    text = grid_markup(ran[2], lambda field: "", lambda field: (("pdf", f"/x/{field['file']}/pdf"),))
    solved = [field for field in fields_of(ran[2]) if field["index"] is not None]
    assert text.count("/pdf") == len(solved) and "style=" not in text and "<style" not in text


def test_a_template_of_one_week_is_one_field(tmp_path: Path) -> None:
    what = job({"vary": {"days": [1], "minutes": [30]}}, tmp_path)
    document = matrix_document(what.matrix, read_variant_rows(what.matrix, what.store))
    assert [grid["of"] for grid in document["grids"]] == [{}] and document["done"] == 0
    page = matrix_page(document).decode()
    assert "All variants" in page and "Not searched yet" in page and "What a step buys" not in page


def test_without_jinja_the_tables_are_written_and_the_page_is_said_to_lack(
    ran: Ran, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    what, rows, _ = ran
    monkeypatch.setattr(matrix_export, "find_spec", lambda name: None)
    assert set(matrix_files(what.matrix, rows)) == {"matrix.csv", "changes.csv"}
    said = matrix_folder.write_matrix(what.matrix, rows, what.store, None)  # type: ignore[arg-type]
    assert len(said) == 1 and "jinja2" in said[0]


def test_more_weeks_than_are_leafed_through_get_no_pages(ran: Ran, monkeypatch: pytest.MonkeyPatch) -> None:
    what, rows, _ = ran
    monkeypatch.setattr(matrix_folder, "MOST_WEEKS_SHOWN", len(rows) - 1)
    said = matrix_folder.write_matrix(what.matrix, rows, what.store, None)  # type: ignore[arg-type]
    assert len(said) == 1 and "no pages of weeks" in said[0]
    assert 'href="weeks/' not in (what.store.folder / "matrix.html").read_text(encoding="utf-8")
    assert not (what.store.folder / "weeks").exists()
