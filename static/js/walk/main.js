// The walk page: opens what is kept, connects the parts, and reports when this device cannot keep
// anything.

import { settleWithin } from "./cards/answers.js";
import { CardAnswers } from "./cards/card_answers.js";
import { keepDrafts, recordDrafts } from "./cards/drafts.js";
import { recordPassedWithin } from "./cards/walked_past.js";
import { Connection } from "./handover/connection.js";
import { wireHandOverNow } from "./handover/hand_over_now.js";
import { Handover } from "./handover/handover.js";
import { TellLaptop } from "./handover/tell_laptop.js";
import { saveWaiting } from "./handover/waiting_file.js";
import { alarm, sentenceOf } from "./page/alarm.js";
import { around, byId, find, findAll } from "./page/elements.js";
import { refuseCutPastes } from "./page/pasted_text.js";
import { whenQuiet } from "./page/quiet.js";
import { prepareDigest } from "./photos/digest.js";
import { takePhoto } from "./photos/take_photo.js";
import { fetchThumbnailsWith } from "./photos/thumbnails.js";
import { FollowedRound } from "./python/followed_round.js";
import { JudgingHere } from "./python/judging_here.js";
import { Python } from "./python/python.js";
import { Log } from "./record/log.js";
import { OtherTabs } from "./record/other_tabs.js";
import { CheckTexts } from "./rows/check_texts.js";
import { RowTaps } from "./rows/row_taps.js";
import { Rows } from "./rows/unfold.js";
import { Advice } from "./screens/advice.js";
import { AppOnDevice } from "./screens/app_on_device.js";
import { Filters } from "./stop/filters.js";
import { FindingDialog } from "./screens/finding_dialog.js";
import { Findings } from "./screens/findings.js";
import { PhotoDialog } from "./screens/photo_dialog.js";
import { Place } from "./screens/place.js";
import { followHeight } from "./screens/header.js";
import { Plan } from "./screens/plan.js";
import { Ready } from "./screens/ready.js";
import { Refused } from "./screens/refused.js";
import { Leaving } from "./screens/leaving.js";
import { paintStrip } from "./screens/strip.js";
import { wireTools } from "./screens/tools.js";
import { wireUndo } from "./screens/undo.js";
import { Views } from "./screens/views.js";
import { Visit } from "./visit/visit.js";
import { paintWho, wireWho } from "./screens/who.js";
import { deviceSpace } from "./storage/device_space.js";
import { readPass } from "./storage/pass.js";
import { requeuePhotos } from "./storage/photo_store.js";

/** @import { TakenPhoto } from "./photos/take_photo.js" */
/** @import { Readiness } from "./handover/tell_laptop.js" */
/** @import { WrittenBack } from "./record/log.js" */
/** @import { Entry } from "./storage/entry_store.js" */

const LOOK_AT_SPACE_MS = 60_000;
const LOOK_AT_WAITS_MS = 5_000;
/** Python begins once nobody has touched the page for so long, so that it delays no tap. */
const QUIET_MS = 2_000;
/** The texts are small, and wanted by the first row that is unfolded. */
const QUIET_TEXTS_MS = 600;
const PYTHON_AT_THE_LATEST_MS = 30_000;

const page = find(document, ".walk");
const log = new Log(page.dataset.inspection ?? "");
const connection = new Connection(page.dataset.host ?? "", page.dataset.nearby);
const handover = new Handover(log, connection);
const python = new Python(JSON.parse(page.dataset.python ?? "{}"));
const app = new AppOnDevice(page.dataset.edition ?? "", python.addresses.checklists);
const otherTabs = new OtherTabs(log);
const plan = new Plan();
const judging = new JudgingHere(log, python);
const followed = new FollowedRound(log, python, judging, () => whereNow());
const texts = new CheckTexts(python.addresses.checklists);
const ready = new Ready({ log, plan, handover, connection, app, python, followed, texts });
const tellLaptop = new TellLaptop(handover, connection);
const findingDialog = new FindingDialog(log, plan);
const photoDialog = new PhotoDialog(log, plan);
const rows = new Rows(log, plan, texts, byId("cards"));
const filters = new Filters(log, plan, texts);
const screens = {
  ready,
  advice: new Advice({ log, plan, connection, followed, open: (subject) => views.open(subject) }),
  visit: new Visit({ log, plan, followed, judging, open: (subject) => views.open(subject) }),
  leaving: new Leaving({ log, plan, open: (subject) => views.open(subject) }),
  refused: new Refused(handover, plan, log.inspection),
  findings: new Findings(log, plan, findingDialog),
};
const title = byId("here").textContent ?? "";
const views = new Views(log, plan, title, screens, { rows, filters, followed });
const place = new Place(log.inspection, views, rows);
/** @type {number | null} */
let spaceLeft = null;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let lookingSoon = undefined;

