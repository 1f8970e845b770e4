"""A season for a coach: its blocks, the weekly sets of each muscle, what was maximised, and what is not known."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import groupby
from typing import TYPE_CHECKING

from setwright.solver.engines.season.problem import HELD, SPECIALISED
from setwright.solver.rulebook import resolve
from setwright.solver.sheets.common.caution import CAUTION
from setwright.solver.sheets.common.grid import grid
from setwright.solver.sheets.common.season_words import block_words
from setwright.solver.sheets.common.words import counted, listed, muscle_name, page_width, wrapped
from setwright.solver.sheets.screen.headline import headline

if TYPE_CHECKING:
    from setwright.catalogue.entries import Catalogue
    from setwright.solver.uses.season.season import Season, SeasonBlock

SETS_COLUMN = 6
"""Letters of a column of weekly sets."""
MARKS = {SPECIALISED: "*", HELD: "h"}
WHAT_SETS_ARE = (
    "Weekly sets of a full week, indirect sets counted in part. * specialised, h held, else the normal band."
)
UNKNOWN = (
    "Not known: whether muscles specialised in turn gain more over a year than the same sets every week; what a "
    "lighter week gives or costs (it counts as the weeks before it here, so lengths are not chosen by it); and what "
    "one person gains. The index stands for the stimulus of weekly sets in groups of people and promises no growth. "
    "Look at the logs after each block and lay out the rest anew."
)


def season_text(season: Season, width: int = 100) -> str:
    """The season for a coach."""
    width = page_width(width)
    parts = [
        wrapped(_title(season), width),
        _blocks(season, width),
        _sets(season, width),
        _below(season, width),
        _rising(season, width),
        _words(season, width),
        *(wrapped(said, width, "  ") for said in _sentences(season)),
        wrapped(f"Caution: {CAUTION}", width),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def block_comment(season: Season, block: SeasonBlock) -> str:
    """What stands above a block's brief file."""
    return f"Block {block.number} of {len(season.blocks)}: {block.first} to {block.last}."


def _title(season: Season) -> str:
    resolved = resolve(season.parsed.brief, season.catalogue)
    blocks = counted(len(season.blocks), "block")
    return f"Season {season.start} to {season.end}, {len(season.weeks)} weeks in {blocks}: {headline(resolved)}"


# ---- tables


