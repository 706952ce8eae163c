// What can go wrong between this device and the computer, each with its own true sentence.

const PATIENCE_MS = 5_000;

/** What came in place of an answer of ours. */
class Problem extends Error {
  /** @type {string} the request that it happened to, "POST /exchange/.../entries" */
  request = "";
  /** Whether nothing at all came back, so that any answer ends it. */
  silent = false;
}

/** The computer itself refused; the sentence is its own. */
export class Refusal extends Problem {
  /**
   * @param {number} status
   * @param {string} sentence
   */
  constructor(status, sentence) {
    super(sentence);
    this.status = status;
  }
}

/** No answer, or none of ours: a dead link, a server that is starting, a hotspot's sign-in page. */
export class Away extends Problem {
  /**
   * @param {string} sentence
   * @param {boolean} [silent]
   */
  constructor(sentence, silent = false) {
    super(sentence);
    this.silent = silent;
  }
}

/**
 * Nothing came at all.
 *
 * @param {string} host
 * @param {number} waited milliseconds until this device gave up; 0 where the link itself failed
 * @returns {Away}
 */
export function noAnswer(host, waited) {
  if (waited) return new Away(`no answer from ${host} within ${waited / 1000} s`, true);
  // A browser says for certain only that it has no network, never that it has one.
  if (navigator.onLine === false) return new Away("this device has no network", true);
  return new Away(`no contact with ${host}`, true);
}

/**
 * The link failed, and no browser says why. Over https the reason may be a certificate that this
 * device does not trust; then the laptop's plain page answers all the same.
 *
 * @param {string} host
 * @param {string} nearby the address of that page, or "" where there is none
 * @returns {Promise<Away>}
 */
export async function noContact(host, nearby) {
  if (!nearby || navigator.onLine === false) return noAnswer(host, 0);
  const words = (await answersPlainly(nearby))
    ? `${host} is near, but no safe connection can be made: its certificate is new, or a ` +
      `clock is wrong; open ${nearby}trust on this device`
    : `no contact with ${host}; if it is near, open ${nearby}trust on this device`;
  return new Away(words, true);
}

/**
 * @param {string} nearby
 * @returns {Promise<boolean>} false also where the browser does not let a safe page ask
 */
function answersPlainly(nearby) {
  return new Promise((resolve) => {
    const image = new Image();
    image.onload = () => resolve(true);
    image.onerror = () => resolve(false);
    setTimeout(() => resolve(false), PATIENCE_MS);
    image.src = `${nearby}here.svg?${Date.now()}`;
  });
}

/**
 * The answer began and did not come to its end.
 *
 * @param {string} host
 * @returns {Away}
 */
export function halfAnAnswer(host) {
  return new Away(`the answer of ${host} broke off half way`);
}

/**
 * Something came that no page of ours says.
 *
 * @param {string} host
 * @param {{ ok: boolean, status: number, ours: boolean }} answer
 * @returns {Away}
 */
export function strangeAnswer(host, { ok, status, ours }) {
  if (!ok) return new Away(`error ${status} came in place of an answer from ${host}`);
  if (ours) return new Away(`${host} sent an answer that cannot be read`);
  return new Away(
    `something else answers in place of ${host}, such as a sign-in page of the network`,
  );
}

/**
 * What keeps things from being handed over, as the strip says it.
 *
 * @param {unknown} error
 * @param {string} host
 * @returns {string}
 */
export function troubleOf(error, host) {
  if (!(error instanceof Refusal)) return error instanceof Error ? error.message : String(error);
  const { status, message } = error;
  if (status === 401) {
    // One that trusts the laptop by now has another address, which the sentence names.
    const goesOn = message.startsWith("This device goes on at");
    return goesOn ? message : "this device is not let in any more; pair it again";
  }
  if (status === 507) return `the disk of ${host} takes nothing more; free some space there`;
  if (status === 503) return `${host} is busy with other photos; this goes on by itself`;
  if (status >= 500) return `${host} has a fault of its own (${status})`;
  return message;
}
