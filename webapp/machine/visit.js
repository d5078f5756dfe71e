/**
 * One pair on the counter's screen: its parts put together, from the moment it is shown until it is left.
 * @import {Journal} from "./journal.js"
 * @import {Shelf} from "./off_the_shelf.js"
 * @import {OneCounter} from "./one_counter.js"
 * @import {Settings} from "./settings.js"
 * @import {Kept, Place} from "./types"
 */
import * as say from "words/machine";
import { Awake } from "./awake.js";
import { Counter } from "./counter.js";
import { CounterScreen } from "./counter_screen.js";
import { jumped, moment, taken } from "./moments.js";
import { Notes } from "./notes.js";
import { Notices } from "./notices.js";
import { OffTheShelf } from "./off_the_shelf.js";
import { learned } from "./pace.js";
import { Places } from "./places.js";
import { openSettings } from "./settings_sheet.js";
import { Sheet } from "./sheet.js";
import { Signals } from "./signals.js";
import { SockTwo } from "./sock_two.js";
import { TakeBack } from "./take_back.js";
import { TooSoon } from "./too_soon.js";
import { Triggers } from "./triggers.js";
import { Trouble } from "./trouble.js";

const SETTLED_MS = 1500;

export class Visit {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #settling;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #waking;
  #leaving = new AbortController();
  #tooSoon;

  /**
   * @param {Kept} kept
   * @param {object} parts
   * @param {HTMLElement} parts.place @param {Journal} parts.journal @param {OneCounter} parts.one
   * @param {Settings} parts.settings @param {(call: object) => Promise<any>} parts.ask
   * @param {(request: object) => Record<string, string>} parts.measured
   * @param {import("../storage/kept.js").Kept} parts.typed
   * @param {Shelf} parts.shelf @param {() => void} parts.leave
   */
  constructor(kept, { place, journal, one, settings, typed, ask, measured, shelf, leave }) {
    this.place = place;
    this.journal = journal;
    this.one = one;
    this.settings = settings;
    this.counter = new Counter(kept, journal, one);
    this.signals = new Signals(settings);
    this.notices = new Notices(typed);
    this.#tooSoon = new TooSoon(this.notices, settings, () => this.counter.count());
    this.awake = new Awake();
    this.takeBack = new TakeBack();
    this.sheet = new Sheet();
    this.triggers = new Triggers({
      guard: () => settings.choices.guard,
      free: () => !this.sheet.open,
    });
    const sockTwo = new SockTwo(this.counter, this.sheet, { ask, measured, typed });
    const places = new Places(this.counter, this.sheet, sockTwo);
    const notes = new Notes(this.counter, this.sheet, typed);
    const trouble = new Trouble(this.counter, this.sheet, places);
    const yarn = new OffTheShelf(this.counter, this.sheet, shelf);
    this.screen = new CounterScreen(place, {
      counter: this.counter,
      triggers: this.triggers,
      takeBack: this.takeBack,
      notices: this.notices,
      one,
      ways: {
        leave,
        places: () => places.open(),
        notes: () => notes.open(),
        trouble: () => trouble.open(),
        settings: () => openSettings(settings, this.signals, this.sheet),
        sockTwo: () => sockTwo.open(),
        beginTwo: () => sockTwo.begin(null),
        yarn: () => yarn.template(),
      },
    });
    this.said = document.createElement("p");
    this.said.className = "said"; // the page's own is hidden meanwhile
    this.said.setAttribute("role", "status");
  }

  show() {
    this.screen.pace = learned(this.counter);
    this.screen.draw();
    document.getElementById("machine-title")?.focus({ preventScroll: true });
    this.screen.toTarget();
    this.place.after(this.said);
    this.#wire();
    this.triggers.start();
    // What makes sounds takes its time to be made: not at the first count.
    this.#waking = setTimeout(() => this.signals.wake(), SETTLED_MS);
    this.awake.wanted = this.settings.choices.awake;
    this.#kept();
    this.#one();
  }

