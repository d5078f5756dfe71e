"""What a count sounds and feels like: each by its own switch, and never the only sign.

Expected behaviour: W3C Vibration API, Web Audio, Web Speech and Screen Wake Lock, each as far
as a page can be seen to call it.
"""

from collections.abc import Callable
from typing import Any

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.at_machine import begun, done, go_to, settings, target
from tests.browser.host import comes_true, until

NewPhone = Callable[..., BrowserContext]
EARS = """
window.felt = []; window.spoken = []; window.tones = []; window.locks = 0;
Navigator.prototype.vibrate = (pattern) => felt.push([].concat(pattern).length);
SpeechSynthesis.prototype.speak = ({ text }) => spoken.push(text);
SpeechSynthesis.prototype.cancel = () => {};
Object.defineProperty(AudioContext.prototype, "state", { get: () => "running" });
const start = OscillatorNode.prototype.start;
OscillatorNode.prototype.start = function (at) {
  tones.push(this.frequency.value);
  start.call(this, at);
};
WakeLock.prototype.request = async () => {
  locks += 1;
  const lock = new EventTarget();
  lock.released = false;
  lock.release = async () => { lock.released = true; locks -= 1; };
  return window.lock = lock;
};
"""


def listening(new_phone: NewPhone, **choices: Any) -> Page:
    """A sock at 38 of 46 rounds of the foot, on a phone whose every signal is written down."""
    phone = new_phone()
    phone.add_init_script(EARS)
    settings(phone, guard=0, **choices)
    page = begun(phone)
    go_to(page, "Foot", 38)
    expect(done(page)).to_have_text("38 of 46 done")
    page.evaluate("felt = []; spoken = []; tones = []")
    return page


def count(page: Page, rounds: int) -> None:
    """Count so many by a key, and wait until all are shown."""
    before = page.evaluate("document.querySelector('#machine-now').textContent")
    for _ in range(rounds):
        page.keyboard.press("PageDown")
        expect(page.locator("#machine-now")).not_to_have_text(before)
        before = page.evaluate("document.querySelector('#machine-now').textContent")


def test_five_before_and_the_stop_differ_from_a_count(new_phone: NewPhone) -> None:
    page = listening(new_phone, ticks=True, sounds=True, vibration=True)
    count(page, 2)
    ticks, shakes = page.evaluate("[tones, felt]")
    assert ticks == [ticks[0]] * 2
    assert shakes == [1, 1]
    expect(page.locator(".last-few")).to_have_count(0)
    count(page, 1)  # 41 done: five to go
    assert len(page.evaluate("tones")) == 2 + 2
    assert page.evaluate("felt") == [1, 1, 3]
    expect(page.locator(".last-few")).to_contain_text("Only 5 rounds")
    count(page, 5)
    assert page.evaluate("felt") == [1, 1, 3, 1, 1, 1, 1, 5]
    assert len(page.evaluate("tones")) == 2 + 2 + 4 + 3
    expect(page.locator(".by-hand-text")).to_be_visible()
    assert page.evaluate("spoken") == []


def test_every_switch_can_be_off(new_phone: NewPhone) -> None:
    page = listening(new_phone, ticks=False, sounds=False, vibration=False, awake=False)
    count(page, 8)
    assert page.evaluate("[tones, felt, spoken].flat()") == []
    assert page.evaluate("locks") == 0


def test_counts_are_spoken_where_she_wants_it(new_phone: NewPhone) -> None:
    page = listening(new_phone, spoken=True, sounds=False)
    count(page, 3)
    assert page.evaluate("spoken") == ["7", "6", "5 rounds to go."]
    go_to(page, "Heel", 1)
    page.evaluate("spoken = []")
    count(page, 1)  # sees the jump's own words change, now and then, and not yet the count's
    comes_true(page, lambda: page.evaluate("spoken.length"))
    (words,) = page.evaluate("spoken")
    assert words.startswith("Knit to the right, needle 2 to 29.")


def test_the_screen_is_kept_on_while_the_counter_is_shown(new_phone: NewPhone) -> None:
    page = listening(new_phone, awake=True, sounds=False)
    assert page.evaluate("locks") == 1
    # The phone takes it away with the page, and it is asked for again when the page is back.
    page.evaluate("lock.released = true; locks = 0")
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    assert page.evaluate("locks") == 1
    page.get_by_role("button", name="Settings").tap()
    page.locator(".machine-sheet label", has_text="Keep the screen on").tap()
    assert page.evaluate("locks") == 0
    page.locator(".machine-sheet label", has_text="Keep the screen on").tap()
    assert page.evaluate("locks") == 1
    page.get_by_role("button", name="Close").tap()
    page.locator(".leave").tap()
    expect(page.locator("#counts-title")).to_be_visible()
    assert page.evaluate("locks") == 0


def test_audio_rests_while_nothing_is_counted(new_phone: NewPhone) -> None:
    """Audio that runs takes some 2 % of a processor, sounding or not (measured here)."""
    phone = new_phone()
    phone.add_init_script(
        """globalThis.audio = [];
        const Own = AudioContext;
        globalThis.AudioContext = class extends Own {
            constructor() { super(); audio.push(this); }
        };"""
    )
    settings(phone, guard=0, ticks=True, sounds=True)
    page = begun(phone)
    target(page).tap()
    until(page, "audio.length === 1 && audio[0].state === 'running'")
    until(page, "audio[0].state === 'suspended'")
    target(page).tap()
    until(page, "audio[0].state === 'running'")
    assert page.evaluate("audio.length") == 1
