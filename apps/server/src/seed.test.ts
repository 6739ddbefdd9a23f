import { IN_A_FILE } from '../test/stores.ts';
import { seedSuite } from '../test/suites/seed.suite.ts';

seedSuite(IN_A_FILE);
