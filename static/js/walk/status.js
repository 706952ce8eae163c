// The header: how much was seen, and the sentence that stays until it was read.

const RATINGS = ["good", "fair", "poor", "failed"];

// What a check's sheet says: "seen", "not seen", "not fitted" or "open". A proposed rating counts as seen.
export function answerOf(log, subject) {
  const rating = log.state.value(subject, "rating");
  if (RATINGS.includes(rating)) return "seen";
  if (rating === "not fitted") return rating;
  if (rating) return "not seen";
  return RATINGS.includes(log.judgements[subject]?.rating) ? "seen" : "open";
}

export function tally(log, subjects) {
  const counted = { seen: 0, "not seen": 0, "not fitted": 0, open: 0 };
  for (const subject of subjects) counted[answerOf(log, subject)] += 1;
  return { seen: counted.seen, unseen: counted["not seen"], of: subjects.length - counted["not fitted"] };
}

export function paintTide(box, { seen, unseen, of }) {
  const share = (count) => `${of ? (100 * count) / of : 0}%`;
  box.querySelector("i").style.width = share(seen);
  box.querySelector("u").style.width = share(unseen);
}

export function paintHeader(log, subjects, here, where) {
  const counts = tally(log, subjects);
  document.getElementById("here").textContent = here;
  document.getElementById("where").textContent = where;
  const count = document.getElementById("count");
  const strong = document.createElement("b");
  strong.textContent = counts.seen;
  count.replaceChildren(strong, ` of ${counts.of} seen`);
  const tide = document.getElementById("tide");
  paintTide(tide, counts);
  tide.setAttribute("aria-label", `${counts.seen} of ${counts.of} checks seen, ${counts.unseen} said not to be seen`);
}

// A refusal stands as long as the entry does; once understood it is not shouted again.
const understood = new Set();

// A sentence that stays in sight until somebody says that it was read.
export function alarm(sentence) {
  const box = document.getElementById("alarm");
  if (understood.has(sentence)) return;
  const button = Object.assign(document.createElement("button"), { type: "button", textContent: "understood" });
  button.addEventListener("click", () => {
    box.hidden = true;
    if (sentence.startsWith("Refused")) understood.add(sentence);
  });
  box.replaceChildren(Object.assign(document.createElement("span"), { textContent: sentence }), button);
  box.hidden = false;
}
