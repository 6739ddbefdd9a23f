/** A global. */
export const it = () => fetch.toString();
