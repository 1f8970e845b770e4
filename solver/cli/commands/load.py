"""`setwright load`: what to load a lift with, from a recent set."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.brief.phrase.named import exercise_named
from setwright.solver.cli.console.messages import columns
from setwright.solver.cli.console.output import check_target, deliver
from setwright.solver.cli.lazy_group import PrintingCommand
from setwright.solver.cli.load_types import NumbersType, RepRangeType, SetType
from setwright.solver.cli.option_types import WholeNumberType
from setwright.solver.cli.options import catalogue_option, open_catalogue, output_options, wants_json


@click.command("load", cls=PrintingCommand)
@click.argument("exercise")
@click.argument("done", metavar="SET", type=SetType())
@click.option("--left", type=WholeNumberType(0, 10), default=0, metavar="N", help="Repetitions left in that set. [0]")
@click.option("--reps", type=RepRangeType(), metavar="LOW-HIGH", help="Repetitions to load for; else the lift's own.")
@click.option("--rir", type=WholeNumberType(0, 10), default=2, metavar="N", help="Repetitions to leave then. [2]")
@click.option("--unit", type=click.Choice(("kg", "lb")), default="kg", help="The unit of every weight. [kg]")
@click.option("--bar", type=click.FloatRange(0, 100), metavar="WEIGHT", help="The bar's weight; else the usual one.")
@click.option("--plates", type=NumbersType(), metavar="W,W,...", help="The pairs of plates, one number a pair.")
@catalogue_option
@output_options
def command(
    exercise: str,
    done: tuple[float, int],
    left: int,
    reps: tuple[int, int] | None,
    rir: int,
    unit: str,
    bar: float | None,
    plates: tuple[float, ...] | None,
    overlay: Path | None,
    as_json: bool,
    target: Path | None,
    force: bool,
) -> None:
    """What to load EXERCISE with, from a recent SET such as 80x8: the estimated maximum, and the load to begin with.

    The load is the heaviest that can be built and no more than two formulas say for the lower end of the repetitions.

    \b
    setwright load "bench press" 80x8 --left 2 --reps 6-8
    """
    from setwright.solver.sheets.screen.loads import load_document, load_text
    from setwright.solver.uses.loads.kits import usual_kit
    from setwright.solver.uses.loads.week_loads import adds_to_the_body
    from setwright.solver.uses.loads.working_load import DoneSet, working_load

    check_target(target, force)
    catalogue = open_catalogue(overlay)
    lift = exercise_named(exercise, catalogue)
    kit = usual_kit(lift, unit, bar, plates)
    if kit is None:
        said = f"{lift.name} has no load in {unit} to choose"
        raise UsageFault(Fault("load", said, "make it harder by its form, by repetitions or by a firmer band"))
    if lift.body_weight == "helped":
        said = f"the load of {lift.name} helps the body up, so that less is harder, which the formulas do not know"
        raise UsageFault(Fault("load", said, "take one step less when all sets reach the top of the range"))
    wanted = reps or lift.reps
    if adds_to_the_body(lift) and wanted[0] + rir > done[1] + left:
        said = f"{lift.name} adds to the body's own weight, which the formulas would have to know for more repetitions"
        raise UsageFault(Fault("load", said, f"ask for {done[1] + left} to failure or fewer with --reps and --rir"))
    found = working_load(lift, DoneSet(done[0], done[1], left), wanted, rir, kit, catalogue)
    if wants_json(as_json, target):
        deliver(load_document(found, unit), target, force)
    else:
        deliver(load_text(found, unit, columns()), target, force)
