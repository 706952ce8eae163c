// Who is recording: asked once on this device, changed from the list of sheets.

import { alarm } from "./status.js";

export function paintWho(log) {
  document.getElementById("who").hidden = Boolean(log.who);
  document.querySelector("[data-who-now]").textContent = log.who || "nobody yet";
}

export function wireWho(log, lost) {
  const field = document.getElementById("who-name");
  const setWho = (name) => log.setWho(name).catch((error) => alarm(lost(error)));
  const keep = () => { if (field.value.trim()) setWho(field.value.trim()); };
  document.getElementById("who").addEventListener("click", (event) => {
    const { who } = event.target.dataset;
    if (who) setWho(who);
  });
  document.getElementById("who-keep").addEventListener("click", keep);
  field.addEventListener("keydown", (event) => { if (event.key === "Enter") keep(); });
  document.getElementById("change-who").addEventListener("click", () => {
    document.getElementById("who").hidden = false;
    field.focus();
  });
}
