import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { Bpm, type Lesson, parseLesson } from '@shedbook/core';
import { loadEngraver, loadFonts } from '@shedbook/engrave';
import { FILM_WORDS, LANGUAGE_TAGS, SHEET_WORDS } from '@shedbook/words';
import { beforeAll, describe, expect, it } from 'vitest';
import { NUMBERED_ANEW } from '../../../internal/testing/numbered-anew.ts';
import { captionsOf, writeVtt } from './captions.ts';
import { chapterList, chaptersOf } from './chapters.ts';
import { drawingsOf } from './draw.ts';
import { createFilm, type Film, frameAt, howIn, type StagedScene } from './film.ts';
import { SCHEMES, SHAPES } from './look.data.ts';
import { createPainter } from './painter.ts';
import type { FilmRequest } from './scenes.ts';
import { paintDisc, toPicture, toYuv } from './yuv.ts';

const TEXT = `title: Short & <clear>
by: Oda
tempo: 120
feel: even
groove:
  ride: x x.x x x.x
  hihat-foot: {pattern: . x . x, level: -8}
  bass: {pattern: x x x x, level: feathered}
forms:
  Two and one: {sections: [{pattern: 2}, {time: 1}], repeat: 1}
exercises:
  - x.. ... ..x ...
  - {pattern: "x . x . | . x . x", name: Two bars}
`;

function lessonOf(text: string): Lesson {
  const { lesson, problems } = parseLesson(text, 'lesson');
  if (!lesson) throw new Error(JSON.stringify(problems));
  return lesson;
}

let film: Film;
const inGerman = () => ({
  ...film,
  tools: { ...film.tools, words: SHEET_WORDS.de, said: FILM_WORDS.de },
});

beforeAll(async () => {
  const { resolve } = createRequire(import.meta.url);
  const fonts = await loadFonts((specifier) => readFile(resolve(specifier)));
  const tools = { engraver: await loadEngraver(), fonts, words: SHEET_WORDS.en, said: FILM_WORDS.en };
  const request: FilmRequest = {
    ...{ lesson: lessonOf(TEXT), exercises: [1, 2], tempi: [Bpm(120), Bpm(93)], framesPerSecond: 30 },
    ...{ form: lessonOf(TEXT).forms.find(({ name }) => name === 'Two and one') ?? null, buildUp: true },
  };
  film = createFilm(request, { shape: 'portrait', scheme: 'light', pixelsPerMm: 2 }, tools);
});

const played = () => film.scenes.filter((scene): scene is StagedScene => scene.kind !== 'title');

