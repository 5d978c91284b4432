"""A week's figures for programs: the same as the page's, unrounded, with their units in the keys."""

from typing import Any

from webapp.hours.figures import Share, whole
from webapp.hours.forecast import Forecast
from webapp.hours.pace import Finish
from webapp.hours.report import Report


def as_figures(report: Report) -> dict[str, Any]:
    """Give a week's figures."""
    shown = report.figures
    return {
        "week": report.week.name,
        "first_date": report.week.first.isoformat(),
        "last_date": report.week.last.isoformat(),
        "zone": report.zone.key,
        "total_seconds": shown.total.time.total_seconds(),
        "stitches": shown.total.stitches,
        "usual_seconds": None if report.usual is None else report.usual.total_seconds(),
        **_facts(report),
        "days": [
            {
                "date": day.date.isoformat(),
                "length_seconds": (day.end - day.begin).total_seconds(),
                **_share(whole(shares)),
                "projects": [{"project": str(p), **_share(share)} for p, share in shares.items()],
            }
            for day, shares in shown.days
        ],
        "projects": [
            {
                "project": str(project),
                "title": report.titles[project],
                **_share(share),
                "sitting_seconds": share.sat.total_seconds(),
                "stitches_per_hour": share.pace,
            }
            for project, share in shown.projects.items()
        ],
        "weeks_before": [
            {"week": week.name, "total_seconds": whole(shares).time.total_seconds()}
            for week, shares in report.weeks[:-1]
        ],
        "finishes": [_forecast(one) for one in report.forecasts],
    }


def _facts(report: Report) -> dict[str, Any]:
    longest = report.longest
    return {
        "sittings": len(report.sittings),
        "longest_sitting_seconds": longest.total_seconds() if longest else None,
        "rows_done": report.places["row"],
        "blocks_done": report.places["block"],
        "nights_on_frame": report.nights,
    }


def _share(share: Share) -> dict[str, Any]:
    return {"seconds": share.time.total_seconds(), "stitches": share.stitches}


def _forecast(one: Forecast) -> dict[str, Any]:
    return {
        "project": str(one.project),
        "crosses_left_stitches": one.left,
        "crosses": _dates(one.crosses),
        "last_pass": _dates(one.last),
    }


def _dates(finish: Finish | None) -> dict[str, str] | None:
    if finish is None:
        return None
    names = ("date_at_10_percent", "date_at_50_percent", "date_at_90_percent")
    return {name: day.isoformat() for name, day in zip(names, finish, strict=True)}
