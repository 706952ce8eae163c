// The findings that were made from a check, shown on its card.

const make = (tag, text, more = {}) => Object.assign(document.createElement(tag), { textContent: text, ...more });

// The findings that stand: they have a title and were not taken out.
export function findings(log) {
  return log.state.subjects("finding/").filter((subject) => log.state.value(subject, "title") && !log.state.value(subject, "gone"));
}

// "sheet/<system>/<unit>/<check>" where a finding was made from a check, else "".
function sheetOf(log, subject) {
  const check = log.state.value(subject, "check");
  return check ? `sheet/${log.state.value(subject, "on")}/${check}` : "";
}

export function paintFound(log, card) {
  const box = card.querySelector("[data-found]");
  const found = findings(log).filter((subject) => sheetOf(log, subject) === card.dataset.subject);
  box.hidden = !found.length;
  const rows = found.map((subject) => {
    const urgency = log.state.value(subject, "urgency") ?? "";
    const row = make("button", "", { type: "button", className: urgency === "danger now" ? "danger" : "" });
    row.dataset.openFinding = subject;
    row.append(make("b", urgency), make("span", log.state.value(subject, "title")));
    return row;
  });
  box.replaceChildren(make("p", found.length === 1 ? "1 finding" : `${found.length} findings`), ...rows);
}
