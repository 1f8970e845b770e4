"""docs/rules.md, made from the registry: `python -m tests.docs.rules_page > docs/rules.md`."""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2] / ".names"))

from setwright.catalogue.load import load_catalogue
from setwright.solver.rules import RULES

HEAD = """# Rules

Each rule has one id, used in the brief, the model, the audit and the explanations. In a brief's `[rules]` a rule may be
`"off"`, a scored one `"hard"`, or given a number: its cost in index points, or the limit of a hard rule.
The numbers stand in `catalogue/data/rules.toml`.
"""


def page() -> str:
    """The page's text."""
    numbers = load_catalogue().rules
    lines = [HEAD]
    for rule in RULES.values():
        known = numbers.get(rule.id)
        price = ""
        if known and known.cost is not None:
            price = f" Costs {known.cost:g} for {known.unit}."
        elif known and known.limit is not None:
            price = f" Limit {known.limit:g} {known.unit}."
        lines.append(f"## {rule.id}\n\n{rule.sentence} ({rule.kind}){price} Remedy: {rule.remedy}.\n")
    return "\n".join(lines)


if __name__ == "__main__":
    sys.stdout.write(page())
