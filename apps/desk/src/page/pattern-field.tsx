/** The pattern as text, for those who would rather type it; what is wrong is said under it. */

import {
  findPatternFaults,
  formatPattern,
  isMark,
  isStruck,
  type LessonProblem,
  MARKS,
  type Meter,
  marksFor,
  type Pattern,
  parsePattern,
  strikeOf,
  type Voice,
} from '@shedbook/core';
import { Field } from '@shedbook/stand';
import { hintWords } from '@shedbook/words';
import { useDraft } from '../shared/use-draft.ts';
import { useSay, useWords } from '../words/words.tsx';
import styles from './pattern-field.module.css';

interface PatternFieldProps {
  readonly pattern: Pattern;
  readonly voice: Voice;
  readonly meter: Meter;
  readonly onChange: (pattern: Pattern) => void;
}

type Fault = Pick<LessonProblem, 'found' | 'expected' | 'repair'>;

function faultOf(text: string, voice: Voice, meter: Meter): Fault | null {
  const fault = findPatternFaults(text, meter)[0];
  if (fault) return fault;
  const wrong = [...text].find((mark) => isMark(mark) && isStruck(mark) && !strikeOf(voice, mark));
  const marks = marksFor(voice, MARKS).join(' ');
  if (!wrong) return null;
  return {
    found: { fact: 'mark-on-voice', mark: wrong, voice },
    expected: { fact: 'marks-for-voice', marks },
    repair: null,
  };
}

/** The field; the pattern changes as soon as the text is one. */
export function PatternField({ pattern, voice, meter, onChange }: PatternFieldProps) {
  const words = useWords().page;
  const say = useSay();
  const { field, reset } = useDraft(formatPattern(pattern), (text) => {
    if (!faultOf(text, voice, meter)) onChange(parsePattern(text));
  });
  const fault = faultOf(field.value, voice, meter);
  return (
    <Field
      {...field}
      onBlur={fault ? reset : field.onBlur}
      className={styles.pattern}
      label={words.pattern}
      spellCheck={false}
      autoCapitalize="off"
      autoComplete="off"
      problemRole="alert"
      problem={
        fault && (
          <span>
            {words.found({ found: say(fault.found), expected: say(fault.expected) })}
            {fault.repair && ` ${hintWords(words, say(fault.repair))}`}
          </span>
        )
      }
    />
  );
}
