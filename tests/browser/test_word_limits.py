"""How many words a screen has: a form that is read through is a form that is not filled in.

At most 120 on each of the first two steps with nothing filled in and 200 beside the counts, every
fold closed; a paragraph outside of folds has 25 at most. Common practice, no published source.
"""

from __future__ import annotations

from playwright.sync_api import BrowserContext, Page

from tests.browser.walk import figures, fill_foot, opened, step

VISIBLE = """() => {
  const seen = (e) => e.checkVisibility({ visibilityProperty: true }) && !e.closest(".said");
  const texts = [];
  const over = [...document.querySelectorAll("dialog:modal")].at(-1);
  const walker = document.createTreeWalker(over ?? document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const e = node.parentElement;
    if (e && !e.closest("script, style, noscript") && seen(e)) texts.push(node.data);
  }
  const long = [...document.querySelectorAll("p, li, dd")].filter(seen)
    .map((e) => e.innerText).filter((text) => text.split(/\\s+/).length > 25);
  return [texts.join(" ").split(/\\s+/).filter(Boolean).length, long];
}"""


def words(page: Page) -> tuple[int, list[str]]:
    """How many are seen, and the paragraphs that are too long."""
    page.wait_for_timeout(300)
    many, long = page.evaluate(VISIBLE)
    return many, long


def test_few_words_on_each_step(phone: BrowserContext) -> None:
    page = opened(phone)
    found = {"measure": words(page)}
    step(page, "yarn")
    found["yarn"] = words(page)
    fill_foot(page)
    page.locator(":focus").blur()
    step(page, "counts")
    figures(page)
    found["counts"] = words(page)
    assert [name for name, (_, long) in found.items() if long] == [], found
    for name, most in (("measure", 120), ("yarn", 120), ("counts", 200)):
        assert 40 < found[name][0] <= most, (name, found[name][0])
