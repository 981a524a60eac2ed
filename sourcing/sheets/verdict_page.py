"""The verdicts of needs as one page to print: what to do, why, the options, and the winding sheet where it is wound."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sourcing.adapt.rehook import rehook_steps
from sourcing.fit.model import Fit
from sourcing.sheets import page
from sourcing.sheets.hands import hand_matters
from sourcing.sheets.verdict_text import (
    EXCLUDED_SHOWN,
    FIT_HEADERS,
    OPTION_HEADERS,
    OPTIONS_SHOWN,
    excluded_heading,
    excluded_options,
    fit_heading,
    fit_rows,
    option_row,
    refused_wires,
    serving_options,
    wanted_words,
)
from sourcing.sheets.winding_page import hands, job_heading, winding_parts
from sourcing.verdict.options import Option
from sourcing.verdict.verdict import Verdict


def verdict_page(verdicts: Sequence[Verdict]) -> str:
    """The page of all verdicts, each beginning on a sheet of paper of its own."""
    jobs = ", ".join(verdict.need.job for verdict in verdicts)
    sections = [
        section
        for at, verdict in enumerate(verdicts, 1)
        for section in _sections(verdict, "" if len(verdicts) == 1 else f"job-{at}-")
    ]
    return page.page(f"{jobs}: verdict", [page.main(sections)])


def _sections(verdict: Verdict, job: str) -> Iterator[str]:
    yield page.section(_verdict(verdict, job))
    if verdict.plan is not None:
        title = page.heading(f"{verdict.need.job}: winding sheet")
        yield page.section((title, *winding_parts(verdict.plan, verdict.need, (), job)))


def _verdict(verdict: Verdict, job: str) -> Iterator[str]:
    need, chosen = verdict.need, verdict.chosen
    yield job_heading(need)
    if verdict.cautions:
        yield page.cautions("Mind", verdict.cautions)
    yield page.paragraph(verdict.sentence, lead=True)
    yield page.paragraph("Wanted: " + "; ".join(wanted_words(need, verdict.bench.units)))
    yield page.heading("Why")
    yield page.bullets(f"{because.rule}: {because.why}" for because in verdict.because)
    yield from _options(verdict)
    if chosen is not None and chosen.adapted is not None:
        yield page.heading("How to adapt it")
        yield page.steps(rehook_steps(chosen.adapted, verdict.bench.units))
    if verdict.options and verdict.plan is None and hand_matters(need):
        yield page.heading("How to see the hand")
        yield hands(job)
    yield from _listed("What would change it", verdict.would_change)
    if chosen is not None and chosen.fit is not None:
        yield from _fit(verdict, chosen, chosen.fit)
    yield from _listed("Not judged, and assumed", tuple(verdict.notes))


def _fit(verdict: Verdict, chosen: Option, fit: Fit) -> Iterator[str]:
    yield page.heading(fit_heading(chosen))
    if rows := fit_rows(verdict, fit):
        yield page.table(FIT_HEADERS, rows)
    limits = (*fit.broken, *(limit for limit in fit.limits if limit.holds))
    yield page.bullets((f"{limit.limit}: {limit.why}" for limit in limits), in_two=True)


def _options(verdict: Verdict) -> Iterator[str]:
    serving, excluded = serving_options(verdict), excluded_options(verdict)
    if serving:
        yield page.heading("Options" if verdict.chosen is None else "Options, the chosen one first")
        yield page.table(OPTION_HEADERS, [option_row(option) for option in serving[:OPTIONS_SHOWN]])
        yield page.bullets(f"{option.id or option.option}: {option.how}" for option in serving[:OPTIONS_SHOWN])
        if len(serving) > OPTIONS_SHOWN:
            yield page.paragraph(f"... and {len(serving) - OPTIONS_SHOWN} more that fit less well")
    if excluded:
        nearest = [f"{option.option} {option.id}: {why}" for option, why in excluded[:EXCLUDED_SHOWN]]
        yield from _listed(excluded_heading(verdict), nearest)
    yield from _listed("Wire that does not serve", refused_wires(verdict))


def _listed(title: str, items: Sequence[str]) -> Iterator[str]:
    """A list under its heading, where there is anything to list."""
    if items:
        yield page.heading(title)
        yield page.bullets(items)
