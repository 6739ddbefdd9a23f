/** A problem in what a person wrote, in German. */
import type { FaultFact, RoomFact } from '../../facts/sayable.ts';
import { sentences } from '../../facts/sentences.ts';

/** Lines for problems. */
export const faults = sentences<FaultFact, RoomFact>()({
  error: 'Fehler',
  warning: 'Warnung',
  fault: 'gefunden: {$found :say}; erwartet: {$expected :say}',
  'fault-with-repair': 'gefunden: {$found :say}; erwartet: {$expected :say} ({$repair :say})',
  byte: 'Byte {$offset :integer useGrouping=never}',
});
