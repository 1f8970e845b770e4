"""docs/commands.md, made from the commands' own help: `python -m tests.docs.commands_page > docs/commands.md`.

What the help does not say stands in `command_notes.md` beside this file, under a heading with the command's name.
"""

from __future__ import annotations

import inspect
import re
import sys
from collections.abc import Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2] / ".names"))

import click

from setwright.solver.cli.exit_codes import MEANINGS
from setwright.solver.cli.group import COMMANDS, setwright

NOTES = Path(__file__).with_name("command_notes.md")
EXAMPLES = "\b\n"
"""The mark by which click leaves a paragraph's lines as they are: here those paragraphs are example commands."""


def page() -> str:
    """The page's text."""
    notes = notes_by_command()
    top = click.Context(setwright, info_name="setwright")
    parts = ["# Commands", notes.pop("setwright"), index(), f"## Exit codes\n\n{codes()}"]
    for context in commands_under(top):
        parts += section(context, notes.pop(context.command_path, ""))
    if notes:
        raise ValueError(f"{NOTES.name} has notes for {', '.join(notes)}, which are no commands")
    return "\n\n".join(part for part in parts if part) + "\n"


def notes_by_command() -> dict[str, str]:
    """Command path -> its notes, as they stand under its heading."""
    found = re.split(r"^# (.+)\n", NOTES.read_text(encoding="utf-8"), flags=re.M)[1:]
    return {name: text.strip() for name, text in zip(found[::2], found[1::2], strict=True)}


def index() -> str:
    """A table of the commands, each with a link to its part of the page."""
    rows = ["| command | what it gives |", "|---|---|"]
    rows += [f"| [`setwright {name}`](#setwright-{name}) | {command.summary} |" for name, command in COMMANDS.items()]
    return "\n".join(rows)


def commands_under(parent: click.Context) -> Iterator[click.Context]:
    """A context for each command of a group, and for the commands under it, in the order of the help."""
    group = parent.command
    assert isinstance(group, click.Group)
    for name in group.list_commands(parent):
        command = group.get_command(parent, name)
        assert command is not None
        context = click.Context(command, parent=parent, info_name=name)
        yield context
        if isinstance(command, click.Group):
            yield from commands_under(context)


def section(context: click.Context, notes: str) -> list[str]:
    """One command: its words, its usage and examples, its options, and what the notes add."""
    command = context.command
    paragraphs = inspect.cleandoc(command.help or "").split("\n\n")
    examples = [p.removeprefix(EXAMPLES) for p in paragraphs if p.startswith(EXAMPLES)]
    usage = " ".join([context.command_path, *command.collect_usage_pieces(context)])
    words = [" ".join(p.split()) for p in paragraphs if not p.startswith(EXAMPLES)]
    shown = "\n".join([f"Usage: {usage}", *(f"\n{example}" for example in examples)])
    heading = "##" if context.command_path.count(" ") == 1 else "###"
    return [f"{heading} {context.command_path}", *words, f"```text\n{shown}\n```", options(context), notes]


def options(context: click.Context) -> str:
    """The table of a command's options as its help prints them, the help's own option left out."""
    rows = []
    for option in (parameter for parameter in context.command.params if isinstance(parameter, click.Option)):
        if record := option.get_help_record(context):
            name, words = (text.replace("|", "\\|") for text in record)
            rows.append(f"| `{name}` | {' '.join(words.split())} |")
    return "\n".join(["| option | what it does |", "|---|---|", *rows]) if rows else ""


def codes() -> str:
    """A table of the exit codes."""
    rows = [f"| {code} | {meaning} |" for code, meaning in MEANINGS.items()]
    return "\n".join(["| code | what happened |", "|---|---|", *rows])


if __name__ == "__main__":
    sys.stdout.write(page())
