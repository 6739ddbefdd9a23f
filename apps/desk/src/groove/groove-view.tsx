/** The groove, limb by limb: what each voice repeats, and how loud it is beside the lead voice. */

import { type Lesson, LIMBS, type Limb, type Voice } from '@shedbook/core';
import { Button } from '@shedbook/stand';
import { useState } from 'react';
import { useDocumentState } from '../document/use-document.ts';
import { hasOwnGroove } from '../edit/groove.ts';
import type { SlotPlace } from '../edit/strokes.ts';
import { useDocked, WithTools } from '../line/with-tools.tsx';
import { GrooveDrawing } from '../notation/groove-drawing.tsx';
import { AddVoice } from '../shared/add-voice.tsx';
import { Guide } from '../shared/guide.tsx';
import { Paper, ViewHead } from '../shared/paper.tsx';
import { partOf, SectionChoice } from '../shared/section-choice.tsx';
import { sideOfLimb } from '../shared/sides-of.ts';
import { useWords } from '../words/words.tsx';
import { ExerciseVoice } from './exercise-voice.tsx';
import styles from './groove-view.module.css';
import { LayerOrder } from './layer-order.tsx';
import { SetUpPlan } from './set-up.tsx';
import { type GrooveWork, useGroove } from './use-groove.ts';
import { VoiceBox } from './voice-box.tsx';
import { VoiceLine } from './voice-line.tsx';

const FIRST: SlotPlace = { bar: 0, beat: 0, slot: 0 };

/** Which slot of which voice is written. */
interface Active {
  readonly voice: Voice;
  readonly place: SlotPlace;
  /** Whether the slot is to take the focus. */
  readonly focus: boolean;
}

interface LimbSectionProps {
  readonly lesson: Lesson;
  readonly limb: Limb;
  readonly work: GrooveWork;
  readonly active: Active;
  readonly onActive: (active: Active) => void;
}

function LimbSection({ lesson, limb, work, active, onActive }: LimbSectionProps) {
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
          work={work}
          chosen={active.voice === part.voice}
          active={active.voice === part.voice ? active.place : null}
          takesFocus={active.voice === part.voice && active.focus}
          onActive={(place) => onActive({ voice: part.voice, place, focus: false })}
        />
      ))}
    </section>
  );
}

/** Whose groove it is, where a lesson has several. */
function Whose({
  lesson,
  section,
  work,
  onSection,
}: {
  readonly lesson: Lesson;
  readonly section: number | null;
  readonly work: GrooveWork;
  readonly onSection: (section: number | null) => void;
}) {
  const words = useWords().groove;
  const { text } = useDocumentState();
  if (lesson.sections.length === 0) return null;
  const isOwn = section !== null && hasOwnGroove(text, section);
  return (
    <div className={styles.whose}>
      <SectionChoice lesson={lesson} section={section} onSection={onSection} />
      {section !== null && <p className="quiet">{isOwn ? words.ownGroove : words.lessonsGroove}</p>}
      {isOwn && <Button onClick={work.takeLessons}>{words.takeLessons}</Button>}
    </div>
  );
}

/** The view. */
export function GrooveView({ lesson: whole }: { readonly lesson: Lesson }) {
  const words = useWords().groove;
  const docked = useDocked();
  const [section, setSection] = useState<number | null>(null);
  const [chosen, setChosen] = useState<Active | null>(null);
  const lesson = partOf(whole, section);
  const work = useGroove(whole, { lesson, section });
  const part = lesson.groove.find(({ voice }) => voice === chosen?.voice) ?? lesson.groove[0];
  const active: Active = {
    voice: part?.voice ?? lesson.lead,
    place: part && chosen?.voice === part.voice ? chosen.place : FIRST,
    focus: chosen?.focus ?? false,
  };
  const tools = part && (
    <VoiceBox
      lesson={lesson}
      part={part}
      place={active.place}
      work={work}
      onPlace={(place) => setChosen({ voice: part.voice, place, focus: true })}
      docked={docked}
    />
  );
  return (
    <WithTools tools={tools}>
      <Paper>
        <Guide at="groove" />
        <ViewHead title={words.title} lead={words.lead} />
        <Whose lesson={whole} section={section} work={work} onSection={setSection} />
        <div className={styles.whole}>
          <figure className={styles.together}>
            <figcaption className={styles.label}>{words.together}</figcaption>
            <GrooveDrawing lesson={lesson} />
          </figure>
          <SetUpPlan lesson={lesson} />
        </div>
        {LIMBS.map((limb) => (
          <LimbSection
            key={limb}
            lesson={lesson}
            limb={limb}
            work={work}
            active={active}
            onActive={setChosen}
          />
        ))}
        <div className={styles.add}>
          <AddVoice
            there={lesson.groove.map((each) => each.voice)}
            onAdd={(voice) => {
              work.add(voice);
              setChosen({ voice, place: FIRST, focus: true });
            }}
          />
        </div>
        <ExerciseVoice lesson={lesson} work={work} />
        <LayerOrder lesson={lesson} work={work} />
      </Paper>
    </WithTools>
  );
}
