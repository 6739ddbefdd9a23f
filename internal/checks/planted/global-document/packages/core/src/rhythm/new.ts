/** A global. */
export const it = () => document.toString();
