/** Functions of MessageFormat that no message of ours calls (offsets, and the drafts: currency, dates, units) stay out of the pages. */
import type { Plugin } from 'vite';

const FUNCTIONS = /\/messageformat\/lib\/functions\/index\.js$/;

/** What keeps them in: the drafts are frozen, which is a use of them; the offset stands in the list of the others. */
const UNUSED = /^DraftFunctions = .*$|^ {4}offset,$/gm;

/** Leaves them behind. */
export const withoutUnusedFunctions = (): Plugin => ({
  name: 'without-unused-functions',
  enforce: 'pre',
  transform: (code, id) => (FUNCTIONS.test(id) ? { code: code.replaceAll(UNUSED, ''), map: null } : null),
});