describe('a film', () => {
  it('[FI1700] shows the groove limb by limb, then each exercise at each tempo, without gaps', () => {
    const chapters = chaptersOf(film).map(({ title }) => title);
    expect(chapters).toEqual([
      'Title',
      'The groove, one limb at a time',
      'Exercise 1, 120 beats a minute',
      'Exercise 1, 93 beats a minute',
      'Exercise 2: Two bars, 120 beats a minute',
      'Exercise 2: Two bars, 93 beats a minute',
    ]);
    const ends = film.scenes.map(({ startFrame, frames }) => startFrame + frames);
    expect(film.scenes.map(({ startFrame }) => startFrame)).toEqual([0, ...ends.slice(0, -1)]);
    expect(film.frames).toBe(ends.at(-1));
    // definition: each stage of the groove plays what has joined, and nothing else
    const groove = played()[0] as StagedScene;
    const voices = groove.stages.map(({ fromBar }) => {
      const inBar = groove.strokes.filter(({ written }) => written.bar === fromBar);
      return [...new Set(inBar.map(({ voice }) => voice))].toSorted();
    });
    expect(voices).toEqual([['ride'], ['hihat-foot', 'ride'], ['bass', 'hihat-foot', 'ride']]);
    // definition: 120 beats a minute: 1 s still, a bar of 2 s counted in, 3 bars of 2 s, 2 s until all has died away
    expect((played()[1] as StagedScene).frames).toBe((1 + 2 + 3 * 2 + 2) * 30);
  });

  it('[FI1700] lists its chapters with the time at which each begins', () => {
    const list = chapterList(chaptersOf(film)).split('\n');
    expect(list.slice(0, 2)).toEqual(['00:00 Title', '00:03 The groove, one limb at a time']);
    // from memory: lists in descriptions of videos have hours only where there are any
    const hour = { fromSeconds: 3725, toSeconds: 3726, title: 'Late' } as ReturnType<
      typeof chaptersOf
    >[number];
    expect(chapterList([hour])).toBe('1:02:05 Late\n');
  });

  it('[FI1701] has the ball down on each stroke that sounds on a frame, over its head', () => {
    const scene = played()[1] as StagedScene;
    const bars = scene.stagePages[0]?.flatMap((page) => page.bars) ?? [];
    const [bar] = bars;
    if (!bar) throw new Error('no bars');
    // definition: at 120 beats a minute a beat is 15 frames; the first bar begins after the still second and the count-in
    const first = scene.startFrame + 30 + 60;
    const heads = bar.bar.tile.heads.filter(({ voice }) => voice === 'ride' || voice === 'snare');
    const beats = [0, 1, 2, 3].map((beat) => frameAt(film, first + 15 * beat).ball);
    const xs = [0, 1 / 4, 2 / 4, 3 / 4].map(
      (at) => heads.find(({ start }) => start.num / start.den === at)?.xMm,
    );
    expect(beats.map((ball) => ball?.xMm)).toEqual(
      xs.map((x) => expect.closeTo(bar.xMm + bar.size * (x ?? 0), 6)),
    );
    expect(beats.map((ball) => ball?.yMm)).toEqual(beats.map(() => expect.closeTo(bar.floorMm, 6)));
    // definition: the last triplet of 3 sounds 10 frames after it, and is the exercise's
    const late = frameAt(film, first + 30 + 10).ball;
    const head = heads.find(({ voice, start }) => voice === 'snare' && start.num / start.den > 0.5);
    expect(late?.xMm).toBeCloseTo(bar.xMm + bar.size * (head?.xMm ?? 0), 6);
  });

  it('[FI1701] shows no ball on the card, nor after the last bar', () => {
    const scene = played()[1] as StagedScene;
    const frames = [0, scene.startFrame, scene.startFrame + scene.frames - 1];
    expect(frames.map((frame) => frameAt(film, frame).ball)).toEqual([null, null, null]);
    // definition: in the count-in the ball is over the first bar already
    expect(frameAt(film, scene.startFrame + 31).ball).not.toBeNull();
  });

  it('[FI1702] says what is played in both languages, one caption at a time', () => {
    for (const told of [film, inGerman()]) {
      const cues = captionsOf(told);
      const from = cues.map(({ fromSeconds }) => fromSeconds);
      expect(from).toEqual(from.toSorted((a, b) => a - b));
      for (const [index, cue] of cues.entries()) {
        expect(cue.fromSeconds).toBeLessThan(cue.toSeconds);
        expect(cue.toSeconds).toBeLessThanOrEqual((cues[index + 1]?.fromSeconds ?? Infinity) + 1e-9);
        expect(cue.toSeconds).toBeLessThanOrEqual(film.frames / 30);
      }
    }
    const texts = captionsOf(film).map(({ text }) => text.replaceAll('\u00a0', ' '));
    // common practice: "3 let" is the last triplet of 3; the ride has only those of 2 and 4
    expect(texts).toEqual(
      expect.arrayContaining([
        'First the ride (right hand): on 1, 2, 2 let, 3, 4, 4 let.',
        'Now add the bass drum (right foot): on 1, 2, 3, 4, so softly that you sense it more than you hear it.',
        'A lesson for the drum set: Short & <clear>.',
        'Each beat is counted “1 trip let”: “2 let” is the last part of beat 2.',
        'The snare (left hand): on 1, 3 let.',
        'Listen for what falls between the strokes of the ride: 3 let.',
      ]),
    );
  });

  it('[FI7201] says strokes of a kind together, once what holds for all, and how often a form comes round', () => {
    const told = lessonOf(`title: Back beat
tempo: 120
groove: {hihat: xx xx xx xx}
exercises: [. X .g X, . X .g X | . X .g X, .. X .. X]
forms:
  Thrice: {sections: [{pattern: 4}, {time: 2}], repeat: 3}
`);
    const asked = { ...film.request, lesson: told, exercises: [1, 2, 3], tempi: [], buildUp: false };
    const [form = null] = told.forms;
    const captions = captionsOf(createFilm({ ...asked, form }, film.look, film.tools));
    const texts = captions.map(({ text }) => text);
    // common practice: the back beat on 2 and 4, a ghost note on the "and" of 3
    const own = texts.filter((text) => text.startsWith('The snare'));
    expect(own.slice(0, 2)).toEqual(
      Array(2).fill('The snare (left hand): accent on 2, 4; ghost note on 3\u00a0&.'),
    );
    expect(texts.filter((text) => text.startsWith('Listen'))).toHaveLength(1);
    expect(texts.filter((text) => text.includes('Count along'))).toHaveLength(1);
    const again = captions.filter(({ text }) => text === 'All of it 2 more times, just the same.');
    expect(again).toHaveLength(3);
    // definition: three seconds of title, one that stands still, then a bar of count-in and six bars of two seconds each
    expect(again[0]?.fromSeconds).toBeCloseTo(3 + 1 + 7 * 2, 6);
    const lines = writeVtt(captions).split('\n');
    expect(lines.filter((line) => /\d$/.test(line) && !line.includes('-->'))).toEqual([]);
  });

  it('[FI5400] says in its captions what a voice counts before the first bar, as the voice says it', () => {
    const request: FilmRequest = { ...film.request, click: {}, countAloud: 'en' };
    const counted = createFilm({ ...request, tempi: [Bpm(120)] }, film.look, film.tools);
    const texts = captionsOf(counted).map(({ text }) => text);
    // common practice: a bar of four is counted in "1, 2, 3, 4"
    expect(texts.filter((text) => text.includes('A voice counts: 1, 2, 3, 4.'))).toEqual([
      expect.stringMatching(/^A voice counts: 1, 2, 3, 4\. Each beat is counted/),
      // what is said again and again is read no longer
      'Exercise 1, 120 beats a minute. A voice counts: 1, 2, 3, 4.',
    ]);
    expect(texts).toContain('Exercise 2: Two bars, 120 beats a minute.');
    const german = { ...counted, tools: inGerman().tools };
    expect(
      captionsOf(german).filter(({ text }) => text.includes('Eine Stimme zählt: 1, 2, 3, 4.')),
    ).toHaveLength(2);
    // without a groove shown before, an exercise says over what it is played
    const alone = createFilm({ ...film.request, buildUp: false, exercises: [1] }, film.look, film.tools);
    expect(captionsOf(alone)[1]?.text).toBe(
      'Exercise 1, 120 beats a minute, over ride, hi-hat foot and bass drum. Count along, then play along.',
    );
  });

  it('[FI1702] writes WebVTT: a head, cues with their times, and nothing that is read as a tag', () => {
    for (const told of [film, inGerman()]) {
      const blocks = writeVtt(captionsOf(told)).trimEnd().split('\n\n');
      // standard: WebVTT (W3C, 2019), 4.1: the head, a blank line, then cues of a line of times and lines of text
      expect(blocks[0]).toBe('WEBVTT');
      for (const block of blocks.slice(1)) {
        const [times, ...lines] = block.split('\n');
        expect(times).toMatch(/^\d\d:\d\d:\d\d\.\d{3} --> \d\d:\d\d:\d\d\.\d{3}$/);
        expect(lines.length).toBeGreaterThan(0);
        expect(lines.every((line) => line !== '' && line.length <= 52)).toBe(true);
      }
      // standard: 4.2.2: & and < are written as escapes
      expect(blocks[1]?.replaceAll('\n', ' ')).toContain('Short &amp; &lt;clear&gt;');
    }
    expect(LANGUAGE_TAGS).toHaveLength(2);
  });
});

