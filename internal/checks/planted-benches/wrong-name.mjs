/** A bench that asks a room for what it does not export: the check of benches must refuse it. */
import { parsePatern } from '@shedbook/core';

parsePatern('x.. ..x x.x ...');