def _blocks(season: Season, width: int) -> list[str]:
    """A row for each block, and for each run of weeks between blocks."""
    rows = [(block.first, _block_row(season, block)) for block in season.blocks]
    rows += list(_gap_rows(season))
    headings = ["Block", "Dates", "Weeks", "Min/week", "Specialised", "Held", "Lighter week"]
    fixed = 5 + 24 + 5 + 8 + 12 + 2 * 6
    each = max(12, (width - fixed) // 2)
    return grid(headings, [row for _, row in sorted(rows)], "rlrrlll", [*[None] * 4, each, each, None])


def _block_row(season: Season, block: SeasonBlock) -> list[str]:
    return [
        str(block.number),
        f"{block.first} to {block.last}",
        str(len(block.weeks)),
        str(block.minutes),
        _muscles(block.specialised, season.catalogue),
        _muscles(block.held, season.catalogue),
        str(block.lighter),
    ]


def _gap_rows(season: Season) -> Iterator[tuple[date, list[str]]]:
    """The weeks between blocks, those without a session apart from the others."""
    kinds = groupby(season.between, key=lambda place: (bool(season.weeks[place].days), place - _rank(season, place)))
    for (open_days, _), places in kinds:
        weeks = [season.weeks[place] for place in places]
        said = "no block" if open_days else "days off"
        dates = f"{weeks[0].first} to {weeks[-1].last}"
        yield weeks[0].first, ["", dates, str(len(weeks)), "", said, "", ""]


def _rank(season: Season, place: int) -> int:
    """The place of a week among those between blocks: weeks in a row keep their distance from it."""
    return season.between.index(place)


def _muscles(names: Sequence[str], catalogue: Catalogue) -> str:
    return ", ".join(muscle_name(catalogue, name) for name in names) or "-"


def _sets(season: Season, width: int) -> list[str]:
    """Weekly sets by muscle and block, as many blocks beside each other as the page holds."""
    longest = max(len(season.catalogue.muscles[m.name].name) for m in season.problem.muscles)
    beside = max(1, (width - longest) // SETS_COLUMN)
    lines: list[str] = []
    for first in range(0, len(season.blocks), beside):
        blocks = season.blocks[first : first + beside]
        rows = [
            [season.catalogue.muscles[m.name].name, *(_marked(block, m.name) for block in blocks)]
            for m in season.problem.muscles
        ]
        headings = ["Sets in block", *(str(block.number) for block in blocks)]
        lines += [*([""] if lines else []), *grid(headings, rows, "l" + "r" * len(blocks))]
    return [*lines, *wrapped(WHAT_SETS_ARE, width)]


def _marked(block: SeasonBlock, muscle: str) -> str:
    return f"{block.sets[muscle]:g}{MARKS.get(block.emphases[muscle], ' ')}"


def _below(season: Season, width: int) -> list[str]:
    """The muscles that a block leaves below the band of their emphasis."""
    found: list[str] = []
    for block in season.blocks:
        short = [
            f"{muscle_name(season.catalogue, muscle)} {sets:g} of {low:g}"
            for muscle, sets, low in season.below_band(block)
        ]
        if short:
            found += wrapped(f"Block {block.number}: {', '.join(short)}", width, "  ")
    if not found:
        return []
    said = "Below the band of their emphasis, for want of time; what is held below its band may not keep its size:"
    return [*wrapped(said, width), *found]


def _rising(season: Season, width: int) -> list[str]:
    """The muscles whose sets rise over the first weeks of a block."""
    found: list[str] = []
    for block in season.blocks:
        rising = [
            f"{muscle_name(season.catalogue, m)} {_steps(block, m)}"
            for m, sets in block.sets.items()
            if block.by_week[0][m] < sets
        ]
        if rising:
            found += wrapped(f"Block {block.number}: {'; '.join(rising)}", width, "  ")
    if not found:
        return []
    numbers = season.catalogue.defaults.block
    said = (
        f"Sets that rise week by week, at most {numbers.first_above_now:g} above the block before in the first week "
        f"and {numbers.rise_most:g} more in each further one (convention; what was done before block 1 is not known):"
    )
    return [*wrapped(said, width), *found]


def _steps(block: SeasonBlock, muscle: str) -> str:
    """The sets of the first weeks, and the full week's where the block ends before it: 8, 10, 12 of 14."""
    weeks, full = _until_full(block, muscle), block.sets[muscle]
    said = ", ".join(f"{sets:g}" for sets in weeks)
    return said if weeks[-1] >= full else f"{said} of {full:g}"


def _until_full(block: SeasonBlock, muscle: str) -> list[float]:
    """The sets of the first weeks up to the full week, without the lighter one."""
    full = block.sets[muscle]
    weeks = [week[muscle] for week in block.by_week[:-1]]
    reached = next((i for i, sets in enumerate(weeks) if sets >= full), len(weeks) - 1)
    return weeks[: reached + 1]


def _words(season: Season, width: int) -> list[str]:
    """The phrase by which each block's week is planned."""
    found = wrapped(
        "Words with which `setwright week` plans a full week of each block; add the kit and what else the brief says, "
        "or let --briefs write the whole briefs:",
        width,
    )
    for block in season.blocks:
        found += wrapped(f"{block.number:>2}  {block_words(block, season.catalogue)}", width, "    ")
    return found


# ---- sentences


def _sentences(season: Season) -> list[str]:
    """What was maximised, how near the best it is, what it rests on, and what is not known."""
    said = [_objective(season), _gap(season), _turns(season), _lighter(season), _held(season), _cost(season), UNKNOWN]
    return [text for text in said if text]


def _objective(season: Season) -> str:
    weights = season.catalogue.defaults.weights
    return (
        "Chosen for the largest sum over all weeks of each muscle's index times its weight: "
        f"{weights['priority']:g} while it is specialised, {weights['normal']:g} at the normal band, "
        f"{weights['hold']:g} while it is held (the weights and bands by which `setwright week` plans; conventions), "
        f"less what sets outside a band cost. At most {counted(season.problem.specialised_most, 'muscle')} at a time, "
        f"none in more than {season.problem.running_most} blocks running; muscles wanted alike have as many blocks but "
        "for one, and one wanted more has no fewer (conventions)."
    )


def _gap(season: Season) -> str:
    return (
        f"By this reckoning no season of these weeks is worth more than {100 * season.gap_share:.1f} % above this one: "
        f"{season.worth:.0f} found, {season.bound:.0f} at most. The bound knows nothing of rising sets."
    )


def _turns(season: Season) -> str:
    """The muscles that have no block of their own."""
    if not season.missed:
        return ""
    names = listed(muscle_name(season.catalogue, m) for m in season.missed)
    return f"Without a block of their own: {names}; there are too few blocks for all. --emphasis says what comes first."


def _lighter(season: Season) -> str:
    every, spread = (season.catalogue.number(f"rogerson-2024-every{end}") for end in ("", "-spread"))
    share = season.catalogue.defaults.block.lighter_sets
    low, high = season.block_weeks
    return (
        f"Each block has {low} to {high} weeks and ends with a lighter one of {100 * share:.0f} % of its sets "
        f"(convention). Competitors take a lighter week every {every:g} +- {spread:g} weeks (Rogerson et al. 2024): a "
        "habit by survey, no proven effect. A block is planned for the fewest minutes that one of its full weeks has."
    )


def _held(season: Season) -> str:
    """What is known of holding, where something is held."""
    held = {m for block in season.blocks for m in block.held}
    if not held:
        return "Nothing is held: the minutes are enough for the normal bands, or nearly so."
    seen = season.problem.held_most
    longer = [muscle_name(season.catalogue, m) for m in sorted(held) if season.held_longest(m) > seen]
    said = (
        f"A held muscle keeps its size, as far as is known, with little: one session and one hard set an exercise did "
        f"for up to {seen} weeks in younger adults, more was needed from about 60 years (Spiering et al. 2021)."
    )
    return f"{said} Held for longer here: {listed(longer)}." if longer else said


def _cost(season: Season) -> str:
    """How the minutes of a set were come by."""
    found = season.references
    sets = sum(line.sets for r in found for line in r.evaluated.lines)
    each = sum(r.exercise_seconds for r in found) / sets
    return (
        f"What sets take is measured in {counted(len(found), 'solved reference week')} without emphasis: {each:.0f} s "
        "a set on average, each exercise by its own seconds and shares of muscles, and all of them made longer until "
        "the reckoning gives that week no more sets than it has. A planned week has whole exercises, days and rules "
        "besides, so its sets differ by some: plan each block with `setwright week` and go by that."
    )
