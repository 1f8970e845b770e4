"""A client's pace for a coach: each part with its interval, what cannot be told, and the clock table for the brief."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.words import counted, listed, page_width, wrapped
from setwright.solver.uses.pace.client_pace import ClientPace, FittedPart, HeldBack, NotEnough, Part

NAMES: dict[Part, str] = {
    "warm_up": "Warm-up",
    "seconds_per_rep": "One repetition",
    "pair_change": "Change within a pair",
    "rest_drift": "Each rest, beyond what is asked",
    "change_drift": "Each change of exercise, beyond what is planned",
    "spare": "Whole session, beyond all that",
}
SPARE = (
    "The last row goes into the clock as spare; it holds the rests and changes above, for which a clock has no field."
)
MINUTES = (
    "Only the minutes of whole sessions are logged, so the parts cannot be told apart: one number of spare seconds a "
    "session is all that is told. Log when each set ends to learn more."
)

PACE_HEADS = ["Seconds", "This client", "90 % interval", "Planned"]


def pace_text(pace: ClientPace | NotEnough, width: int = 100) -> str:
    """What the log tells of the pace, or what is missing to tell it."""
    width = page_width(width)
    if isinstance(pace, NotEnough):
        return "\n".join(wrapped(not_enough_words(pace), width)) + "\n"
    parts = [
        wrapped(basis_words(pace), width),
        grid(PACE_HEADS, [pace_row(part) for part in pace.parts], "lrrr"),
        *(wrapped(said, width) for said in pace_notes(pace)),
        _clock_lines(pace),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def not_enough_words(found: NotEnough) -> str:
    """What there is and what is needed."""
    return (
        f"Not enough is logged: {counted(found.sessions_needed, 'session')} with {found.intervals_needed} intervals "
        f"between set ends are needed, {found.sessions_with_set_ends} with {found.intervals} are there; or the minutes "
        f"of {counted(found.sessions_needed, 'whole session')}, {found.sessions_with_minutes} are there."
    )


def basis_words(pace: ClientPace) -> str:
    """What the pace was told from."""
    if pace.basis == "session minutes":
        return f"From the minutes of {counted(pace.sessions, 'session')}. {MINUTES}"
    left_out = f"; {pace.left_out} more could not be used" if pace.left_out else ""
    return f"From {pace.intervals} intervals between set ends in {counted(pace.sessions, 'session')}{left_out}."


def pace_row(part: FittedPart) -> list[str]:
    """One part: its name, the client's seconds, their interval, the planned seconds."""
    places = 1 if part.part == "seconds_per_rep" else 0
    values = (part.value, part.low, part.high, part.planned)
    value, low, high, planned = (f"{round(value, places) + 0.0:.{places}f}" for value in values)
    return [NAMES[part.part], value, f"{low} to {high}", planned]


def pace_notes(pace: ClientPace) -> Iterator[str]:
    """What the parts hold, what could not be told, how well it foretold sessions held back."""
    if pace.basis == "set ends":
        yield SPARE
        rests = (f"{rest.taken:.0f} s where {rest.asked:.0f} s were asked for" for rest in pace.rests)
        yield f"Rests as taken, in the middle: {listed(rests)}."
        untold = [NAMES[part].lower() for part in pace.untold]
        if untold:
            yield f"The log cannot tell, and the plan's value stays: {listed(untold)}."
    if pace.limited:
        yield f"Held at the least or most that a brief takes: {listed(NAMES[part].lower() for part in pace.limited)}."
    yield _checked(pace.held_back)


def _checked(found: HeldBack | None) -> str:
    """Planned minutes against taken ones, before and after."""
    if found is None:
        return "Not checked on sessions held back: there are too few."
    return (
        f"Checked on the last {counted(found.sessions, 'session')}, with the pace of the {found.fitted_on} before: "
        f"planned minutes were off by {found.distance_before:.1f} on average, with this pace by "
        f"{found.distance_after:.1f}."
    )


def _clock_lines(pace: ClientPace) -> list[str]:
    """The table as a brief's TOML has it."""
    said = pace.clock.model_dump(exclude_none=True)
    return ["[clock]", *(f"{field} = {value:g}" for field, value in said.items())] if said else []
