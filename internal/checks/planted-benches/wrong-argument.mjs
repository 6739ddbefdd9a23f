/** A bench that hands a room what it does not take: the check of benches must refuse it. */
import { parsePattern } from '@shedbook/core';

parsePattern(4);
