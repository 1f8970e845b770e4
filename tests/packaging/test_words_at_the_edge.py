"""Words are made once, at the edge: what was found is passed on as values, and nothing takes our own text apart."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
NO_PATTERNS = (
    "solver/uses",
    "solver/rules",
    "solver/sheets/common",
    "solver/sheets/screen",
    "solver/sheets/document",
    "solver/sheets/html",
)
"""Rooms in which no pattern is matched against a text."""
OTHERS_TEXT = {
    "solver/sheets/common/sanitise.py",
    "solver/sheets/document/redaction.py",
    "solver/uses/variants/matrix.py",
}
"""Files that take apart what others wrote: words and links in a coach's file, a title, the name of a variant."""
TAKES_APART = {
    *("startswith", "endswith", "removeprefix", "removesuffix"),
    *("split", "rsplit", "splitlines", "partition", "rpartition"),
    *("find", "rfind", "index", "rindex", "replace"),
}
SAYS = ("text", "words", "said", "sentence", "remedy")
"""Attributes that hold our own texts."""
ENDINGS = (*(f"_{word}" for word in SAYS), "sentence_of", "sentences", "headline")
"""How the names of functions and values end that are our own texts; a parameter called text may hold any."""
FEWEST_WORDS = 3
"""A text of so many words in a row is a sentence; kinds and keys have fewer."""


def files_of(*folders: str) -> list[str]:
    found = [path.relative_to(ROOT).as_posix() for folder in folders for path in (ROOT / folder).rglob("*.py")]
    assert len(found) > len(folders), "no file was found"
    return sorted(found)


def tree_of(file: str) -> ast.Module:
    return ast.parse((ROOT / file).read_text(encoding="utf-8"))


def is_our_text(node: ast.expr) -> bool:
    """Whether an expression is a text that we made, as far as its name says so."""
    if isinstance(node, ast.Call):
        return is_our_text(node.func)
    if isinstance(node, ast.Attribute):
        return node.attr in SAYS or node.attr.endswith(ENDINGS)
    return isinstance(node, ast.Name) and node.id.endswith(ENDINGS)


def taken_apart(tree: ast.Module) -> Iterator[str]:
    """The places where our own text is cut or searched."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Attribute) and node.attr in TAKES_APART and is_our_text(node.value):
            yield f"line {node.lineno}: .{node.attr} of our own text"
        compares = isinstance(node, ast.Compare) and isinstance(node.ops[0], ast.In | ast.NotIn)
        looked_in = node.comparators if compares else ()
        if any(is_our_text(where) for where in looked_in):
            yield f"line {node.lineno}: something is looked for in our own text"


def sentences(tree: ast.Module) -> Iterator[str]:
    """Texts of several words that are neither a docstring nor part of a fault or another error."""
    left_out: set[int] = set()
    for node in ast.walk(tree):
        docstring = isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
        error = isinstance(node, ast.Raise) or (
            isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "Fault"
        )
        if docstring or error:
            left_out.update(id(part) for part in ast.walk(node))
    for node in ast.walk(tree):
        text = node.value if isinstance(node, ast.Constant) and id(node) not in left_out else None
        if isinstance(text, str) and len(text.split()) >= FEWEST_WORDS:
            yield f"line {node.lineno}: {text!r}"


@pytest.mark.parametrize("file", files_of(*NO_PATTERNS))
def test_no_pattern_is_matched(file: str) -> None:
    imported = {
        alias.name
        for node in ast.walk(tree_of(file))
        if isinstance(node, ast.Import | ast.ImportFrom)
        for alias in (node.names if isinstance(node, ast.Import) else [ast.alias(node.module or "")])
    }
    assert file in OTHERS_TEXT or "re" not in imported, f"{file} imports re: pass values instead of texts"


@pytest.mark.parametrize("file", files_of(*NO_PATTERNS))
def test_our_own_text_is_not_taken_apart(file: str) -> None:
    assert file in OTHERS_TEXT or list(taken_apart(tree_of(file))) == []


@pytest.mark.parametrize("file", [f for f in files_of("solver/uses") if not f.startswith("solver/uses/variants/")])
def test_uses_make_no_sentence(file: str) -> None:
    """They give values; sheets say them. Faults alone are worded where they are found."""
    assert list(sentences(tree_of(file))) == []


def test_the_checks_see_what_they_are_for() -> None:
    bad = 'if "sets" in finding.text: x = finding_words(f, r).split(": ")[1]'
    assert len(list(taken_apart(ast.parse(bad)))) == 2
    assert list(taken_apart(ast.parse('x = "a b".split()'))) == []
    fine = '"""A docstring of words."""\nraise Fault("", "an error of words")\nx = f"add {n} sets"\ny = "two words"'
    assert list(sentences(ast.parse(fine))) == []
    assert len(list(sentences(ast.parse('x = f"give each session {n} more minutes of time"')))) == 2
