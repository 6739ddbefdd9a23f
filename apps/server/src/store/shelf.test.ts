import { IN_A_FILE } from '../../test/stores.ts';
import { shelfSuite } from '../../test/suites/shelf.suite.ts';

shelfSuite(IN_A_FILE);
