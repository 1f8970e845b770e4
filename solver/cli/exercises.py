"""`setwright exercises`: the catalogue's exercises."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, wants_json
from setwright.solver.cli.output import check_target, columns, deliver

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue, Exercise
    from setwright.solver.brief.phrase.lexicon import Kind


@click.command("exercises")
@click.argument("name", required=False, metavar="[ID]")
@click.option("--kit", metavar="KIT", help="Only those that this kit can do.")
@click.option("--muscle", metavar="MUSCLE", help="Only those that train this muscle or group directly.")
@click.option("--movement", metavar="MOVEMENT", help="Only those of this movement.")
@catalogue_option
@output_options
def command(
    name: str | None,
    kit: str | None,
    muscle: str | None,
    movement: str | None,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """List the exercises, or show all that is known of one by its ID, name or alias."""
    from setwright.solver.sheets.document.json_values import dumped
    from setwright.solver.sheets.screen.listing import exercise_text, exercises_document, exercises_text

    check_target(target, force)
    if name and (kit or muscle or movement):
        raise UsageFault(Fault("exercises", "an ID was given with a filter", "drop one of the two"))
    catalogue = open_catalogue(overlay)
    found = [one(name, catalogue)] if name else filtered(catalogue, kit, muscle, movement)
    if wants_json(as_json, target):
        text = dumped(exercises_document(found))
    elif name:
        text = exercise_text(found[0], catalogue, columns())
    else:
        text = exercises_text(found, catalogue, columns())
    deliver(text, target, force)


def one(name: str, catalogue: Catalogue) -> Exercise:
    return catalogue.exercises[known(name, "exercises", ("exercise",), catalogue)[1]]


def filtered(catalogue: Catalogue, kit: str | None, muscle: str | None, movement: str | None) -> list[Exercise]:
    """The exercises that pass every filter; all faults of the filters at once."""
    faults: list[Fault] = []

    def look(word: str, where: str, kinds: tuple[Kind, ...]) -> tuple[Kind, str]:
        try:
            return known(word, where, kinds, catalogue)
        except UsageFault as error:
            faults.extend(error.faults)
            return kinds[0], ""

    found = list(catalogue.exercises.values())
    if kit:
        kit_id = look(kit, "--kit", ("kit",))[1]
        items = catalogue.kits[kit_id].items if kit_id else frozenset[str]()
        found = [e for e in found if items.issuperset(e.needs)]
    if muscle:
        kind, muscle_id = look(muscle, "--muscle", ("muscle", "group"))
        muscles = catalogue.groups[muscle_id].otherwise if kind == "group" else (muscle_id,)
        found = [e for e in found if e.direct.intersection(muscles)]
    if movement:
        movement_id = look(movement, "--movement", ("movement",))[1]
        found = [e for e in found if e.movement == movement_id]
    if faults:
        raise UsageFault(faults)
    return found


def known(word: str, where: str, kinds: tuple[Kind, ...], catalogue: Catalogue) -> tuple[Kind, str]:
    """The kind and id a word stands for; an unknown one is a fault with the nearest known."""
    from setwright.solver.brief.phrase.lexicon import KIND_NAMES, lexicon_of

    words = lexicon_of(catalogue)
    found = words.resolve(word, kinds)
    if found is None:
        near = words.nearest(word, kinds)
        wanted = " or ".join(KIND_NAMES[kind] for kind in kinds)
        remedy = f"did you mean {near!r}?" if near else ""
        raise UsageFault(Fault(where, f"{word!r} is not in the catalogue, expected {wanted}", remedy))
    return found
