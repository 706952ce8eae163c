import js from "@eslint/js";
import globals from "globals";

// Each room of the walk may import from those before it, never from those after it.
const ROOMS = ["page", "storage", "record", "photos", "handover", "python", "cards", "visit", "screens"];
const LONGEST_FUNCTION = { max: 45, skipBlankLines: true, skipComments: true };

function oneWay(room, index) {
  const later = ROOMS.slice(index + 1).map((name) => `../${name}/*`);
  const outside = ["../main.js", "../../*"];
  // Page modules never open the database themselves: only the storage room does.
  const database = ROOMS.indexOf(room) < ROOMS.indexOf("photos") ? [] : ["**/storage/database.js"];
  return {
    files: [`static/js/walk/${room}/**`],
    rules: { "no-restricted-imports": ["error", { patterns: [...later, ...outside, ...database] }] },
  };
}

export default [
  js.configs.recommended,
  {
    languageOptions: {
      ecmaVersion: 2023,
      sourceType: "module",
      globals: { ...globals.browser, ...globals.serviceworker },
    },
    linterOptions: { reportUnusedDisableDirectives: "error" },
    rules: {
      curly: ["error", "multi-line"],
      eqeqeq: "error",
      "max-depth": ["error", 3],
      "max-len": ["error", { code: 100, ignoreUrls: true }],
      "max-lines-per-function": ["error", LONGEST_FUNCTION],
      "no-nested-ternary": "error",
      "no-var": "error",
      "one-var": ["error", "never"],
      "prefer-const": "error",
    },
  },
  ...ROOMS.map(oneWay),
];
