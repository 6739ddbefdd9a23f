/** The take-home pack: the lesson as a page that students practise on, and where it lies for them. */

import type { Lesson } from '@shedbook/core';
import { editLesson } from '@shedbook/core';
import { Button, Icon, Problem } from '@shedbook/stand';
import { useState } from 'react';
import { readPack } from '../document/api.ts';
import type { DocumentState } from '../document/lesson-document.ts';
import { useDocument } from '../document/use-document.ts';
import { KeptField } from '../shared/kept-field.tsx';
import { offer } from '../shared/offer.ts';
import { useLanguage, useWords } from '../words/words.tsx';
import { KeptDemonstrations } from './kept-demonstrations.tsx';
import { Performances } from './performances.tsx';
import styles from './take-home.module.css';
import { useDemonstrations } from './use-demonstrations.ts';
import { heardOf, isOnItsWay, type SentPerformance, usePerformances } from './use-performances.ts';

type Making = 'idle' | 'making' | 'failed';

interface TakeHomeProps {
  readonly state: DocumentState;
  readonly lesson: Lesson;
}

/** What an address on the web begins with. */
const ADDRESS = /^https?:\/\/[^\s/]+\S*$/;

function PageAddress({ lesson }: { readonly lesson: Lesson }) {
  const words = useWords().print;
  const document = useDocument();
  const [refused, setRefused] = useState(false);
  const keep = (address: string) => {
    const plain = address.trim();
    setRefused(plain !== '' && !ADDRESS.test(plain));
    if (plain === '') document.edit(editLesson(document.state().text, ['practicePage'], undefined));
    else if (ADDRESS.test(plain)) document.edit(editLesson(document.state().text, ['practicePage'], plain));
  };
  return (
    <div>
      <KeptField label={words.practicePage} value={lesson.practicePage ?? ''} onKeep={keep} />
      <div role="status">
        {refused ? (
          <Problem>{words.practicePageWrong}</Problem>
        ) : (
          <p className="quiet">{words.practicePageHint}</p>
        )}
      </div>
    </div>
  );
}

/** The choices and the button. */
export function TakeHome({ state, lesson }: TakeHomeProps) {
  const { tag, words: all } = useLanguage();
  const words = all.print;
  const [making, setMaking] = useState<Making>('idle');
  const performances = usePerformances(state.id);
  const { names } = heardOf(performances.all);
  const isHearing = isOnItsWay(performances.all);
  const demonstrations = useDemonstrations(state.id, state.keeping);
  const keepIt = ({ key, performance }: SentPerformance) => (
    <Button
      disabled={performance === null || demonstrations.keeping !== null}
      onClick={async () => {
        if (performance !== null && (await demonstrations.keep(performance))) performances.remove(key);
      }}
    >
      {demonstrations.keeping === performance ? words.keepingPlaying : words.keepPlaying}
    </Button>
  );
  const make = async () => {
    setMaking('making');
    try {
      const { file, name } = await readPack(state.id, tag, { performances: names });
      offer(file, name);
      setMaking('idle');
    } catch {
      setMaking('failed');
    }
  };
  return (
    <section className={styles.choices} aria-labelledby="take-home">
      <h3 id="take-home">{words.takeHome}</h3>
      <p className="quiet">{words.takeHomeHint}</p>
      <PageAddress lesson={lesson} />
      <Performances
        {...{ lesson, performances, form: null, exercises: lesson.exercises.map(({ number }) => number) }}
        title={words.demonstrate}
        hint={words.demonstrateHint}
        doWith={keepIt}
      >
        <KeptDemonstrations {...demonstrations} />
      </Performances>
      <Button disabled={making === 'making' || isHearing} onClick={() => void make()}>
        <Icon name="file" />
        {words.makePack}
      </Button>
      <p className="quiet" role="status">
        {making === 'making' && words.makingPack}
        {making === 'failed' && words.packFailed}
      </p>
    </section>
  );
}
