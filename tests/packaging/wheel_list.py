"""What a wheel must hold and what it may not: `python -m tests.packaging.wheel_list FILE.whl` prints its faults."""

from __future__ import annotations

import sys
import zipfile
from collections.abc import Iterable
from pathlib import Path

ROOT = Path(__file__).parents[2]
FOLDERS = ("solver", "catalogue")
MOVED = "solver/__main__.py"
"""Forced into the wheel one floor up, so that `python -m setwright` works; hatchling then leaves it out below."""


def expected() -> frozenset[str]:
    """Every source and data file of the checkout, under its name in the wheel."""
    found = {
        f"setwright/{path.relative_to(ROOT).as_posix()}"
        for folder in FOLDERS
        for path in (ROOT / folder).rglob("*")
        if path.suffix in (".py", ".toml", ".html", ".css")
    }
    return frozenset(found - {f"setwright/{MOVED}"} | {"setwright/__main__.py"})


def faults(names: Iterable[str]) -> list[str]:
    """What is missing from a wheel, and what has no business in one; in a fixed order."""
    held = frozenset(name for name in names if not name.endswith("/"))
    missing = sorted(f"missing: {name}" for name in expected() - held)
    strange = sorted(f"unexpected: {name}" for name in held - expected() if ".dist-info/" not in name)
    return missing + strange


def main(wheel: str) -> int:
    with zipfile.ZipFile(wheel) as opened:
        names = opened.namelist()
    found = faults(names)
    print("\n".join(found) or f"{Path(wheel).name}: {len(names)} files, none missing, none unexpected")
    return 1 if found else 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1]))
