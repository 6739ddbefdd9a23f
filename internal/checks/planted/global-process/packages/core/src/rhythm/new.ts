/** A global. */
export const it = () => process.toString();
