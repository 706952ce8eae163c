// The walk page: opens what is kept, wires the parts, and says so when this device cannot keep anything.

import { Advice } from "./advice.js";
import { settleWithin } from "./answers.js";
import { AppHere } from "./app_here.js";
import { Cards } from "./cards.js";
import { storage } from "./device.js";
import { prepareDigest } from "./digest.js";
import { keepDrafts, recordDrafts } from "./drafts.js";
import { Findings } from "./findings.js";
import { Handover } from "./handover.js";
import { Log } from "./log.js";
import { readPass } from "./pass.js";
import { PhotoDialog, take } from "./photos.js";
import { requeuePhotos } from "./pictures.js";
import { Ready } from "./ready.js";
import { paintRefused } from "./refused.js";
import { alarm } from "./status.js";
import { paintStripWords } from "./strip.js";
import { Tabs } from "./tabs.js";
import { Talk } from "./talk.js";
import { fetchThumbsFrom } from "./thumbs.js";
import { Plan, Views } from "./views.js";
import { saveWaiting } from "./waiting_file.js";
import { paintWho, wireWho } from "./who.js";

const page = document.querySelector(".walk");
const log = new Log(page.dataset.inspection);
const talk = new Talk(page.dataset.host);
const handover = new Handover(log, talk);
const appHere = new AppHere();
const tabs = new Tabs(log);
const plan = new Plan();
const findings = new Findings(log, plan);
const photoDialog = new PhotoDialog(log, plan);
const views = new Views(log, plan, findings, document.getElementById("here").textContent, {
  ready: new Ready({ log, plan, handover, talk, appHere }),
  advice: new Advice({ log, plan, talk, open: (subject) => views.open(subject) }),
  refused: { where: "refused entries", paint: (box) => paintRefused(box, handover, plan, log.inspection) },
});
let spaceLeft = null;

const lost = (error) => `Not kept: this device cannot store it (${error?.message || error?.name || "no reason given"}). Do not close this page; free some space, then answer again.`;

function paintUndo() {
  const box = document.getElementById("undo");
  box.hidden = !log.lastAct;
  if (log.lastAct) box.querySelector("span").textContent = log.lastAct.words;
}

// A picture that is here already keeps its place, and that is said.
function sayAlready({ already }) {
  if (already !== null) alarm(`This photo is kept already, under: ${plan.placeOf(already)}. It stays there; open it there to move it.`);
}

async function snap(event) {
  const [file] = event.target.files;
  event.target.value = "";
  if (!file) return;
  try {
    sayAlready(await take(log, file, ""));
  } catch (error) {
    alarm(`The photo was not kept: ${error.message}`);
  }
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
    const { go, sheet, space, openPhoto, openFinding } = button.dataset;
    if (go === "next") { if (!views.next()) alarm("Every check has an answer, seen or not."); }
    else if (go) location.hash = go;
    else if (sheet) location.hash = `sheet/${sheet}`;
    else if (space) location.hash = `space/${space}`;
    else if (openPhoto) photoDialog.open(openPhoto);
    else if (openFinding) findings.open("", openFinding);
    else if (button.dataset.list) list(button.dataset.list);
  });
  document.getElementById("snap").addEventListener("change", snap);
  document.getElementById("save-file").addEventListener("click", () => saveWaiting(log).catch((error) => alarm(`The file could not be made: ${error.message}`)));
  document.querySelector("#undo button").addEventListener("click", () => log.undo().catch(() => {}));
}

function wireLog() {
  log.addEventListener("change", (event) => {
    const { subjects } = event.detail;
    views.paint(subjects);
    paintUndo();
    paintWho(log);
    handover.count().then(() => handover.queued + handover.photos && handover.now(), () => {});
  });
  log.addEventListener("recorded", (event) => handover.added(event.detail));
  log.addEventListener("lost", (event) => alarm(lost(event.detail)));
  handover.addEventListener("change", () => {
    paintStrip();
    if (location.hash === "#refused" || (location.hash === "#advice" && !handover.queued)) views.again();
  });
  for (const one of [appHere, tabs]) one.addEventListener("change", paintStrip);
  // What the ready screen could not prove a moment ago may be proved now.
  for (const [one, event] of [[appHere, "change"], [handover, "contact"]]) one.addEventListener(event, () => location.hash === "#ready" && views.again());
  addEventListener("online", () => handover.now());
}

function paintStrip() {
  // A page that the computer no longer ships may not know what is asked for today.
  const old = appHere.old || Boolean(talk.version && page.dataset.version !== talk.version);
  paintStripWords(handover, { old, others: tabs.others, spaceLeft });
}

async function lookAtSpace() {
  spaceLeft = (await storage()).left;
  paintStrip();
}

// Without a service worker the page itself is gone once it is closed, so it warns while something waits or nobody answers.
function warnBeforeLeaving() {
  // A device that was let in reaches the walks only, so it leaves to their list and not to the laptop's own pages.
  readPass().then((pass) => { if (pass) document.getElementById("leave").href = "/"; }, () => {});
  document.getElementById("basic").hidden = appHere.possible;
  if (appHere.possible) return;
  addEventListener("beforeunload", (event) => { if (handover.queued + handover.photos || handover.trouble) event.preventDefault(); });
}

async function start() {
  try {
    await log.open();
  } catch (error) {
    alarm(lost(error));
    document.getElementById("strip").textContent = "this device cannot keep anything";
    return;
  }
  new Cards(log, document.getElementById("cards"), { onFinding: (subject) => findings.open(subject), onPhotoTaken: sayAlready });
  settleWithin(log, page, () => findings.settled());
  keepDrafts(log, document.getElementById("cards"));
  wireWho(log, lost);
  wirePage();
  wireLog();
  paintWho(log);
  warnBeforeLeaving();
  prepareDigest();
  fetchThumbsFrom(talk);
  tabs.open();
  views.show();
  await recordDrafts(log).catch((error) => alarm(lost(error)));
  await findings.openDraft().catch(() => {});
  navigator.storage?.persist?.().catch(() => {});
  page.dataset.ready = "yes";
  appHere.open();
  lookAtSpace();
  setInterval(lookAtSpace, 60_000);
  await requeuePhotos(log.inspection).catch(() => {});
  await handover.now();
}

start();
