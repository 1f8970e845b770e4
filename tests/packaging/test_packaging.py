"""What can be known of the package without building it; .ci/run builds it and installs it."""

from __future__ import annotations

import os
import re
import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
VISIBLE = {
    "README.md", "DEVELOPERS.md", "CHANGELOG.md", "LICENSE", "pyproject.toml",
    "solver", "catalogue", "tests", "scenarios", "docs",
}  # fmt: skip
UNTRACKED = {"dist", "build"}


def test_nothing_else_stands_at_the_top() -> None:
    found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    assert found - UNTRACKED <= VISIBLE


def test_the_import_names_are_links_into_the_checkout() -> None:
    for name in ("solver", "catalogue"):
        link = ROOT / ".names" / "setwright" / name
        assert link.is_symlink()
        assert not Path(os.readlink(link)).is_absolute()
        assert link.resolve() == ROOT / name


def test_no_init_makes_the_namespace_a_package() -> None:
    """An __init__.py there would hide the editable install's other half."""
    assert not (ROOT / ".names" / "setwright" / "__init__.py").exists()


def test_the_sdist_lists_its_files_with_only_include() -> None:
    """`include` would win over the wheel's packages and leave the wheel empty."""
    build = PROJECT["tool"]["hatch"]["build"]
    assert set(build["targets"]["sdist"]["only-include"]) == VISIBLE
    assert "include" not in build and "include" not in build["targets"]["sdist"]


def test_every_contract_layer_that_is_not_optional_exists() -> None:
    for contract in PROJECT["tool"]["importlinter"]["contracts"]:
        for layer in (name for line in contract["layers"] for name in line.split(" | ")):
            if not layer.startswith("("):
                path = ROOT.joinpath(*layer.split(".")[1:])
                assert path.is_dir() or path.with_suffix(".py").is_file(), layer


def test_only_the_right_rooms_import_the_solvers_and_click() -> None:
    """The layers alone do not hold this: ortools and highspy stay in model, click in cli."""
    homes = {"ortools": "solver/engines/", "highspy": "solver/engines/", "click": "solver/cli/"}
    for path in sorted((*(ROOT / "solver").rglob("*.py"), *(ROOT / "catalogue").rglob("*.py"))):
        where = path.relative_to(ROOT).as_posix()
        for package in re.findall(r"^\s*(?:from|import) (\w+)", path.read_text(encoding="utf-8"), flags=re.M):
            assert where.startswith(homes.get(package, "")), f"{where} imports {package}"


def test_every_runtime_dependency_is_imported_and_has_a_lower_bound() -> None:
    text = "\n".join(path.read_text(encoding="utf-8") for path in sorted((ROOT / "solver").rglob("*.py")))
    for wanted in PROJECT["project"]["dependencies"]:
        name, bound = wanted.split(">=")
        assert bound and re.search(rf"^\s*(from|import) {name}\b", text, flags=re.M), wanted


def test_the_version_is_the_changelogs_newest() -> None:
    newest = re.search(r"^## (\S+)", (ROOT / "CHANGELOG.md").read_text(encoding="utf-8"), flags=re.M)
    assert newest and newest[1] == PROJECT["project"]["version"]


def test_a_wheel_without_a_data_file_is_noticed() -> None:
    from tests.packaging.wheel_list import expected, faults

    assert faults(expected()) == []
    assert "setwright/catalogue/data/evidence.toml" in expected()
    assert "setwright/solver/sheets/data/page.html" in expected()
    assert faults(expected() - {"setwright/catalogue/data/evidence.toml"}) == [
        "missing: setwright/catalogue/data/evidence.toml"
    ]
    assert faults(expected() | {"solver/plan.py"}) == ["unexpected: solver/plan.py"]


def test_the_readme_has_exactly_two_set_up_commands() -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if line.startswith("python3 -m venv ")]
    assert len(lines) == 2
    assert "setwright week" in lines[0] and lines[1].endswith("-m pytest -n auto")


def test_the_check_scripts_can_be_run() -> None:
    for name in ("run", "browser"):
        assert os.access(ROOT / ".ci" / name, os.X_OK)
