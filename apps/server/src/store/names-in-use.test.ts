import { IN_A_FILE } from '../../test/stores.ts';
import { namesInUseSuite } from '../../test/suites/names-in-use.suite.ts';

namesInUseSuite(IN_A_FILE);
