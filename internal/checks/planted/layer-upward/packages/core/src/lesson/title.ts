/** A title. */
export const title = '';