it('[FI1705] keeps within the page and off each other what a long name, written hands and many bars need', () => {
  const text = TEXT.replace(
    'Two bars',
    'A name that is longer than there is room for on any page of this size',
  )
    .replace('x . x . | . x . x', Array(5).fill('x . x .').join(' | '))
    .replace('- x.. ... ..x ...', '- {pattern: x.. ... ..x ..., sticking: RL}');
  const request = { ...film.request, lesson: lessonOf(text), form: null, tempi: [], buildUp: false };
  for (const shape of ['landscape', 'portrait'] as const) {
    const { widthMm, sideMm, stripTop, barsTop } = SHAPES[shape];
    const told = createFilm(request, { shape, scheme: 'dark', pixelsPerMm: 2 }, film.tools);
    const scenes = told.scenes.filter((scene): scene is StagedScene => scene.kind !== 'title');
    const bars = scenes.flatMap(({ stagePages }) => stagePages.flat(2).flatMap((page) => page.bars));
    expect(bars.length).toBe(1 + 5);
    // definition: the ball at its highest (8 mm of the tile) stays under the heading, counts over the line of the form
    expect(bars.every(({ floorMm, size }) => floorMm - size * 9.5 >= barsTop - 1)).toBe(true);
    expect(bars.every(({ countsMm, size }) => countsMm + size <= stripTop)).toBe(true);
    expect(bars.every(({ xMm, size, bar }) => xMm + size * bar.tile.widthMm <= widthMm - sideMm + 0.1)).toBe(
      true,
    );
    // definition: hands have a line of their own over the counts
    const [first] = bars;
    expect((first?.countsMm ?? 0) - (first?.handsMm ?? 0)).toBeGreaterThan(3.5 * (first?.size ?? 0));
    // definition: a text is drawn as outlines that say what they spell; what is too long ends in an ellipsis
    const last = scenes[1] as StagedScene;
    const svg = drawingsOf(told, frameAt(told, last.startFrame)).page.svg();
    expect(svg).toMatch(/aria-label="Exercise 2: A name[^"]* …"/);
  }
});

