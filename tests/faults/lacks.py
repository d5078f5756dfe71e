"""What a phone may lack or refuse, as scripts that run before the page; and what the page says."""

TYPED = "This phone does not let the page save anything"
COUNTED = "The counts hold while this page is open"
BOOK = "Your phone isn’t saving the book"
DARK = "Your phone doesn’t let a page keep the screen on"
COPIED = "Copied"
BY_HAND = "The phone did not copy it"


def gone(*names: str) -> str:
    """These are not known at all."""
    return "".join(f"delete {name};" for name in names)


def rejects(method: str, error: str) -> str:
    """Asked, it says no."""
    return f"{method} = () => Promise.reject(new DOMException('no', '{error}'));"


def throws(method: str, error: str) -> str:
    """Asked, it is an error at once."""
    return f"{method} = () => {{ throw new DOMException('no', '{error}'); }};"


def cannot_be_made(name: str, error: str) -> str:
    """To make one is an error."""
    return f"{name} = class {{ constructor() {{ throw new DOMException('no', '{error}'); }} }};"


OPEN = "IDBFactory.prototype.open"
PERSIST = "StorageManager.prototype.persist"
SHARE = "Navigator.prototype.share"
NO_DATABASE = "Object.defineProperty(window, 'indexedDB', { value: undefined });"
NO_LOCAL_STORAGE = """Object.defineProperty(window, "localStorage", {
    get() { throw new DOMException("no", "SecurityError"); }
});"""
# Full to the last character.
FILL = """for (let size = 2 ** 22, at = 0; size; at += 1) {
    try { localStorage["filler" + at] = "x".repeat(size); } catch { size >>= 1; }
}"""
# As WebKit does it to a page that was out of sight: without a word, found at the next transaction.
# Now the connection is closed, now the process that held it is gone.
CLOSED_UNDER_US = """let asked = 0;
const { transaction } = IDBDatabase.prototype;
IDBDatabase.prototype.transaction = function (...given) {
    asked += 1;
    if (asked % 6 === 3) this.close();
    if (asked % 6 === 0)
        throw new DOMException("Connection to Indexed Database server lost", "UnknownError");
    return transaction.apply(this, given);
};"""
