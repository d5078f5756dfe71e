"""Python on the phone and Python here give the same answer, and both say it alike.

The outside authority is CPython itself: the version that runs the tests, with the machine's own C
library, against Pyodide's in WebAssembly, with another one.
"""

import json
import os
import random
from typing import Any

import pytest
from playwright.sync_api import BrowserContext

from engine.answers import contract
from tests.asking import answer_text

pytestmark = pytest.mark.pyodide

CALLS = int(os.environ.get("HEELWISE_CALLS", "200"))  # 5,000 in build/same_answers.py
LENGTHS = {"length": (150, 330), "ball_girth": (150, 300), "heel_girth": (220, 400)} | {
    "ankle_girth": (160, 320),
    "calf_girth": (250, 500),
}
NONSENSE: list[Any] = [
    "",
    "abc",
    "-3 cm",
    "1e999",
    "nan",
    "9 3/0 in",
    "24,6,8",
    "∞",
    "12 kg",
    "0",
    None,
    [],
    {},
]
# Calls without a request: most are wrong as a whole.
WRONG = [
    "",
    "[",
    "null",
    "[1]",
    '{"do": "fly"}',
    '{"do": "plan"}',
    '{"do": "code"}',
    '{"do": "code", "text": "https://a.example/#1.AbCdEfGhIjKl"}',
    '{"do": "open", "link": "#1.zz"}',
]


def as_typed(mm: float, chance: random.Random) -> str:
    """A length as some person would type it."""
    whole, eighths = divmod(round(mm / 25.4 * 8), 8)
    return chance.choice(
        [
            f"{mm / 10:.1f} cm",
            f"{mm / 10:.1f}".replace(".", ",") + "cm",
            f"{mm:.0f} mm",
            f"{mm / 25.4:.3f} in",
            f"{whole} {eighths}/8 in",
            f'{mm / 25.4:.2f}"',
            f"{whole}" + "\u2070⅛¼⅜½⅝¾⅞"[eighths].replace("\u2070", "") + '"',
            f" {mm / 10:.1f}  CM",
        ]
    )


def fabric(chance: random.Random) -> dict[str, Any]:
    """What may be known of a fabric."""
    stitches, rounds = chance.uniform(0.2, 0.45), chance.uniform(0.25, 0.6)  # per mm
    needles, over = chance.choice([54, 60, 72]), chance.randint(20, 80)
    known: dict[str, Any] = chance.choice(
        [
            {"stitches": f"{stitches * 25.4:.2f} / in", "rounds": f"{rounds * 25.4:.1f} / in"},
            {"stitches": f"{stitches * 100:.0f} st / 10 cm", "rounds": f"{rounds * 100:.0f}/10cm"},
            {
                "swatch": {
                    "needles": needles,
                    "flat_width": as_typed(needles / stitches / 2, chance),
                    "rounds": over,
                    "length": as_typed(over / rounds, chance),
                }
            },
            {},
        ]
    )
    if not known or chance.random() < 0.3:
        yarns = ["400 m / 100 g", "238 tex", "Nm 4.2", "2150 yd/lb", "Ne 6", "75 wpi"]
        known["yarn"] = chance.choice(yarns)
    return known


def plan_request(chance: random.Random) -> dict[str, Any]:
    """A request from sensible to odd, with a fifth of them spoilt somewhere."""

    def sometimes(likelihood: float, value: Any) -> Any:
        return value if chance.random() < likelihood else None

    size = chance.uniform(-0.1, 1.1)  # feet are all large or all small, mostly
    foot = {
        name: sometimes(0.6, as_typed(low + (high - low) * size, chance))
        for name, (low, high) in LENGTHS.items()
    }
    system = chance.choice(["EU", "UK", "US men", "US women", "Mondopoint", "Japan", "EU child"])
    person = {
        "sex": chance.choice(["woman", "man", None]),
        "height": sometimes(0.3, chance.choice(["168 cm", "5 ft 6 in", "1,75 m"])),
        "weight": sometimes(0.3, chance.choice(["60 kg", "132 lb", "11 st 4 lb"])),
        "age": sometimes(0.3, chance.randint(1, 90)),
        "shoe_size": sometimes(0.3, {"system": system, "size": str(chance.randint(1, 48))}),
    }
    kind = chance.choice(["hem", "rib", "mock rib"])
    half = chance.choice([24, 27, 30, 36, 40])
    sock = {
        "cuff": sometimes(0.5, {"kind": kind, "rounds": chance.randint(1, 60), "every": 4}),
        "leg": sometimes(0.5, {"rounds": chance.randint(0, 120)}),
        "heel": sometimes(0.3, {"needles": half, "left": chance.randint(4, 20)}),
        "toe": sometimes(0.3, {"needles": half, "left": sometimes(0.5, 10)}),
        "length_ease": sometimes(0.3, chance.choice([0, 0.02, "4 %", 0.1])),
        "foot_length_of_sock": sometimes(0.2, as_typed(240, chance)),
    }
    request: dict[str, Any] = {
        "units": chance.choice(["in", "cm"]),
        "foot": foot,
        "person": sometimes(0.6, person),
        "cylinder": {"slots": chance.choice([48, 54, 60, 64, 72, 80, 84, 96, 100, "72"])},
        "fabric": fabric(chance),
        "sock": sometimes(0.7, {name: value for name, value in sock.items() if value is not None}),
    }
    if chance.random() < 0.2:
        part = chance.choice([request, foot, person, sock])
        part[chance.choice(sorted(part))] = chance.choice(NONSENSE)
    return request


