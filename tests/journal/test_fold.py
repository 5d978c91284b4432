"""The fold against its vectors, and against its own laws."""

import json
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.journal import worlds
from webapp.journal.fold import advance, fold
from webapp.journal.whole import snapshot
from webapp.places import SHARED

VECTORS = json.loads((SHARED / "vectors" / "fold.json").read_text())
SHOWN = tuple(fold({}, []))


@pytest.mark.parametrize("case", VECTORS, ids=lambda case: case["description"])
def test_the_fold_gives_what_the_vectors_say(case):
    plan = {key: value for key, value in case["given"].items() if key != "entries"}
    view = fold(plan, case["given"]["entries"])
    view["sitting"] = view["sitting"] and view["sitting"]["id"]
    assert {key: view[key] for key in case["expect"]} == case["expect"]


@given(worlds.plans, worlds.journals, st.randoms(use_true_random=False))
def test_any_order_of_arrival_gives_the_same_snapshot(plan, journal, shuffler: random.Random):
    other = journal[:]
    shuffler.shuffle(other)
    assert snapshot(plan, other) == snapshot(plan, journal)


@given(worlds.plans, worlds.journals)
def test_entries_that_come_twice_count_once(plan, journal):
    assert fold(plan, journal + journal) == fold(plan, journal)


@settings(max_examples=150)
@given(worlds.plans, worlds.journals | worlds.long_journals, worlds.journals)
def test_going_on_from_a_snapshot_is_the_same_as_folding_all(plan, first, second):
    before = snapshot(plan, first)
    second = worlds.nameable(before, first, second)
    assert advance(before, second) == fold(plan, first + second)


def test_a_tail_holds_fifty_entries_and_the_whole_of_the_last_act():
    laid = [entry(n, "stitches", row=1, by=1) for n in range(1, 41)]
    act = [entry(n, "stitches", row=2, by=1, act=worlds.uuid(900)) for n in range(41, 121)]
    assert len(snapshot({}, laid + act[:5])["tail"]) == 45
    assert [e["id"] for e in snapshot({}, laid + act)["tail"]] == [e["id"] for e in act]


def test_an_act_that_reaches_beyond_the_tail_is_said_to():
    act = worlds.uuid(900)
    journal = [entry(1, "stitches", row=1, by=1, act=act), *(entry(n, "begin") for n in range(2, 51))]
    assert snapshot({}, [*journal, entry(51, "stitches", row=1, by=1)])["partial"] == []
    journal.append(entry(51, "stitches", row=1, by=1, act=act))
    assert snapshot({}, [*journal, entry(52, "begin")])["partial"] == [act]


def entry(number, kind, **fields):
    at = f"2026-02-03T20:{number // 60:02d}:{number % 60:02d}.000Z"
    return {"id": worlds.uuid(number), "kind": kind, "at": at, "project": worlds.PROJECT, **fields}
