"""How a person leafs through the book of wearers, and what the phone holds of it."""

import json
from typing import Any

from playwright.sync_api import BrowserContext, Locator, Page, expect

from tests.browser.pseudo import said
from tests.browser.walk import field, opened

HELD = """async () => {
  const all = await indexedDB.databases(); // asked for by its name it would be made, and be empty
  if (!all.some(({ name }) => name === "heelwise.book")) return {};
  const database = await new Promise((done, fail) => {
    const asked = indexedDB.open("heelwise.book");
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
  });
  const held = {};
  for (const name of database.objectStoreNames) {
    const got = database.transaction(name).objectStore(name).getAll();
    await new Promise((done) => { got.onsuccess = done; });
    held[name] = got.result;
  }
  database.close();
  return held;
}"""
PUT = """async (entries) => {
  const database = await new Promise((done, fail) => {
    const asked = indexedDB.open("heelwise.book");
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
  });
  const writing = database.transaction(["wearers", "visits"], "readwrite");
  for (const [name, all] of Object.entries(entries)) {
    for (const one of all) writing.objectStore(name).put(one);
  }
  await new Promise((done, fail) => { writing.oncomplete = done; writing.onerror = fail; });
  database.close();
}"""


def open_book(page: Page) -> None:
    """From the page's head to the list."""
    page.locator(".head [data-book=list]").tap()
    expect(page.locator("#book h2")).to_contain_text(said("Wearers"))


def new_wearer(page: Page, label: str, length: str = "") -> None:
    """From the list to the foot of somebody new, and its length typed."""
    page.get_by_role("button", name=said("New wearer")).tap()
    page.locator("#new-label").fill(label)
    page.locator("#begin-wearer").tap()
    expect(page.locator("#visit-line")).to_contain_text(said("Saved in the book"))
    if length:
        field(page, "foot.length").fill(length)


def back_to_book(page: Page) -> None:
    """From a wearer's sheet to the list."""
    page.locator(".head [data-book=list]").tap()
    expect(page.locator("#book h2")).to_contain_text(said("Wearers"))


def card(page: Page, label: str) -> None:
    """From the list to one wearer's page."""
    page.locator(".wearers a", has_text=label).tap()
    expect(page.locator("#book h2")).to_have_text(label)
    whole_card(page)


def whole_card(page: Page) -> None:
    """Have all of a wearer's page shown: every field, how far the pair is, and the next visit."""
    page.locator("#add-more").tap()
    for part in (".states", ".again"):
        page.locator(f"{part} > summary").tap()


def next_of(page: Page) -> Locator:
    """What the list says is next to do."""
    return page.locator(".wearers .to-do")


def labels(page: Page) -> list[str]:
    """Labels in the order of the list."""
    return page.locator(".wearers .label").all_text_contents()


def held(page: Page) -> dict[str, list[dict[str, Any]]]:
    """All that the phone's database of the book holds, by store."""
    found: dict[str, list[dict[str, Any]]] = page.evaluate(HELD)
    return found


def all_of_storage(page: Page) -> str:
    """Everything the site keeps on the phone, as one text to look for traces in."""
    local = page.evaluate("JSON.stringify({...localStorage})")
    typed = page.evaluate(HELD.replace("heelwise.book", "heelwise.typed"))
    return json.dumps([held(page), typed], ensure_ascii=False) + str(local)


def with_wearers(phone: BrowserContext, wearers: list[dict[str, Any]]) -> Page:
    """The book open at its list, with these in it."""
    page = opened(phone)
    open_book(page)
    page.evaluate(PUT, {"wearers": wearers})
    page.reload()
    expect(page.locator("#waiting")).to_have_class("waiting over")
    expect(page.locator(".wearers li").first).to_be_visible()
    return page


def copies(page: Page) -> None:
    """From the list to the copies; its rows take their height once they are seen."""
    page.locator("#to-copies").scroll_into_view_if_needed()
    page.locator("#to-copies").tap()
    expect(page.locator("#book h2")).to_contain_text(said("Copies and lists"))


_TYPED = """new Promise((found) => {
  indexedDB.open("heelwise.typed").onsuccess = ({ target: { result } }) => {
    const asked = result.transaction("kept").objectStore("kept").getAll();
    asked.onsuccess = () => {
      result.close();
      found(Object.fromEntries(asked.result.map(({ name, value }) => [name, value])));
    };
  };
})"""


def typed(page: Page) -> dict[str, Any]:
    """What the database has of what is typed, chosen or begun, by its name."""
    there: dict[str, Any] = page.evaluate(_TYPED)
    return {name: value for name, value in there.items() if value is not None}