  hide() {
    clearTimeout(this.#settling);
    clearTimeout(this.#waking);
    this.#leaving.abort();
    this.triggers.stop();
    this.awake.wanted = false;
    this.sheet.remove();
    this.said.remove();
    this.one.close();
  }

  #wire() {
    const { counter, triggers, takeBack, notices, awake, settings, journal, one } = this;
    /** @param {EventTarget} from @param {string} name @param {(event: any) => void} act */
    const on = (from, name, act) =>
      from.addEventListener(name, act, { signal: this.#leaving.signal });
    on(triggers, "count", ({ detail }) => {
      counter.count(detail);
      this.signals.wake();
    });
    on(triggers, "close", () => this.#tooSoon.add());
    on(counter, "change", ({ detail }) => this.#changed(detail));
    on(counter, "moving", () => this.#tooSoon.drop());
    on(counter, "refused", () => notices.pass(say.notCountedHere));
    on(takeBack, "back", () => {
      counter.takeBack();
      this.screen.focus();
    });
    on(takeBack, "short", () => {
      const act = () => {
        notices.tell("word", null);
        counter.takeBack();
      };
      notices.pass(say.holdToTakeBack(this.#last()), [{ words: say.orTapHere, act }]);
      this.screen.focus();
    });
    on(this.sheet, "closed", () => this.screen.focus());
    on(takeBack, "ask", () => this.#askBack());
    on(notices, "change", () => this.screen.draw());
    on(awake, "change", () =>
      notices.tell("awake", awake.refused ? { words: say.screenMayGoDark } : null),
    );
    on(settings, "change", () => {
      awake.wanted = settings.choices.awake;
    });
    on(journal, "kept", () => this.#kept());
    on(journal, "changed", () => counter.follow());
    on(one, "told", () => counter.follow());
    on(one, "counting", () => {
      counter.follow();
      this.#one();
    });
  }

  #kept() {
    const { kept, outdated, stuck } = this.journal;
    const words = outdated ? say.pageOutdated : stuck ? say.cannotReadBefore : say.onlyWhileOpen;
    const again = { words: say.reload, act: () => location.reload() };
    this.notices.tell("memory", kept ? null : { words, ways: outdated ? [again] : [] });
  }

  #one() {
    const take = () => this.one.take();
    const ways = [{ words: say.countHere, act: take }];
    this.notices.tell("following", this.one.counting ? null : { words: say.otherCounts, ways });
  }

  /** What would be taken back. */
  #last() {
    const { knit, place, state } = this.counter;
    return taken(knit, state.undo.at(-1) ?? place, place);
  }

  #askBack() {
    const over = () => this.notices.tell("ask", null);
    this.notices.tell("ask", {
      words: say.askTakeBack(this.#last()),
      ways: [
        {
          words: say.takeItBack,
          act: () => {
            over();
            this.counter.takeBack();
          },
        },
        { words: say.leaveIt, act: over },
      ],
    });
  }

  /** @param {{ kind: string, before: Place, sock: number } | null} detail */
  #changed(detail) {
    const { counter } = this;
    this.screen.draw();
    if (!detail) return this.#tooSoon.drop();
    const { kind, before } = detail;
    if (kind === "done") {
      this.#tooSoon.counted();
      const told = moment(counter.knit, before, counter.place, true);
      this.signals.give(told);
      this.#say(told.words);
    } else if (kind === "note") {
      this.notices.pass(say.noteSaved);
    } else {
      const { words } = moment(counter.knit, before, counter.place, false);
      // A whole jump goes in one, where she may have meant the last round.
      if (kind === "back" && jumped(counter.knit, counter.place, before)) {
        this.notices.pass(say.jumpTakenBack({ now: words }));
      }
      this.#say(words);
    }
    clearTimeout(this.#settling);
    this.#settling = setTimeout(() => {
      this.screen.pace = learned(counter);
      this.screen.draw();
    }, SETTLED_MS);
  }

  /** Section, stop, five to go, reminder, what to do in a row: never every round. @param {string} words */
  #say(words) {
    if (words) this.said.textContent = words;
  }
}
