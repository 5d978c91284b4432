import pytest

from webapp.reminders.bedtime import Held
from webapp.reminders.wording import letter, notice

HOOP = (Held("a", "Moth", "hoop", "on", None), "off")
CLAMPS = (Held("b", "Sampler", "clamps", "on", None), "off")
SCROLL = (Held("c", "Quince tree", "scroll", "on", None), "slack")
NIGHT = "2026-02-13"


@pytest.mark.parametrize(
    ("works", "is_named", "title", "done"),
    [
        ([HOOP], False, "Your work is still on its frame.", "It is off"),
        ([HOOP], True, "Moth is still on the hoop.", "It is off"),
        ([CLAMPS], True, "Sampler is still in clamps, which can lie on stitches.", "It is off"),
        ([SCROLL], False, "Your work is still tight on its frame.", "It is slack"),
        ([SCROLL], True, "Quince tree is still tight on the scroll frame.", "It is slack"),
        ([CLAMPS, HOOP, SCROLL], True, "3 works are still on their frames.", ""),
    ],
)
def test_a_notification_says_what_is_held_and_how(works, is_named, title, done):
    said = notice(tuple(works), "bedtime", NIGHT, is_named)
    assert (said["title"], said["done"]) == (title, done)
    assert said["tag"] == "night-2026-02-13"
    of_one = f"&work={works[0][0].project}" if len(works) == 1 else ""
    assert said["open"].endswith(f"?night=2026-02-13{of_one}")


def test_it_asks_for_what_the_frame_needs():
    bodies = [notice((one,), "bedtime", NIGHT, False)["body"] for one in (HOOP, SCROLL)]
    assert bodies == ["Take it off for the night.", "Slacken it for the night."]
    assert "night" not in notice((HOOP,), "hours", NIGHT, False)["body"]


def test_a_letter_names_each_work_only_if_she_wants_it():
    assert letter((HOOP, SCROLL), False)[1] == "2 works are still on their frames."
    assert letter((HOOP, SCROLL), True)[1].splitlines() == [
        "Moth is still on the hoop. Take it off for the night.",
        "Quince tree is still tight on the scroll frame. Slacken it for the night.",
    ]
