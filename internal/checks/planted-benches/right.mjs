/** A bench that calls rooms as they are: the check of benches has nothing against it. */
import { parsePattern } from '@shedbook/core';

parsePattern('x.. ..x x.x ...');
