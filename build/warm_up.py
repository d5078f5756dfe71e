"""Bring the phone's Python to where it can answer at once, and make it fit to be written down.

This file runs inside Pyodide (``memory_snapshot.mjs`` starts it there). Whatever is imported,
worked out and kept here is there when a phone starts from the snapshot; the archives that it came
from are not.
"""

import gc
import importlib.metadata
import json
import sys
from typing import Any

FABRIC = {"stitches": "7.5 / in", "rounds": "38 / 10 cm", "yarn": "400 m / 100 g"}
FOOT = {"length": "24.6 cm", "ball_girth": '9 1/4"', "ankle_girth": None}
PERSON = {"sex": "woman", "shoe_size": {"system": "EU", "size": "39"}, "height": "168 cm"}


def calls() -> list[dict[str, Any]]:
    """A call at each door: each cuff, the first in both units, what a page asks, a refusal.

    Python also gets quicker where it has been before (PEP 659), and a snapshot keeps that. What a
    call leaves in the engine's caches is kept too, so no more calls than ways there are.
    """
    from engine.sections.registry import CUFFS

    usual, *others = CUFFS
    ways = [(usual, "in", "60"), (usual, "cm", 72), (usual, "cm", 54)]
    ways += [(kind, "cm", 72) for kind in others]
    pages = [
        {
            "do": "page",
            "request": {
                "units": unit,
                "foot": FOOT,
                "person": PERSON,
                "cylinder": {"slots": slots},
                "fabric": FABRIC,
                "sock": {"cuff": {"kind": kind}},
            },
        }
        for kind, unit, slots in ways
    ]
    read = {"do": "read", "fields": {"foot.length": "24,6", "foot.ball_girth": "9 in"}}
    return [
        *pages,
        *({"do": "plan", "request": page["request"]} for page in pages),
        {"do": "knit", "request": pages[0]["request"]},
        *({**read, "units": unit} for unit in ("in", "cm", "cm")),
        {"do": "page", "request": {"foot": {"length": "12 kg"}, "cylinder": {"slots": 7}}},
        {"do": "code", "text": "https://a.example/#1.A"},
        {"do": "open", "link": "#1.nonsense"},
    ]


def warm_up(archive: str) -> None:
    """Import the engine from `archive`, have it answer, and leave nothing open behind."""
    sys.path.insert(0, archive)
    from engine.api import answer_text

    for call in calls():
        answer = json.loads(answer_text(json.dumps(call)))
        if call["do"] == "open" and "errors" not in answer:
            raise ValueError("a link of nonsense was opened")
        if "link" in answer:
            answer_text(json.dumps({"do": "open", "link": "#" + answer["link"]}))
    sys.path.remove(archive)
    sys.path_importer_cache.clear()
    importlib.metadata.MetadataPathFinder.invalidate_caches()  # it keeps the archive open
    importlib.invalidate_caches()
    gc.collect()
    gc.freeze()  # nothing of it will ever be garbage: no use in looking through it again
