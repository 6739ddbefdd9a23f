import { IN_A_FILE } from '../../test/stores.ts';
import { rosterSuite } from '../../test/suites/roster.suite.ts';

rosterSuite(IN_A_FILE);
