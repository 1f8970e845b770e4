"""Every file of solver/rules is whole: number, words, post, a hand-made case and a line in docs for each rule."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from test_rule_cases import BY_CLOCK, CASES

from setwright.catalogue.load import load_catalogue
from setwright.solver import rules
from setwright.solver.brief.parsed_brief import parse_brief
from setwright.solver.linear.rule import Rule
from setwright.solver.rulebook import FILES, RULES, in_order, resolve, rules_of, sentence_of

CATALOGUE = load_catalogue()
DOCS = (Path(__file__).parents[2] / "docs" / "rules.md").read_text(encoding="utf-8")
FOLDER = sorted(path.stem for path in Path(next(iter(rules.__path__))).glob("*.py") if path.stem != "__init__")
BRIEF = {"days": [{"weekday": "mon", "minutes": 60}, {"weekday": "thu", "minutes": 60}]}


def missing(rule: Rule) -> list[str]:
    """What a rule lacks, by name."""
    numbers = CATALOGUE.rules.get(rule.id)
    wanted = {
        "its entry in catalogue/data/rules.toml": numbers is not None,
        "a cost in its entry": rule.kind != "scored" or (numbers is not None and numbers.cost is not None),
        "an entry without a cost, since no hard rule has one": rule.kind == "scored"
        or (numbers is not None and numbers.cost is None),
        "its post": callable(rule.post),
        "either a check or what it excludes": (rule.check is None) != (rule.excludes is None),
        "its hand-made case in tests/rules/test_rule_cases.py": any(c.rule == rule.id for c in CASES)
        or rule.id in BY_CLOCK,
        "its line in docs/rules.md (python -m tests.docs.rules_page > docs/rules.md)": f"\n## {rule.id}\n" in DOCS,
        "a sentence that ends in a full stop": rule.sentence.endswith("."),
        "a remedy without a full stop": bool(rule.remedy) and not rule.remedy.endswith("."),
    }
    return [name for name, there in wanted.items() if not there]


def test_the_folder_is_the_list() -> None:
    assert sorted(FILES) == FOLDER
    assert sum(len(file) for file in FILES.values()) == len(RULES), "two files have a rule of the same id"


@pytest.mark.parametrize("file", FOLDER)
def test_a_file_is_whole(file: str) -> None:
    found = rules_of(file)
    assert found, f"solver/rules/{file}.py has neither RULE nor RULES"
    assert not [f"{rule.id} lacks {what}" for rule in found for what in missing(rule)]


def test_every_number_belongs_to_a_rule() -> None:
    assert [rule.id for rule in in_order(CATALOGUE)] == list(CATALOGUE.rules)
    assert set(CATALOGUE.rules) == set(RULES)


def test_rules_that_make_variables_for_others_come_first() -> None:
    """Those posted even when they are off stand before the rules that charge what they made."""
    places = {rule.id: place for place, rule in enumerate(in_order(CATALOGUE))}
    assert places["exercise-days"] < min(places["third-day"], places["distinct"], places["priority-variety"])
    assert places["day-minutes"] < min(places["warm-up-given"], places["day-share"])


@pytest.mark.parametrize("rule", RULES.values(), ids=lambda r: r.id)
def test_a_sentence_has_its_numbers(rule: Rule) -> None:
    resolved = resolve(parse_brief(BRIEF, CATALOGUE, "test").brief, CATALOGUE)
    assert not re.search(r"[{}]", sentence_of(rule.id, resolved))


def test_a_brief_that_changes_a_number_changes_the_words() -> None:
    raw = {**BRIEF, "rules": {"axial-load": 9.0, "exercise-count": 5.0}}
    resolved = resolve(parse_brief(raw, CATALOGUE, "test").brief, CATALOGUE)
    assert sentence_of("axial-load", resolved) == "The load on the spine in a day (sets times axial load) is at most 9."
    assert sentence_of("exercise-count", resolved).startswith("A day has at most 5 exercises")
