/** The groove, limb by limb: what each voice repeats, and how loud it is beside the lead voice. */

import { type Lesson, LIMBS, type Limb, notateBar, type Voice } from '@shedbook/core';
import { useState } from 'react';
import { useDocument } from '../document/use-document.ts';
import { addVoice } from '../edit/groove.ts';
import type { SlotPlace } from '../edit/strokes.ts';
import { BarsDrawing } from '../notation/exercise-drawing.tsx';
import { AddVoice } from '../shared/add-voice.tsx';
import { Paper, ViewHead } from '../shared/paper.tsx';
import { sideOfLimb } from '../shared/sides-of.ts';
import { useWords } from '../words/words.tsx';
import styles from './groove-view.module.css';
import { SetUpPlan } from './set-up.tsx';
import { VoiceLine } from './voice-line.tsx';

function Together({ lesson }: { readonly lesson: Lesson }) {
  const words = useWords().groove;
  const bars = Math.max(1, ...lesson.groove.map((part) => part.pattern.bars.length));
  const notated = Array.from({ length: bars }, (_, bar) =>
    notateBar(
      lesson.groove.map((part) => ({
        voice: part.voice,
        cells: part.pattern.bars[bar % part.pattern.bars.length] ?? [],
      })),
      lesson.meter,
    ),
  );
  return (
    <figure className={styles.together}>
      <figcaption className={styles.label}>{words.together}</figcaption>
      <BarsDrawing bars={notated} staff="five lines" sticking={false} repeats />
    </figure>
  );
}

interface LimbSectionProps {
  readonly lesson: Lesson;
  readonly limb: Limb;
  readonly active: { readonly voice: Voice; readonly place: SlotPlace } | null;
  readonly onActive: (voice: Voice, place: SlotPlace) => void;
}

function LimbSection({ lesson, limb, active, onActive }: LimbSectionProps) {
  const words = useWords();
  const parts = lesson.groove.filter((part) => lesson.limbs[part.voice] === limb);
  return (
    <section className={styles.limb}>
      <h3>
        {words.limbs[limb]}
        <span className={styles.side}>
          {words.groove.sides[sideOfLimb(limb, lesson.setUp)][limb.endsWith('foot') ? 'foot' : 'hand']}
        </span>
      </h3>
      {parts.length === 0 && <p className="quiet">{words.groove.nothing}</p>}
      {parts.map((part) => (
        <VoiceLine
          key={part.voice}
          lesson={lesson}
          part={part}
          active={active?.voice === part.voice ? active.place : null}
          onActive={(place) => onActive(part.voice, place)}
        />
      ))}
    </section>
  );
}

/** The view. */
export function GrooveView({ lesson }: { readonly lesson: Lesson }) {
  const document = useDocument();
  const words = useWords().groove;
  const [active, setActive] = useState<{ readonly voice: Voice; readonly place: SlotPlace } | null>(null);
  return (
    <Paper>
      <ViewHead title={words.title} lead={words.lead} />
      <div className={styles.whole}>
        <Together lesson={lesson} />
        <SetUpPlan lesson={lesson} />
      </div>
      {LIMBS.map((limb) => (
        <LimbSection
          key={limb}
          lesson={lesson}
          limb={limb}
          active={active}
          onActive={(voice, place) => setActive({ voice, place })}
        />
      ))}
      <div className={styles.add}>
        <AddVoice
          there={lesson.groove.map((part) => part.voice)}
          onAdd={(voice) => document.edit(addVoice(document.state().text, lesson, voice))}
        />
      </div>
    </Paper>
  );
}
