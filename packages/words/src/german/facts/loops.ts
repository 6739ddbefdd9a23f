/** Why a loop was not clean, in German. */
import type { PlaceFact } from '@shedbook/core';
import type { LoopFact } from '@shedbook/judge';
import { sentences } from '../../facts/sentences.ts';

/** Clauses for faults, and the sentences that they make. */
export const loops = sentences<LoopFact, PlaceFact>()({
  'missed-throughout': '{$limb :side at=start} ({$voice :voice}): fehlt durchweg',
  'missed-at': '{$limb :side at=start} ({$voice :voice}): fehlt auf {$place :say}',
  extra: '{$limb :side at=start} ({$voice :voice}): ein Schlag zu viel',
  'extra-near': '{$limb :side at=start} ({$voice :voice}): ein Schlag zu viel bei {$place :say}',
  'early-throughout': '{$limb :side at=start} ({$voice :voice}): etwa {$ms :integer} ms zu früh durchweg',
  'early-at': '{$limb :side at=start} ({$voice :voice}): etwa {$ms :integer} ms zu früh auf {$place :say}',
  'late-throughout': '{$limb :side at=start} ({$voice :voice}): etwa {$ms :integer} ms zu spät durchweg',
  'late-at': '{$limb :side at=start} ({$voice :voice}): etwa {$ms :integer} ms zu spät auf {$place :say}',
  'too-loud': '{$limb :side at=start} ({$voice :voice}): etwa {$db :integer} dB zu laut neben {$lead :voice}',
  'too-quiet':
    '{$limb :side at=start} ({$voice :voice}): etwa {$db :integer} dB zu leise neben {$lead :voice}',
  'slower-than-asked': 'Etwa {$percent :integer} Prozent langsamer als verlangt',
  'faster-than-asked': 'Etwa {$percent :integer} Prozent schneller als verlangt',
  'heard-apart': '{$what :say}, getrennt zu hören von {$voices :voices}',
  'loop-reason': '{$what :say}.',
  'loops-reason': '{$what :say}, {$times :integer} von {$of :integer} Mal.',
});
