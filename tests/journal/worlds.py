"""Small worlds of entries, crowded on purpose: few places, few moments, few acts, so that all collides."""

from typing import Any

from hypothesis import strategies as st

PROJECT = "00000000-0000-4000-8000-000000000000"


def uuid(number: int) -> str:
    return f"00000000-0000-7000-8000-{number:012d}"


ids = st.integers(1, 150).map(uuid)
acts = st.integers(900, 903).map(uuid)
moments = st.integers(0, 25).map(lambda n: f"2026-02-03T20:{n:02d}:00.000Z")
places = st.one_of(
    st.fixed_dictionaries({"row": st.integers(1, 5)}),
    st.fixed_dictionaries({"block": st.lists(st.integers(1, 3), min_size=2, max_size=2)}),
)
by = st.integers(-5, 9).filter(bool)
plans = st.fixed_dictionaries(
    {
        "width": st.integers(1, 30),
        "height": st.integers(1, 30),
        "direction": st.sampled_from(["top", "bottom", "middle"]),
        "first_row": st.integers(1, 30),
        "block_from": st.sampled_from(["top-left", "top-right", "bottom-left", "bottom-right", "middle"]),
        "block_way": st.sampled_from(["across", "down"]),
    }
)


def kind(name: str, **fields: Any) -> Any:
    return st.fixed_dictionaries({"kind": st.just(name), **fields})


def with_place(entries: Any) -> Any:
    """At a row or a block of the crosses, or of another pass with or without the place."""
    crosses = st.builds(lambda e, p: e | p, entries, places)
    others = st.builds(
        lambda e, p, name: e | p | {"pass": name},
        entries,
        places | st.just({}),
        st.sampled_from(["back", "knot"]),
    )
    return crosses | others


bodies = st.one_of(
    with_place(kind("stitches", by=by)),
    with_place(
        kind(
            "stitches",
            by=by,
            thread=st.sampled_from(["sea green", "walnut"]),
            why=st.sampled_from(["stitched", "unpicked", "before", "corrected"]),
        )
    ),
    with_place(kind("done", done=st.booleans())),
    kind("bare", row=st.integers(1, 5), by=by),
    kind("start", row=st.integers(1, 5), column=st.integers(1, 30), way=st.sampled_from(["right", "left"])),
    kind("begin"),
    kind("end", sitting=ids),
    kind("end", sitting=ids, note=st.sampled_from(["at the mast", "at the lamp"])),
    kind(
        "amend",
        sitting=ids,
        begin=st.just("2026-02-03T19:00:00.000Z"),
        end=st.just("2026-02-03T19:30:00.000Z"),
    ),
    kind("amend", sitting=ids, struck=st.just(True)),
    kind("frame", state=st.sampled_from(["on", "slack", "off"])),
    kind("have", thread=st.sampled_from(["sea green", "walnut"]), have=st.booleans()),
)
common = st.fixed_dictionaries({"id": ids, "at": moments, "project": st.just(PROJECT)})
things = st.builds(lambda c, b, act: c | b | ({"act": act} if act else {}), common, bodies, st.none() | acts)
undos = st.builds(
    lambda c, target: c | {"kind": "undo"} | target,
    common,
    st.fixed_dictionaries({"entry": ids}) | st.fixed_dictionaries({"act": acts}),
)
entries = things | things | things | undos


def unique(found: list[dict[str, Any]]) -> list[dict[str, Any]]:
    return list({e["id"]: e for e in reversed(found)}.values())


journals = st.lists(entries, max_size=60).map(unique)
long_journals = st.lists(entries, min_size=70, max_size=120).map(unique)


def nameable(
    before: dict[str, Any], first: list[dict[str, Any]], second: list[dict[str, Any]]
) -> list[dict[str, Any]]:
    """Keep what is new, and of the undos those a phone may go on with: they name the tail, or what is new."""
    second = [e for e in second if e["id"] not in {f["id"] for f in first}]
    tail = {e["id"] for e in before["tail"]}
    names = tail | {e["id"] for e in second}
    beyond = {e.get("act") for e in first if e["kind"] != "undo" and e["id"] not in tail}
    return [
        e
        for e in second
        if e["kind"] != "undo" or e.get("entry") in names or e.get("act", None) not in beyond | {None}
    ]
