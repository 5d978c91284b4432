"""Print every figure that is claimed: ``python -m tests.bench [name …]``."""

import importlib
import sys

PARTS = ("weight", "tap", "journal", "gauge", "size", "thread", "nights", "finish", "hours")


def main(names: list[str]) -> None:
    for name in names or PARTS:
        for line in importlib.import_module(f"tests.bench.{name}").figures():
            print(line, flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
