// Runs beside the page: our own Python modules, so that this device judges by the same code as the
// computer. It starts when it is told where everything is, and answers one question after the
// other; questions and answers are JSON.

/** @typedef {{ runtime: string, modules: string, checklists: string }} Addresses */
/** @typedef {{ number: number, question: string, given: string }} Asked */

const ROOM = "/inspector-python";
const DOOR = `
import sys
sys.path.insert(0, "${ROOM}")
from inspector.in_browser.door import answer
answer
`;

/** @type {Promise<(question: string, given: string) => string> | null} */
let door = null;
let isReady = false;

/**
 * @param {string} address
 * @returns {Promise<Response>}
 * @throws {Error} where it does not come whole
 */
async function fetched(address) {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address} answered ${response.status}`);
  return response;
}

/**
 * @param {Addresses} addresses
 * @returns {Promise<(question: string, given: string) => string>}
 */
async function open({ runtime, modules, checklists }) {
  const folder = new URL(runtime, self.location.href).href;
  // Asked for together: on a slow link each of them is a wait of its own.
  const ours = fetched(modules).then((response) => response.arrayBuffer());
  const tables = fetched(checklists).then((response) => response.text());
  // Whichever fails first is reported by the await below; the others must not fail unheard.
  for (const part of [ours, tables]) part.catch(() => {});
  const { loadPyodide } = await import(`${folder}pyodide.mjs`);
  const python = await loadPyodide({ indexURL: folder });
  python.unpackArchive(await ours, "zip", { extractDir: ROOM });
  const answer = python.runPython(DOOR);
  answer("open", await tables);
  return answer;
}

// A part of the runtime that breaks off on its way is told to the page, which says so or, being
// left, does not listen any more; it is no error of the page's script.
self.addEventListener("unhandledrejection", (event) => {
  event.preventDefault();
  if (!isReady) self.postMessage({ failed: String(event.reason) });
});

/** @param {MessageEvent<{ start?: Addresses, asked?: Asked }>} event */
self.onmessage = async ({ data }) => {
  const { start, asked } = data;
  if (start) {
    door = open(start);
    try {
      await door;
      isReady = true;
      self.postMessage({ ready: true });
    } catch (error) {
      self.postMessage({ failed: String(error) });
    }
    return;
  }
  if (!asked || !door) return;
  const { number, question, given } = asked;
  try {
    const answer = await door;
    self.postMessage({ number, found: answer(question, given) });
  } catch (error) {
    self.postMessage({ number, problem: String(error) });
  }
};
