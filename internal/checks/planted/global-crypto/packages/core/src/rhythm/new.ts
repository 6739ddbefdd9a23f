/** A global. */
export const it = () => crypto.toString();
