// Heavy work begins at a moment at which nobody taps or types, so that it delays nobody.

const HANDS = ["pointerdown", "keydown"];

/**
 * Do something once nobody has touched the page for a while, or at the latest after a longer one.
 *
 * @param {() => void} act
 * @param {number} quiet milliseconds without a touch
 * @param {number} latest milliseconds after which it is done in any case
 */
export function whenQuiet(act, quiet, latest) {
  const end = setTimeout(begin, latest);
  let still = setTimeout(begin, quiet);
  const touched = () => {
    clearTimeout(still);
    still = setTimeout(begin, quiet);
  };
  for (const hand of HANDS) addEventListener(hand, touched, { capture: true, passive: true });

  function begin() {
    clearTimeout(still);
    clearTimeout(end);
    for (const hand of HANDS) removeEventListener(hand, touched, { capture: true });
    act();
  }
}
