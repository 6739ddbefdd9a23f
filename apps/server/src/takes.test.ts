import { IN_A_FILE } from '../test/stores.ts';
import { takesSuite } from '../test/suites/takes.suite.ts';

takesSuite(IN_A_FILE);
