"""`setwright exercises`: the catalogue's exercises."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.phrase.named import entry_named, exercise_named
from setwright.solver.cli.console.messages import columns
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, wants_json

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue, Exercise
    from setwright.solver.brief.phrase.lexicon import Kind


@click.command("exercises", cls=PrintingCommand)
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
    from setwright.solver.sheets.screen.listing import exercise_text, exercises_document, exercises_text

    check_target(target, force)
    if name and (kit or muscle or movement):
        raise UsageFault(Fault("exercises", "an ID was given with a filter", "drop one of the two"))
    catalogue = open_catalogue(overlay)
    found = [exercise_named(name, catalogue)] if name else _filtered(catalogue, kit, muscle, movement)
    result: str | dict[str, Any]
    if wants_json(as_json, target):
        result = exercises_document(found)
    elif name:
        result = exercise_text(found[0], catalogue, columns())
    else:
        result = exercises_text(found, catalogue, columns())
    deliver(result, target, force)


def _filtered(catalogue: Catalogue, kit: str | None, muscle: str | None, movement: str | None) -> list[Exercise]:
    """The exercises that pass every filter; raises UsageFault with the faults of all filters."""
    faults: list[Fault] = []

    def resolved(word: str, option: str, kinds: tuple[Kind, ...]) -> tuple[Kind, str]:
        try:
            return entry_named(word, option, kinds, catalogue)
        except UsageFault as error:
            faults.extend(error.faults)
            return kinds[0], ""

    found = list(catalogue.exercises.values())
    if kit:
        _, kit_id = resolved(kit, "--kit", ("kit",))
        items = catalogue.kits[kit_id].items if kit_id else frozenset[str]()
        found = [exercise for exercise in found if items.issuperset(exercise.needs)]
    if muscle:
        kind, muscle_id = resolved(muscle, "--muscle", ("muscle", "group"))
        group = kind == "group" and muscle_id
        muscles = catalogue.groups[muscle_id].otherwise if group else (muscle_id,)
        found = [exercise for exercise in found if exercise.direct.intersection(muscles)]
    if movement:
        _, movement_id = resolved(movement, "--movement", ("movement",))
        found = [exercise for exercise in found if exercise.movement == movement_id]
    if faults:
        raise UsageFault(faults)
    return found
