"""Templates on the desk: written down, refused, changed, run, shown as a grid whose fields lead to their weeks."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from at_desk import JSON
from starlette.testclient import TestClient
from told import CHEAP, Listener, asked

from setwright.catalogue.load import load_catalogue
from setwright.solver.batch import planned_matrix
from setwright.solver.desk.variants import templates
from setwright.solver.desk.variants.run_template import run_template
from setwright.solver.desk.variants.shelf import Shelf

TEXT = """title = "Short weeks"
[vary]
days = [1]
minutes = [15, 20]
[vary.kits]
dumbbells = "home-dumbbells"
none = "bodyweight"
[[also]]
when = { kit = "none", minutes = 20 }
brief = { must = ["vertical-pull"] }
"""


def faults(answer: Any) -> list[str]:
    assert answer.status_code == 422, answer.text
    return [fault["where"] for fault in answer.json()["faults"]]


@pytest.fixture
def kept(browser: TestClient) -> TestClient:
    """A desk that keeps the template short-weeks."""
    assert browser.post("/templates", data={"template": TEXT}).headers["location"] == "/templates/short-weeks"
    return browser


@pytest.fixture(scope="module")
def run_once(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Path, dict[str, Any], Listener]]:
    """The folder of templates after a run, what came out, and what was told."""
    folder = tmp_path_factory.mktemp("run") / "book.templates"
    shelf = Shelf(folder, load_catalogue())
    shelf.add("short-weeks", TEXT)
    arguments = {
        "called": "short-weeks",
        "template": TEXT,
        "folder": str(folder / "short-weeks"),
    }
    listener = Listener()
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(planned_matrix, "SEARCHES", CHEAP)
        done = run_template({**arguments, "search": "quick", "overlay": None}, shelf.catalogue, listener)
    yield folder, dict(done), listener


@pytest.fixture
def run(browser: TestClient, run_once: tuple[Path, dict[str, Any], Listener], tmp_path: Path) -> TestClient:
    """A desk whose book stands beside that folder."""
    app: Any = browser.app
    app.state.desk = replace(app.state.desk, place=run_once[0].with_name("book.db"))
    return browser


# ---- written down


def test_a_template_is_kept_beside_the_book(kept: TestClient, tmp_path: Path) -> None:
    assert (tmp_path / "book.templates" / "short-weeks.toml").read_text(encoding="utf-8") == TEXT
    document = kept.get("/templates", headers=JSON).json()
    assert document["schema"] == "setwright.templates/1"
    assert document["templates"] == [
        {"name": "short-weeks", "title": "Short weeks", "variants": 4, "fault": "", "run": False}
    ]
    assert 'href="/templates/short-weeks"' in kept.get("/templates").text


def test_the_example_can_be_written_down_as_it_stands(browser: TestClient) -> None:
    page = browser.get("/templates").text
    assert templates.EXAMPLE.splitlines()[-1].replace('"', "&#34;") in page
    data = {"template": templates.EXAMPLE.replace("\n", "\r\n")}
    assert browser.post("/templates", data=data).headers["location"] == "/templates/weeks-by-time"
    assert browser.get("/templates/weeks-by-time", headers=JSON).json()["template"] == templates.EXAMPLE


def test_a_file_goes_before_the_text(browser: TestClient) -> None:
    file = {"file": ("mine.toml", TEXT.encode(), "application/toml")}
    answer = browser.post("/templates", data={"template": templates.EXAMPLE, "name": "Für Örtchen/.."}, files=file)
    name = answer.headers["location"].removeprefix("/templates/")
    assert name == "fur-ortchen" and browser.get(f"/templates/{name}", headers=JSON).json()["template"] == TEXT


def test_every_fault_of_a_template_is_told(browser: TestClient, tmp_path: Path) -> None:
    wrong = TEXT.replace("days = [1]", "days = [9]").replace("minutes = [15, 20]", "minutes = [15, 15]")
    where = faults(browser.post("/templates", data={"template": wrong, "name": "///"}, headers=JSON))
    assert where[0] == "name" and len(where) == 3
    assert faults(browser.post("/templates", data={"template": " "}, headers=JSON)) == ["template"]
    assert faults(browser.post("/templates", data={"template": "vary ="}, headers=JSON))
    late = {"file": ("x.toml", b"\xff\xfe", "application/toml")}
    assert faults(browser.post("/templates", files=late, headers=JSON)) == ["file"]
    assert not (tmp_path / "book.templates").exists()


def test_a_name_is_not_written_over(kept: TestClient) -> None:
    assert faults(kept.post("/templates", data={"template": TEXT}, headers=JSON)) == ["name"]


def test_a_template_is_changed_on_its_own_page(kept: TestClient) -> None:
    new = TEXT.replace("[15, 20]", "[15]").replace(", minutes = 20", "")
    assert kept.post("/templates/short-weeks", data={"template": new}).status_code == 303
    assert len(kept.get("/templates/short-weeks", headers=JSON).json()["plan"]["variants"]) == 2
    assert faults(kept.post("/templates/short-weeks", data={"template": "[vary]\nhours = 1"}, headers=JSON))
    assert kept.get("/templates/short-weeks", headers=JSON).json()["template"] == new


@pytest.mark.parametrize("name", ["nothing", "%2e%2e%2fbook", "short-weeks.toml"])
def test_what_is_not_kept_has_no_page(kept: TestClient, name: str) -> None:
    assert kept.get(f"/templates/{name}", headers=JSON).status_code in (404, 422)
    assert kept.post(f"/templates/{name}", data={"template": TEXT}, headers=JSON).status_code in (404, 405, 422)


def test_a_file_that_was_spoilt_by_hand_says_why(kept: TestClient, tmp_path: Path) -> None:
    (tmp_path / "book.templates" / "short-weeks.toml").write_text("[vary]\nhours = 1\n", encoding="utf-8")
    assert "hours" in kept.get("/templates").text
    page = kept.get("/templates/short-weeks").text
    assert "hours" in page and "Search what is missing" not in page


def test_a_change_of_a_text_that_another_window_changed_is_refused(kept: TestClient) -> None:
    shown = kept.get("/templates/short-weeks", headers=JSON).json()["digest"]
    mine, theirs = TEXT.replace("[15, 20]", "[20, 25]"), TEXT.replace("[15, 20]", "[20, 30]")
    for page in ("", "/run"):
        assert f'name="digest" value="{shown}"' in kept.get("/templates/short-weeks").text, page
    assert kept.post("/templates/short-weeks", data={"template": theirs, "digest": shown}).status_code == 303
    for address, data in (("", {"template": mine}), ("/run", {"search": "quick"})):
        answer = kept.post(f"/templates/short-weeks{address}", data={**data, "digest": shown}, headers=JSON)
        assert faults(answer) == ["template short-weeks"]
    assert kept.get("/templates/short-weeks", headers=JSON).json()["template"] == theirs


# ---- run


def test_a_run_is_asked_for(kept: TestClient, tmp_path: Path) -> None:
    address = kept.post("/templates/short-weeks/run", data={"search": "quick"}).headers["location"]
    assert "It is being run now" in kept.get("/templates/short-weeks").text
    assert kept.get(address).status_code == 200
    task = asked(kept, address)
    assert task.name == "variants" and task.arguments["folder"] == str(tmp_path / "book.templates" / "short-weeks")


def test_one_run_of_a_template_goes_on_at_a_time_and_of_the_text_it_was_asked_with(kept: TestClient) -> None:
    kept.post("/templates", data={"template": TEXT, "name": "other"})
    first, other, again = (
        kept.post(f"/templates/{name}/run", data={"search": "quick"}).headers["location"]
        for name in ("short-weeks", "other", "short-weeks")
    )
    assert first == again != other
    assert first in kept.get("/templates/short-weeks").text and other in kept.get("/templates/other").text
    task = asked(kept, first)
    asked(kept, other)
    assert task.arguments["template"] == TEXT


def test_a_grid_of_an_earlier_text_says_so(run: TestClient, run_once: tuple[Path, dict[str, Any], Listener]) -> None:
    assert (run_once[0] / "short-weeks" / "template.toml").read_text(encoding="utf-8") == TEXT
    said = "of the template as it was run last"
    assert said not in run.get("/templates/short-weeks").text
    run.post("/templates/short-weeks", data={"template": TEXT.replace("[15, 20]", "[20, 25]")})
    assert said in run.get("/templates/short-weeks").text
    run.post("/templates/short-weeks", data={"template": TEXT})
    assert said not in run.get("/templates/short-weeks").text


def test_a_run_that_is_too_large_for_the_desk_is_refused(browser: TestClient) -> None:
    many = f"title = 'Many'\n[vary]\ndays = [1, 2, 3, 4, 5]\nminutes = {list(range(20, 105))}\n"
    browser.post("/templates", data={"template": many})
    assert faults(browser.post("/templates/many/run", headers=JSON)) == ["template many"]
    assert faults(browser.post("/templates/many/run", data={"search": "endless"}, headers=JSON)) == ["search"]


def test_variants_are_told_as_they_are_solved(run_once: tuple[Path, dict[str, Any], Listener]) -> None:
    _, done, listener = run_once
    assert (done["schema"], done["name"], done["done"], done["variants"]) == ("setwright.matrix/1", "short-weeks", 4, 4)
    parts = [what["part"] for what in listener.told]
    assert parts[0] == (0, 4) and parts[-1] == (4, 4) and parts == sorted(parts)
    assert [grid["of"] for grid in done["grids"]] == [{"kit": "dumbbells"}, {"kit": "none"}]


def test_the_grid_leads_to_every_week(run: TestClient, run_once: tuple[Path, dict[str, Any], Listener]) -> None:
    document = run.get("/templates/short-weeks", headers=JSON).json()
    assert document["matrix"]["grids"] == run_once[1]["grids"]
    page = run.get("/templates/short-weeks").text
    fields = [field for grid in document["matrix"]["grids"] for row in grid["rows"] for field in row["fields"]]
    assert [field["end"] for field in fields] == ["solved", "solved", "solved", "impossible"]
    assert fields[3]["why_none"] and fields[3]["why_none"] in page
    for field in fields[:3]:
        address = f"/templates/short-weeks/weeks/{field['file']}"
        assert f'href="{address}"' in page and f'href="{address}/pdf"' in page
        week = run.get(address, headers=JSON).json()
        assert week["schema"] == "setwright.week/1" and week["stimulus"] == field["index"]
        assert all(line["name"] in run.get(address).text for day in week["days"] for line in day["entries"])
    assert "style=" not in page and "/templates/grid.css" in page
    assert ".offer" in run.get("/templates/grid.css").text


def test_a_variant_is_handed_out_as_each_sheet(run: TestClient) -> None:
    week = "/templates/short-weeks/weeks/1-x-15-dumbbells"
    for kind, begins in (("csv", b""), ("md", b"#"), ("json", b"{"), ("html", b"<!DOCTYPE")):
        answer = run.get(f"{week}/{kind}")
        assert answer.status_code == 200 and answer.content.startswith(begins) and len(answer.content) > 300
        assert answer.headers["content-disposition"].startswith("attachment")
    assert faults(run.get(f"{week}/ics", headers=JSON)) == ["format"]
    assert faults(run.get("/templates/short-weeks/weeks/1-x-20-none", headers=JSON)) == ["week"]
    assert faults(run.get("/templates/short-weeks/weeks/nothing", headers=JSON)) == ["week"]


def test_the_folder_is_one_of_the_command(run_once: tuple[Path, dict[str, Any], Listener]) -> None:
    folder = run_once[0] / "short-weeks"
    assert {path.name for path in folder.iterdir()} >= {
        "variants.json",
        "results",
        "matrix.csv",
        "matrix.html",
        "weeks",
    }
    page = (folder / "matrix.html").read_text(encoding="utf-8")
    for path in (folder / "weeks").iterdir():
        assert f'href="weeks/{path.name}"' in page


def test_pages_of_weeks_are_rewritten_removed_or_left_as_the_matrix_says(
    run_once: tuple[Path, dict[str, Any], Listener], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(planned_matrix, "SEARCHES", CHEAP)
    folder = tmp_path / "short-weeks"
    shutil.copytree(run_once[0] / "short-weeks", folder)
    pages = {path.name: path for path in (folder / "weeks").iterdir()}
    assert set(pages) == {"1-x-15-dumbbells.html", "1-x-20-dumbbells.html", "1-x-15-none.html"}
    same, stale = pages["1-x-15-dumbbells.html"], pages["1-x-15-none.html"]
    before, written = stale.read_bytes(), same.stat()
    stale.write_bytes(before + b"<!-- of another catalogue -->")
    arguments = {"called": "short-weeks", "folder": str(folder), "search": "quick", "overlay": None}
    shorter = TEXT.partition("[[also]]")[0].replace("[15, 20]", "[15]")
    again = run_template({**arguments, "template": shorter}, load_catalogue(), Listener())
    assert again["variants"] == 2
    assert stale.read_bytes() != before + b"<!-- of another catalogue -->"
    assert not pages["1-x-20-dumbbells.html"].exists()
    now = same.stat()
    assert (now.st_ino, now.st_mtime_ns) == (written.st_ino, written.st_mtime_ns), "left as it is"


def test_a_file_in_other_letters_is_a_fault_of_its_own_line(kept: TestClient) -> None:
    folder = kept.app.state.desk.place.with_suffix(".templates")  # type: ignore[attr-defined]
    (folder / "old.toml").write_bytes('title = "Für zwei"'.encode("latin-1"))
    page = kept.get("/templates")
    assert page.status_code == 200 and "short-weeks" in page.text
    assert faults(kept.get("/templates/old", headers=JSON)) == ["template old"]
