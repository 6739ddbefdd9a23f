/** Now. */
export const now = Date['now'];
