// Photos: the bytes as the camera gave them, kept here first, named by their digest; where they belong is an entry.

import { paintDisputes } from "./answers.js";
import { copyOf } from "./copies.js";
import { digest } from "./digest.js";
import { addPhoto, photo } from "./pictures.js";
import { pictureOf } from "./thumbs.js";

// What the first bytes say; a name or a browser's guess is not believed.
function kindOf(bytes) {
  const text = String.fromCharCode(...new Uint8Array(bytes.slice(0, 16)));
  if (text.startsWith("\xff\xd8\xff")) return "jpeg";
  if (text.startsWith("\x89PNG")) return "png";
  if (text.startsWith("RIFF") && text.slice(8, 12) === "WEBP") return "webp";
  if (text.slice(4, 8) === "ftyp" && /^(hei|hev|mif1|msf1)/.test(text.slice(8, 12))) return "heic";
  return "";
}

function sameBytes(kept, given) {
  const a = new Uint8Array(kept), b = new Uint8Array(given);
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}

// Keep one file and say where it belongs ("" is the tray). Resolves with {sha, already}: where this very picture is filed
// already ("" is the tray, null where it is new); it keeps that place. Throws with a sentence.
export async function take(log, file, on) {
  const bytes = await file.arrayBuffer();
  const kind = kindOf(bytes);
  if (!kind) throw new Error(`${file.name || "The file"} is not a JPEG, PNG, WebP or HEIC picture, so it was not taken in.`);
  const sha = await digest(bytes);
  await addPhoto(log.inspection, sha, bytes, `image/${kind}`);
  const row = await photo(log.inspection, sha);
  if (!row || (row.bytes && !sameBytes(row.bytes, bytes))) {
    throw new Error("The photo could not be read back: this device does not keep it. Keep the original.");
  }
  const taken = new Date(file.lastModified || Date.now()).toISOString();
  const subject = `photo/${sha}`;
  const already = log.state.value(subject, "on");
  // One that waits in the tray may be filed where it was chosen; one with a place is never moved by being chosen again.
  if (already || (already === "" && !on)) return { sha, already };
  const changes = [[subject, "on", on], [subject, "kind", kind], [subject, "taken", taken]];
  if (file.name) changes.push([subject, "name", file.name.slice(0, 200)]);
  await log.record(changes, "", false);
  copyOf(log.inspection, sha); // in its own time
  return { sha, already: null };
}

// The dialog in which a photo gets its caption and its place.
export class PhotoDialog {
  constructor(log, plan) {
    this.log = log;
    this.plan = plan;
    this.dialog = document.getElementById("photo-dialog");
    this.caption = document.getElementById("photo-caption");
    this.sheet = document.getElementById("photo-sheet");
    this.check = document.getElementById("photo-check");
    this.sheet.addEventListener("change", () => this.#offerChecks());
    this.dialog.querySelector("[data-photo-keep]").addEventListener("click", () => this.#keep());
  }

  async open(sha) {
    this.sha = sha;
    const subject = `photo/${sha}`;
    const on = this.log.state.value(subject, "on") ?? "";
    const [, system = "", unit = "", check = ""] = on.split("/");
    this.caption.value = this.log.state.value(subject, "caption") ?? "";
    this.sheet.value = system ? `${system}/${unit}` : "";
    this.#offerChecks(check);
    const why = (await photo(this.log.inspection, sha))?.why ?? "";
    const alarm = this.dialog.querySelector(".alarm");
    alarm.hidden = !why;
    alarm.textContent = why && `Not taken by the computer, kept on this device: ${why}`;
    this.dialog.dataset.subject = subject;
    paintDisputes(this.log, this.dialog);
    this.dialog.querySelector("img").src = (await pictureOf(this.log.inspection, sha)) ?? "";
    this.dialog.showModal();
  }

  #offerChecks(chosen = "") {
    const checks = this.plan.checksOf(this.sheet.value);
    const options = checks.map((check) => new Option(check.title, check.id, false, check.id === chosen));
    this.check.replaceChildren(...(options.length ? options : [new Option("choose the sheet first", "")]));
  }

  async #keep() {
    const subject = `photo/${this.sha}`;
    const on = this.sheet.value ? `sheet/${this.sheet.value}/${this.check.value}` : "";
    const changes = [[subject, "caption", this.caption.value.trim() || null], [subject, "on", on]];
    try {
      await this.log.record(this.log.unlessShown(changes), "photo filed");
      this.dialog.close();
    } catch {
      // The log has said aloud that it was not kept; the dialog stays open with what was typed.
    }
  }
}
