/** A global. */
export const it = () => setTimeout.toString();
