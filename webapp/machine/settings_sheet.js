/**
 * The counter's settings as she sees them: each choice says what it does, and lets her hear it.
 * @import {Choices, Settings} from "./settings.js"
 * @import {Sheet} from "./sheet.js"
 * @import {Signals} from "./signals.js"
 */
import { html } from "lit-html";
import { seconds } from "./settings.js";

const GUARDS = [0, 150, 250, 400, 700];

/** @type {{ name: Exclude<keyof Choices, "guard">, words: string, more: string }[]} */
export const SWITCHES = [
  { name: "spoken", words: "Speak each count", more: "in the phone’s own voice" },
  { name: "ticks", words: "A click at each count", more: "" },
  {
    name: "sounds",
    words: "Sounds before a stop and at it",
    more: "five before, and when to stop",
  },
  { name: "vibration", words: "Vibration", more: "where the phone can" },
  { name: "awake", words: "Keep the screen on", more: "while the counter is shown" },
];

/** @param {Settings} settings @param {Signals} signals @param {Sheet} sheet */
export function openSettings(settings, signals, sheet) {
  const { choices } = settings;
  sheet.show(
    "Settings",
    html`<fieldset class="switches">
          <legend>While counting</legend>
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
          <button type="button" @click=${() => signals.try("five")}>Hear “five to go”</button>
          <button type="button" @click=${() => signals.try("stop")}>Hear “stop”</button>
        </div>
        <fieldset>
          <legend>Two within this time count as one</legend>
          <p class="where">A pedal may send two for one. What is held back is shown, and can be counted.</p>
          <div class="choice">
            ${GUARDS.map(
              (
                guard,
              ) => html`<label><input type="radio" name="guard" .checked=${choices.guard === guard}
                @change=${() => settings.set({ guard })}><span>${guard ? seconds(guard) : "off"}</span></label>`,
            )}
          </div>
        </fieldset>
        <h3>Without touching</h3>
        <p>Space, Enter, Page Down and the arrows right and down count, and so does a pedal or page-turner that sends one of them. Volume and media buttons count on phones that pass them on to a page: try yours.</p>`,
  );
}
