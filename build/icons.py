"""Draw webapp/icons/*.png from icon.svg, by Chromium. Run once after a change of the drawing:

    python3 build/icons.py

The PNGs are kept in the repository, so that building the site needs no browser.
"""

import argparse
import os
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.CHECK, __doc__)

from playwright.sync_api import sync_playwright

from build import chromium

ICONS = Path(__file__).resolve().parents[1] / "webapp" / "icons"
WOOL = "#f4eee1"
# name -> (pixels, how much of them the drawing takes, ground). A maskable icon may be cut to a
# circle of 80 % of its width (the W3C's manifest text); Apple's icon may not be see-through.
PICTURES = {
    "180.png": (180, 1.0, WOOL),
    "192.png": (192, 1.0, "transparent"),
    "512.png": (512, 1.0, "transparent"),
    "maskable-512.png": (512, 0.86, WOOL),
}


def main() -> None:
    """Draws all of them."""
    argparse.ArgumentParser(prog="python3 build/icons.py", description=__doc__).parse_args()
    found = chromium.find()
    if found is None:
        raise SystemExit("No Chromium here: python3 build/chromium.py gets one.")
    drawing = (ICONS / "icon.svg").read_text(encoding="utf-8")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=str(found.executable),
            args=found.arguments,
            env={**os.environ, **found.variables},
        )
        for name, (pixels, share, ground) in PICTURES.items():
            page = browser.new_page(viewport={"width": pixels, "height": pixels})
            page.set_content(
                f"<style>body{{margin:0;display:grid;place-items:center;height:100vh;"
                f"background:{ground}}}svg{{width:{share:%}}}</style>{drawing}"
            )
            page.screenshot(path=ICONS / name, omit_background=True)
            page.close()
        browser.close()


if __name__ == "__main__":
    main()
