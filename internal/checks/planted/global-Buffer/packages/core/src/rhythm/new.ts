/** A global. */
export const it = () => Buffer.toString();
