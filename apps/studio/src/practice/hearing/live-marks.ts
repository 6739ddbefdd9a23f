/**
 * Marks on the notation, drawn as soon as a stroke is known: a head with a hairline where it was struck, a rule to
 * where it is written; a hollow ring for a stroke that did not come; a plus for one too many.
 *
 * Straight into the drawing, past React: a mark must not wait for anything else.
 *
 * Conventions: units of the drawing; ms, positive is late.
 */
import type { Lesson, Voice } from '@shedbook/core';
import { headOf } from '../../notation/staff.ts';
import type { HeardStroke } from './ear-messages.ts';
import { displacement, headAt } from './heard-places.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** Half the width of a head, and half the length of the hairline, in units. */
const HALF_HEAD = 6.45;
const HALF_HAIRLINE = 11;
const RING = 8;

/** Marks older than this many times through are taken away. */
const PASSES_SHOWN = 1;

function draw(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  return element;
}

/** A written stroke that a mark belongs to. */
export interface MarkedPlace {
  readonly voice: Voice;
  /** Drawn bar, from 0. */
  readonly bar: number;
  readonly beat: number;
  readonly slot: number;
  readonly slots: number;
}

function keyOf({ voice, bar, beat, slot, slots }: MarkedPlace): string {
  return `${voice} ${bar} ${beat} ${slot}/${slots}`;
}

/** The marks of one drawing. */
export class LiveMarks {
  readonly #lesson: Lesson;
  readonly #layerOf: (bar: number) => SVGElement | null;
  readonly #marks = new Map<string, { readonly mark: SVGElement; readonly pass: number }>();
  #extras: { readonly mark: SVGElement; readonly pass: number }[] = [];

  /** @param layerOf where the marks of a drawn bar go, or null where it is not drawn */
  constructor(lesson: Lesson, layerOf: (bar: number) => SVGElement | null) {
    this.#lesson = lesson;
    this.#layerOf = layerOf;
  }

  /** A stroke at its written place. */
  struck(place: MarkedPlace, stroke: Pick<HeardStroke, 'offsetMs'>, bpm: number, pass: number): void {
    const { x, y } = headAt(this.#lesson, { ...place, bar: place.bar + 1 }, place.voice, place.slots);
    const { dx, isBeyond } = displacement(this.#lesson, bpm, stroke.offsetMs ?? 0);
    const mark = draw('g', { class: isBeyond ? 'heard beyond' : 'heard' });
    const at = x + dx;
    const head = headOf(place.voice, 'normal');
    mark.append(
      draw('path', { class: 'way', d: `M${x} ${y}H${at}` }),
      draw('path', { class: 'hairline', d: `M${at} ${y - HALF_HAIRLINE}V${y + HALF_HAIRLINE}` }),
      draw('use', { href: `#glyph-${head}`, x: at - HALF_HEAD, y }),
    );
    this.#put(place, mark, pass);
  }

  /** A written stroke that did not come. */
  missed(place: MarkedPlace, pass: number): void {
    if (this.#marks.get(keyOf(place))?.pass === pass) return;
    const { x, y } = headAt(this.#lesson, { ...place, bar: place.bar + 1 }, place.voice, place.slots);
    this.#put(place, draw('circle', { class: 'missed', cx: x, cy: y, r: RING }), pass);
  }

  /** A stroke where none is written; `x` from the bar line in units. */
  extra(bar: number, x: number, voice: Voice, pass: number): void {
    const layer = this.#layerOf(bar);
    if (!layer) return;
    const { y } = headAt(this.#lesson, { bar: 1, beat: 1, slot: 1 }, voice, 1);
    const mark = draw('path', { class: 'extra', d: `M${x - 5} ${y}H${x + 5}M${x} ${y - 5}V${y + 5}` });
    layer.append(mark);
    this.#extras.push({ mark, pass });
  }

  #put(place: MarkedPlace, mark: SVGElement, pass: number): void {
    const layer = this.#layerOf(place.bar);
    if (!layer) return;
    const key = keyOf(place);
    this.#marks.get(key)?.mark.remove();
    layer.append(mark);
    this.#marks.set(key, { mark, pass });
  }

  /** A new time through begins: older marks fade, and those before them go. */
  pass(pass: number): void {
    for (const [key, { mark, pass: own }] of this.#marks) {
      mark.classList.toggle('before', own < pass);
      if (own < pass - PASSES_SHOWN) {
        mark.remove();
        this.#marks.delete(key);
      }
    }
    for (const { mark, pass: own } of this.#extras) if (own < pass) mark.remove();
    this.#extras = this.#extras.filter(({ pass: own }) => own >= pass);
  }

  /** Takes every mark away. */
  clear(): void {
    for (const { mark } of [...this.#marks.values(), ...this.#extras]) mark.remove();
    this.#marks.clear();
    this.#extras = [];
  }
}
