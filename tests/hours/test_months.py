from datetime import date, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.hours.months import month_after, month_from, month_named, weeks_of, year_from, year_named
from webapp.hours.week import BadWeek, week_named

LONDON = ZoneInfo("Europe/London")
firsts = st.dates(date(1971, 2, 1), date(2198, 1, 1)).map(lambda day: day.replace(day=1))


@given(firsts)
def test_a_month_has_all_its_days_and_the_next_begins_after_them(first):
    days = month_from(first, LONDON)
    assert days.first == first
    assert {day.date.month for day in days.days} == {first.month}
    assert days.last + timedelta(days=1) == month_after(first)
    assert month_after(month_after(first), -1) == first


@pytest.mark.parametrize(("year", "days"), [(2024, 366), (2026, 365), (2100, 365)])
def test_a_year_has_all_its_days(year, days):
    whole = year_from(year, LONDON)
    assert len(whole.days) == days
    assert (whole.first, whole.last) == (date(year, 1, 1), date(year, 12, 31))


@given(firsts, st.integers(0, 6))
def test_a_months_dates_stand_under_their_weekdays(first, week_start):
    rows = weeks_of(month_from(first, LONDON), week_start)
    assert [day for row in rows for day in row if day] == [day.date for day in month_from(first, LONDON).days]
    for row in rows:
        assert len(row) == 7
        assert all(day is None or day.weekday() == (week_start + n) % 7 for n, day in enumerate(row))


# ISO 8601's own rule: the first week of a year is the one with its first Thursday, so that years which begin
# on a Thursday (or leap years on a Wednesday) have 53. The dates are its usual examples; from memory.
@pytest.mark.parametrize(
    ("week", "monday"),
    [
        ("2004-W53", "2004-12-27"),
        ("2005-W01", "2005-01-03"),
        ("2005-W52", "2005-12-26"),
        ("2006-W01", "2006-01-02"),
        ("2007-W01", "2007-01-01"),
        ("2008-W01", "2007-12-31"),
        ("2009-W01", "2008-12-29"),
        ("2009-W53", "2009-12-28"),
        ("2010-W01", "2010-01-04"),
        ("2020-W53", "2020-12-28"),
        ("2026-W53", "2026-12-28"),
        ("2027-W01", "2027-01-04"),
    ],
)
def test_first_and_last_weeks_of_years_are_iso_8601s(week, monday):
    assert week_named(week, LONDON, 0).first == date.fromisoformat(monday)


@pytest.mark.parametrize("year", range(1971, 2199))
def test_a_year_has_53_weeks_as_iso_8601_says(year):
    first = date(year, 1, 1).weekday()
    leap = date(year, 12, 31).timetuple().tm_yday == 366
    if first == 3 or (leap and first == 2):
        assert week_named(f"{year}-W53", LONDON, 0).last >= date(year, 12, 31)
    else:
        with pytest.raises(BadWeek):
            week_named(f"{year}-W53", LONDON, 0)


@pytest.mark.parametrize("name", ["", "2026", "2026-13", "2026-00", "26-01", "1970-01", "2026-02-01", "<b>"])
def test_a_month_that_is_none_is_answered_by_a_sentence(name):
    with pytest.raises(BadWeek, match=r"[A-Z].+\."):
        month_named(name)


@pytest.mark.parametrize("name", ["", "26", "1970", "2199", "02026", "٢٠٢٦"])
def test_a_year_that_is_none_is_answered_by_a_sentence(name):
    with pytest.raises(BadWeek, match=r"[A-Z].+\."):
        year_named(name)
