/** The key: every voice and mark that the sheet uses, drawn as it is printed, with its name. */
import {
  ARTICULATIONS,
  HEAD_KINDS,
  HOW_WORDS,
  type HowWord,
  howEntries,
  howWords,
  isFootShut,
  isSticked,
  type Strike,
  type Voice,
  type WrittenArticulation,
} from '@shedbook/core';
import { ASCENT, CAP_HEIGHT, DESCENT } from '../text/fonts.ts';
import { wrapText } from '../text/wrap.ts';
import type { Tile } from '../tile/tile.ts';
import type { FlowBlock, SheetContext } from './context.ts';
import { EXAMPLE_SIGN_MM, exampleSign } from './example-sign.ts';
import { stageHow } from './groove-blocks.ts';
import { howSign, howSigns, SIGN_MM } from './how-signs.ts';
import { allMoved, type Item } from './item.ts';
import { heldTile, strokeTile } from './mark-tiles.ts';
import {
  fitsOneLine,
  grooveParts,
  heldStrikesOf,
  ownParts,
  type PrintedPart,
  strikesOf,
  wholeParts,
} from './parts.ts';
import { setLine, style } from './setting.ts';
import type { Manner } from './sheet-words.ts';

const STAFF_SPACE_MM = 1.35;
const LABEL = style('regular', 3.7);
const LABEL_GAP_MM = 1.8;
const COLUMN_GAP_MM = 5;
const ROW_GAP_MM = 2.4;

interface Entry {
  readonly tile: Tile | null;
  /** Drawn in place of a tile. */
  readonly letters?: string;
  /** Drawn in place of a tile. */
  readonly sign?: HowWord | 'example';
  readonly label: string;
}

const PLAIN: Omit<Strike, 'voice'> = { articulation: 'normal', accent: false, ghost: false };

/** Every part that the sheet prints: the groove, then what stands at each exercise. */
function printedParts({ lesson, settings }: SheetContext): readonly PrintedPart[] {
  const exercises = lesson.exercises.flatMap((exercise) =>
    settings.staff === 'full' ? wholeParts(lesson, exercise) : ownParts(exercise),
  );
  return [...grooveParts(lesson), ...exercises];
}

function voicesOf(strikes: readonly Strike[]): readonly Voice[] {
  const voices = [...new Set(strikes.map((strike) => strike.voice))];
  const order = Object.keys(HEAD_KINDS);
  return voices.toSorted((a, b) => order.indexOf(a) - order.indexOf(b));
}

/** The voice that shows each way of striking alone, in the order of the key. */
const STRUCK: Readonly<Record<Exclude<WrittenArticulation, 'normal'>, Voice>> = {
  flam: 'snare',
  drag: 'snare',
  buzz: 'snare',
  sweep: 'snare',
  bell: 'ride',
  splash: 'hihat-foot',
};

const ORDER = Object.keys(STRUCK);

/** The marks in use: each with a stroke that shows it alone. */
function marksOf(strikes: readonly Strike[]): readonly { readonly id: Manner; readonly strike: Strike }[] {
  const drum = (over: Partial<Strike>): Strike => ({ voice: 'snare', ...PLAIN, ...over });
  const struck = ARTICULATIONS.flatMap((articulation) => {
    if (articulation === 'normal' || articulation === 'tap') return [];
    const used = (s: Strike) => s.articulation === articulation;
    return [{ id: articulation, used, strike: drum({ voice: STRUCK[articulation], articulation }) }];
  });
  const all = [
    { id: 'accent' as const, used: (s: Strike) => s.accent, strike: drum({ accent: true }) },
    { id: 'ghost' as const, used: (s: Strike) => s.ghost, strike: drum({ ghost: true }) },
    ...struck.toSorted((a, b) => ORDER.indexOf(a.id) - ORDER.indexOf(b.id)),
  ];
  return all.filter((mark) => strikes.some(mark.used));
}

/** What the one line of a compact sheet stands for. */
function lineEntries(contexts: readonly SheetContext[]): readonly Entry[] {
  const [{ settings, engraver, words }] = contexts as readonly [SheetContext];
  if (settings.staff === 'full') return [];
  const exercises = contexts.flatMap(({ lesson }) => lesson.exercises);
  const onLine = exercises.map(ownParts).filter(fitsOneLine);
  const voices = new Set(onLine.flatMap((parts) => parts.map((part) => part.voice)));
  return [...voices].map((voice) => ({
    tile: strokeTile(engraver, `key-line-${voice}`, { voice, ...PLAIN }, STAFF_SPACE_MM, 'line'),
    label: words.inExercises({ voice: words.voices[voice] }),
  }));
}

