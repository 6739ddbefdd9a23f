/** A global. */
export const it = () => Function.toString();
