/**
 * What is drawn for a frame: a page, and patches over it that change while it is shown. Each is drawn once and kept by
 * its key.
 *
 * Conventions: millimetres of the page.
 */
import {
  countedTempo,
  type Exercise,
  groupBy,
  type Hand,
  handLetter,
  handsOf,
  handsTogether,
  type Limb,
  sideOf,
  strokesOfBar,
  type Voice,
} from '@shedbook/core';
import {
  allMoved,
  type Box,
  type Item,
  inSize,
  setLine,
  style,
  type Weight,
  writeWindow,
} from '@shedbook/engrave';
import { countsOf } from '@shedbook/playing';
import { capital, countUnder, type FilmWords } from '@shedbook/words';
import { coloursOf, type Film, type Frame, howIn, type Lit, type StagedScene } from './film.ts';
import { SHAPES } from './look.data.ts';
import { type PlacedBar, SAID_GAP_MM, type ScenePage } from './pages.ts';
import { titleItems } from './title-card.ts';

/** Something drawn once. */
export interface Drawing {
  readonly key: string;
  /** What of the page it covers: whole pairs of pixels. */
  readonly box: Box;
  /** An SVG document as large as the box in pixels. */
  readonly svg: () => string;
}

/** A page and what lies over it. */
export interface FrameDrawings {
  readonly page: Drawing;
  readonly patches: readonly Drawing[];
}

/** A box grown to whole pairs of pixels, since colour is kept for pairs, and cut to the page. */
function inPairs({ x, y, width, height }: Box, { look, widthPx, heightPx }: Film): Box {
  const pair = 2 / look.pixelsPerMm;
  const [left, top] = [x, y].map((mm) => Math.max(0, Math.floor(mm / pair + 1e-6))) as [number, number];
  const right = Math.min(widthPx / 2, Math.ceil((x + width) / pair - 1e-6));
  const bottom = Math.min(heightPx / 2, Math.ceil((y + height) / pair - 1e-6));
  return { x: left * pair, y: top * pair, width: (right - left) * pair, height: (bottom - top) * pair };
}

function drawing(film: Film, key: string, box: Box, items: () => readonly Item[]): Drawing {
  const { paper, ink } = coloursOf(film);
  const exact = inPairs(box, film);
  const { pixelsPerMm } = film.look;
  return {
    key,
    box: exact,
    svg: () => writeWindow(items(), { box: exact, pixelsPerMm, paper, ink }, film.tools.fonts),
  };
}

/** The limb that plays a voice in a scene, by its side. */
export function limbOfVoice({ strokes, lesson }: StagedScene, voice: Voice) {
  const limb: Limb | null | undefined = strokes.find((stroke) => stroke.voice === voice)?.limb;
  return limb ? sideOf(limb, lesson.setUp) : null;
}

/** What a stage of the groove is called: each voice that joins, with its limb. */
function stageHeading(scene: StagedScene, stage: number, said: FilmWords): string {
  const joins = scene.stages[stage]?.layer.joins ?? [];
  const named = joins.flatMap((voice) => {
    if (voice === 'pattern') return [];
    const limb = limbOfVoice(scene, voice);
    return [capital(limb ? said.joins({ voice, limb }) : said.voices[voice])];
  });
  return `${stage > 0 ? '+ ' : ''}${named.join(' + ')}`;
}

/** The name of what is played. */
export function headingOf(scene: StagedScene, stage: number, { tools }: Pick<Film, 'tools'>): string {
  if (scene.exercise === null) return stageHeading(scene, stage, tools.said);
  const exercise = scene.lesson.exercises.find(({ number }) => number === scene.exercise);
  const number = scene.exercise;
  return exercise?.name
    ? tools.words.exerciseNamed({ number, name: exercise.name })
    : tools.words.exercise({ number });
}

/** How small a line is set at most, as a share of its size, before its end is left out. */
const SMALLEST = 0.7;

/** A text without as much of its end as does not fit. */
function shortened(text: string, fits: (text: string) => boolean): string {
  if (fits(text)) return text;
  const words = text.split(' ');
  while (words.length > 1 && !fits(`${words.join(' ')} …`)) words.pop();
  return `${words.join(' ')} …`;
}

