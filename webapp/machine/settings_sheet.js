/**
 * The counter's settings as she sees them: each choice says what it does, and lets her hear it.
 * @import {Choices, Settings} from "./settings.js"
 * @import {Sheet} from "./sheet.js"
 * @import {Signals} from "./signals.js"
 */
import { html } from "lit-html";
import * as say from "words/machine";
import { seconds } from "./settings.js";

const GUARDS = [0, 150, 250, 400, 700];

/** @type {{ name: Exclude<keyof Choices, "guard">, words: string, more: string }[]} */
export const SWITCHES = [
  { name: "spoken", words: say.speakCounts, more: say.speakCountsMore },
  { name: "ticks", words: say.clickCounts, more: "" },
  { name: "sounds", words: say.soundStops, more: say.soundStopsMore },
  { name: "vibration", words: say.vibrate, more: say.vibrateMore },
  { name: "awake", words: say.keepScreenOn, more: say.keepScreenOnMore },
];

/** @param {Settings} settings @param {Signals} signals @param {Sheet} sheet */
export function openSettings(settings, signals, sheet) {
  const { choices } = settings;
  sheet.show(
    say.settings,
    html`<fieldset class="switches">
          <legend>${say.whileCounting}</legend>
          <div class="choice stacked">
            ${SWITCHES.map(
              ({
                name,
                words,
                more,
              }) => html`<label><input type="checkbox" name=${name} .checked=${choices[name]}
                @change=${(/** @type {Event} */ event) => {
                  settings.set({ [name]: /** @type {HTMLInputElement} */ (event.target).checked });
                  signals.wake();
                }}><span>${words}${more ? html` <small>${more}</small>` : ""}</span></label>`,
            )}
          </div>
        </fieldset>
        <div class="row">
          <button type="button" @click=${() => signals.try("five")}>${say.hearFive}</button>
          <button type="button" @click=${() => signals.try("stop")}>${say.hearStop}</button>
        </div>
        <fieldset>
          <legend>${say.guardTitle}</legend>
          <p class="where">${say.guardWhy}</p>
          <div class="choice">
            ${GUARDS.map(
              (
                guard,
              ) => html`<label><input type="radio" name="guard" .checked=${choices.guard === guard}
                @change=${() => settings.set({ guard })}><span>${guard ? seconds(guard) : say.guardOff}</span></label>`,
            )}
          </div>
        </fieldset>
        <h3>${say.handsFree}</h3>
        <p>${say.keysCount} ${say.mediaCount}</p>`,
  );
}