it('[FI2003] says what the exercise says beside its notes, as paper does: texts, dynamics, hairpins, endings', () => {
  const said = lessonOf(`title: Said
tempo: 120
groove: {ride: x x x x}
exercises:
  - pattern: x . . . | . x . . | . . x x
    dynamics: p | < . . . | f
    above: softly | build
    below: wait
    repeats: {bars: 1, endings: [2, 3]}
`);
  const request = { ...film.request, lesson: said, exercises: [1], form: null, tempi: [], buildUp: false };
  const told = createFilm(request, { shape: 'landscape', scheme: 'dark', pixelsPerMm: 2 }, film.tools);
  const scene = told.scenes[1] as StagedScene;
  const [first] = scene.stagePages[0] ?? [];
  if (!first) throw new Error('no page');
  const { page } = drawingsOf(told, { scene, stage: 0, page: first, formBar: null, lit: null, ball: null });
  const svg = page.svg();
  const spelt = [...svg.matchAll(/aria-label="([^"]*)"/g)].map(([, text]) => text);
  expect(spelt).toEqual(expect.arrayContaining(['softly', 'build', 'wait', 'p', '1.']));
  // definition: a hairpin is two lines from one point; nothing on a dark page is black
  expect(svg).not.toContain('#000000');
  for (const { bar, floorMm, yMm, countsMm, size } of first.bars) {
    // definition: the ball comes down over what is said over the notes, and counts stand under what is said under them
    expect(floorMm).toBeLessThan(yMm - size * bar.over.heightMm + 1e-6);
    expect(countsMm - 3.5 * size).toBeGreaterThan(yMm + size * (bar.tile.heightMm + bar.under.heightMm));
  }
});