/** The name of the lesson, of what is played, and its tempo. */
function headerItems(film: Film, scene: StagedScene, stage: number): readonly Item[] {
  const { fonts, said } = film.tools;
  const { left, headRight, tempoBeside, titleY, headingY, small, heading } = scene.layout;
  const { ink, soft } = coloursOf(film);
  const bpm = countedTempo(scene.lesson.meter, scene.bpm);
  const tempo = setLine(fonts, said.tempo({ bpm }), style('bold', small), {
    ...{ x: tempoBeside ? headRight : left, y: tempoBeside ? headingY : headingY + 1.8 * small },
    ...{ align: tempoBeside ? 'right' : 'left', colour: ink },
  });
  const room = headRight - left - (tempoBeside ? tempo.widthMm + 6 : 0);
  const line = (text: string, weight: Weight, size: number, y: number, colour: string): readonly Item[] => {
    const fitted = size * Math.max(SMALLEST, Math.min(1, room / fonts.widthMm(text, weight, size)));
    const shown = shortened(text, (part) => fonts.widthMm(part, weight, fitted) <= room + 1e-6);
    return [setLine(fonts, shown, style(weight, fitted), { x: left, y, colour })];
  };
  return [
    ...line(film.request.lesson.title, 'italic', small, titleY, soft),
    ...line(headingOf(scene, stage, film), 'bold', heading, headingY, ink),
    tempo,
  ];
}

/** The counts under a bar; those of one beat are lit. */
function countItems(
  film: Film,
  { bar, xMm, size, countsMm }: PlacedBar,
  lit: number | null,
): readonly Item[] {
  const { fonts, said } = film.tools;
  const { ink, soft, accent } = coloursOf(film);
  const slots = bar.slots.map((slot) => ({ ...slot, struck: slot.id !== null }));
  return countsOf(slots, (...place) => countUnder(said.counts, ...place)).map((count) => {
    const isLit = count.beat === lit;
    return setLine(fonts, count.text, style(count.struck || isLit ? 'bold' : 'regular', 3.5 * size), {
      ...{ x: xMm + size * count.xMm, y: countsMm, align: 'middle' },
      colour: isLit ? accent : count.struck ? ink : soft,
    });
  });
}

/** A written hand at its slot of a bar. */
interface HandAt {
  readonly xMm: number;
  readonly hand: Hand;
}

/** The hands that are written for a bar of an exercise, voice by voice. */
function handsAt(exercise: Exercise, { bar, shown }: PlacedBar): readonly HandAt[] {
  return exercise.parts.flatMap(({ voice, pattern }, part) => {
    const hands = handsOf(exercise, part);
    if (!hands) return [];
    const { from } = strokesOfBar(pattern, shown.index % pattern.bars.length);
    const own = bar.slots.filter((slot) => slot.id !== null && slot.voice === voice);
    return own.flatMap(({ xMm }, index) => {
      const hand = hands[from + index];
      return hand ? [{ xMm, hand }] : [];
    });
  });
}

/** Slots at one moment stand no further apart, in millimetres. */
const SAME_MM = 0.01;

/** The written hands, between notes and counts; hands that strike together are one letter. */
function handItems(film: Film, scene: StagedScene, placed: PlacedBar): readonly Item[] {
  const exercise = scene.lesson.exercises.find(({ number }) => number === scene.exercise);
  if (!exercise || placed.shown.on === 'groove') return [];
  const moments = groupBy(handsAt(exercise, placed), ({ xMm }) => String(Math.round(xMm / SAME_MM)));
  return [...moments.values()].flatMap((together) => {
    const hand = handsTogether(together.map((each) => each.hand));
    const [first] = together;
    if (!hand || !first) return [];
    const isLead = hand === handLetter('lead hand', scene.lesson.setUp);
    const at = {
      x: placed.xMm + placed.size * first.xMm,
      y: placed.handsMm,
      align: 'middle' as const,
      colour: coloursOf(film).ink,
    };
    return [setLine(film.tools.fonts, hand, style(isLead ? 'bold' : 'regular', 3.5 * placed.size), at)];
  });
}

/** How the limbs play, under the heading. */
function howItems(film: Film, scene: StagedScene, stage: number): readonly Item[] {
  const { rows, size } = howIn(scene, scene.layout, film.tools, stage);
  return allMoved(inSize(rows.items, size, coloursOf(film).ink), scene.layout.left, scene.layout.howTop);
}

/** What the exercise says over and under a bar, as on paper. */
function saidItems(film: Film, { bar, xMm, yMm, size }: PlacedBar): readonly Item[] {
  const { over, under, tile } = bar;
  const { ink } = coloursOf(film);
  const top = yMm - size * (over.heightMm + SAID_GAP_MM);
  const bottom = yMm + size * (tile.heightMm + SAID_GAP_MM);
  return [
    ...allMoved(inSize(over.items, size, ink), xMm, top),
    ...allMoved(inSize(under.items, size, ink), xMm, bottom),
  ];
}

