"""A season as JSON, without the client's health notes."""

from __future__ import annotations

from typing import Any

from setwright.catalogue.version import own_version
from setwright.solver.sheets.common.json_values import rounded
from setwright.solver.sheets.common.season_words import block_words
from setwright.solver.sheets.document.provenance import evidence_digest
from setwright.solver.sheets.document.season.season_model import SCHEMA
from setwright.solver.uses.season.reference_week import ReferenceWeek
from setwright.solver.uses.season.season import Season, SeasonBlock


def season_document(season: Season) -> dict[str, Any]:
    """The season as design and programs read it."""
    return {
        "schema": SCHEMA,
        "made_by": _made_by(season),
        "first": str(season.start),
        "last": str(season.end),
        "weeks": len(season.weeks),
        "block_weeks": list(season.block_weeks),
        "blocks": [_block(season, block) for block in season.blocks],
        "between": [
            {"first": str(week.first), "last": str(week.last), "minutes": week.minutes}
            for week in (season.weeks[place] for place in season.between)
        ],
        "turns": [
            {
                "muscle": muscle,
                "place": place + 1,
                "blocks": [block.number for block in season.blocks if muscle in block.specialised],
            }
            for muscle, place in season.turns.items()
        ],
        "worth": rounded(season.worth),
        "bound": rounded(season.bound),
        "gap": rounded(season.bound - season.worth),
        "gap_share": rounded(season.gap_share, 6),
        "proof": season.solution.status,
        "references": [_reference(reference) for reference in season.references],
    }


def _made_by(season: Season) -> dict[str, Any]:
    from setwright.solver.engines.cpsat import SEED

    catalogue = season.catalogue
    return {
        "version": own_version(),
        "catalogue": catalogue.digest,
        "evidence": evidence_digest(catalogue),
        "seed": SEED,
    }


def _block(season: Season, block: SeasonBlock) -> dict[str, Any]:
    return {
        "number": block.number,
        "first": str(block.first),
        "last": str(block.last),
        "weeks": len(block.weeks),
        "lighter_week": str(block.lighter),
        "minutes": block.minutes,
        "days": [
            {"weekday": day.weekday, "minutes": day.minutes, "equipment": _words(day.equipment)} for day in block.days
        ],
        "specialised": list(block.specialised),
        "held": list(block.held),
        "words": block_words(block, season.catalogue),
        "muscles": [
            {
                "muscle": muscle,
                "emphasis": block.emphases[muscle],
                "sets": sets,
                "by_week": [week[muscle] for week in block.by_week],
            }
            for muscle, sets in block.sets.items()
        ],
    }


def _words(said: str | tuple[str, ...] | None) -> list[str]:
    return [] if said is None else [said] if isinstance(said, str) else list(said)


def _reference(reference: ReferenceWeek) -> dict[str, Any]:
    sets = sum(line.sets for line in reference.evaluated.lines)
    return {
        "minutes": sum(day.minutes for day in reference.days),
        "days": len(reference.days),
        "sets": sets,
        "exercise_seconds": round(reference.exercise_seconds),
        "seconds_per_set": rounded(reference.exercise_seconds / sets, 1),
        "overhead_seconds": round(reference.overhead),
    }