/**
 * Where this person is: in the space that is shown, else where the last answer was given here.
 *
 * @returns {string | null} id of the space, as far as it is known
 */
function whereNow() {
  if (views.kind === "space") return views.id;
  const own = log.state.all().filter((entry) => entry.device === log.device);
  const answers = own.filter((entry) => plan.item(entry.subject));
  const last = answers.reduce((a, b) => (a && a.at > b.at ? a : b), answers[0]);
  return plan.item(last?.subject ?? "")?.space ?? null;
}

/**
 * What this device could not store is lost once the page is closed, so that is shown at once.
 *
 * @param {unknown} error
 */
function reportLost(error) {
  const { message, name } = /** @type {Partial<Error>} */ (error ?? {});
  const why = message || name || "no reason given";
  alarm(
    `Not kept: this device cannot store it (${why}). Do not close this page; free some ` +
      "space, then answer again.",
  );
}

/**
 * Site data were cleared under the page: say what is back, and what is not.
 *
 * @param {WrittenBack} back
 */
function reportCleared({ entries, photos, lost }) {
  alarm(
    "This browser's data of the walk were cleared while this page was open. What this page " +
      `knows is written back: ${entries} ${entries === 1 ? "entry" : "entries"} of this device, ` +
      `${photos} ${photos === 1 ? "photo" : "photos"} that waited. ` +
      "Keep the page open until the line above says that all is handed over.",
  );
  if (lost) {
    alarm(
      `${lost} ${lost === 1 ? "photo" : "photos"} that waited to be handed over could not be ` +
        "read again: choose them once more from the camera's own pictures.",
    );
  }
  // What keeps the page itself may have been cleared too, and the cookies with it.
  app.open();
  connection.openedAt = 0;
  handover.now();
}

/**
 * A picture that is here already keeps its place, and that is shown.
 *
 * @param {TakenPhoto} photo
 */
function reportAlready({ already }) {
  if (already === null) return;
  const place = plan.placeOf(already);
  alarm(`This photo is kept already, under: ${place}. It stays there; open it there to move it.`);
}

/** Keep a photo that is filed later. */
async function snap() {
  const input = byId("snap", HTMLInputElement);
  const [file] = input.files ?? [];
  // Emptied at once, so that the same picture may be chosen again.
  input.value = "";
  if (!file) return;
  try {
    reportAlready(await takePhoto(log, file, ""));
  } catch (error) {
    alarm(`The photo was not kept: ${sentenceOf(error)}`);
  }
}

function goToNext() {
  if (!views.next()) alarm("Every check has an answer, seen or not.");
}

/** @param {Event} event */
function clicked(event) {
  const { go, sheet, space, openPhoto, openFinding, list } =
    around(event.target, "button")?.dataset ?? {};
  if (go === "next") goToNext();
  else if (go) location.hash = go;
  else if (sheet) location.hash = `sheet/${sheet}`;
  else if (space) location.hash = `space/${space}`;
  else if (openPhoto) photoDialog.open(openPhoto);
  else if (openFinding) findingDialog.openExisting(openFinding);
  else if (list) place.listBy(list);
}

async function saveFile() {
  try {
    await saveWaiting(log);
  } catch (error) {
    alarm(`The file could not be made: ${sentenceOf(error)}`);
  }
}

function closeDialogs() {
  for (const dialog of findAll(document, "dialog[open]", HTMLDialogElement)) dialog.close();
}

function wirePage() {
  const cards = byId("cards");
  document.addEventListener("click", clicked);
  refuseCutPastes(document);
  byId("snap").addEventListener("change", snap);
  byId("save-file").addEventListener("click", saveFile);
  wireUndo(log);
  wireTools();
  followHeight();
  new RowTaps(log, rows);
  wireHandOverNow(handover);
  new CardAnswers(log, cards, {
    onFinding: (subject) => findingDialog.openNew(subject),
    onPhotoTaken: reportAlready,
  });
  // A dialog shows what was recorded when it was opened, so it closes once two answers are settled.
  settleWithin(log, page, closeDialogs);
  recordPassedWithin(log, byId("cards"));
  keepDrafts(log, cards);
  wireWho(log, reportLost);
}

