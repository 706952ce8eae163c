// What the computer refused: each entry or photo with what it says and why it was not taken. It stays on this device.

import { describe } from "./answers.js";
import { requeue } from "./kept.js";
import { requeuePhotos } from "./pictures.js";

const make = (tag, text, more = {}) => Object.assign(document.createElement(tag), { textContent: text, ...more });

function item(row, plan, again) {
  const box = document.createElement("article");
  box.className = "check refused";
  box.dataset.refused = row.id ?? row.sha;
  if (row.entry) {
    const { subject, field, value, who, at } = row.entry;
    const [kind, system, unit] = subject.split("/");
    const on = kind === "sheet" ? plan.nameOf(`${system}/${unit}`) : subject;
    box.append(make("h2", `${field.replace("reading/", "")}: ${describe(value)}`), make("p", `${on} · ${who || "nobody named"}, ${at}`, { className: "of" }));
  } else {
    box.append(make("h2", "a photo"), make("p", row.sha.slice(0, 12), { className: "of" }));
  }
  box.append(make("p", String(row.why).replace(/^refused: /, ""), { className: "odd" }));
  const button = make("button", "hand over once more", { type: "button" });
  button.addEventListener("click", () => again(row));
  box.append(button);
  return box;
}

export function paintRefused(box, handover, plan, inspection) {
  const again = async (row) => {
    if (row.entry) await requeue(inspection, [row.id]);
    else await requeuePhotos(inspection, [row.sha]);
    handover.now();
  };
  const rows = handover.refused.map((row) => item(row, plan, again));
  const words = rows.length
    ? "Not taken by the computer, kept on this device. Answer again on the card if the sentence says how; the file of what waits holds these too."
    : "Nothing was refused.";
  box.replaceChildren(make("p", words, { className: "empty" }), ...rows);
}
