"""`setwright client set` and `setwright client rest`."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.lifts.named import exercise_named
from setwright.solver.cli.books import MARK, book_option, brief_of_client, the_book
from setwright.solver.cli.briefs import brief_from, say_cautions
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.option_types import WholeNumberType
from setwright.solver.cli.options import catalogue_option, open_catalogue

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.brief.schema import Brief


@click.command("set", cls=PrintingCommand)
@click.argument("code")
@click.argument("brief", nargs=-1)
@click.option("--unit", type=click.Choice(("kg", "lb")), help="The unit of all weights.")
@click.option("--experience", type=click.Choice(("novice", "intermediate", "advanced")), help="How long trained.")
@click.option("--age", type=WholeNumberType(1, 150), metavar="YEARS", help="The client's age.")
@click.option("--name", metavar="NAME", help="A name; empty takes it away.")
@click.option(
    "--lift",
    "lifts",
    multiple=True,
    metavar="LIFT=SET",
    help="What is known of a lift: 'bench press=80x8, 2 left' or 'bench press=max 100'; may be given again.",
)
@book_option
@catalogue_option
def set_command(
    code: str,
    brief: tuple[str, ...],
    unit: str | None,
    experience: str | None,
    age: int | None,
    name: str | None,
    lifts: tuple[str, ...],
    overlay: Path | None,
) -> None:
    """Change what is written of CODE: a new BRIEF, or one fact. The versions before are kept.

    A new brief keeps what belongs to the person: experience, unit, cautions, what is owned, the pace, known lifts.

    \b
    setwright client set @M "2 days x 30 min, hotel gym"
    setwright client set @M --experience advanced
    """
    from setwright.solver.book.clients import client_of, keep_brief, set_name
    from setwright.solver.records.changed_brief import refuse_another_unit

    catalogue = open_catalogue(overlay)
    facts = {key: value for key, value in (("unit", unit), ("experience", experience), ("age", age)) if value}
    if not brief and not facts and not lifts and name is None:
        raise UsageFault(Fault("client set", "nothing is said to change", "name a BRIEF or an option"))
    before = brief_of_client(code, catalogue).brief
    known = _known(lifts, catalogue)
    raw = _changed(before, " ".join(brief), facts, known, catalogue)
    with the_book() as book:
        client = client_of(book, code)
        refuse_another_unit(book, client, raw["client"]["unit"], "--unit")
        with book.writing():
            if name is not None:
                client = set_name(book, client, name)
            after = keep_brief(book, client, raw, _said(bool(brief), facts, known))
        say(f"written down: @{after.code}, version {after.version} of the brief")


def _known(lifts: tuple[str, ...], catalogue: Catalogue) -> dict[str, str]:
    """Exercise id -> what is known of it, as written; raises UsageFault."""
    parts = [said.partition("=") for said in lifts]
    if wrong := [f"{name}{mark}{known}" for name, mark, known in parts if not (name.strip() and known.strip())]:
        remedy = "write for example --lift 'bench press=80x8'"
        raise UsageFault(Fault("--lift", f"got {said!r}, expected LIFT=SET", remedy) for said in wrong)
    return {exercise_named(name.strip(), catalogue).id: known.strip() for name, _, known in parts}


def _changed(
    before: Brief, brief: str, facts: dict[str, Any], lifts: dict[str, str], catalogue: Catalogue
) -> dict[str, Any]:
    """The brief as a raw table after a change, understood once more; raises UsageFault."""
    from setwright.solver.brief.parsed_brief import parse_brief, raw_of
    from setwright.solver.records.changed_brief import with_new_brief
    from setwright.solver.rulebook import RULES

    raw = raw_of(before)
    if brief:
        parsed = brief_from(brief, catalogue)
        raw = with_new_brief(before, parsed.brief)
        for assumption in parsed.assumed:
            if assumption.kind != "health":
                say(assumption.text)
    raw["client"] = {**raw["client"], **facts, "code": before.client.code}
    if lifts:
        raw["lifts"] = {**raw.get("lifts", {}), **lifts}
    parsed = parse_brief(raw, catalogue, "client set", tuple(RULES))
    say_cautions(parsed, catalogue, True)
    return raw_of(parsed.brief)


def _said(brief: bool, facts: dict[str, Any], lifts: dict[str, str]) -> str:
    """What a note of the change says; an age is not among it."""
    from setwright.solver.records.changed_brief import FACTS

    words = ["a new brief"] if brief else []
    words += [f"{key} {value}" for key, value in facts.items() if key != "age"]
    words += [f"{lift}: {known}" for lift, known in lifts.items()]
    return ", ".join(words) or FACTS


@click.command("rest", cls=PrintingCommand)
@click.argument("code")
@click.option("--since", type=click.DateTime(("%Y-%m-%d",)), metavar="DATE", help="The first day of rest; today.")
@click.option("--back", is_flag=True, help="Bring the client back.")
@book_option
def rest_command(code: str, since: Any, back: bool) -> None:
    """Put CODE to rest: kept in the book, left out of the list; --back brings the client back."""
    from setwright.solver.book.clients import client_of, rest

    if back and since:
        raise UsageFault(Fault("--back", "--since says nothing of a client who comes back", "leave one of them out"))
    with the_book() as book:
        client = rest(book, client_of(book, code), None if back else since.date() if since else date.today())
        say(f"{MARK}{client.code} is {'back' if back else f'at rest since {client.resting_since}'}")
