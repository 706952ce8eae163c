// Photos are handed over after the entries: the small copies of all of them first, then the
// originals. Each step may be broken off and done again; the computer is asked what it has, so that
// nothing is sent twice.

import { copyOf } from "../photos/small_copies.js";
import * as photos from "../storage/photo_store.js";
import { Away, Refusal } from "./problems.js";

/** @import { Connection } from "./connection.js" */

/**
 * What the computer has of a photo.
 *
 * @typedef {object} Known
 * @property {boolean} [copy]
 * @property {boolean} [original]
 */

const PATIENCE_MS = 120_000;
/** A slow link is waited for, so that a large photo does not begin anew for ever. */
const SLOWEST_BYTES_PER_MS = 20;
const TRIES = 3;
const TOO_LARGE = 413;
/** What the computer says of this very picture; every other refusal is about link or device. */
const ABOUT_THE_PICTURE = [400, TOO_LARGE, 415, 422];

/**
 * @param {unknown} error
 * @returns {error is Refusal}
 */
function isAboutThePicture(error) {
  return error instanceof Refusal && ABOUT_THE_PICTURE.includes(error.status);
}

/** Hands over the photos of one inspection. */
export class PhotoHandover {
  /**
   * @param {Connection} connection
   * @param {string} inspection
   * @param {string} base where the inspection's exchange is
   */
  constructor(connection, inspection, base) {
    this.connection = connection;
    this.inspection = inspection;
    this.base = base;
  }

  /**
   * Hand over all that waits.
   *
   * @param {() => Promise<void>} afterEach called after each picture
   */
  async run(afterEach) {
    const { inspection } = this;
    for (const sha of await photos.queuedPhotos(inspection)) await copyOf(inspection, sha);
    for (const sha of await photos.queuedCopies(inspection)) {
      await this.#handOverCopy(sha);
      await afterEach();
    }
    for (const sha of await photos.queuedPhotos(inspection)) {
      await this.#handOverOriginal(sha);
      await afterEach();
    }
  }

  /**
   * What the computer has of a photo; where it cannot tell, everything is sent.
   *
   * @param {string} sha
   * @returns {Promise<Known>}
   */
  async #known(sha) {
    try {
      return await this.connection.ask(this.#address(sha));
    } catch (error) {
      if (error instanceof Refusal && error.status !== 401) return {};
      throw error;
    }
  }

  /** @param {string} sha */
  async #handOverCopy(sha) {
    const { inspection } = this;
    const copy = await photos.readCopy(inspection, sha);
    const known = await this.#known(sha);
    if (!copy || known.copy || known.original) {
      await photos.markCopy(inspection, sha);
      return;
    }
    try {
      const more = { "X-Digest": `sha256=${copy.digest}` };
      await this.#put(sha, "copy", copy.bytes, more);
      await photos.markCopy(inspection, sha);
    } catch (error) {
      // A copy that is not taken costs nothing: its original follows.
      if (!isAboutThePicture(error)) throw error;
      await photos.markCopy(inspection, sha, error.message);
    }
  }

  /** @param {string} sha */
  async #handOverOriginal(sha) {
    for (let attempt = 1; ; attempt += 1) {
      try {
        await this.#sendOriginal(sha);
        return;
      } catch (error) {
        if (!isAboutThePicture(error)) throw error;
        // A picture can be damaged on the way, so the fault counts as its own only when it is
        // repeated.
        const mayBeTheWay = attempt < TRIES && error.status !== TOO_LARGE;
        if (mayBeTheWay) continue;
        await photos.markPhoto(this.inspection, sha, error.message);
        return;
      }
    }
  }

  /** @param {string} sha */
  async #sendOriginal(sha) {
    const { inspection } = this;
    const photo = await photos.readPhoto(inspection, sha);
    const known = await this.#known(sha);
    if (!known.original) await this.#put(sha, "original", photo?.bytes ?? null);
    await photos.markPhoto(inspection, sha);
    const after = await this.#known(sha);
    if (after.original === true) await photos.removeOriginal(inspection, sha);
  }

  /**
   * @param {string} sha
   * @param {"copy" | "original"} size
   * @param {ArrayBuffer | null} body
   * @param {Record<string, string>} [more] headers
   */
  async #put(sha, size, body, more = {}) {
    const headers = { "Content-Type": "application/octet-stream", ...more };
    const url = `${this.#address(sha)}?size=${size}`;
    const patience = PATIENCE_MS + Math.ceil((body?.byteLength ?? 0) / SLOWEST_BYTES_PER_MS);
    const reply = await this.connection.write(url, { method: "PUT", body, headers }, patience);
    if (reply.sha !== sha) throw new Away(`${this.connection.host} answered for another photo`);
  }

  /** @param {string} sha */
  #address(sha) {
    return `${this.base}/photo/${sha}`;
  }
}
