/** The lessons of the demo, so that a new one need not be counted in every test. */
import { readdirSync } from 'node:fs';

/** Names of their files, in order. */
export const DEMO_LESSONS: readonly string[] = readdirSync(new URL('../../demo/', import.meta.url)).filter(
  (name) => name.endsWith('.lesson.yaml'),
);
