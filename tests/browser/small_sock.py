"""An invented sock, small enough to knit in a test, with every kind of step a sock has."""

from typing import Any

Step = dict[str, Any]


def _step(part: str, kind: str, **more: Any) -> Step:
    text = f"{part} {kind} {more}"
    return {"part": part, "title": part.capitalize(), "kind": kind, "text": text, **more}


def _pocket(part: str, rows: int) -> list[Step]:
    walk = [_step(part, "row", row=n, rows=rows) for n in range(1, rows + 1)]
    return [_step(part, "do"), *walk, _step(part, "do")]


def knit(foot: int = 12, cuff: int = 8) -> dict[str, Any]:
    """Steps as the engine gives them; the leg has three bands, the foot `foot` rounds."""
    return {
        "slots": 8,
        "words": f"foot {foot}",
        "foot_rounds": foot,
        "steps": [
            _step("waste", "do"),
            _step("waste", "rounds", rounds=3),
            _step("cuff", "do"),
            _step("cuff", "rounds", rounds=cuff),
            _step("cuff", "do"),
            _step("leg", "rounds", rounds=5),
            _step("leg", "do"),
            _step("leg", "rounds", rounds=1),
            _step("leg", "do"),
            _step("leg", "rounds", rounds=4),
            *_pocket("heel", 6),
            _step("foot", "rounds", rounds=foot),
            *_pocket("toe", 4),
            _step("finish", "do"),
            _step("finish", "rounds", rounds=3),
            _step("finish", "do"),
        ],
    }


def session(name: str = "one") -> dict[str, Any]:
    """A pair of it, just begun."""
    pair = [knit(), knit()]
    return {"id": name, "began": 1, "label": "Invented", "request": {"units": "cm"}, "socks": pair}
