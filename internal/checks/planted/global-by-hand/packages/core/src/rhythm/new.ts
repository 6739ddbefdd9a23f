declare const process: { cwd(): string };
/** Where. */
export const where = () => process.cwd();
