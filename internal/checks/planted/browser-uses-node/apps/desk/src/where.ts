/** Where. */
export const where = () => process.cwd();
