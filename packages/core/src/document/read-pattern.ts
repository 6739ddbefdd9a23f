/** Reading pattern texts of a lesson: for a voice, in a meter, every fault reported. */
import { goesOn, marksFor, strikeOf } from '../kit/strike.ts';
import type { Voice } from '../kit/voice.ts';
import { isMark, isStruck, MARKS, type Mark } from '../rhythm/cell.ts';
import type { Meter } from '../rhythm/meter.ts';
import { findPatternFaults, type Pattern, parsePattern } from '../rhythm/pattern.ts';
import type { Report } from './fault.ts';
import type { FieldPath } from './field-path.ts';

/** Reports marks that a voice cannot be played with. @returns whether there were none. */
function checkMarks(text: string, voice: Voice, path: FieldPath, report: Report): boolean {
  const wrong = [...text].flatMap((mark, offset) =>
    isMark(mark) && isStruck(mark) && !strikeOf(voice, mark) ? [{ mark, offset }] : [],
  );
  for (const { mark, offset } of wrong) {
    report({
      code: 'mark-not-for-voice',
      path,
      offset,
      found: { fact: 'mark-on-voice', mark, voice },
      expected: { fact: 'marks-for-voice', marks: marksFor(voice, MARKS).join(' ') },
    });
  }
  return wrong.length === 0;
}

/** Reports each `~` that stands where nothing goes on. @returns whether there was none. */
function checkHeld(text: string, voice: Voice, path: FieldPath, report: Report): boolean {
  const marks = MARKS.filter((mark) => goesOn(voice, mark)).join(' ');
  const playable = marksFor(voice, MARKS).join(' ');
  let before: Mark = '.';
  let isRight = true;
  [...text].forEach((mark, offset) => {
    if (!isMark(mark)) return;
    if (mark === '~' && before !== '~' && !goesOn(voice, before)) {
      isRight = false;
      report({
        code: 'nothing-held',
        path,
        offset,
        found: { fact: 'mark-on-voice', mark, voice },
        expected: { fact: marks === '' ? 'marks-for-voice' : 'held-after', marks: marks || playable },
        repair: { fact: 'write-mark', mark: '.' },
      });
    }
    before = mark;
  });
  return isRight;
}

/**
 * Reads a pattern text for a voice.
 * @returns the pattern, or null when something is wrong with it (reported).
 */
export function readPattern(
  text: string,
  voice: Voice,
  meter: Meter | null,
  path: FieldPath,
  report: Report,
): Pattern | null {
  const faults = findPatternFaults(text, meter);
  for (const fault of faults) report({ code: 'pattern', path, ...fault });
  const playable = checkMarks(text, voice, path, report);
  const held = checkHeld(text, voice, path, report);
  return faults.length === 0 && playable && held ? parsePattern(text) : null;
}
