"""The audit works where neither ortools nor highspy is installed: both are blocked, and a week is audited."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
PROGRAM = """
import sys

class Blocked:
    def find_spec(self, name, path=None, target=None):
        if name.split(".")[0] in ("ortools", "highspy"):
            raise ModuleNotFoundError(name)

sys.meta_path.insert(0, Blocked())
from setwright.catalogue.load import load_catalogue
from setwright.solver.auditing import audit
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.evaluation.week import Entry, Week
from setwright.solver.rulebook import resolve

catalogue = load_catalogue()
brief = parse_brief({"days": [{"weekday": "mon", "minutes": 40}]}, catalogue, "test").brief
found = audit(resolve(brief, catalogue), Week(((Entry("barbell-curl", 3, (8, 12), 1, 60),),)))
assert found.stimulus > 0 and found.charged
try:
    import ortools
except ModuleNotFoundError:
    print("audited")
"""


def test_a_week_is_audited_without_them() -> None:
    environment = os.environ | {"PYTHONPATH": str(ROOT / ".names")}
    done = subprocess.run([sys.executable, "-c", PROGRAM], capture_output=True, text=True, env=environment)
    assert (done.stdout.strip(), done.stderr) == ("audited", "")
