// Making a report takes seconds: says so, counts them, and can be stopped. Without this script the form does the same, only silently.
const form = document.querySelector("form[data-making]");
const box = document.getElementById("making");
let stop = null;

form?.addEventListener("submit", async (event) => {
  event.preventDefault();
  stop?.abort();
  stop = new AbortController();
  const began = Date.now(), words = box.querySelector("p"), link = box.querySelector("a"), button = box.querySelector("button");
  const tell = () => { words.textContent = `Making the report, ${Math.round((Date.now() - began) / 1000)} s. Everything recorded is set anew, so a large one takes up to a minute.`; };
  const clock = setInterval(tell, 1000);
  box.hidden = button.hidden = false;
  link.hidden = true;
  tell();
  button.onclick = () => stop.abort();
  try {
    const answer = await fetch(`${form.action}?${new URLSearchParams(new FormData(form))}`, { signal: stop.signal });
    if (!answer.ok) throw new Error((await answer.text()).match(/<main[^>]*>([\s\S]*?)<\/main>/)?.[1].replace(/<[^>]+>/g, " ").trim() || `the computer answered ${answer.status}`);
    URL.revokeObjectURL(link.href);
    link.href = URL.createObjectURL(await answer.blob());
    link.download = form.dataset.making;
    link.hidden = false;
    words.textContent = `The report is ready after ${Math.round((Date.now() - began) / 1000)} s.`;
    link.focus();
  } catch (error) {
    words.textContent = error.name === "AbortError" ? "Stopped. Nothing was changed." : `The report could not be made: ${error.message}`;
  }
  clearInterval(clock);
  button.hidden = true;
});