describe('the picture', () => {
  it('[FI1703] has the numbers of ITU-R BT.709', () => {
    // standard: ITU-R BT.709, 100 % colour bars in limited range: white, red, green, blue
    const bars = [
      [255, 255, 255],
      [255, 0, 0],
      [0, 255, 0],
      [0, 0, 255],
    ] as const;
    expect(bars.map(([red, green, blue]) => toYuv(red, green, blue).map(Math.round))).toEqual([
      [235, 128, 128],
      [63, 102, 240],
      [173, 42, 26],
      [32, 240, 118],
    ]);
    const red = toPicture({
      width: 2,
      height: 2,
      rgba: new Uint8Array(Array.from({ length: 4 }, () => [255, 0, 0, 255]).flat()),
    });
    expect([...red.planes]).toEqual([63, 63, 63, 63, 102, 240]);
  });

  it('[FI1703] paints a ball as large as it is', () => {
    const picture = { width: 40, height: 40, planes: new Uint8Array(2400).fill(100) };
    paintDisc(picture, { x: 20.25, y: 19.5, radius: 8 }, [200, 128, 128]);
    const luma = [...picture.planes.slice(0, 1600)].map((value) => (value - 100) / 100);
    const area = luma.reduce((sum, part) => sum + part, 0);
    const x = luma.reduce((sum, part, at) => sum + part * ((at % 40) + 0.5), 0) / area;
    // definition: the area of a circle, and its middle
    expect(Math.abs(area - Math.PI * 64)).toBeLessThan(1);
    expect(x).toBeCloseTo(20.25, 1);
  });

  it('[FI1703] is the same whether frames come one after the other or alone', () => {
    const paper = (svg: string) => {
      const [, width = '0', height = '0'] = /width="(\d+)" height="(\d+)"/.exec(svg) ?? [];
      const size = { width: Number(width), height: Number(height) };
      // Any picture will do that differs from drawing to drawing.
      const seed = [...svg].reduce((sum, character) => (sum * 31 + character.charCodeAt(0)) % 251, 7);
      return { ...size, rgba: new Uint8Array(4 * size.width * size.height).fill(seed) };
    };
    const start = (played()[1] as StagedScene).startFrame + 80;
    const painter = createPainter(film, paper);
    const frames = Array.from({ length: 60 }, (_, index) => start + index);
    const inTurn = frames.map((frame) => Buffer.from(painter.paint(frame)));
    const some = [0, 9, 20, 31, 44, 59];
    const alone = some.map((index) => Buffer.from(createPainter(film, paper).paint(start + index)));
    expect(some.map((index, at) => Buffer.compare(inTurn[index] as Buffer, alone[at] as Buffer))).toEqual(
      some.map(() => 0),
    );
  });

  it('[FI1704] has the colours of the practice page, light and dark', async () => {
    const css = await readFile(
      createRequire(import.meta.url).resolve('@shedbook/stand/theme/tokens.css'),
      'utf8',
    );
    const token = (name: string) =>
      /light-dark\((#\w+), (#\w+)\)/.exec(css.split(`--${name}:`)[1] ?? '')?.slice(1, 3);
    for (const [ours, name] of [
      ['paper', 'paper'],
      ['ink', 'ink'],
      ['soft', 'ink-soft'],
      ['accent', 'accent'],
    ] as const)
      expect([SCHEMES.light[ours], SCHEMES.dark[ours]], name).toEqual(token(name));
    const svg = drawingsOf(film, frameAt(film, (played()[1] as StagedScene).startFrame)).page.svg();
    // definition: nothing on the page has a colour that the scheme has not
    const used = new Set([...svg.matchAll(/(?:fill|stroke)="(#\w+)"/g)].map(([, colour]) => colour));
    expect(
      [...used].filter((colour) => !(Object.values(SCHEMES.light) as string[]).includes(colour ?? '')),
    ).toEqual([]);
  });
});

const LIMBS = lessonOf(`title: Limbs
tempo: 120
groove:
  ride: {pattern: x x x x, how: 'tip, bow'}
  bass: {pattern: x x x x, level: feathered, how: heel down}
exercises:
  - pattern: {snare: x . x ., tom-high: x x . x}
    sticking: {snare: L R, tom-high: R L R}
    how: {snare: centre}
`);

/** What a page spells, in order. */
const spelt = (svg: string) => [...svg.matchAll(/aria-label="([^"]*)"/g)].map(([, text]) => text);

it('[FI2900] shows the written hands of every voice, and how each limb plays, in both shapes', () => {
  const request = { ...film.request, lesson: LIMBS, exercises: [1], form: null, tempi: [], buildUp: true };
  for (const shape of ['landscape', 'portrait'] as const) {
    const told = createFilm(request, { shape, scheme: 'light', pixelsPerMm: 2 }, film.tools);
    const [groove, exercise] = told.scenes.filter((scene): scene is StagedScene => scene.kind !== 'title');
    if (!groove || !exercise) throw new Error('two scenes');
    const at = (scene: StagedScene) => drawingsOf(told, frameAt(told, scene.startFrame)).page.svg();
    // definition: snare and tom strike 1 together with both hands, then the tom alone on 2 and 4, the snare on 3
    const letters = spelt(at(exercise)).filter((text) => /^[RLB]$/.test(text ?? ''));
    expect(letters.toSorted()).toEqual(['B', 'L', 'R', 'R']);
    expect(spelt(at(exercise))).toEqual(
      expect.arrayContaining(['snare: centre', 'ride: tip, bow', 'bass drum: heel down']),
    );
    // definition: a stage has the limbs that have joined
    expect(spelt(at(groove))).toContain('ride: tip, bow');
    expect(spelt(at(groove))).not.toContain('bass drum: heel down');
    const bars = exercise.stagePages.flat(2).flatMap((page) => page.bars);
    const { rows, size } = howIn(exercise, exercise.layout, told.tools);
    const bottom = exercise.layout.howTop + rows.heightMm * size;
    expect(rows.heightMm).toBeGreaterThan(0);
    expect(bars.every(({ floorMm, size: of }) => floorMm - of * 9.5 >= bottom - 1)).toBe(true);
  }
});

it('[FI2901] an example is shown in its own form where none is asked for', () => {
  const { lesson, ...rest } = {
    ...film.request,
    lesson: lessonOf(TEXT.replace('- x.. ... ..x ...', '- {pattern: x.. ... ..x ..., example: 2}')),
  };
  const scenes = (form: typeof rest.form) =>
    createFilm({ ...rest, lesson, form, tempi: [], buildUp: false }, film.look, film.tools).scenes.flatMap(
      (scene) => (scene.kind === 'exercise' ? [scene.program.bars.map(({ play }) => play)] : []),
    );
  // definition: twice round one bar, then two bars of the pattern and one of time
  expect(scenes(null)[0]).toEqual(['pattern', 'pattern', 'pattern', 'pattern', 'time']);
  expect(scenes(null)[1]).toEqual(Array(4).fill('pattern'));
  expect(scenes(rest.form)[0]).toEqual(['pattern', 'pattern', 'time']);
});

it('[FI7006] names exercises by the numbers on their page, in headings, chapters and captions', () => {
  const lesson = lessonOf(NUMBERED_ANEW);
  const exercises = lesson.exercises.slice(0, 3).map(({ number }) => number);
  const request = { ...film.request, lesson, exercises, tempi: [Bpm(80)], form: null, buildUp: false };
  const anew = createFilm(request, film.look, film.tools);
  expect(chaptersOf(anew).map(({ title }) => title)).toEqual([
    'Title',
    'Exercise A1, 80 beats a minute',
    'Exercise B1, 80 beats a minute',
    'Exercise B2: Both, 80 beats a minute',
  ]);
  const texts = captionsOf(anew).map(({ text }) => text);
  expect(texts.some((text) => text.startsWith('Exercise B2: Both'))).toBe(true);
  expect(texts.join(' ')).not.toMatch(/\d{4}/);
});
