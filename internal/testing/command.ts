/** The `shedbook` command, as a program that tests start. */
import { fileURLToPath } from 'node:url';

/** Its file, which Node runs. */
export const COMMAND: string = fileURLToPath(new URL('../../bin/shedbook.mjs', import.meta.url));
