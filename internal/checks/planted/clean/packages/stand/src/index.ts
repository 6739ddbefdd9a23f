/** The page's own title. */
export const title = (): string => document.title;
