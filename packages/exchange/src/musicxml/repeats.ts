/**
 * Repeats as MusicXML: bar lines with repeat signs, endings, and bars that stand as a repeat sign.
 * Source: MusicXML 4.0, elements barline (bar-style, ending, repeat in this order), measure-repeat: the measures have
 * their notes all the same, the style says how they look.
 */
import { barSigns, type Exercise, type NotatedBar, signedBars } from '@shedbook/core';
import { type XmlNode, xml } from '../xml/write-xml.ts';

/** An exercise with its bars. */
export interface Repeated {
  readonly exercise: Exercise | null;
  readonly bars: readonly NotatedBar[];
}

function signsAt({ exercise }: Repeated, bar: number) {
  return barSigns(exercise ?? {}, bar);
}

/** The bar line before a bar (from 0) where a repeat or an ending begins there. */
export function leftBarline(of: Repeated, bar: number): XmlNode | null {
  const { opens, ending } = signsAt(of, bar);
  if (!opens && !ending?.begins) return null;
  const number = ending?.times.join(', ') ?? '';
  return xml('barline', { location: 'left' }, [
    opens ? xml('bar-style', {}, 'heavy-light') : null,
    ending?.begins ? xml('ending', { number, type: 'start' }, `${number}.`) : null,
    opens ? xml('repeat', { direction: 'forward' }) : null,
  ]);
}

/** The bar line after a bar where something ends there; `style` is what it has where the bar is the last one. */
export function rightBarline(
  of: Repeated,
  bar: number,
  style: 'light-light' | 'light-heavy',
): XmlNode | null {
  const { closes, ending } = signsAt(of, bar);
  const isLast = bar === of.bars.length - 1;
  const ends = ending?.ends ?? false;
  if (closes === null && !ends && !isLast) return null;
  const number = ending?.times.join(', ') ?? '';
  const type = ending?.isLast ? 'discontinue' : 'stop';
  const times = closes !== null && !ending && closes > 2 ? { times: closes } : {};
  const line = closes === null ? (isLast ? style : null) : 'light-heavy';
  return xml('barline', { location: 'right' }, [
    line === null ? null : xml('bar-style', {}, line),
    ends ? xml('ending', { number, type }) : null,
    closes === null ? null : xml('repeat', { direction: 'backward', ...times }),
  ]);
}

/** How many bars the sign stands for that a bar is written as; 0 where its notes stand, as where the groove is another. */
function signSize(of: Repeated, bar: number): number {
  return signedBars(of.exercise ?? {}, of.bars, bar)?.size ?? 0;
}

/** Where bars begin or cease to stand as repeat signs, at a bar. */
export function measureRepeats(of: Repeated, bar: number): XmlNode | null {
  const [before, now] = [bar === 0 ? 0 : signSize(of, bar - 1), signSize(of, bar)];
  if (before === now) return null;
  const style = (attributes: Readonly<Record<string, string | number>>, size: number | string) =>
    xml('measure-style', {}, [xml('measure-repeat', attributes, size)]);
  return xml('attributes', {}, [
    before > 0 ? style({ type: 'stop' }, '') : null,
    now > 0 ? style({ type: 'start', ...(now > 1 ? { slashes: now } : {}) }, now) : null,
  ]);
}
