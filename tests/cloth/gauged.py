"""What the tests of the gauge's pages share."""


def ask(client, counted, length, kind="squares", part="", unit="in"):
    query = {"kind": kind, "counted": counted, "length": length, "part": part, "way": "along", "unit": unit}
    return client.get("/cloth/gauge", query_string=query)
