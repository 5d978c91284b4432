"""A stitcher who stopped twenty days ago, as the journeys of her coming back begin."""

from tests.browser.phones import OURS
from tests.hours.test_pictures import picture
from tests.stitching.conftest import ago

SITTING = "00000000-0000-7000-8000-00000000000a"


def away(her, line="The lamp post, second thread"):
    """Let her have stopped twenty days ago, with a line and a photograph."""
    entries = [
        {"kind": "begin", "id": SITTING, "at": ago(days=20, minutes=9)},
        {"kind": "stitches", "row": 37, "by": 52, "at": ago(days=20, minutes=5)},
        {"kind": "end", "sitting": SITTING, "note": line, "at": ago(days=20)},
    ]
    whole = [
        {"id": f"00000000-0000-7000-8000-0000000000b{n}", "project": her.project, **e}
        for n, e in enumerate(entries)
    ]
    whole[0]["id"] = SITTING
    answer = her.context.request.post(
        f"{her.url}/journal", data={"sent_at": ago(), "entries": whole}, headers=OURS
    )
    assert answer.json()["refused"] == []
    file = {"name": "work.jpg", "mimeType": "image/jpeg", "buffer": picture(size=(640, 480))}
    form = {"once": "00000000-0000-7000-8000-00000000000c", "line": line, "photograph": file}
    her.context.request.post(f"{her.url}/projects/{her.project}/photographs", multipart=form, headers=OURS)
