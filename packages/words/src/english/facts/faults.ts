/** A problem in what a person wrote, in English. */
import type { FaultFact, RoomFact } from '../../facts/sayable.ts';
import { sentences } from '../../facts/sentences.ts';

/** Lines for problems. */
export const faults = sentences<FaultFact, RoomFact>()({
  error: 'error',
  warning: 'warning',
  fault: 'found {$found :say}, expected {$expected :say}',
  'fault-with-repair': 'found {$found :say}, expected {$expected :say} ({$repair :say})',
  byte: 'byte {$offset :integer useGrouping=never}',
});
