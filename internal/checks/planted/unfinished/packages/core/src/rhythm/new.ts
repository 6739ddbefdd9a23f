/** Where. TODO: more. */
export const where = '';
