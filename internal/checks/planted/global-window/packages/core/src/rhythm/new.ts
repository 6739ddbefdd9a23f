/** A global. */
export const it = () => window.toString();
