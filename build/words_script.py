"""Messages as scripts: an ES module of a bundle and language, and its types.

What the page says is exported by name. What the engine says is asked for by id, as answers hold it:
that module is one table.
"""

from __future__ import annotations

import re

from build.catalogue import LIST, NUMBER, Argument, Message, Pattern, Select, parts

_RUNTIME = """\
const $digits = /* @__PURE__ */ new Intl.NumberFormat("{language}");
const $rules = /* @__PURE__ */ new Intl.PluralRules("{language}");
const $plural = (x) => $rules.select(x);
const $and = /* @__PURE__ */ new Intl.ListFormat("{language}");
const $or = /* @__PURE__ */ new Intl.ListFormat("{language}", {{ type: "disjunction" }});
"""


_LISTS = {"LIST": "$and.format", "EITHER": "$or.format"}


def module(catalogue: dict[str, Message], language: str) -> str:
    """One ES module: a text for each message without arguments, a function for each with."""
    lines = [_RUNTIME.format(language=language)]
    if any(one.marked for one in catalogue.values()):
        lines.insert(0, 'import { html as $html } from "lit-html";\n')
    for one in catalogue.values():
        value = _script(one.pattern)
        if one.arguments:
            value = f"($) => {value}"
        elif one.marked:
            value = f"/* @__PURE__ */ (() => {value})()"
        lines.append(f"export const {one.name} = {value};\n")
    return "".join(lines)


def table(catalogue: dict[str, Message], language: str) -> str:
    """One ES module: a function for each id, given the message as an answer has it."""
    rows = [f'  "{one.id}": ($) => {_script(one.pattern)},\n' for one in catalogue.values()]
    return "".join(
        [
            _RUNTIME.format(language=language),
            "export default {\n  __proto__: null,\n",
            *rows,
            "};\n",
        ]
    )


def _script(pattern: Pattern) -> str:
    if len(pattern) == 1 and isinstance(pattern[0], Select):
        return _choice(pattern[0])
    marked = any(isinstance(part, str) and "<" in part for part in pattern)
    text = ""
    for part in pattern:
        if isinstance(part, str):
            words = part.replace("&", "&amp;") if marked else part
            text += re.sub(r"([\\`]|\$\{)", r"\\\1", words)
        elif isinstance(part, Select):
            text += f"${{{_choice(part)}}}"
        elif part.function == "NUMBER":
            text += f"${{$digits.format($.{part.name})}}"
        elif part.function == "LOWER":
            text += f"${{$.{part.name}.toLowerCase()}}"
        elif part.function == "SENTENCES":
            text += f'${{$.{part.name}.join(" ")}}'
        elif part.function in _LISTS:
            text += f"${{{_LISTS[part.function]}($.{part.name})}}"
        else:
            text += f"${{$.{part.name}}}"
    return f"{'$html' if marked else ''}`{text}`"


def _choice(select: Select) -> str:
    script = _script(dict(select.variants)[select.default])
    for key, pattern in reversed(select.variants):
        if key == select.default:
            continue
        asked = f'$.{select.name} === "{key}"'
        if select.plural:
            number = key.isdigit()
            asked = (
                f"$.{select.name} === {key}" if number else f'$plural($.{select.name}) === "{key}"'
            )
        script = f"{asked} ? {_script(pattern)} : {script}"
    return f"({script})"


_HEAD = "/** Made by build/words.py of en/{bundle}.ftl: not to be edited. */\n"


def types(bundle: str, catalogue: dict[str, Message]) -> str:
    """The module's types: ids, and what each argument may be."""
    lines = [_HEAD.format(bundle=bundle)]
    if any(one.marked for one in catalogue.values()):
        lines.append('import type { TemplateResult } from "lit-html";\n')
    for one in sorted(catalogue.values(), key=lambda one: one.name):
        result = "TemplateResult" if one.marked else "string"
        if not one.arguments:
            lines.append(f"export const {one.name}: {result};\n")
            continue
        given = "; ".join(f"{name}: {_type(one, name)}" for name in one.arguments)
        lines.append(f"export function {one.name}(given: {{ {given} }}): {result};\n")
    return "".join(lines)


def _type(message: Message, name: str) -> str:
    kinds = message.arguments[name]
    if kinds == NUMBER:
        return "number"
    if kinds == LIST:
        return "string[]"
    if kinds:
        return " | ".join(f'"{kind}"' for kind in sorted(kinds))
    small = any(
        isinstance(part, Argument) and part == Argument(name, "LOWER")
        for part in parts(message.pattern)
    )
    return "string" if small else "string | number"
