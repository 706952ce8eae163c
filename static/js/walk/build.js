// Cards made from what the page holds once: the check of its system, the parts all cards share, the rows of each kind of reading.

// A copy of a check's card for one unit; ids become unique so that every label keeps its input.
export function build(source, subject, of) {
  const card = source.cloneNode(true);
  for (const place of card.querySelectorAll("[data-part]")) {
    place.replaceWith(document.getElementById(`part-${place.dataset.part}`).content.cloneNode(true));
  }
  for (const row of card.querySelectorAll("[data-row]")) fillRow(row);
  const suffix = subject.replaceAll("/", "_");
  for (const element of card.querySelectorAll("[id]")) element.id += `--${suffix}`;
  for (const label of card.querySelectorAll("label[for]")) label.htmlFor += `--${suffix}`;
  card.dataset.subject = subject;
  card.id = `card--${suffix}`;
  card.querySelector("[data-of]").textContent = of;
  return card;
}

// The row of a reading's kind stands in the page once; here it gets its name, its label and its choices or units.
function fillRow(row) {
  const { row: kind, id, label } = row.dataset;
  row.append(document.getElementById(`row-${kind}`).content.cloneNode(true));
  const options = (row.dataset.options ?? "").split("|").filter(Boolean);
  const field = row.querySelector("[data-field]");
  const name = row.querySelector("label");
  field.id = `r-${id}`;
  field.dataset.reading = id;
  name.htmlFor = field.id;
  name.textContent = label;
  if ("optional" in row.dataset) name.append(" ", Object.assign(document.createElement("small"), { textContent: "if at hand" }));
  if (kind === "choice") field.append(new Option("–", ""), ...options.map((one) => new Option(one)));
  const unit = row.querySelector("[data-unit-of]");
  const sign = row.querySelector("[data-sign]");
  if (unit) {
    unit.dataset.unitOf = id;
    unit.setAttribute("aria-label", `unit of ${label}`);
    unit.append(...options.map((one) => new Option(one)));
    sign.dataset.sign = id;
    sign.setAttribute("aria-label", `change the sign of ${label}`);
  }
  row.querySelector("[data-odd]").dataset.odd = id;
  row.querySelector("[data-dispute]").dataset.dispute = `reading/${id}`;
}
