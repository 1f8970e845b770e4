"""The pages say what is there: links lead somewhere, commands run, and nothing is left to be filled in."""

from __future__ import annotations

import fnmatch
import importlib
import importlib.util
import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest
from click import Context
from click.testing import CliRunner

from setwright.catalogue.load import load_catalogue
from setwright.solver.cli.group import setwright

sys.path.insert(0, str(Path(__file__).parents[2]))
from tests.docs.pages import PAGES, ROOT, STORIES, command_lines, files_of, text_of, told

MOST_SOLVES = 3
PLACEHOLDERS = re.compile(r"WARMTABLE|\b(?:TODO|TBD|XXX|FIXME)\b|lorem ipsum", flags=re.IGNORECASE)
RUN = command_lines("sh", pages=[page for page in PAGES if page not in STORIES])


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_links_to_files_lead_somewhere(page: Path) -> None:
    for file, anchor in re.findall(r"\]\(([^)#:]*)(#[^)]*)?\)", text_of(page)):
        there = page.parent / file if file else page
        assert there.exists(), file
        if anchor:
            assert anchor in anchors(there), f"{file}{anchor}"


def anchors(page: Path) -> set[str]:
    """The anchors that a page's headings get when it is shown as a web page."""
    headings = re.findall(r"^#+ (.+)$", text_of(page), flags=re.M)
    return {"#" + re.sub(r"[^\w -]", "", heading.lower()).replace(" ", "-") for heading in headings}


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_places_in_the_house_that_a_page_names_are_there(page: Path) -> None:
    for path in re.findall(r"`((?:solver|catalogue|tests|docs|scenarios)/[\w./-]*)`", text_of(page)):
        assert (ROOT / path).exists(), path
    for name in re.findall(r"`(setwright(?:\.\w+)+)`", text_of(page)):
        assert is_importable(name), name
    for module in re.findall(r"python -m (tests(?:\.\w+)+)", text_of(page)):
        assert importlib.util.find_spec(module), module


def test_programs_that_pages_name_and_those_of_the_bench_are_found_from_the_project_s_root() -> None:
    """As they are run, each by itself: nothing of pytest's own path is there, nor of another program's."""
    named = {name for page in PAGES for name in re.findall(r"python -m (tests(?:\.\w+)+)", text_of(page))}
    named |= {f"tests.bench.{path.stem}" for path in (ROOT / "tests" / "bench").glob("*.py")}
    modules = sorted(name if not (ROOT / name.replace(".", "/")).is_dir() else f"{name}.__main__" for name in named)
    code = """
import importlib, os, sys
path, here = list(sys.path), os.path.realpath("tests")
for name in sys.argv[1:]:
    sys.path[:] = path
    for loaded in [key for key, module in sys.modules.items() if str(getattr(module, "__file__", "")).startswith(here)]:
        del sys.modules[loaded]
    importlib.import_module(name)
"""
    env = {key: value for key, value in os.environ.items() if key != "PYTHONPATH"}
    run = subprocess.run([sys.executable, "-c", code, *modules], cwd=ROOT, env=env, capture_output=True, text=True)
    assert len(modules) >= 10 and run.returncode == 0, run.stderr


def is_importable(name: str) -> bool:
    """Whether a dotted name is a module, or something in one."""
    try:
        return importlib.util.find_spec(name) is not None
    except ModuleNotFoundError:
        module, _, last = name.rpartition(".")
        return hasattr(importlib.import_module(module), last)


@pytest.mark.parametrize("page", PAGES, ids=lambda p: p.name)
def test_no_page_holds_a_placeholder(page: Path) -> None:
    assert not PLACEHOLDERS.findall(text_of(page))


def test_placeholders_are_recognised() -> None:
    assert all(PLACEHOLDERS.search(f"see {word} below") for word in ("WARMTABLE", "TODO", "tbd", "Lorem ipsum"))


@pytest.mark.usefixtures("little")
@pytest.mark.parametrize("command", RUN)
def test_a_shown_command_runs(monkeypatch: pytest.MonkeyPatch, command: str) -> None:
    monkeypatch.chdir(ROOT)
    run(command)


@pytest.mark.parametrize("page", STORIES, ids=lambda page: page.name)
def test_the_commands_of_a_story_run_in_order(page: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "100")
    for name, content in files_of(page).items():
        (tmp_path / name).write_text(content, encoding="utf-8")
    said = ""
    for kind, body in told(page):
        if kind == "sh":
            said = "\n".join(run(line) for line in body.splitlines() if line.startswith("setwright "))
        elif kind == "text":
            # Each part between lines of three dots stands in what the block before it printed.
            for part in body.strip().split("\n...\n"):
                assert part in said, f"{part!r} is not in what is printed:\n{said}"


def run(command: str) -> str:
    """What a line of a page prints; it must end well."""
    words = shlex.split(command)[1:]
    if words[0] == "week" and "--search" not in words:
        words += ["--search", "quick"]
    result = CliRunner().invoke(setwright, words, prog_name="setwright")
    assert result.exit_code == 0, f"{command}: {result.output}"
    return result.stdout


def test_the_pages_show_commands_but_few_that_solve() -> None:
    assert RUN
    assert sum(command.startswith("setwright week") for command in RUN) <= MOST_SOLVES


@pytest.mark.parametrize("command", command_lines("sh", "text"))
def test_a_command_line_on_a_page_is_one_that_the_command_reads(command: str) -> None:
    context, words = Context(setwright, info_name="setwright"), shlex.split(command)[1:]
    here = setwright
    while hasattr(here, "get_command"):
        here = here.get_command(context, words.pop(0))
        assert here is not None, command
        context = Context(here, info_name=here.name, parent=context)
    here.parse_args(context, words)


def test_every_evidence_id_that_the_evaluation_page_names_is_there() -> None:
    evidence, rules = load_catalogue().evidence, load_catalogue().rules
    names = re.findall(r"`([a-z*]+(?:-[a-z*]+)+)`", text_of(ROOT / "docs" / "evaluation.md"))
    assert names
    for name in names:
        assert fnmatch.filter([*evidence, *rules], name), name
