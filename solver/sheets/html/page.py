"""A week as one HTML file that needs no network and no script: glance, charts, session cards with boxes to write in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from setwright.solver.sheets.charts.charts import bands_chart, curve_chart, side_by_side, time_chart
from setwright.solver.sheets.charts.client_words import chart_words
from setwright.solver.sheets.charts.drawing import UNFIT, ChartStyle, number
from setwright.solver.sheets.common.caution import SCREENING
from setwright.solver.sheets.html.exercise_plan import embedded, schema_org_plan
from setwright.solver.sheets.html.templates import templates_in

if TYPE_CHECKING:
    from jinja2 import Environment
    from markupsafe import Markup

    from setwright.solver.sheets.handout.values import Handout

DATA: Final = Path(__file__).parents[1] / "data"
FROM_THE_RIGHT: Final = ("ar", "ckb", "dv", "fa", "he", "ps", "sd", "ug", "ur", "yi")
"""Languages usually written from right to left; common practice, no source."""
PAPERS: Final = {"a4": "210mm 297mm", "letter": "8.5in 11in"}


@dataclass(frozen=True)
class Plots:
    """What may be shown beside a week: the curve of what minutes buy, and weeks side by side."""

    curve: tuple[tuple[float, float], ...] = ()
    """(minutes a week, week index), and the interval of each index."""
    intervals: tuple[tuple[float, float], ...] = ()
    bend: float | None = None
    rows: tuple[tuple[str, tuple[float, ...]], ...] = ()
    """(muscle, weekly sets in each week)."""
    names: tuple[str, ...] = ()


def html_bytes(handout: Handout, plots: Plots | None = None) -> bytes:
    """The page as UTF-8 bytes, the same for the same week; needs the extra `page` (Jinja2)."""
    from markupsafe import Markup

    house = _environment()
    text = house.get_template("page.html").render(
        h=handout,
        cards=[session for session in handout.sessions if session.lines],
        coach=handout.coach,
        w=handout.coach.words,
        language=handout.coach.language,
        side="rtl" if handout.coach.language.split("-")[0] in FROM_THE_RIGHT else "ltr",
        head=_headed(handout),
        facts=_facts(handout),
        style=Markup(
            house.get_template("page.css").render(paper=PAPERS[handout.coach.paper], loads=bool(handout.on_loads))
        ),
        plan=Markup(embedded(schema_org_plan(handout))),
        unit=handout.document["brief"]["client"]["unit"],
        index=number(handout.index),
        caution=_linked(handout.caution),
        caution_text=handout.caution,
        bands_chart=Markup(bands_chart(handout.muscles, _chart_style(handout, "bands"))),
        time_chart=Markup(time_chart([s for s in handout.sessions if s.lines], _chart_style(handout, "time"))),
        plots=tuple(_plots_of(handout, plots or Plots())),
    )
    return UNFIT.sub("\ufffd", text).encode()


def _environment() -> Environment:
    """The templates of the page with what they alone use."""
    house = templates_in(DATA, trimmed=False)
    house.filters |= {"openable": openable, "sentence": _sentence, "capitalised": _capitalised, "unbroken": _unbroken}
    return house


def _headed(handout: Handout) -> str:
    """The client's code and the week, as the page's title and as each printed page's head."""
    return ", ".join(said for said in (handout.client, handout.title, handout.week) if said)


def _facts(handout: Handout) -> list[tuple[str, str]]:
    """What stands under the title; what is not said is left out."""
    words = handout.coach.words
    found: list[tuple[str, str | date | None]] = [
        (words["client"], handout.client),
        (words["week"], handout.week),
        (words["asked"], handout.asked),
        (words["date"], handout.start),
        (words["review"], handout.review),
    ]
    return [(label, str(said)) for label, said in found if said]


def _linked(text: str) -> Markup:
    """A text with the self-screening form's address as a link, all else as text."""
    from markupsafe import Markup

    link = Markup('<a href="{0}" rel="noopener noreferrer">{0}</a>').format(SCREENING)
    return link.join(text.split(SCREENING))


def openable(link: str) -> bool:
    """Whether a link leads to a page, not to a script or a file."""
    return link.lower().startswith(("https://", "http://"))


def _capitalised(text: str) -> str:
    """A text that begins with a capital."""
    return text[:1].upper() + text[1:]


def _sentence(text: str) -> str:
    """A text as a sentence: a capital, and a full stop where it ends with a letter."""
    return _capitalised(text) + ("." if text[-1:].isalnum() else "")


def _unbroken(text: str) -> str:
    """A text whose figures stay beside their signs: no line ends before or after an x or before a %."""
    return text.replace(" %", "\u00a0%").replace(" x ", "\u00a0x\u00a0")


def _chart_style(handout: Handout, key: str) -> ChartStyle:
    """A chart's style on the page: the page's ink and the coach's words."""
    return ChartStyle(key=key, words=chart_words(handout.coach.words))


def _plots_of(handout: Handout, plots: Plots) -> Sequence[tuple[str, Any]]:
    """The plots that were given, each with its title."""
    from markupsafe import Markup

    words, found = handout.coach.words, []
    if plots.curve:
        drawn = curve_chart(plots.curve, plots.bend, _chart_style(handout, "curve"), plots.intervals)
        found.append((words["what_minutes_buy"], Markup(drawn)))
    if plots.rows:
        found.append((words["compared"], Markup(side_by_side(plots.rows, plots.names, _chart_style(handout, "pairs")))))
    return found
