/** A global. */
export const it = () => performance.toString();
