import { IN_A_FILE } from '../test/stores.ts';
import { everyRouteSuite } from '../test/suites/every-route.suite.ts';

everyRouteSuite(IN_A_FILE);
