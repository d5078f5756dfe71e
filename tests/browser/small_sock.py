"""An invented sock, small enough to knit in a test, with every kind of step a sock has."""

from typing import Any

Step = dict[str, Any]


def _step(part: str, kind: str, **more: Any) -> Step:
    text = f"{part} {kind} {more}"
    return {"part": part, "title": part.capitalize(), "kind": kind, "text": text, **more}


def _row(part: str, row: int, rows: int) -> Step:
    """Out to 4 needles less and back, as far as `rows` go; one needle a row."""
    right, narrow = row % 2 == 1, row <= rows / 2
    return _step(
        part,
        "row",
        row=row,
        direction="right" if right else "left",
        half="narrow" if narrow else "widen",
        back=None if narrow else row,
        back_where=None,
        knits=[1, 4],
        hold=row if narrow else None,
        hold_where=None,
        in_work=4,
        remind=[],
    )


def _pocket(part: str, rows: int) -> list[Step]:
    walk = [_row(part, row, rows) for row in range(1, rows + 1)]
    return [_step(part, "do"), *walk, _step(part, "do")]


def knit(foot: int = 12, cuff: int = 8) -> dict[str, Any]:
    """Steps as the engine gives them; the leg has three bands, the foot `foot` rounds."""
    return {
        "slots": 8,
        "words": f"foot {foot}",
        "foot_rounds": foot,
        "pockets": {
            name: {"needles": 4, "first_slot": 1, "left": 2, "rows": rows}
            for name, rows in (("heel", 6), ("toe", 4))
        },
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
