"""The table of cautions in docs/brief.md, made from the catalogue: `python -m tests.docs.cautions_table`."""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2] / ".names"))

from setwright.catalogue.cautions import ClientLimits
from setwright.catalogue.entries import Catalogue
from setwright.catalogue.load import load_catalogue

HEAD = """| caution | RIR | repetitions | techniques | rest | sets | closed: joints and positions | clearance |
|---|---|---|---|---|---|---|---|"""


def table(catalogue: Catalogue) -> str:
    """A row for each caution and age group, with what it asks of a week."""
    rows = [_row(f"`{c.id}`", c.limits, c.needs_clearance, catalogue) for c in catalogue.cautions.values()]
    rows += [_row(f"{g.youngest} to {g.oldest} years", g.limits, False, catalogue) for g in catalogue.ages.values()]
    return "\n".join([HEAD, *rows])


def _row(name: str, limits: ClientLimits, clearance: bool, catalogue: Catalogue) -> str:
    closed = [*sorted(limits.closes_joints), *(catalogue.positions[p].name for p in sorted(limits.closes_positions))]
    cells = (
        name,
        str(limits.rir_least or ""),
        str(limits.reps_least or ""),
        "none" if limits.techniques_off else "",
        f"{limits.rest_least} s, no pairs" if limits.rest_least else "",
        str(limits.sets_most or ""),
        ", ".join(closed),
        "first" if clearance else "",
    )
    return f"| {' | '.join(cells)} |".replace("|  |", "| |").replace("|  |", "| |")


if __name__ == "__main__":
    sys.stdout.write(table(load_catalogue()) + "\n")
