/** The take-home pack: the lesson as a page that students practise on, and where it lies for them. */

import type { Lesson } from '@shedbook/core';
import { editLesson } from '@shedbook/core';
import type { FilmWish } from '@shedbook/routes';
import { Button, Check, Icon, Problem } from '@shedbook/stand';
import { useState } from 'react';
import { readPack } from '../document/api.ts';
import type { DocumentState } from '../document/lesson-document.ts';
import { useDocument } from '../document/use-document.ts';
import { KeptField } from '../shared/kept-field.tsx';
import { offer } from '../shared/offer.ts';
import { useLanguage, useWords } from '../words/words.tsx';
import { Plan } from './film-plan.tsx';
import { KeptDemonstrations } from './kept-demonstrations.tsx';
import { Performances, USUAL_OVER } from './performances.tsx';
import styles from './take-home.module.css';
import { useDemonstrations } from './use-demonstrations.ts';
import { type PackFilming, usePackFilms } from './use-pack-films.ts';
import { heardOf, isOnItsWay, type SentPerformance, usePerformances } from './use-performances.ts';

type Making = 'idle' | 'filming' | 'making' | 'failed' | 'cancelled';

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

function Filming({ filming: { n, of, share } }: { readonly filming: PackFilming }) {
  const words = useWords().print;
  return (
    <>
      {words.filming({ n, of })}
      <progress aria-label={words.withFilms} value={share} max={1} />
    </>
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
  const [withFilms, setWithFilms] = useState(false);
  const films = usePackFilms(state.id);
  const numbers = lesson.exercises.map(({ number }) => number);
  const filmOf = (exercises: readonly number[]): FilmWish => ({
    ...{ exercises, form: null, bpm: null, shape: 'landscape', scheme: 'light', language: tag },
    ...{ framesPerSecond: 30, buildUp: false, countAloud: false },
    over: names.length > 0 ? { ...USUAL_OVER, performances: names } : null,
  });
  const make = async () => {
    try {
      setMaking('filming');
      const made = withFilms ? await films.make(numbers.map((number) => filmOf([number]))) : [];
      if (made === null) return setMaking('cancelled');
      setMaking('making');
      const { file, name } = await readPack(state.id, tag, { performances: names, films: made });
      offer(file, name);
      setMaking('idle');
    } catch {
      setMaking('failed');
    }
  };
  const isMaking = making === 'filming' || making === 'making';
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
      <Check checked={withFilms} onChange={setWithFilms}>
        {words.withFilms}
      </Check>
      {withFilms && (
        <p className="quiet" role="status">
          <Plan id={state.id} wish={filmOf(numbers)} />
        </p>
      )}
      <Button disabled={isMaking || isHearing} onClick={() => void make()}>
        <Icon name="file" />
        {words.makePack}
      </Button>
      {films.filming && <Button onClick={films.cancel}>{all.recordings.cancel}</Button>}
      <p className="quiet" role="status">
        {films.filming && <Filming filming={films.filming} />}
        {making === 'making' && words.makingPack}
        {making === 'failed' && words.packFailed}
        {making === 'cancelled' && all.recordings.cancelled}
      </p>
    </section>
  );
}
