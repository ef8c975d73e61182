"""Prints the checks of the demo as JSON, for tests that read no YAML."""

import json

from footward.file import items, read_file
from serving import DATA

if __name__ == "__main__":
    print(json.dumps([i for f in sorted(DATA.glob("demo/*.yaml")) for i in items(read_file(f))]))
