/**
 * What came too soon after another trigger: not counted, told, and on offer for a few counts more, where
 * it came. So nothing that she meant is swallowed, and nothing that she did not mean is counted.
 * @import {Notices} from "./notices.js"
 * @import {Settings} from "./settings.js"
 */
import * as say from "words/machine";
import { seconds } from "./settings.js";

const OFFERED = 3; // counts

export class TooSoon {
  #held = 0;
  #since = 0;

  /** @param {Notices} notices @param {Settings} settings @param {() => void} count */
  constructor(notices, settings, count) {
    this.notices = notices;
    this.settings = settings;
    this.count = count;
  }

  add() {
    this.#held += 1;
    this.#since = 0;
    const guard = seconds(this.settings.choices.guard);
    const held = this.#held;
    const several = held > 1;
    const act = () => {
      for (let left = this.#held; left; left -= 1) this.count();
      this.drop();
    };
    this.notices.tell("close", {
      words: several ? say.tooSoonMore({ held, guard }) : say.tooSoonOne({ guard }),
      ways: [{ words: several ? say.countThose({ held }) : say.countSecond, act }],
    });
  }

  /** One more was counted. */
  counted() {
    this.#since += 1;
    if (this.#held && this.#since > OFFERED) this.drop();
  }

  /** Settled: counted, or left as it is; or she has gone to another place. */
  drop() {
    this.#held = 0;
    this.notices.tell("close", null);
  }
}