function wireLog() {
  log.addEventListener("change", (event) => {
    const { subjects } = /** @type {CustomEvent<{ subjects: Set<string> }>} */ (event).detail;
    views.paintChanged(subjects);
    paintWho(log);
    handOverIfAnyWaits();
  });
  log.addEventListener("recorded", (event) => {
    handover.added(/** @type {CustomEvent<Entry[]>} */ (event).detail);
  });
  log.addEventListener("cleared", (event) => {
    reportCleared(/** @type {CustomEvent<WrittenBack>} */ (event).detail);
  });
  log.addEventListener("lost", (event) => {
    reportLost(/** @type {CustomEvent<unknown>} */ (event).detail);
  });
}

async function handOverIfAnyWaits() {
  try {
    await handover.count();
  } catch {
    return; // counted again by the next hand-over
  }
  if (handover.waits) handover.now();
}

function wireRound() {
  followed.addEventListener("change", () => {
    views.round.paint();
    if (location.hash === "#visit") views.paintScreen();
  });
}

function wireHandover() {
  handover.addEventListener("change", () => {
    showStrip();
    const showsAdvice = location.hash === "#advice" && !handover.queued;
    if (location.hash === "#refused" || showsAdvice) views.paintScreen();
  });
  app.addEventListener("change", showStrip);
  otherTabs.addEventListener("change", showStrip);
  // What the ready screen could not prove a moment ago may be proved now.
  const proveAgain = () => {
    if (location.hash === "#ready") views.paintScreen();
  };
  app.addEventListener("change", proveAgain);
  handover.addEventListener("contact", proveAgain);
  // What could not be fetched while the computer was away can be fetched now.
  handover.addEventListener("contact", () => {
    python.startAgain();
    texts.read();
  });
  python.addEventListener("change", proveAgain);
  ready.addEventListener("looked", (event) => {
    tellLaptop.learn(/** @type {CustomEvent<Readiness>} */ (event).detail);
  });
  // The laptop lists who is ready, also where nobody has opened that screen.
  for (const part of [app, python]) part.addEventListener("change", lookSoon);
  handover.addEventListener("contact", lookSoon);
  addEventListener("online", () => handover.now());
}

/** Look whether this device is ready, once nothing has changed for a moment. */
async function lookSoon() {
  clearTimeout(lookingSoon);
  // The laptop's own page has nobody to tell.
  if (!(await readPass().catch(() => null))) return;
  clearTimeout(lookingSoon);
  lookingSoon = setTimeout(() => ready.look(), QUIET_MS);
}

function showStrip() {
  app.learnShipped(connection.edition);
  paintStrip(handover, { old: app.old, otherTabs: otherTabs.open, spaceLeft });
}

async function lookAtSpace() {
  spaceLeft = (await deviceSpace()).left;
  showStrip();
}

/** A device that was let in reaches the walks only, so it leaves to their list. */
async function setWayOut() {
  const pass = await readPass().catch(() => null);
  if (pass) byId("leave", HTMLAnchorElement).href = "/";
}

/**
 * Without a service worker the page itself is lost once it is closed, so it warns while something
 * waits or nobody answers.
 */
function warnBeforeLeaving() {
  byId("basic").hidden = app.possible;
  if (app.possible) return;
  addEventListener("beforeunload", (event) => {
    if (handover.waits || handover.trouble) event.preventDefault();
  });
}

async function start() {
  try {
    await log.open();
  } catch (error) {
    reportLost(error);
    byId("strip").textContent = "this device cannot keep anything";
    return;
  }
  wirePage();
  wireLog();
  wireHandover();
  wireRound();
  followed.open();
  paintWho(log);
  setWayOut();
  warnBeforeLeaving();
  prepareDigest();
  fetchThumbnailsWith((url) => connection.fetchPicture(url));
  otherTabs.connect();
  place.takeUp();
  await takeUpDrafts();
  page.dataset.ready = "yes";
  app.open();
  whenQuiet(() => texts.read(), QUIET_TEXTS_MS, PYTHON_AT_THE_LATEST_MS);
  whenQuiet(() => python.start(), QUIET_MS, PYTHON_AT_THE_LATEST_MS);
  lookAtSpace();
  setInterval(lookAtSpace, LOOK_AT_SPACE_MS);
  setInterval(showStrip, LOOK_AT_WAITS_MS);
  await requeuePhotos(log.inspection).catch(() => {});
  await handover.now();
}

/** Record or show what an earlier page left half-written. */
async function takeUpDrafts() {
  await recordDrafts(log).catch(reportLost);
  await findingDialog.openDraft().catch(() => {});
  navigator.storage?.persist?.().catch(() => {});
}

start();
