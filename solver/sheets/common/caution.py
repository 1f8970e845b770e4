"""The caution that closes every week, and what is said before a week whose client needs clearance."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.catalogue.cautions import Caution, ClientLimits, age_group_of
from setwright.catalogue.entries import Catalogue
from setwright.catalogue.positions import is_in
from setwright.solver.brief.schema import Brief
from setwright.solver.evaluation.evaluated_week import EvaluatedWeek
from setwright.solver.sheets.common.words import day_name, listed

SCREENING = "https://eparmedx.com"
CAUTION = (
    "A general planning aid, not medical advice. Pain, dizziness or chest symptoms mean stop and see a professional. "
    "Anyone with a known disease, symptoms, pregnancy, an injury or long inactivity gets cleared first "
    f"(self-screening form: {SCREENING}). Use a spotter or safeties for lifts that can pin you. "
    "Local rules and licensed practitioners come first."
)
CLEARANCE = (
    "BEFORE THE FIRST SESSION: what this brief says of the client calls for clearance by a doctor or another licensed "
    "practitioner, and none is recorded. Do not train this week before it is given. Then record who gave it, "
    "when, and within which limits under client.clearance. Chest pain, fainting, sudden breathlessness, numbness "
    "between the legs or a change of bladder or bowel is an emergency: call for urgent medical help."
)


def clearance_needed(brief: Brief, catalogue: Catalogue) -> bool:
    """Whether a caution calls for a clearance that the brief does not record."""
    asked = any(catalogue.cautions[caution.tag].needs_clearance for caution in brief.client.cautions)
    return asked and brief.client.clearance is None


def caution_sentences(brief: Brief, catalogue: Catalogue) -> tuple[str, ...]:
    """What the brief's own cautions and age ask for; health notes, for the person who wrote the brief only."""
    cautions = [catalogue.cautions[caution.tag] for caution in brief.client.cautions]
    said = [_caution_words(caution, catalogue) for caution in dict.fromkeys(cautions)]
    group = age_group_of(brief.client.age, catalogue.ages)
    if group is not None:
        said.append(" ".join((f"Age {brief.client.age}: {group.sentence}", *_limit_words(group.limits, catalogue))))
    clearance = brief.client.clearance
    if clearance is not None:
        limits = f", limits: {clearance.limits}" if clearance.limits else ""
        said.append(f"Cleared by {clearance.by} on {clearance.on}{limits}.")
    return tuple(said)


def position_warnings(evaluated: EvaluatedWeek) -> tuple[str, ...]:
    """The week's lifts in each position that a caution leaves open and warns of; health notes, as above."""
    resolved = evaluated.resolved
    found = []
    for position in sorted(resolved.client_limits.warns_positions):
        place = resolved.catalogue.positions[position]
        lifts = [f"{x.exercise.name} ({day_name(x.day)})" for x in evaluated.lines if is_in(x.exercise, place)]
        if lifts:
            found.append(f"In this week {place.name}: {listed(lifts)}; change any that feels unwell.")
    return tuple(found)


def _caution_words(caution: Caution, catalogue: Catalogue) -> str:
    """A caution's sentence, the signs with which somebody is seen first, and what it sets in the week."""
    said = [f"{caution.name}: {caution.sentence}"]
    if caution.see_first:
        said.append(f"See a doctor or physiotherapist before any lifting with {caution.see_first}.")
    if caution.emergency:
        said.append(f"Call for urgent medical help with {caution.emergency}.")
    return " ".join((*said, *_limit_words(caution.limits, catalogue)))


def _limit_words(limits: ClientLimits, catalogue: Catalogue) -> Iterator[str]:
    """What limits set in a week, as one sentence; nothing where they set nothing beyond closing joints."""
    parts = []
    if limits.rir_least:
        parts.append(f"at least {limits.rir_least} RIR")
    if limits.reps_least:
        parts.append(f"at least {limits.reps_least} repetitions a set")
    if limits.techniques_off:
        parts.append("no drop sets or rest-pause")
    if limits.rest_least:
        parts.append(f"at least {limits.rest_least} s of rest after every set, so no pairs")
    if limits.sets_most is not None:
        parts.append(f"at most {limits.sets_most} sets of an exercise in a day")
    for said, positions in (
        ("left out", limits.closes_positions),
        ("left out as soon as it feels unwell", limits.warns_positions),
    ):
        if positions:
            parts.append(f"{said}: {listed([catalogue.positions[p].name for p in sorted(positions)])}")
    if parts:
        yield f"In this week: {'; '.join(parts)}."
