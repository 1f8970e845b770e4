"""What a page of the desk may say of a fault: no command and no option of one, which nobody can type there."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from setwright.catalogue.faults import Fault
from setwright.solver.desk.searches.task import told_of

ROOT = Path(__file__).parents[2]
COMMAND = re.compile(r"(?<![\w-])--[a-z][a-z-]+|`setwright |\bsetwright [a-z]+ @|pip install|`dask ")
"""An option, a command line of ours, or another program's."""
COMMAND_S_OWN = {
    "solver/desk/entry/access.py": "how a desk is started, said before there is a page",
    "solver/desk/entry/guard.py": "said to a browser that is not let in: a terminal is the way back",
    "solver/desk/server.py": "how a desk is started, said before there is a page",
    "solver/uses/variants/dask_workers.py": "a cluster, which the desk does not use",
    "solver/sheets/screen/edits/asked_swap.py": "the command swap; the desk settles by a button",
    "solver/sheets/screen/edits/swaps.py": "the table of the command swap",
    "solver/sheets/screen/audit.py": "the text of the command audit",
    "solver/sheets/screen/over_time/clients.py": "the text of the command client list",
    "solver/sheets/screen/over_time/season.py": "the text of the command season; the desk shows its document",
    "solver/sheets/variants/plan_screen.py": "the text of the command variants plan",
    "solver/sheets/handout/coach.py": "options of the command sheet, laid over the coach's file",
    "solver/batch/matrix_folder.py": "what the command variants run says of its folder",
}


def files() -> list[str]:
    found = [
        path.relative_to(ROOT).as_posix() for room in ("catalogue", "solver") for path in (ROOT / room).rglob("*.py")
    ]
    assert len(found) > 500
    return sorted(file for file in found if not file.startswith("solver/cli/") and file not in COMMAND_S_OWN)


def named_commands(tree: ast.Module) -> Iterator[str]:
    """Texts that name a command, but for docstrings and the remedies of faults that have other words for a page."""
    left_out: set[int] = set()
    page_words = {
        name.id
        for node in ast.walk(tree)
        if has_words_for_a_page(node)
        for name in ast.walk(node)
        if isinstance(name, ast.Name)
    }
    for node in ast.walk(tree):
        docstring = isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
        named = isinstance(node, ast.Assign) and any(
            isinstance(name, ast.Name) and name.id in page_words for name in ast.walk(node.targets[0])
        )
        if docstring or named or has_words_for_a_page(node):
            left_out.update(id(part) for part in ast.walk(node))
    for node in ast.walk(tree):
        text = node.value if isinstance(node, ast.Constant) and id(node) not in left_out else None
        if isinstance(text, str) and COMMAND.search(text):
            yield f"line {node.lineno}: {text!r}"


def has_words_for_a_page(node: ast.AST) -> bool:
    """Whether a fault is made that says its remedy a second time, for a page."""
    if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "Fault"):
        return False
    return len(node.args) == 4 or any(word.arg == "on_page" for word in node.keywords)


@pytest.mark.parametrize("file", files())
def test_no_fault_that_reaches_a_page_names_a_command(file: str) -> None:
    assert list(named_commands(ast.parse((ROOT / file).read_text(encoding="utf-8")))) == []


def test_the_check_sees_what_it_is_for() -> None:
    for bad in ('x = "name it by --on"', 'Fault("a", "b", "`setwright week` says why")', 'x = f"pip install {a}"'):
        assert len(list(named_commands(ast.parse(bad)))) == 1
    good = '"""--on"""\nremedy = "--on names it"\nFault("a", "b", remedy, "choose a day")\nx = "a--b - --"'
    assert list(named_commands(ast.parse(good))) == []


def test_a_page_says_the_words_for_a_page() -> None:
    fault = Fault("a", "b", "--on names it", "choose a day").at("c")
    assert str(fault) == "c: b; --on names it"
    assert told_of(fault) == {"where": "c", "said": "b", "remedy": "choose a day"}
    assert told_of(Fault("a", "b", "mend it"))["remedy"] == "mend it"
