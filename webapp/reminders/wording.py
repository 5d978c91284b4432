"""What a reminder says, on a lock screen and in a letter. Pure."""

from typing import Any

from webapp.reminders.schedule import Works

HELD = {
    "clamps": "is still in clamps, which can lie on stitches",
    "hoop": "is still on the hoop",
    "scroll": "is still tight on the scroll frame",
}
ASKED = {"off": "Take it off for the night.", "slack": "Slacken it for the night."}
DONE = {"off": "It is off", "slack": "It is slack"}
TONIGHT = "/shell/tonight"


def tag(night: object) -> str:
    """Name what stands on a phone for a night: a second one takes the place of the first."""
    return f"night-{night}"


def notice(works: Works, kind: str, night: object, show_title: bool) -> dict[str, Any]:
    """Write the notification: of what it is, only if she wants that said on a screen that others read too."""
    asks = {ask for _, ask in works}
    ask = "off" if "off" in asks else "slack"
    named = works[0][0] if show_title and len(works) == 1 else None
    of_one = f"&work={works[0][0].project}" if len(works) == 1 else ""  # whose button it is
    title = f"{named.title} {HELD[named.kind]}." if named else _title(works, ask)
    return {
        "title": title,
        "body": "It has been on for hours: give the cloth a rest." if kind == "hours" else ASKED[ask],
        "tag": tag(night),
        "open": f"{TONIGHT}?night={night}{of_one}",
        "done": DONE[ask] if len(works) == 1 else "",
    }


def _title(works: Works, ask: str) -> str:
    if len(works) > 1:
        return f"{len(works)} works are still on their frames."
    return "Your work is still on its frame." if ask == "off" else "Your work is still tight on its frame."


def letter(works: Works, show_title: bool) -> tuple[str, str]:
    """Write the reminder as an e-mail: its subject, and what it says."""
    subject = "Still on the frame"
    if not show_title:
        return subject, _title(works, "off" if any(ask == "off" for _, ask in works) else "slack")
    lines = [f"{one.title} {HELD[one.kind]}. {ASKED[ask]}" for one, ask in works]
    return subject, "\n".join(lines)
