// What was answered, by whom and when: two answers that stand side by side, and the history with "put back".

// A value in words, as typed.
export function describe(value) {
  if (value === null || value === undefined || value === "") return "nothing";
  if (typeof value !== "object") return String(value);
  if ("value" in value) return [value.value, value.unit].filter(Boolean).join(" ");
  return Object.entries(value).map(([key, answer]) => `${key} ${answer}`).join(", ");
}

function signed(entry) {
  const at = new Date(entry.at);
  const when = Number.isNaN(at.getTime()) ? entry.at : at.toLocaleString([], { day: "numeric", month: "short", hour: "2-digit", minute: "2-digit", hour12: false });
  return `${entry.who || entry.device}, ${when}`;
}

function putBack(entry, words, value = entry.value) {
  const button = document.createElement("button");
  button.type = "button";
  button.dataset.putBack = JSON.stringify(value);
  button.dataset.field = entry.field;
  button.textContent = words;
  return button;
}

// Texts are not chosen between but joined, oldest first, each one once.
const PROSE = ["note", "text", "caption", "action"];
const joined = (heads) => [...new Set(heads.map((entry) => entry.value).filter(Boolean))].join("\n\n");

// Two heads are two people who answered without seeing each other; a tap on one settles it, and both stay in the history.
export function paintDisputes(log, card) {
  const { subject } = card.dataset;
  for (const box of card.querySelectorAll("[data-dispute]")) {
    const field = box.dataset.dispute;
    const disputed = log.state.disputed(subject, field);
    box.hidden = !disputed;
    box.replaceChildren(...(disputed ? choices(log.state.heads(subject, field), field) : []));
  }
}

function choices(heads, field) {
  const words = document.createElement("p");
  const many = heads.length === 2 ? "Two" : String(heads.length);
  words.textContent = `${many} answers stand. Tap the one that is right; the others stay in the history.`;
  const buttons = heads.map((entry) => putBack(entry, `${describe(entry.value)} · ${signed(entry)}`));
  if (PROSE.includes(field) && heads.filter((entry) => entry.value).length > 1) buttons.push(putBack(heads[0], "keep both texts", joined(heads)));
  return [words, ...buttons];
}

// Whether anything that is said of a subject has two answers.
export const hasDispute = (log, subject) => log.state.fields(subject).some((field) => log.state.disputed(subject, field));

// One place hears every tap on an answer, wherever it is shown: a record that replaces all that stand.
export function settleWithin(log, root, painted) {
  root.addEventListener("click", async (event) => {
    const button = event.target.closest("[data-put-back]");
    const { subject } = button?.closest("[data-subject]")?.dataset ?? {};
    if (!subject) return;
    const value = JSON.parse(button.dataset.putBack);
    await log.record([[subject, button.dataset.field, value]], `settled: ${describe(value)}`).catch(() => {});
    painted?.(subject);
  });
}

export function paintHistory(log, list, subject) {
  const items = log.state.history(subject).map((entry) => {
    const item = document.createElement("li");
    const words = document.createElement("span");
    const what = document.createElement("b");
    what.textContent = describe(entry.value);
    words.append(`${entry.field.replace("reading/", "")}: `, what, ` · ${signed(entry)}`);
    const stands = log.state.heads(subject, entry.field).some((head) => head.id === entry.id);
    item.append(words, stands ? "stands" : putBack(entry, "put back"));
    return item;
  });
  if (!items.length) items.push(Object.assign(document.createElement("li"), { textContent: "Nothing recorded yet." }));
  list.replaceChildren(...items);
}
