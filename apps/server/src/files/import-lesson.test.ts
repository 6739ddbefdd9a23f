import { defaultForm, parseLesson, perform } from '@shedbook/core';
import { expect, it } from 'vitest';
import { importLesson } from './import-lesson.ts';

const note = (display: string, more = '', head = 'normal') =>
  `<note>${more}<unpitched>${display}</unpitched><duration>1</duration><voice>1</voice><type>eighth</type><notehead>${head}</notehead></note>`;
const place = (step: string, octave: number) =>
  `<display-step>${step}</display-step><display-octave>${octave}</display-octave>`;
const HIHAT = note(place('G', 5), '', 'x');
const BASS = note(place('F', 4), '<chord/>');
const SNARE = note(place('C', 5), '<chord/>');

/** Two bars of eighths on the hi-hat, bass drum on 1 and 3, snare on 2 and 4: nothing in it is ours. */
const BEAT = [BASS, '', SNARE, '', BASS, '', SNARE, ''].map((under) => HIHAT + under).join('');
const SCORE = `<score-partwise version="4.0">
<part-list><score-part id="P1"><part-name>Drums</part-name></score-part></part-list>
<part id="P1"><measure number="1"><attributes><divisions>2</divisions><time><beats>4</beats><beat-type>4</beat-type></time><clef><sign>percussion</sign></clef></attributes>${BEAT}</measure>
<measure number="2">${BEAT}</measure></part>
</score-partwise>`;

it('[SE4900] a beat from elsewhere sounds as it is written there: no groove of ours is put under it', () => {
  const outcome = importLesson(new TextEncoder().encode(SCORE), 'beat.musicxml');
  if (outcome.kind === 'refused') throw new Error('refused');
  const { lesson, problems } = parseLesson(outcome.text, 'beat.lesson.yaml');
  if (!lesson) throw new Error(outcome.text);
  expect(problems).toEqual([]);
  const { strokes } = perform(lesson, { exercise: 1, form: defaultForm(lesson) });
  expect([...new Set(strokes.map(({ voice }) => voice))].sort()).toEqual(['bass', 'click', 'hihat', 'snare']);
  // common practice: under a hi-hat the bass drum is not feathered
  expect(lesson.lead).toBe('hihat');
  expect(lesson.exerciseBalance.bass).toBe(0);
});
