/**
 * Marks on the notation, drawn as soon as a stroke is known: a head with a hairline where it was struck, a rule to
 * where it is written; a hollow ring for a stroke that did not come; a plus for one too many. What the ear is not sure of
 * is pale and dotted where it was heard, and a question mark where it was not.
 *
 * Straight into the picture, past React: a mark must not wait for anything else.
 *
 * Conventions: millimetres on a tile; ms, positive is late.
 */
import { HEAD_KINDS, type Meter, type Voice } from '@shedbook/core';
import type { PackBar } from '@shedbook/pack';
import { displacement, headOn, mmPerSecond } from './heard-places.ts';
import styles from './live-marks.module.css';

const SVG = 'http://www.w3.org/2000/svg';

/** Sizes of marks, in millimetres: a staff space is about 1.8. */
const HEAD_MM = { rx: 1.15, ry: 0.85 } as const;
const HAIRLINE_MM = 2.1;
const RING_MM = 1.5;
const PLUS_MM = 1;
/** Where a question mark stands beside the middle of a head: to the right, and its foot under it, in millimetres. */
const QUESTION_MM = { right: 2.3, under: 1.2 } as const;

function draw(name: string, attributes: Readonly<Record<string, string | number | undefined>>): SVGElement {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== undefined) element.setAttribute(key, String(value));
  }
  return element;
}

function headMark(voice: Voice, x: number, y: number): SVGElement {
  const { rx, ry } = HEAD_MM;
  if (HEAD_KINDS[voice] !== 'x') return draw('ellipse', { class: styles.head, cx: x, cy: y, rx, ry });
  const d = `M${x - ry} ${y - ry}L${x + ry} ${y + ry}M${x + ry} ${y - ry}L${x - ry} ${y + ry}`;
  return draw('path', { class: styles.cross, d });
}

/** A picture on the page and the tile that it shows. */
export interface Shown {
  readonly picture: Element;
  readonly bar: PackBar;
}

/** A stroke to be marked. */
export interface Marked {
  readonly shown: Shown;
  readonly voice: Voice;
  readonly beat: number;
  readonly slot: number;
  /** Which bar of everything that was played: it counts up from bar to bar. */
  readonly turn: number;
}

/** How a stroke lies, and whether the ear is sure of its voice. */
export interface Struck {
  readonly offsetMs: number;
  readonly isSure: boolean;
}

interface Mark {
  readonly element: SVGElement;
  readonly tile: string;
  readonly turn: number;
}

function layerOf(picture: Element): Element {
  const there = picture.querySelector('[data-part="heard"]');
  if (there) return there;
  const layer = draw('g', { class: styles.marks, 'data-part': 'heard' });
  picture.append(layer);
  return layer;
}

function keyOf({ shown, voice, beat, slot }: Marked): string {
  return `${shown.bar.tile} ${voice} ${beat} ${slot}`;
}

/** The marks on the pictures of the stand. */
export class LiveMarks {
  readonly #marks = new Map<string, Mark>();
  readonly #turns = new Map<string, number>();
  /** The turn before the last of each tile: its marks are still there, paler. */
  readonly #before = new Map<string, number>();
  #extras: readonly Mark[] = [];

  /** A stroke at its written place. @returns whether the picture shows that place. */
  struck(marked: Marked, { offsetMs, isSure }: Struck, meter: Meter, bpm: number): boolean {
    const head = headOn(marked.shown.bar, marked, marked.voice);
    if (!head) return false;
    const { dxMm, isBeyond } = displacement(mmPerSecond(marked.shown.bar, meter, bpm), offsetMs);
    const at = head.xMm + dxMm;
    const element = draw('g', {
      class: isBeyond ? styles.beyond : undefined,
      'data-mark': 'heard',
      'data-unsure': isSure ? undefined : '',
      'data-offset': Math.round(offsetMs),
    });
    element.append(
      draw('path', { class: styles.way, d: `M${head.xMm} ${head.yMm}H${at}` }),
      draw('path', {
        class: styles.hairline,
        d: `M${at} ${head.yMm - HAIRLINE_MM}V${head.yMm + HAIRLINE_MM}`,
      }),
      headMark(marked.voice, at, head.yMm),
    );
    this.#put(marked, element);
    return true;
  }

