/** A global. */
export const it = () => console.toString();
