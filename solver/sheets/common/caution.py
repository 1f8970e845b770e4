"""The caution that closes every week, and what is said before a week whose client needs clearance."""

from __future__ import annotations

from setwright.catalogue.entries import Catalogue
from setwright.solver.brief.schema import Brief

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
    "when, and within which limits under client.clearance."
)


def clearance_needed(brief: Brief, catalogue: Catalogue) -> bool:
    """Whether a caution calls for a clearance that the brief does not record."""
    asked = any(catalogue.cautions[caution.tag].needs_clearance for caution in brief.client.cautions)
    return asked and brief.client.clearance is None


def caution_sentences(brief: Brief, catalogue: Catalogue) -> tuple[str, ...]:
    """What the brief's own cautions ask for; health notes, for the person who wrote the brief only."""
    tags = dict.fromkeys(caution.tag for caution in brief.client.cautions)
    said = [f"{catalogue.cautions[tag].name}: {catalogue.cautions[tag].sentence}" for tag in tags]
    clearance = brief.client.clearance
    if clearance is not None:
        limits = f", limits: {clearance.limits}" if clearance.limits else ""
        said.append(f"Cleared by {clearance.by} on {clearance.on}{limits}.")
    return tuple(said)
