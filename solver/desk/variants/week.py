"""One variant's week: as it is read, and as each of the sheets."""

from __future__ import annotations

from typing import Any, Final

from starlette.requests import Request
from starlette.responses import Response

from setwright.catalogue.faults import Fault, UsageFault
from setwright.catalogue.near import did_you_mean
from setwright.solver.batch.stored_weeks import stored_week
from setwright.solver.desk.desk import desk_of
from setwright.solver.desk.pages import page
from setwright.solver.desk.variants.shelf import shelf_of
from setwright.solver.records.letterhead import coach_beside
from setwright.solver.sheets.formats import DATED, FORMATS, written
from setwright.solver.sheets.handout.handout import handout_of
from setwright.solver.sheets.handout.values import Handout
from setwright.solver.uses.variants.manifest import read_manifest
from setwright.solver.uses.variants.matrix import file_stem

SHEETS: Final = tuple(name for name in FORMATS if name not in DATED)


def show_week(request: Request) -> Response:
    """A variant's week."""
    name, document = _week(request)
    more = {"h": _handout(request, name, document), "name": request.path_params["name"], "variant": name}
    stem = request.path_params["week"]
    return page(request, "variants/week.html", document, **more, stem=stem, sheets=SHEETS)


def sheet(request: Request) -> Response:
    """A variant's week in one format, as a file; raises UsageFault for another format."""
    wanted = request.path_params["format"]
    if wanted not in SHEETS:
        remedy = did_you_mean(wanted, SHEETS) or f"take one of {', '.join(SHEETS)}"
        raise UsageFault(Fault("format", f"{wanted!r} is none of a variant's sheets", remedy))
    name, document = _week(request)
    data = written(wanted, _handout(request, name, document))
    kept_as = f'attachment; filename="{request.path_params["name"]}-variant.{FORMATS[wanted].ending}"'
    return Response(data, media_type=FORMATS[wanted].media, headers={"Content-Disposition": kept_as})


def _week(request: Request) -> tuple[str, dict[str, Any]]:
    """The variant's name and its week's document; raises UsageFault where it has none."""
    store = shelf_of(desk_of(request)).results(request.path_params["name"])
    for variant in read_manifest(store.folder).variants:
        if file_stem(variant.name) == request.path_params["week"]:
            document = stored_week(variant, store)
            if document is not None:
                return variant.name, document
    raise UsageFault(Fault("week", "this variant has none", "run the template, or look why on its page"))


def _handout(request: Request, name: str, document: dict[str, Any]) -> Handout:
    desk = desk_of(request)
    return handout_of(document, desk.catalogue, coach_beside(desk.place, desk.catalogue), where=name)
