/** Where. */
export const where = '/home/somebody/lessons';
