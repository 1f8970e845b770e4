"""docs/rules.md, made from the rulebook: `python -m tests.docs.rules_page > docs/rules.md`."""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2] / ".names"))

from setwright.catalogue.load import load_catalogue
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.rulebook import in_order, resolve

HEAD = """# Rules

Each rule has one id, used in the brief, the model, the audit and the explanations. In a brief's `[rules]` a rule may be
`"off"`, a scored one `"hard"`, or given a number: its cost in index points, or the limit of a hard rule.
The numbers stand in `catalogue/data/rules.toml`; the sentences below show them as shipped, a week shows those in force.
"""
BRIEF = {"days": [{"weekday": "mon", "minutes": 60}]}


def page() -> str:
    """The page's text."""
    catalogue = load_catalogue()
    resolved = resolve(parse_brief(BRIEF, catalogue, "").brief, catalogue)
    lines = [HEAD]
    for rule in in_order(catalogue):
        numbers, price = catalogue.rules[rule.id], ""
        if numbers.cost is not None:
            price = f" Costs {numbers.cost:g} for {numbers.unit}."
        elif numbers.limit is not None:
            price = f" Limit {numbers.limit:g} {numbers.unit}."
        sentence = rule.sentence_for(resolved)
        lines.append(f"## {rule.id}\n\n{sentence} ({rule.kind}){price} Remedy: {rule.remedy}.\n")
    return "\n".join(lines)


if __name__ == "__main__":
    sys.stdout.write(page())
