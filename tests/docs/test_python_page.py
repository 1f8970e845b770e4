"""docs/python.md runs: its blocks in order, each with the output that the page shows."""

from __future__ import annotations

import contextlib
import io
import re
from pathlib import Path
from typing import Any

import pytest

from setwright import solver

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "python.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"```python\n(.*?)```\n(?:\n```text\n(.*?)```)?", PAGE, flags=re.S)


@pytest.mark.usefixtures("little")
def test_the_blocks_run_and_print_what_the_page_shows(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    names: dict[str, Any] = {}
    for code, shown in BLOCKS:
        printed = io.StringIO()
        with contextlib.redirect_stdout(printed):
            exec(compile(code, "docs/python.md", "exec"), names)
        assert printed.getvalue() == shown, code


def test_the_page_shows_what_is_public() -> None:
    for name in re.findall(r"from setwright\.solver import (.*)", PAGE):
        assert set(name.split(", ")) <= set(solver.__all__)
    assert all(
        f"`{name}" in PAGE or re.search(rf"\b{name}\b", PAGE) for name in ("plan", "SolveOptions", "relaxations_of")
    )


@pytest.mark.parametrize("name", sorted(solver.__all__))
def test_every_public_name_is_there_and_says_what_it_is(name: str) -> None:
    found = getattr(solver, name)
    assert name in ("SEARCHES", "__version__") or found.__doc__


def test_checkers_and_programs_see_the_same_names() -> None:
    """What stands under TYPE_CHECKING is what is loaded when asked for."""
    text = (ROOT / "solver" / "__init__.py").read_text(encoding="utf-8")
    stated = dict.fromkeys(("__version__",))
    for module, names in re.findall(r"^    from (\S+) import (.+)$", text, flags=re.M):
        for name in names.split(", "):
            assert solver._HOME_OF[name] == module
            stated[name] = None
    assert sorted(stated) == sorted(solver.__all__)
    with pytest.raises(AttributeError):
        solver.no_such_name  # noqa: B018


def test_the_package_says_that_it_is_typed() -> None:
    assert (ROOT / "solver" / "py.typed").is_file() and (ROOT / "catalogue" / "py.typed").is_file()
