// Runs beside the page: digests of photos on plain http, where the browser's own are absent,
// without delaying a tap.

import { sha256 } from "./sha256.js";

self.onmessage = (event) => {
  const { number, bytes } = event.data;
  self.postMessage({ number, digest: sha256(bytes) });
};