/** Whether hands are written anywhere. */
function hasHands(contexts: readonly SheetContext[]): boolean {
  return contexts.some(({ lesson }) => lesson.exercises.some(isSticked));
}

/** The signs of how limbs play that stand anywhere on the sheet. */
function howWordsOf(contexts: readonly SheetContext[]): readonly HowWord[] {
  const used = new Set(
    contexts.flatMap(({ lesson }) => [
      ...(lesson.groove.length === 0 ? [] : lesson.layers.flatMap((layer) => stageHow(lesson, layer))),
      ...lesson.exercises.flatMap(({ how }) => howEntries(how ?? {}).flatMap(([, words]) => howWords(words))),
    ]),
  );
  return HOW_WORDS.filter((word) => used.has(word));
}

/** Whether the hand strikes the hi-hat closed: only then a foot may be silent under it. */
function isHihat({ voice }: Strike): boolean {
  return voice === 'hihat';
}

function entriesOf(contexts: readonly SheetContext[]): readonly Entry[] {
  const [{ engraver, settings, words }] = contexts as readonly [SheetContext];
  const parts = contexts.flatMap(printedParts);
  const strikes = strikesOf(parts);
  const [held] = heldStrikesOf(parts);
  const isShut = strikes.some(isHihat) && isFootShut(contexts.map(({ lesson }) => lesson));
  const voices = voicesOf(strikes).map((voice) => ({
    tile: strokeTile(engraver, `key-${voice}`, { voice, ...PLAIN }, STAFF_SPACE_MM, 'full'),
    label:
      voice === 'hihat-foot' && isShut ? words.notHeard({ voice: words.voices[voice] }) : words.voices[voice],
  }));
  const marks = marksOf(strikes).map(({ id, strike }) => ({
    tile: strokeTile(engraver, `key-${id}`, strike, STAFF_SPACE_MM, 'bare'),
    label: words.key[id],
  }));
  const ties: readonly Entry[] = held
    ? [{ tile: heldTile(engraver, 'key-tie', held, STAFF_SPACE_MM), label: words.tie }]
    : [];
  const hands = settings.stickings && hasHands(contexts);
  const letters: readonly Entry[] = hands ? [{ tile: null, letters: 'R L', label: words.hands }] : [];
  const signs = howWordsOf(contexts).map((sign): Entry => ({ tile: null, sign, label: words.howKey[sign] }));
  const hasExample = contexts.some(({ lesson }) => lesson.exercises.some((each) => each.example));
  const shown: readonly Entry[] = hasExample ? [{ tile: null, sign: 'example', label: words.example }] : [];
  return [...voices, ...lineEntries(contexts), ...marks, ...ties, ...letters, ...signs, ...shown];
}

/** Items of an entry, its staff's middle (or its text) on y = 0. */
function drawEntry({ fonts }: SheetContext, entry: Entry, label: string, signMm: number): readonly Item[] {
  const text = setLine(fonts, label, LABEL, { x: signMm + LABEL_GAP_MM, y: (CAP_HEIGHT * LABEL.sizeMm) / 2 });
  if (entry.sign === 'example') {
    const { width, height } = EXAMPLE_SIGN_MM;
    return [exampleSign((signMm - width) / 2, -height / 2), text];
  }
  if (entry.sign) {
    const { widthMm } = howSigns([entry.sign]);
    return [howSign(entry.sign, (signMm - widthMm) / 2, -SIGN_MM / 2), text];
  }
  if (!entry.tile) {
    const sign = setLine(fonts, entry.letters ?? '', style('bold', LABEL.sizeMm), {
      x: signMm / 2,
      y: (CAP_HEIGHT * LABEL.sizeMm) / 2,
      align: 'middle',
    });
    return [sign, text];
  }
  const { tile } = entry;
  const bare = tile.staffBottomMm - tile.staffTopMm >= tile.heightMm - 0.01;
  const middle = bare ? tile.heightMm / 2 : (tile.staffTopMm + tile.staffBottomMm) / 2;
  return [{ kind: 'tile', x: (signMm - tile.widthMm) / 2, y: -middle, tile }, text];
}

