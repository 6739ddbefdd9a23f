/** Films of exercises: which, in which form, how fast, how they look, and what comes of it. */
import type { Lesson } from '@shedbook/core';
import type { FilmWish } from '@shedbook/routes';
import { Button, buttonClass, Check, Choices, Icon } from '@shedbook/stand';
import { durationWords, sizeWords } from '@shedbook/words';
import { useState } from 'react';
import rows from '../shared/making-rows.module.css';
import { useLanguage, useWords } from '../words/words.tsx';
import type { Filming, FilmOnItsWay } from './film-on-its-way.ts';
import { Plan } from './film-plan.tsx';
import { FormChoice, TempoChoice } from './form-and-tempo.tsx';
import { Manner, Performances, USUAL_OVER } from './performances.tsx';
import styles from './recordings.module.css';
import { useFilm } from './use-film.ts';
import { heardOf, isOnItsWay, usePerformances } from './use-performances.ts';
import { WhichExercises } from './which-exercises.tsx';

/** The film that was made and what lies beside it, to be kept. */
function Files({ files }: Pick<FilmOnItsWay, 'files'>) {
  const words = useWords();
  return (
    <>
      {words.films.made}
      <ul className={rows.files}>
        {files.map(({ part, name, bytes, href }) => (
          <li key={part}>
            <a className={buttonClass(part === 'film' ? 'strong' : 'plain')} href={href} download={name}>
              <Icon name="file" />
              {words.films.parts[part]} ({sizeWords(words.sizes, bytes)})
            </a>
          </li>
        ))}
      </ul>
    </>
  );
}

function Progress({ film }: { readonly film: FilmOnItsWay }) {
  const words = useWords();
  const percent = Math.floor(100 * film.share);
  if (film.at === 'made') return <Files files={film.files} />;
  if (film.at === 'failed') return words.films.failed;
  const left = film.leftSeconds === null ? null : durationWords(words.durations, film.leftSeconds);
  return (
    <>
      {film.at === 'waiting' ? words.films.waiting : words.films[film.at]({ percent })}
      {left !== null && <span>{words.films.left({ duration: left })}</span>}
      <progress aria-label={words.films.title} value={film.share} max={1} />
    </>
  );
}

function Said({ filming }: { readonly filming: Filming }) {
  const words = useWords();
  switch (filming.at) {
    case 'going':
      return <Progress film={filming.film} />;
    case 'refused':
      return filming.why;
    case 'cancelled':
      return words.recordings.cancelled;
    default:
      return null;
  }
}

/** How it looks. */
function Looks({
  wish,
  ask,
}: {
  readonly wish: FilmWish;
  readonly ask: (change: Partial<FilmWish>) => void;
}) {
  const words = useWords().films;
  return (
    <>
      <Choices<FilmWish['shape']>
        label={words.shape}
        value={wish.shape}
        choices={[
          ['landscape', words.shapes.landscape],
          ['portrait', words.shapes.portrait],
        ]}
        onChange={(shape) => ask({ shape })}
      />
      <Choices<FilmWish['scheme']>
        label={words.scheme}
        value={wish.scheme}
        choices={[
          ['light', words.schemes.light],
          ['dark', words.schemes.dark],
        ]}
        onChange={(scheme) => ask({ scheme })}
      />
      <Choices<'30' | '60'>
        label={words.rate}
        value={`${wish.framesPerSecond}`}
        choices={[
          ['30', '30'],
          ['60', '60'],
        ]}
        onChange={(rate) => ask({ framesPerSecond: rate === '60' ? 60 : 30 })}
      />
      <Check checked={wish.buildUp} onChange={(buildUp) => ask({ buildUp })}>
        {words.buildUp}
      </Check>
      <Check checked={wish.countAloud} onChange={(countAloud) => ask({ countAloud })}>
        {words.countAloud}
      </Check>
    </>
  );
}

/** The form. */
export function FilmForm({ id, lesson }: { readonly id: string; readonly lesson: Lesson }) {
  const { tag, words } = useLanguage();
  const { filming, make, cancel } = useFilm(id);
  const [wish, setWish] = useState<FilmWish>(() => ({
    exercises: lesson.exercises.map(({ number }) => number),
    ...{ form: null, bpm: null, shape: 'landscape', scheme: 'light', buildUp: true, language: tag },
    ...{ framesPerSecond: 30, over: null, countAloud: false },
  }));
  const performances = usePerformances(id);
  const [over, setOver] = useState(USUAL_OVER);
  const { names, hasPicture } = heardOf(performances.all);
  const isHearing = isOnItsWay(performances.all);
  const asked = { ...wish, language: tag, over: names.length > 0 ? { ...over, performances: names } : null };
  const ask = (change: Partial<FilmWish>) => setWish((before) => ({ ...before, ...change }));
  const isGoing =
    filming.at === 'asking' ||
    (filming.at === 'going' && filming.film.at !== 'made' && filming.film.at !== 'failed');
  return (
    <div
      className={styles.form}
      data-part="films"
      data-at={filming.at === 'going' ? filming.film.at : filming.at}
    >
      <WhichExercises lesson={lesson} chosen={wish.exercises} onChange={(exercises) => ask({ exercises })} />
      <div className={styles.lists}>
        <FormChoice lesson={lesson} form={wish.form} onChange={(form) => ask({ form })} />
        <TempoChoice lesson={lesson} exercise={wish.exercises[0] ?? null} onChange={(bpm) => ask({ bpm })} />
      </div>
      <Looks wish={wish} ask={ask} />
      <Performances
        {...{ lesson, performances, exercises: wish.exercises, form: wish.form }}
        title={words.films.over}
        hint={words.films.overHint}
      >
        {names.length > 0 && (
          <Manner
            {...{ over, hasPicture }}
            ask={(change) => setOver((before) => ({ ...before, ...change }))}
          />
        )}
      </Performances>
      <p className="quiet" role="status">
        <Plan id={id} wish={asked} />
      </p>
      <div className={rows.acts}>
        <Button
          dress="strong"
          disabled={isGoing || isHearing || wish.exercises.length === 0}
          onClick={() => make(asked)}
        >
          <Icon name="file" />
          {words.films.make({ n: wish.exercises.length })}
        </Button>
        {isGoing && <Button onClick={cancel}>{words.recordings.cancel}</Button>}
      </div>
      <div className={rows.said} role="status">
        <Said filming={filming} />
      </div>
    </div>
  );
}
