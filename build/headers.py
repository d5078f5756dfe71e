"""The headers that every host of the site must send: here once, as data.

    python3 build/headers.py [--under /socks/]

prints them as a configuration file for nginx; other hosts take the same names and values.
``serve.py`` sends them too. The reasons stand beside each line.
"""

import argparse
import re
import sys
from pathlib import PurePosixPath

# The one script that stands in the page itself, webapp/page/opening.js, by its hash.
OPENING = "sha256-n7w+3aieisPv8Nu+IdvOU78JcD5D1LXw4Klqpmv0HI0="

# Everything comes from this site and nothing from elsewhere; no other inline script, no inline
# style, no eval.
# 'wasm-unsafe-eval' lets WebAssembly compile, and only that: Python runs on it.
# Trusted Types: no text becomes markup or a script's address but through lit-html's templates, the
# page's first script (which writes the second) and webapp/page/trusted.js. Each of the page's
# bundles holds lit-html and so makes its policy once more: they are loaded apart from one another.
POLICY = {
    "default-src": "'none'",
    "script-src": f"'self' 'wasm-unsafe-eval' '{OPENING}'",
    "worker-src": "'self'",
    "style-src": "'self'",
    "img-src": "'self' data:",
    "font-src": "'self'",
    "connect-src": "'self'",
    "manifest-src": "'self'",
    "base-uri": "'none'",
    "form-action": "'none'",
    "frame-ancestors": "'none'",
    "require-trusted-types-for": "'script'",
    "trusted-types": "lit-html opening gate 'allow-duplicates'",
}

# With every answer, an error's too.
ALWAYS = {
    "Content-Security-Policy": "; ".join(f"{name} {value}" for name, value in POLICY.items()),
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Vary": "Accept-Encoding",  # a store between must not give brotli to who cannot read it
}

# A file whose name holds the hash of its content never changes; anything else is asked for anew
# (a browser may keep it, but must hear from the host that it is still the one). An error is never
# kept: a script that was missing for a minute, in the middle of a deploy, would be missing in that
# browser for a year.
HASHED = r"/(assets|pyodide-[^/]+)/|/(engine|snapshot)-[^/]+\.(zip|bin)$"
FOR_EVER = "public, max-age=31536000, immutable"
ASK_FIRST = "no-cache"
NEVER = "no-store"
# The whole file, a part of it, and "you have it": the answers that say what a file is.
GOOD = (200, 206, 304)

# Types that hosts get wrong. With a wrong one for .wasm or .mjs a browser refuses the file. JSON,
# a manifest and an SVG are UTF-8 by their own rules (RFC 8259, W3C, XML 1.0); text is not.
TYPES = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".mjs": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".webmanifest": "application/manifest+json",
    ".wasm": "application/wasm",
    ".zip": "application/zip",
    ".bin": "application/octet-stream",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".png": "image/png",
}
OTHER = "application/octet-stream"
# Nothing is gained by compressing these once more.
PACKED = (".png",)


def headers_for(path: str, status: int = 200) -> dict[str, str]:
    """All headers of an answer with this status to `path` (from the site's folder, leading slash).

    An error's own type is left to the server, which writes its words.
    """
    headers = dict(ALWAYS)
    if status not in GOOD:
        return headers | {"Cache-Control": NEVER}
    headers["Cache-Control"] = FOR_EVER if re.search(HASHED, path) else ASK_FIRST
    suffix = PurePosixPath(path).suffix if not path.endswith("/") else ".html"
    return headers | {"Content-Type": TYPES.get(suffix, OTHER)}


def nginx(under: str = "/") -> str:
    """A configuration file for nginx that serves the site with these headers at the path `under`.

    `under` begins and ends with a slash. The files then lie in the same path below `root`.
    """
    bare = {name[1:]: kind.split(";")[0] for name, kind in TYPES.items()}
    types = "\n".join(f"            {kind} {name};" for name, kind in bare.items())
    # nginx compresses text/html, and gives it a charset, whatever is listed.
    text = sorted({kind.split(";")[0] for kind in TYPES.values() if ";" in kind} - {"text/html"})
    shrinks = sorted({bare[name[1:]] for name in TYPES if name not in PACKED} - {"text/html"})
    always = "\n".join(
        f'        add_header {name} "{value}" always;' for name, value in ALWAYS.items()
    )
    place = "a copy of dist/" if under == "/" else f"a copy of dist/ is {under[1:-1]} in it"
    lead_in = f"    location = {under[:-1]} {{\n        return 301 {under};\n    }}\n"
    return f"""\
map $uri $heelwise_kept {{
    default "{ASK_FIRST}";
    "~{HASHED}" "{FOR_EVER}";
}}
map $status $heelwise_cache {{
    volatile;  # the answer may become an error after this was asked once
    default "{NEVER}";  # an error may be mended in a minute
    "~^({"|".join(map(str, GOOD))})$" $heelwise_kept;
}}
server {{
    listen 80;  # phones store the site only when it comes by https: add its certificate here
    root /srv/heelwise;  # {place}
    absolute_redirect off;
{lead_in if under != "/" else ""}\
    location ^~ {under} {{
        try_files $uri ${{uri}}index.html =404;
        charset utf-8;
        charset_types {" ".join(text)};
        default_type {OTHER};
        types {{
{types}
        }}
        gzip on;
        gzip_static on;  # what build/precompress.mjs made
        # brotli_static on;  # the same, smaller, where nginx has that module
        gzip_types {" ".join(shrinks)};
{always}
        add_header Cache-Control $heelwise_cache always;
        location ~ /\\. {{
            return 404;
        }}
    }}
}}"""


def _path(text: str) -> str:
    if not re.fullmatch(r"/([\w.~-]+/)*", text):
        raise argparse.ArgumentTypeError("a path begins and ends with a slash, like /socks/")
    return text


def main() -> int:
    """Prints the file."""
    parser = argparse.ArgumentParser(
        prog="python3 build/headers.py",
        description="Print a configuration file for nginx that sends all the site's headers.",
    )
    parser.add_argument(
        "--under", type=_path, default="/", metavar="PATH", help="the site's sub-folder: /socks/"
    )
    print(nginx(parser.parse_args().under))
    return 0


if __name__ == "__main__":
    sys.exit(main())
