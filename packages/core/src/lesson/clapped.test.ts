import { expect, it } from 'vitest';
import { problemsOf, read } from '../../test/reading.ts';
import { printLesson } from '../document/print.ts';
import { perform } from '../groove/perform.ts';
import { canBePrepared, playedOn } from './clapped.ts';
import { formNamed } from './default-form.ts';
import { ontoPad } from './onto-pad.ts';
import { sectionBefore, sectionOf, sectionsOf } from './section.ts';
import { turnedForm } from './turns.ts';

const TEXT = `title: First swing
tempo: 60
sections:
  - heading: Count and clap
    groove: {}
    comping: clap
    vocabulary: []
    exercises: [x.x x.x x.x x.x, {pattern: {clap: x x x x, bass: x . x .}}]
    forms: {loop: {sections: [{pattern: 1, click: all}, {rest: 1, click: [4, 2, 2]}, {rest: 1, click: 1}, {rest: 1, click: none}, {time: 1}]}}
  - heading: Time
    before: count and clap
    exercises: [..x x.. ... x.x]
`;

it('[LE3500] a section names what comes first, by the heading of one that stands above it', () => {
  const lesson = read(TEXT);
  const [first, time] = sectionsOf(lesson);
  if (!first || !time) throw new Error('two sections');
  expect([first.before, time.before, sectionBefore(lesson, time)?.heading]).toEqual([
    undefined,
    'Count and clap',
    'Count and clap',
  ]);
  expect(read(printLesson(lesson))).toEqual(lesson);
  expect([canBePrepared(first), canBePrepared(time)]).toEqual([true, false]);
  const wrong = (before: string) => problemsOf(TEXT.replace('before: count and clap', `before: ${before}`));
  expect(wrong('Count and clapp')).toEqual([
    '11:13: error: sections[2].before: found "Count and clapp", expected one of Count and clap (did you mean "Count and clap"?)',
  ]);
  // A section is not its own preparation, nor is one that follows.
  expect(wrong('Time')).toEqual([
    '11:13: error: sections[2].before: found "Time", expected one of Count and clap',
  ]);
});

it('[LE3501] what is clapped is heard as on one surface, whatever is chosen', () => {
  const lesson = read(TEXT);
  expect([1, 2, 3, null].map((exercise) => playedOn(lesson, exercise, 'kit'))).toEqual([
    'pad',
    'kit',
    'kit',
    'kit',
  ]);
  expect(playedOn(lesson, 3, 'pad')).toBe('pad');
  const form = formNamed(sectionOf(lesson, 1), 'loop');
  if (!form) throw new Error('no loop');
  const asked = ontoPad({ lesson, exercise: 1, form });
  const voices = perform(asked.lesson, asked).strokes.map(({ voice }) => voice);
  expect(new Set(voices)).toEqual(new Set(['click', 'clap']));
});

it('[LE3502] the groove alone is that of the first section that has one', () => {
  const lesson = read(TEXT);
  expect(sectionOf(lesson, null).heading).toBe('Time');
  expect(sectionOf(lesson, 2).groove).toEqual([]);
});

it('[GR3500] a form says where it clicks, bar by bar, and where bars are left to the student', () => {
  const lesson = read(TEXT);
  const form = formNamed(sectionOf(lesson, 1), 'loop');
  if (!form) throw new Error('no loop');
  expect(form.sections.map(({ click }) => click)).toEqual([[1, 2, 3, 4], [2, 4], [1], [], undefined]);
  const { strokes, bars } = perform(lesson, { exercise: 1, form });
  const at = (voice: string, bar: number) =>
    strokes.filter((each) => each.voice === voice && each.written.bar === bar);
  expect([1, 2, 3, 4, 5].map((bar) => at('click', bar).map(({ written }) => written.beat))).toEqual([
    [1, 2, 3, 4],
    [2, 4],
    [1],
    [],
    [],
  ]);
  expect(at('click', 3)[0]).toMatchObject({ role: 'click', limb: null, mark: 'X' });
  // definition: at 60 a bar of 4/4 lasts four seconds, after one of count-in
  expect(at('click', 2).map(({ timeSeconds }) => timeSeconds)).toEqual([9, 11]);
  expect(bars.map(({ click }) => click?.length)).toEqual([undefined, 4, 2, 1, 0, undefined]);
  expect([1, 2, 3, 4, 5].map((bar) => at('clap', bar).length)).toEqual([8, 0, 0, 0, 0]);
  const turned = perform(lesson, { exercise: 1, form: turnedForm(form) });
  expect(turned.bars.map(({ play }) => play)).toEqual([
    'count-in',
    'rest',
    'pattern',
    'pattern',
    'pattern',
    'time',
  ]);
  expect(turnedForm(turnedForm(form))).toEqual(form);
  expect(problemsOf(TEXT.replace('click: 1}', 'click: 5}'))).toEqual([
    '9:103: error: sections[1].forms.loop.sections[3].click: found beat 5, expected a beat from 1 to 4',
  ]);
  expect(problemsOf(TEXT.replace('click: 1}', 'click: off}'))).toEqual([
    '9:103: error: sections[1].forms.loop.sections[3].click: found "off", expected where it clicks: all, none, a beat such as 1, or beats such as [2, 4]',
  ]);
});