/** What a label takes above and below its middle. */
const LABEL_EXTENT = {
  above: (ASCENT - CAP_HEIGHT / 2) * LABEL.sizeMm,
  below: (DESCENT + CAP_HEIGHT / 2) * LABEL.sizeMm,
} as const;

function extentOf(entries: readonly Entry[]): { readonly above: number; readonly below: number } {
  const sizes = entries.map(({ tile }) => {
    if (!tile) return LABEL_EXTENT;
    const bare = tile.staffBottomMm - tile.staffTopMm >= tile.heightMm - 0.01;
    const middle = bare ? tile.heightMm / 2 : (tile.staffTopMm + tile.staffBottomMm) / 2;
    return {
      above: Math.max(LABEL_EXTENT.above, middle),
      below: Math.max(LABEL_EXTENT.below, tile.heightMm - middle),
    };
  });
  return { above: Math.max(...sizes.map((s) => s.above)), below: Math.max(...sizes.map((s) => s.below)) };
}

/** Entries in rows of equal columns, each with the column that it begins in. */
interface Key {
  readonly columns: number;
  readonly rows: readonly (readonly {
    readonly entry: Entry;
    readonly column: number;
    readonly span: number;
  }[])[];
}

/** The most columns of a key, and the share of entries that one column has to hold. */
const MOST_COLUMNS = 6;
const HELD_SHARE = 0.9;

/** The rows that so many columns make; an entry that is too long for one takes more. Null where too many are. */
function keyOf(
  entries: readonly Entry[],
  widths: readonly number[],
  columns: number,
  contentMm: number,
): Key | null {
  const columnMm = contentMm / columns;
  const spans = widths.map((width) =>
    Math.min(columns, Math.ceil((width + COLUMN_GAP_MM) / columnMm - 1e-9)),
  );
  if (columns > 1 && spans.filter((span) => span === 1).length < HELD_SHARE * spans.length) return null;
  const rows: { entry: Entry; column: number; span: number }[][] = [];
  let used = columns;
  entries.forEach((entry, index) => {
    const span = spans[index] as number;
    if (used + span > columns) {
      rows.push([]);
      used = 0;
    }
    rows.at(-1)?.push({ entry, column: used, span });
    used += span;
  });
  return { columns, rows };
}

/** The key with the fewest rows, in as few columns as make them. */
function bestKey(entries: readonly Entry[], widths: readonly number[], contentMm: number): Key {
  const all = Array.from({ length: MOST_COLUMNS }, (_, index) =>
    keyOf(entries, widths, index + 1, contentMm),
  );
  const keys = all.filter((key) => key !== null);
  return keys.toSorted((a, b) => a.rows.length - b.rows.length || a.columns - b.columns)[0] as Key;
}

/**
 * The key to all that some sections print, in rows of equal columns; nothing where the lesson wants none or prints
 * nothing. @param contexts one at least
 */
export function layOutLegend(contexts: readonly SheetContext[]): readonly FlowBlock[] {
  const [context] = contexts as readonly [SheetContext];
  const { fonts, contentWidthMm, settings } = context;
  const entries = settings.legend ? entriesOf(contexts) : [];
  if (entries.length === 0) return [];
  const signMm = Math.max(...entries.map(({ tile }) => tile?.widthMm ?? 0), 8);
  const widths = entries.map(
    ({ label }) => signMm + LABEL_GAP_MM + fonts.widthMm(label, LABEL.weight, LABEL.sizeMm),
  );
  const { columns, rows } = bestKey(entries, widths, contentWidthMm + COLUMN_GAP_MM);
  const columnMm = (contentWidthMm + COLUMN_GAP_MM) / columns;
  return rows.map((row, index): FlowBlock => {
    const { above, below } = extentOf(row.map(({ entry }) => entry));
    const items = row.flatMap(({ entry, column, span }) => {
      const roomMm = span * columnMm - COLUMN_GAP_MM - signMm - LABEL_GAP_MM;
      const [label = ''] = wrapText(fonts, entry.label, LABEL, roomMm, 1);
      return allMoved(drawEntry(context, entry, label, signMm), column * columnMm, above);
    });
    return { gapMm: index === 0 ? 5 : ROW_GAP_MM, heightMm: above + below, items };
  });
}
