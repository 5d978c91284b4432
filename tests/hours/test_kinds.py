from datetime import UTC, datetime, timedelta

import pytest

from webapp.hours.kinds import Tap, by_changes

BEGIN = datetime(2026, 2, 2, 19, tzinfo=UTC)


def row(n, threads, pace, stitches=60):
    """Tap a row of ten stitches a time at a pace, on an evening of its own, the threads by turns."""
    gap = timedelta(hours=10 / pace)
    begin = BEGIN + timedelta(days=n)
    return [Tap(begin + i * gap, str(n), 10, threads[i % len(threads)]) for i in range(stitches // 10 + 1)]


def taps(quick=100, slow=60, rows=6, many=("ink", "sea green")):
    return [
        *(tap for n in range(rows) for tap in row(n, ["ink"], quick)),
        *(tap for n in range(rows, 2 * rows) for tap in row(n, many, slow)),
    ]


def test_her_pace_where_the_thread_changes_seldom_and_where_often():
    assert by_changes(taps()) == pytest.approx((100, 60))
    assert by_changes(reversed(taps())) == pytest.approx((100, 60))


@pytest.mark.parametrize(
    "some",
    [
        [],
        taps(rows=4),  # too few rows
        taps(quick=65),  # much the same
        taps(many=(None,)),  # threads not named
        taps(quick=700, slow=500),  # under an hour of either
    ],
)
def test_what_does_not_show_is_not_said(some):
    assert by_changes(some) is None


def test_a_pause_belongs_to_no_row():
    late = [
        tap._replace(at=tap.at + timedelta(hours=3)) if i % 7 > 3 else tap for i, tap in enumerate(taps())
    ]
    assert by_changes(late) == pytest.approx((100, 60))
