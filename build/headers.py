"""The headers that every host of the site must send: here once, as data.

``serve.py`` sends them. ``python build/headers.py`` prints them as a block for nginx; other hosts
take the same names and values. The reasons stand beside each line.
"""

import re
from pathlib import PurePosixPath

# The one script that stands in the page itself, webapp/page/opening.js, by its hash.
OPENING = "sha256-fNRp5s0EmXV24VUVMK0xLsEXTPjitPrTCTN7FsY12aI="

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

ALWAYS = {
    "Content-Security-Policy": "; ".join(f"{name} {value}" for name, value in POLICY.items()),
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
    "Cross-Origin-Opener-Policy": "same-origin",
}

# A file whose name holds the hash of its content never changes; anything else is asked for anew
# (a browser may keep it, but must hear from the host that it is still the one).
HASHED = r"/(assets|pyodide-[^/]+)/|/(engine|snapshot)-[^/]+\.(zip|bin)$"
FOR_EVER = "public, max-age=31536000, immutable"
ASK_FIRST = "no-cache"

# Types that hosts get wrong. With a wrong one for .wasm or .mjs a browser refuses the file.
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


def headers_for(path: str) -> dict[str, str]:
    """All headers for the file at `path` (from the site's folder, with its leading slash)."""
    headers = dict(ALWAYS)
    headers["Cache-Control"] = FOR_EVER if re.search(HASHED, path) else ASK_FIRST
    kind = TYPES.get(PurePosixPath(path).suffix if not path.endswith("/") else ".html")
    if kind:
        headers["Content-Type"] = kind
    return headers


def nginx() -> str:
    """A whole configuration file for nginx that serves the site with these headers."""
    types = "\n".join(f"        {kind.split(';')[0]} {name[1:]};" for name, kind in TYPES.items())
    always = "\n".join(f'    add_header {name} "{value}" always;' for name, value in ALWAYS.items())
    return f"""\
map $uri $heelwise_cache {{
    default "{ASK_FIRST}";
    "~{HASHED}" "{FOR_EVER}";
}}
server {{
    listen 80;  # phones store the site only when it comes by https: add its certificate here
    root /srv/heelwise;  # a copy of dist/
    index index.html;
    charset utf-8;
    charset_types text/css text/javascript;
    types {{
{types}
    }}
    gzip on;
    gzip_types text/css text/javascript application/wasm application/octet-stream image/svg+xml;
{always}
    add_header Cache-Control $heelwise_cache always;
    location ~ /\\. {{
        return 404;
    }}
}}"""


if __name__ == "__main__":
    print(nginx())
