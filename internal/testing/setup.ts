/**
 * Programs that come inside packages are on the path. Property tests draw the same cases in every run, so that a failure is a change and not chance. `FUZZ_SEED=7 npm
 * test` draws others; a seed that fails becomes a named test.
 */
import fc from 'fast-check';
import { preparePath } from './programs.mjs';

preparePath();

const FIXED_SEED = 1;

fc.configureGlobal({ seed: Number(process.env['FUZZ_SEED'] ?? FIXED_SEED) });
