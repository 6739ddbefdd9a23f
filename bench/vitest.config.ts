/** For what benches measure with the helpers of browser tests. */
import { mergeConfig } from 'vitest/config';
import tests from '../vitest.config.ts';

const { test, ...rest } = tests;

export default mergeConfig(rest, {
  test: {
    ...test,
    root: new URL('..', import.meta.url).pathname,
    include: ['bench/**/*.measure.ts'],
    maxWorkers: 1,
  },
});
