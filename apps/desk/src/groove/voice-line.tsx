/** One voice of the groove: its line, its balance in decibels and in words. */

import { barPart, type GroovePart, howOf, howWords, type Lesson, notateBar } from '@shedbook/core';
import { Button, Icon } from '@shedbook/stand';
import { HowSign } from '@shedbook/stand/how-list';
import { sayHow, sayPattern, spokenMark } from '@shedbook/words';
import type { SlotPlace } from '../edit/strokes.ts';
import { LineEditor } from '../line/line-editor.tsx';
import { useWords } from '../words/words.tsx';
import { BalanceRange } from './balance-range.tsx';
import type { GrooveWork } from './use-groove.ts';
import styles from './voice-line.module.css';

interface VoiceLineProps {
  readonly lesson: Lesson;
  readonly part: GroovePart;
  readonly work: GrooveWork;
  readonly active: SlotPlace | null;
  /** Whether the tools beside the groove are for this voice. */
  readonly chosen: boolean;
  readonly takesFocus: boolean;
  readonly onActive: (place: SlotPlace) => void;
}

/** The voice. */
export function VoiceLine({ lesson, part, work, active, chosen, takesFocus, onActive }: VoiceLineProps) {
  const words = useWords();
  const { voice, pattern } = part;
  const how = howOf(lesson, null, voice);
  const said = sayPattern(words.counts, pattern, (mark) => spokenMark(words.marks, voice, mark)).join('; ');
  return (
    <div className={styles.line} data-voice={voice} data-chosen={chosen || undefined}>
      <div className={styles.head}>
        <h4>{words.voices[voice]}</h4>
        {voice === lesson.lead && <span className="quiet">{words.groove.leadVoice}</span>}
        {how.length > 0 && (
          <span className="quiet" data-part="how">
            {howWords(how).map((word) => (
              <HowSign key={word} word={word} />
            ))}
            {sayHow(how, words.how)}
          </span>
        )}
        <Button
          dress="bare"
          aria-label={words.groove.removeVoice({ voice })}
          onClick={() => work.remove(voice)}
        >
          <Icon name="close" />
        </Button>
      </div>
      <LineEditor
        label={`${words.voices[voice]}: ${said || words.counts.silent}`}
        line={{ pattern, sticking: null }}
        voice={voice}
        meter={lesson.meter}
        notated={pattern.bars.map((_, bar) => notateBar([barPart(voice, pattern, bar)], lesson.meter))}
        staff="one line"
        active={active}
        takesFocus={takesFocus}
        {...(chosen ? {} : { marksPlace: 'while written' as const })}
        onActive={onActive}
        onChange={(line) => work.change(voice, line.pattern)}
      />
      {voice !== lesson.lead && (
        <BalanceRange
          label={words.groove.balance({ voice })}
          kept={lesson.balance[voice]}
          onKeep={(db) => work.setLevel(voice, db)}
        />
      )}
    </div>
  );
}
