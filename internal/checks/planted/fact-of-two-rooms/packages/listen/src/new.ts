/** What listening says. */
export type HeardFact = { readonly fact: 'heard' } | { readonly fact: 'late' };
