// The three lines that the server puts before the text of static/js/worker.js.
declare const EDITION: string;
declare const ASSETS: [address: string, sha256: string][];
declare const PYTHON: [address: string, sha256: string][];
