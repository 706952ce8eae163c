// The walk page: opens what is kept, wires the parts, and says so when this device cannot keep anything.

import { Cards } from "./cards.js";
import { queuedEntries, requeuePhotos } from "./database.js";
import { Findings } from "./findings.js";
import { Handover } from "./handover.js";
import { Log } from "./log.js";
import { PhotoDialog, take } from "./photos.js";
import { alarm, paintStatus } from "./status.js";
import { Plan, Views } from "./views.js";

const page = document.querySelector(".walk");
const log = new Log(page.dataset.inspection);
const handover = new Handover(log, page.dataset.host);
const plan = new Plan();
const findings = new Findings(log, plan);
const photoDialog = new PhotoDialog(log, plan);
const views = new Views(log, plan, findings, document.getElementById("here").textContent);

const lost = (error) => `Not kept: this device cannot store it (${error?.message || error?.name || "no reason given"}). Do not close this page; free some space, then answer again.`;

function paintUndo() {
  const box = document.getElementById("undo");
  box.hidden = !log.lastAct;
  if (log.lastAct) box.querySelector("span").textContent = log.lastAct.words;
}

function paintWho() {
  document.getElementById("who").hidden = Boolean(log.who);
  document.querySelector("[data-who-now]").textContent = log.who || "nobody yet";
}

function wireWho() {
  const field = document.getElementById("who-name");
  const keep = () => { if (field.value.trim()) log.setWho(field.value.trim()).catch((error) => alarm(lost(error))); };
  document.getElementById("who").addEventListener("click", (event) => {
    const { who } = event.target.dataset;
    if (who) log.setWho(who).catch((error) => alarm(lost(error)));
  });
  document.getElementById("who-keep").addEventListener("click", keep);
  field.addEventListener("keydown", (event) => { if (event.key === "Enter") keep(); });
  document.getElementById("change-who").addEventListener("click", () => {
    document.getElementById("who").hidden = false;
    field.focus();
  });
}

async function snap(event) {
  const [file] = event.target.files;
  event.target.value = "";
  if (!file) return;
  try {
    await take(log, file, "");
  } catch (error) {
    alarm(`The photo was not kept: ${error.message}`);
  }
}

// The last resort: what waits here as a file of JSON lines, which works on plain http and without any contact.
async function saveToFile() {
  const rows = await queuedEntries(log.inspection);
  const text = rows.map((row) => JSON.stringify(row.entry)).join("\n") + "\n";
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type: "application/jsonl" }));
  link.download = `${log.inspection}-${log.device}.jsonl`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

function list(kind) {
  for (const button of document.querySelectorAll("[data-list]")) button.setAttribute("aria-pressed", String(button.dataset.list === kind));
  for (const box of document.querySelectorAll("[data-listing]")) box.hidden = box.dataset.listing !== kind;
  views.order = kind === "space" ? "space" : "sheet";
}

function wirePage() {
  document.addEventListener("click", (event) => {
    const button = event.target.closest("button");
    if (!button) return;
    const { go, sheet, space, openPhoto } = button.dataset;
    if (go === "next") { if (!views.next()) alarm("Every check has an answer, seen or not."); }
    else if (go) location.hash = go;
    else if (sheet) location.hash = `sheet/${sheet}`;
    else if (space) location.hash = `space/${space}`;
    else if (openPhoto) photoDialog.open(openPhoto);
    else if (button.dataset.list) list(button.dataset.list);
  });
  document.getElementById("snap").addEventListener("change", snap);
  document.getElementById("save-file").addEventListener("click", saveToFile);
  document.querySelector("#undo button").addEventListener("click", () => log.undo().catch(() => {}));
}

function wireLog() {
  log.addEventListener("change", (event) => {
    const { subjects } = event.detail;
    views.paint(subjects);
    paintUndo();
    paintWho();
    handover.count().then(() => handover.queued + handover.photos && handover.now(), () => {});
  });
  log.addEventListener("lost", (event) => alarm(lost(event.detail)));
  handover.addEventListener("change", () => paintStatus(handover));
  addEventListener("online", () => handover.now());
}

async function start() {
  try {
    await log.open();
  } catch (error) {
    alarm(lost(error));
    document.getElementById("strip").textContent = "this device cannot keep anything";
    return;
  }
  new Cards(log, document.getElementById("cards"), { onFinding: (subject) => findings.open(subject), onPhotoTaken: () => {} });
  wireWho();
  wirePage();
  wireLog();
  paintWho();
  views.show();
  navigator.storage?.persist?.().catch(() => {});
  page.dataset.ready = "yes";
  await requeuePhotos(log.inspection).catch(() => {});
  await handover.now();
}

start();
