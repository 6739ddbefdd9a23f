/** Why. */
export const why = 'The bar is not full';