function barItems(film: Film, scene: StagedScene, placed: PlacedBar): readonly Item[] {
  const { tile } = placed.bar;
  const { xMm: x, yMm: y, size } = placed;
  const picture: Item = {
    ...{ kind: 'picture', x, y, width: size * tile.widthMm, height: size * tile.heightMm },
    drawing: tile.drawing,
  };
  return [
    ...[picture, ...saidItems(film, placed)],
    ...[...countItems(film, placed, null), ...handItems(film, scene, placed)],
  ];
}

function pageItems(film: Film, { stage, page }: Frame, scene: StagedScene): readonly Item[] {
  const bars = (page as ScenePage).bars.flatMap((bar) => barItems(film, scene, bar));
  return [...headerItems(film, scene, stage), ...howItems(film, scene, stage), ...bars];
}

/** The form as a line that fills bar by bar, and in words where it stands. */
function stripItems(film: Film, scene: StagedScene, formBar: number | null): readonly Item[] {
  const { fonts, said } = film.tools;
  const { left, right, stripTop, small } = scene.layout;
  const { soft, rule, accent, ink } = coloursOf(film);
  const { bars } = scene.program;
  const each = (right - left) / bars.length;
  const y = stripTop + 3;
  const level = (from: number, to: number, strokeMm: number, colour: string): Item => ({
    ...{ kind: 'line', x: left + from * each, x2: left + to * each, y, y2: y, strokeMm, colour },
  });
  const ticks = bars.map((bar, index): Item => {
    const isNew = index === 0 || bars[index - 1]?.play !== bar.play;
    const x = left + index * each;
    const height = isNew ? 2.2 : 1.1;
    return { kind: 'line', x, x2: x, y: y - height, y2: y + height, strokeMm: 0.4, colour: soft };
  });
  const at = Math.max(0, formBar ?? 0);
  const bar = bars[at - 1];
  const place = said.barOf({ bar: at, bars: bars.length });
  const text = bar ? `${capital(place)} · ${said.play[bar.play as keyof typeof said.play]}` : said.countIn;
  return [
    level(0, bars.length, 0.4, rule),
    ...(at > 1 ? [level(0, at - 1, 0.9, soft)] : []),
    ...(bar ? [level(at - 1, at, 1.8, accent)] : []),
    ...ticks,
    setLine(fonts, text, style('regular', small), { x: left, y: y + small + 2.2, colour: ink }),
  ];
}

function litPatch(film: Film, key: string, { bar: placed, beat }: Lit): Drawing {
  const { bar, xMm, size, countsMm } = placed;
  const text = 3.5 * size;
  const box = {
    x: xMm - text,
    y: countsMm - 0.85 * text,
    width: size * bar.tile.widthMm + 2 * text,
    height: 1.05 * text,
  };
  return drawing(film, `${key} ${beat}`, box, () => countItems(film, placed, beat));
}

/** So much is drawn anew beside the line of the form. */
const STRIP_MARGIN_MM = 2;

/** What is drawn for a frame. */
export function drawingsOf(film: Film, frame: Frame): FrameDrawings {
  const { widthMm, heightMm } = SHAPES[film.look.shape];
  const whole = { x: 0, y: 0, width: widthMm, height: heightMm };
  const { scene, stage, page, formBar, lit } = frame;
  if (scene.kind === 'title' || !page)
    return { page: drawing(film, 'title', whole, () => titleItems(film)), patches: [] };
  const pages = scene.stagePages[stage] ?? [];
  const key = `${scene.startFrame} ${stage} ${pages.indexOf(page)}`;
  const { left, stripTop, stripHeight } = scene.layout;
  const x = Math.max(0, left - STRIP_MARGIN_MM);
  const strip = { x, y: stripTop, width: widthMm - x, height: stripHeight };
  const stripKey = `${scene.startFrame} bar ${Math.max(0, formBar ?? 0)}`;
  return {
    page: drawing(film, key, whole, () => pageItems(film, frame, scene)),
    patches: [
      drawing(film, stripKey, strip, () => stripItems(film, scene, formBar)),
      ...(lit ? [litPatch(film, `${key} ${page.bars.indexOf(lit.bar)}`, lit)] : []),
    ],
  };
}