PAIRS = [
    {"name": "a", "day": "2026-01-02", "measured": {"foot_rounds": "48", "length": "23 cm"}},
    {"name": "b", "day": "2026-02-03", "measured": {"foot_rounds": 51, "length": "9 in"}},
]
SHELF = {
    "cylinders": ["54", "60", "72"],
    "yarns": [{"name": "invented", "yarn": "400 m / 100 g", "left": "80 g"}, {"yarn": "60 tex"}],
}


def call_of(do: str, request: dict[str, Any]) -> dict[str, Any]:
    """A call of a door about one request, with what else that door asks for."""
    address = "https://heelwise.example/"
    pairs = [{**pair, "request": request} for pair in PAIRS]
    more: dict[str, dict[str, Any]] = {
        "again": {"counted": {"engine": "0.9", "figures": {"foot": "1", "toe": "30→10→30"}}},
        "used": {"shelf": SHELF},
        "card": {"text": f"{address}#1.AbCdEfGh"},
        "tag": {"text": address},
        "code": {"text": f"{address}#{json.dumps(request)}"},
        "chart": {"chart": {"by": "EU"}},
        "shelf": {"shelf": SHELF},
        "record": {"pairs": pairs},
        "knitter": {"pairs": pairs},
        "read": {
            "fields": {f"foot.{name}": value for name, value in request["foot"].items()},
            "units": request["units"],
        }
        if isinstance(request.get("foot"), dict)
        else {},
    }
    call = {"do": do, "request": request, **more.get(do, {})}
    if do == "open":
        page = json.loads(answer_text(json.dumps({"do": "page", "request": request})))
        call["link"] = "#" + page.get("link", "1.lost")
    return call


def calls() -> list[str]:
    """The calls as JSON text, of every door: the same ones in every run."""
    chance = random.Random(1906)
    texts = list(WRONG)
    while len(texts) < CALLS:
        request = plan_request(chance)
        do = chance.choice(["plan", "plan", "page", "page", *contract.DOORS])
        texts.append(json.dumps(call_of(do, request)))
    return texts


@pytest.mark.parametrize("way", ["engine from its archive", "engine from the snapshot"])
def test_phone_and_this_machine_agree(phone: BrowserContext, way: str) -> None:
    texts = calls()
    here = [json.loads(answer_text(text)) for text in texts]
    # The calls are worth making only if many can be answered, and many cannot.
    refused = sum("errors" in answer for answer in here)
    assert CALLS // 10 < refused < CALLS * 2 // 3

    page = phone.new_page()
    page.goto("")
    assert "native code" in page.evaluate("String(Worker)"), "there would be no Python in it"
    there = page.evaluate(
        """async ([texts, way]) => {
            const { worker, pyodide, engine, words, snapshot } = document.documentElement.dataset;
            const whole = (address) => new URL(address, document.baseURI).href;
            const gate = trustedTypes.createPolicy("gate", { createScriptURL: String });
            const python = new Worker(gate.createScriptURL(worker), { type: "module" });
            const next = () => new Promise((heard, failed) => {
                python.onmessage = ({ data }) => data.alive || "come" in data || heard(data);
                python.onerror = failed;
            });
            const restored = way === "engine from the snapshot";
            python.postMessage({
                pyodide: whole(pyodide),
                engine: restored ? "" : whole(engine),  // so that there is no other way
                words: whole(words),
                snapshot: "",
            });
            const module = await WebAssembly.compileStreaming(fetch(`${pyodide}pyodide.asm.wasm`));
            python.postMessage({ module });
            python.postMessage({ stored: restored });
            if (restored) {
                const memory = new Uint8Array(await (await fetch(snapshot)).arrayBuffer());
                python.postMessage({ memory });
            }
            const first = await next();
            if (!first.ready) throw new Error(JSON.stringify(first));
            const answers = [];
            for (const [id, text] of texts.entries()) {
                python.postMessage({ id, text });
                const answer = await next();
                answers.push(answer.text ?? JSON.stringify(answer));
            }
            return answers;
        }""",
        [texts, way],
    )
    for text, ours, theirs in zip(texts, here, there, strict=True):
        assert json.loads(theirs) == ours, f"differs for {text}"
