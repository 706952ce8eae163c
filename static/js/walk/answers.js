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

function putBack(entry, words) {
  const button = document.createElement("button");
  button.type = "button";
  button.dataset.putBack = JSON.stringify(entry.value);
  button.dataset.field = entry.field;
  button.textContent = words;
  return button;
}

// Two heads are two people who answered without seeing each other; a tap on one settles it, and both stay in the history.
export function paintDisputes(log, card) {
  const { subject } = card.dataset;
  for (const box of card.querySelectorAll("[data-dispute]")) {
    const field = box.dataset.dispute;
    const disputed = log.state.disputed(subject, field);
    box.hidden = !disputed;
    if (!disputed) {
      box.replaceChildren();
      continue;
    }
    const words = document.createElement("p");
    words.textContent = "Two answers stand. Tap the one that is right.";
    box.replaceChildren(words, ...log.state.heads(subject, field).map((entry) => putBack(entry, `${describe(entry.value)} · ${signed(entry)}`)));
  }
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
