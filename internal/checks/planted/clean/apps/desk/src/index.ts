import '@shedbook/stand/theme/ink.css';
import { title } from '@shedbook/stand';

/** Starts the ear in its worker. */
export function startEar(): Worker {
  return new Worker(new URL(`./ear.worker.ts`, import.meta.url), { name: title() });
}
