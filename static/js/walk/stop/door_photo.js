// The first row of a space: the whole of it from the door, as a photo.

import { alarm, sentenceOf } from "../page/alarm.js";
import { make } from "../page/elements.js";
import { takePhoto } from "../photos/take_photo.js";
import { paintPhotoStrip } from "../photos/thumbnails.js";

/** @import { Log } from "../record/log.js" */

/** The row of one space. */
export class DoorPhoto {
  /**
   * @param {Log} log
   * @param {string} space its id
   */
  constructor(log, space) {
    this.log = log;
    this.on = `space/${space}`;
    this.words = make("span");
    this.strip = make("div", "", { className: "strip" });
    this.box = make("div", "", { className: "door" });
    const label = make("label", "", { className: "button" });
    label.append(this.words, this.#input());
    this.box.append(label, this.strip);
  }

  #input() {
    const input = make("input", "", { type: "file", accept: "image/*" });
    input.setAttribute("capture", "environment");
    input.dataset.photo = "door";
    input.addEventListener("change", async () => {
      const files = [...(input.files ?? [])];
      // Emptied at once, so that the same picture may be chosen again.
      input.value = "";
      for (const file of files) await this.#take(file);
    });
    return input;
  }

  /** @param {File} file */
  async #take(file) {
    try {
      await takePhoto(this.log, file, this.on);
    } catch (error) {
      alarm(`The photo was not kept: ${sentenceOf(error)}`);
    }
  }

  /** Show the photos that are here. */
  paint() {
    const count = paintPhotoStrip(this.log, this.strip, this.on);
    this.words.textContent = count
      ? "◉ one more from the door"
      : "◉ first, the whole space from the door";
  }
}
