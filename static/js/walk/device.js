// What this device can keep: space, and whether the browser may throw it away. On plain http browsers do not say.

const ENOUGH = 500e6;

// {left: bytes or null, persistent: true, false or null}
export async function storage() {
  const { storage: ours } = navigator;
  const estimate = await ours?.estimate?.().catch(() => null);
  const persistent = await ours?.persisted?.().catch(() => null);
  return { left: estimate ? estimate.quota - estimate.usage : null, persistent: persistent ?? null };
}

// Ask the browser to keep what is kept. Resolves with what it says; some ask the person, who may take his time (then null).
export async function askToPersist() {
  const later = new Promise((resolve) => { setTimeout(resolve, 2_000, null); });
  const asked = navigator.storage?.persist?.().catch(() => false) ?? null;
  return Promise.race([asked, later]);
}

export const enough = (left) => left > ENOUGH;
