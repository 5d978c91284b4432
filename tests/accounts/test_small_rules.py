"""Devices, days, ways back, zones, passphrases: what needs no house."""

from datetime import UTC, datetime
from urllib.parse import urljoin, urlsplit
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.accounts import passphrases, zones
from webapp.accounts.devices import device_name, last_seen
from webapp.accounts.returning import path_of, safe_next

NEW_YORK = ZoneInfo("America/New_York")


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("Mozilla/5.0 (Linux; Android 14; K) AppleWebKit/537.36 Mobile Safari/537.36", "Android phone"),
        ("Mozilla/5.0 (Linux; Android 14; K) AppleWebKit/537.36 Safari/537.36", "Android tablet"),
        ("Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) Mobile/15E148", "iPhone or iPad"),
        ("Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15", "Computer"),
        ("Mozilla/5.0 (X11; CrOS x86_64 14541.0.0)", "Computer"),
        ("Mozilla/5.0 (Windows NT 10.0; Win64; x64)", "Computer"),
        ("", "Another device"),
        ("<script>", "Another device"),
    ],
)
def test_a_device_has_a_plain_name(said, name):
    """The forms of these are as browsers send them; from memory."""
    assert device_name(said) == name


@pytest.mark.parametrize(
    ("seen", "words"),
    [
        ("2026-02-03T20:00", "today"),
        ("2026-02-03T04:30", "yesterday"),  # half past eleven the evening before, in New York
        ("2026-01-30T20:00", "4 days ago"),
        ("2026-01-20T20:00", "20 January"),
        ("2025-12-31T20:00", "31 December 2025"),
        ("2026-02-04T09:00", "today"),  # the clock was put back meanwhile
    ],
)
def test_when_a_device_was_seen_is_told_in_her_days(seen, words):
    moment = datetime.fromisoformat(seen).replace(tzinfo=UTC)
    assert last_seen(moment, datetime(2026, 2, 3, 21, tzinfo=UTC), NEW_YORK) == words


@given(st.text(max_size=60) | st.text("/\\.:@?#\t\n ae", max_size=12))
def test_the_way_back_never_leads_elsewhere(text):
    """Resolved as RFC 3986 has it, after dropping what the URL standard drops and turning what it turns."""
    led = safe_next(text)
    as_browsers_read_it = led.replace("\t", "").replace("\n", "").replace("\r", "").replace("\\", "/").strip()
    assert urlsplit(urljoin("https://ours.example/sign-in", as_browsers_read_it)).netloc == "ours.example"


@given(st.text(max_size=60))
def test_only_a_page_of_this_host_is_come_back_to(text):
    assert path_of(text, "ours.example").startswith("/")
    assert path_of("https://ours.example/hours?week=2026-W07", "ours.example") == "/hours?week=2026-W07"


def test_zones_are_of_places_and_can_be_used():
    assert {"Europe/London", "Asia/Calcutta", "UTC", "Etc/GMT+5"} <= zones.known()
    assert not {"localtime", "Factory", "", "Europe"} & zones.known()
    assert all(ZoneInfo(name).key == name for name in zones.offered())


@given(st.text(max_size=40))
def test_preparing_a_passphrase_twice_changes_nothing_more(text):
    once = passphrases.prepare(text)
    assert passphrases.prepare(once) == once