  /** A written stroke that did not come. */
  missed(marked: Marked): void {
    const head = headOn(marked.shown.bar, marked, marked.voice);
    if (!head) return;
    this.#put(
      marked,
      draw('circle', { class: styles.missed, 'data-mark': 'missed', cx: head.xMm, cy: head.yMm, r: RING_MM }),
    );
  }

  /** A written stroke of which nobody can say, or not yet, whether it came. */
  unsure(marked: Marked): void {
    const head = headOn(marked.shown.bar, marked, marked.voice);
    if (!head) return;
    const sign = draw('text', {
      class: styles.unsure,
      'data-mark': 'unsure',
      x: head.xMm + QUESTION_MM.right,
      y: head.yMm + QUESTION_MM.under,
    });
    sign.textContent = '?';
    this.#put(marked, sign);
  }

  /** Takes away the strokes too many of a bar that was played, so that others may take their place. */
  withoutExtras(shown: Shown, turn: number): void {
    const isGone = (each: Mark) => each.tile === shown.bar.tile && each.turn === turn;
    for (const { element } of this.#extras.filter(isGone)) element.remove();
    this.#extras = this.#extras.filter((each) => !isGone(each));
  }

  /** A stroke of a voice where none is written, at `xMm` on its tile. */
  extra(shown: Shown, voice: Voice, xMm: number, turn: number): void {
    const y = shown.bar.slots.find((slot) => slot.voice === voice)?.yMm;
    if (y === undefined || !this.#isInSight(shown.bar.tile, turn)) return;
    this.#begin(shown.bar.tile, turn);
    const d = `M${xMm - PLUS_MM} ${y}H${xMm + PLUS_MM}M${xMm} ${y - PLUS_MM}V${y + PLUS_MM}`;
    const element = draw('path', { class: styles.extra, 'data-mark': 'extra', d });
    this.#fade(element, shown.bar.tile, turn);
    layerOf(shown.picture).append(element);
    this.#extras = [...this.#extras, { element, tile: shown.bar.tile, turn }];
  }

  /** Whether a bar that was played is still drawn: it is the tile's last, or the one before. */
  #isInSight(tile: string, turn: number): boolean {
    return turn >= (this.#before.get(tile) ?? this.#turns.get(tile) ?? turn);
  }

  /** What is said of the time before is as pale as that. */
  #fade(element: SVGElement, tile: string, turn: number): void {
    if (turn < (this.#turns.get(tile) ?? turn)) element.setAttribute('data-before', '');
  }

  #put(marked: Marked, element: SVGElement): void {
    const key = keyOf(marked);
    const { tile } = marked.shown.bar;
    const there = this.#marks.get(key);
    if ((there && there.turn > marked.turn) || !this.#isInSight(tile, marked.turn)) return;
    this.#begin(tile, marked.turn);
    this.#fade(element, tile, marked.turn);
    there?.element.remove();
    layerOf(marked.shown.picture).append(element);
    this.#marks.set(key, { element, tile, turn: marked.turn });
  }

  /** The tile's bar is played again: the marks of the time before fade, and those before them go. */
  #begin(tile: string, turn: number): void {
    const last = this.#turns.get(tile) ?? turn;
    if (turn <= last) {
      this.#turns.set(tile, last);
      return;
    }
    this.#turns.set(tile, turn);
    this.#before.set(tile, last);
    for (const [key, mark] of this.#marks) {
      if (mark.tile !== tile) continue;
      mark.element.setAttribute('data-before', '');
      if (mark.turn >= last) continue;
      mark.element.remove();
      this.#marks.delete(key);
    }
    for (const extra of this.#extras.filter((each) => each.tile === tile)) {
      extra.element.setAttribute('data-before', '');
      if (extra.turn < last) extra.element.remove();
    }
    this.#extras = this.#extras.filter((each) => each.tile !== tile || each.turn >= last);
  }

  /** What is drawn is of a time before: nothing is listened to any more. */
  fade(): void {
    for (const { element } of [...this.#marks.values(), ...this.#extras])
      element.setAttribute('data-before', '');
  }

  /** Takes every mark away. */
  clear(): void {
    for (const { element } of [...this.#marks.values(), ...this.#extras]) element.remove();
    this.#marks.clear();
    this.#turns.clear();
    this.#before.clear();
    this.#extras = [];
  }
}
