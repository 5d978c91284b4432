"""How far a project is."""

from types import SimpleNamespace

import pytest

from webapp.projects.progress import outside, progress

DONE, UNTOUCHED = {"stitches": 10, "done": True}, {"stitches": 0, "done": False}


def plan(working="rows", width=95, height=61):
    return SimpleNamespace(working=working, width=width, height=height)


@pytest.mark.parametrize(
    ("chart", "said", "share"),
    [
        (plan(), "30 of 61 rows", 30 / 61),
        (plan("blocks"), "12 of 70 blocks", 12 / 70),  # 10 across, 7 down; the last of each smaller
        (plan("blocks", 9, 9), "1 of 1 block", 1.0),
        (plan("rows", 9, 1), "1 of 1 row", 1.0),
    ],
)
def test_progress_is_in_the_places_she_works_by(chart, said, share):
    far = progress(chart, rows_done=30, blocks_done=12)
    assert str(far) == said
    assert far.share == pytest.approx(share)


def test_nothing_is_said_while_all_work_is_inside():
    assert outside(plan(), {"61": DONE, "62": UNTOUCHED}, {"10.7": DONE, "11.1": UNTOUCHED}) is None


@pytest.mark.parametrize(
    ("rows", "blocks", "said"),
    [
        (["62"], [], "1 row you worked lies outside this size. It is kept"),
        (["62", "63"], [], "2 rows you worked lie outside this size. They are kept"),
        ([], ["11.1", "1.8"], "2 blocks you worked lie outside"),
        (["62"], ["11.1"], "1 row and 1 block you worked lie outside"),
    ],
)
def test_work_outside_the_size_is_told_and_kept(rows, blocks, said):
    sentence = outside(plan(), dict.fromkeys(rows, DONE), dict.fromkeys(blocks, DONE))
    assert sentence is not None
    assert sentence.startswith(said)
