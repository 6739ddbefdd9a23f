/** Title. */
export const title = () => document.title;
