/** Words that several screens of the desk say, in English. */

/** Words of what is shown only once, to be copied. */
export const shownOnce = {
  copy: 'Copy the address',
  copied: 'The address is copied.',
  notCopied: 'The address could not be copied: mark it and copy it by hand.',
} as const;

/** Words of `signIn`. */
export const signIn = {
  out: 'Sign out',
} as const;
