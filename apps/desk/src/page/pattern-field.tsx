/** The pattern as text, for those who would rather type it; what is wrong is said under it. */
import {
  findPatternFaults,
  formatPattern,
  isMark,
  isStruck,
  MARKS,
  type Meter,
  marksFor,
  type Pattern,
  parsePattern,
  strikeOf,
  type Voice,
} from '@shedbook/core';
import { useEffect, useId, useState } from 'react';
import { useSaid, useWords } from '../words/words.tsx';

interface PatternFieldProps {
  readonly pattern: Pattern;
  readonly voice: Voice;
  readonly meter: Meter;
  readonly onChange: (pattern: Pattern) => void;
}

interface Fault {
  readonly found: string;
  readonly expected: string;
  readonly repair: string | null;
}

function faultOf(text: string, voice: Voice, meter: Meter): Fault | null {
  const fault = findPatternFaults(text, meter)[0];
  if (fault) return fault;
  const wrong = [...text].find((mark) => isMark(mark) && isStruck(mark) && !strikeOf(voice, mark));
  const marks = marksFor(voice, MARKS).join(' ');
  return wrong ? { found: `mark "${wrong}" on ${voice}`, expected: `one of ${marks}`, repair: null } : null;
}

/** The field; the pattern changes as soon as the text is one. */
export function PatternField({ pattern, voice, meter, onChange }: PatternFieldProps) {
  const words = useWords().page;
  const said = useSaid();
  const id = useId();
  const canonical = formatPattern(pattern);
  const [text, setText] = useState(canonical);
  useEffect(() => setText(canonical), [canonical]);
  const fault = faultOf(text, voice, meter);
  const keep = () => {
    if (fault) setText(canonical);
    else if (formatPattern(parsePattern(text)) !== canonical) onChange(parsePattern(text));
  };
  return (
    <div className="field pattern-field">
      <label htmlFor={id}>{words.pattern}</label>
      <input
        id={id}
        value={text}
        spellCheck={false}
        autoCapitalize="off"
        autoComplete="off"
        aria-invalid={fault !== null}
        aria-describedby={fault ? `${id}-fault` : undefined}
        onChange={(event) => setText(event.target.value)}
        onBlur={keep}
        onKeyDown={(event) => {
          if (event.key === 'Enter' && !fault) keep();
          if (event.key === 'Escape') setText(canonical);
        }}
      />
      {fault && (
        <p className="problem" id={`${id}-fault`} role="alert">
          <span>
            {words.found(said(fault.found), said(fault.expected))}
            {fault.repair && ` ${words.hint(said(fault.repair))}`}
          </span>
        </p>
      )}
    </div>
  );
}
