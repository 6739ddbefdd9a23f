/** Note heads as drum-set notation has them: crosses for cymbals and side stick, round heads for drums. */
import { HEAD_KINDS, type Voice } from '@shedbook/core';
import { element } from './svg.ts';

const CROSS_SIZE = 4.2;
const ROUND = { rx: 5.4, ry: 4.1 } as const;

/** How a head is drawn: filled with a colour, or as an outline. */
export interface HeadLook {
  readonly colour: string;
  readonly outline?: boolean;
}

/** A head with its middle at a place. */
export function noteHead(voice: Voice, x: number, y: number, { colour, outline }: HeadLook): string {
  if (HEAD_KINDS[voice] === 'x') {
    const s = CROSS_SIZE;
    const d = `M${-s} ${-s}L${s} ${s}M${-s} ${s}L${s} ${-s}`;
    const transform = `translate(${x.toFixed(2)} ${y.toFixed(2)})`;
    const dash: Record<string, string> = outline ? { 'stroke-dasharray': '2 2' } : {};
    return element('path', { d, transform, stroke: colour, 'stroke-width': 2, fill: 'none', ...dash });
  }
  const paint: Record<string, string> = outline
    ? { fill: 'none', stroke: colour, 'stroke-width': '1.6', 'stroke-dasharray': '2.4 2' }
    : { fill: colour };
  return element('ellipse', { cx: x, cy: y, ...ROUND, ...paint, transform: `rotate(-18 ${x} ${y})` });
}
