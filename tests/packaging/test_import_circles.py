"""No two files of the project import each other, directly or by way of others; imports for types alone count too."""

from __future__ import annotations

import sys
from functools import cache
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import grimp
import pytest

ROOT = Path(__file__).parents[2]
MOST_FILES = 14
"""About a dozen; solver/rules has one file for each rule."""
LONG_FOLDERS = {"solver/rules"}


@cache
def imports() -> dict[str, frozenset[str]]:
    """Each module with those it imports."""
    sys.path.insert(0, str(ROOT / ".names"))
    try:
        graph = grimp.build_graph("setwright", exclude_type_checking_imports=False, cache_dir=None)
    finally:
        sys.path.remove(str(ROOT / ".names"))
    return {module: frozenset(graph.find_modules_directly_imported_by(module)) for module in graph.modules}


def test_no_circle_of_imports() -> None:
    try:
        TopologicalSorter(imports()).prepare()
    except CycleError as error:
        pytest.fail(f"a circle of imports: {' -> '.join(error.args[1])}")


def test_the_graph_is_the_project() -> None:
    files = {path for room in ("solver", "catalogue") for path in (ROOT / room).rglob("*.py")}
    assert len(imports()) >= len(files), "grimp does not see every file"
    assert (
        "setwright.catalogue.entries"
        in imports()["setwright.solver.auditing"] | imports()["setwright.solver.linear.rule"]
    )


@pytest.mark.parametrize(
    "folder", sorted({path.parent.relative_to(ROOT).as_posix() for path in (ROOT / "solver").rglob("*.py")})
)
def test_a_folder_is_taken_in_at_a_glance(folder: str) -> None:
    files = [path.name for path in (ROOT / folder).glob("*.py") if path.name != "__init__.py"]
    assert folder in LONG_FOLDERS or len(files) <= MOST_FILES, f"{folder} has {len(files)} files; give it rooms"
