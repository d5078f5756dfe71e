/**
 * Sound, vibration and speech at a count, each by its own switch. The screen shows the same; whatever a
 * phone lacks here is left out without a word.
 * @import {Moment} from "./moments.js"
 * @import {Settings} from "./settings.js"
 */

/** Tones as [Hz, from s, for s]: a click; two that rise; three that fall. */
const TONES = {
  count: [[1400, 0, 0.03]],
  five: [
    [660, 0, 0.14],
    [990, 0.18, 0.2],
  ],
  stop: [
    [880, 0, 0.2],
    [660, 0.24, 0.2],
    [440, 0.48, 0.45],
  ],
};
const SHAKES = { count: [15], five: [70, 70, 70], stop: [250, 100, 250, 100, 250] };

// Audio that runs takes a processor's time, sounding or not: it rests while nothing is counted.
const RESTS_MS = 5000;
const LATE_MS = 300; // a sound that comes later would belong to nothing

export class Signals {
  /** @type {AudioContext | undefined} */
  #audio;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #resting;

  /** @param {Settings} settings */
  constructor(settings) {
    this.settings = settings;
  }

  /** A phone lets a page sound only after a touch. Call it within one. */
  wake() {
    const { sounds, ticks } = this.settings.choices;
    if (!(sounds || ticks)) return;
    tried(() => {
      this.#audio ??= new AudioContext();
      if (this.#audio.state === "suspended") this.#audio.resume().catch(() => {});
      this.#restLater();
    });
  }

  #restLater() {
    clearTimeout(this.#resting);
    this.#resting = setTimeout(() => this.#audio?.suspend().catch(() => {}), RESTS_MS);
  }

  /** @param {Moment} moment */
  give({ kind, spoken: words }) {
    const { sounds, ticks, spoken, vibration } = this.settings.choices;
    if (kind === "count" ? ticks : sounds) tried(() => this.#sound(kind));
    if (vibration) tried(() => navigator.vibrate(SHAKES[kind]));
    if (spoken) tried(() => this.#speak(words));
  }

  /** Let her hear what a choice sounds like. @param {Moment["kind"]} kind */
  try(kind) {
    this.wake();
    tried(() => this.#sound(kind));
  }

  /** @param {Moment["kind"]} kind */
  #sound(kind) {
    const audio = this.#audio;
    if (!audio) return;
    this.#restLater();
    if (audio.state === "running") return sounded(audio, kind);
    const asked = performance.now();
    audio.resume().then(
      () => performance.now() - asked < LATE_MS && sounded(audio, kind),
      () => {},
    );
  }

  /** The newest only: a number that comes late is wrong. @param {string} words */
  #speak(words) {
    if (!words) return;
    speechSynthesis.cancel();
    speechSynthesis.speak(new SpeechSynthesisUtterance(words));
  }
}

/** @param {AudioContext} audio @param {Moment["kind"]} kind */
function sounded(audio, kind) {
  for (const [pitch, from, length] of TONES[kind]) {
    const start = audio.currentTime + from;
    const tone = new OscillatorNode(audio, { frequency: pitch });
    const volume = new GainNode(audio, { gain: 0 });
    volume.gain.setValueAtTime(0, start);
    volume.gain.linearRampToValueAtTime(0.5, start + 0.008);
    volume.gain.exponentialRampToValueAtTime(0.001, start + length);
    tone.connect(volume).connect(audio.destination);
    tone.start(start);
    tone.stop(start + length);
  }
}

/** What a phone has not, or does not let a page do, is left out. @param {() => void} signal */
function tried(signal) {
  try {
    signal();
  } catch {
    // The screen shows the same.
  }
}
