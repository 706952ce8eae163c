// Photos: the bytes as the camera gave them, kept here first, named by their digest; where they belong is an entry.

import * as database from "./database.js";
import { sha256 } from "./sha256.js";

const addresses = new Map();

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

// Keep one file and say where it belongs ("" is the tray). Returns the digest; throws with a sentence.
export async function take(log, file, on) {
  const bytes = await file.arrayBuffer();
  const kind = kindOf(bytes);
  if (!kind) throw new Error(`${file.name || "The file"} is not a JPEG, PNG, WebP or HEIC picture, so it was not taken in.`);
  const sha = sha256(bytes);
  await database.addPhoto(log.inspection, sha, bytes, `image/${kind}`);
  const row = await database.photo(log.inspection, sha);
  if (!row || !sameBytes(row.bytes, bytes)) {
    throw new Error("The photo could not be read back: this device does not keep it. Keep the original.");
  }
  const taken = new Date(file.lastModified || Date.now()).toISOString();
  const subject = `photo/${sha}`;
  const changes = [[subject, "on", on], [subject, "kind", kind], [subject, "taken", taken]];
  if (file.name) changes.push([subject, "name", file.name.slice(0, 200)]);
  await log.record(changes, "", false);
  return sha;
}

// Where a photo can be shown from: this device, or the computer's thumbnail.
export async function address(log, sha) {
  if (!addresses.has(sha)) {
    const row = await database.photo(log.inspection, sha);
    addresses.set(sha, row ? URL.createObjectURL(new Blob([row.bytes], { type: row.type })) : `/inspection/${log.inspection}/photo/${sha}/thumb`);
  }
  return addresses.get(sha);
}

// The photos of a subject, or of the tray with "".
export function photosOn(log, on) {
  return log.state.subjects("photo/").filter((subject) => log.state.value(subject, "on") === on).map((subject) => subject.slice(6));
}

// A button with the picture on it, sizes reserved so that nothing jumps.
export function thumbnail(log, sha) {
  const button = document.createElement("button");
  button.type = "button";
  button.dataset.openPhoto = sha;
  const image = document.createElement("img");
  image.width = 72;
  image.height = 72;
  image.alt = log.state.value(`photo/${sha}`, "caption") || "photo without a caption";
  image.addEventListener("error", () => { button.classList.add("blank"); });
  button.append(image);
  address(log, sha).then((url) => { image.src = url; }, () => button.classList.add("blank"));
  return button;
}

export function paintStrip(log, box, on) {
  const shas = photosOn(log, on);
  if (box.dataset.shown === shas.join()) return shas.length;
  box.dataset.shown = shas.join();
  box.replaceChildren(...shas.map((sha) => thumbnail(log, sha)));
  return shas.length;
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
    const why = (await database.photo(this.log.inspection, sha))?.why ?? "";
    const alarm = this.dialog.querySelector(".alarm");
    alarm.hidden = !why;
    alarm.textContent = why && `Not taken by the computer, kept on this device: ${why}`;
    this.dialog.querySelector("img").src = await address(this.log, sha);
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
    await this.log.record([[subject, "caption", this.caption.value.trim() || null], [subject, "on", on]], "photo filed");
    this.dialog.close();
  }
}
