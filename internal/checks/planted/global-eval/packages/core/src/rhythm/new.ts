/** A global. */
export const it = () => eval.toString();
