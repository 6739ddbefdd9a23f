/** A global. */
export const it = () => globalThis.toString();
