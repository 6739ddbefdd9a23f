/** Now. */
export const now = () => new Date();
