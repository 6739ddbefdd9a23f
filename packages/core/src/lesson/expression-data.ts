/** What an exercise says beside its notes, as a lesson file has it. */
import type { DynamicSign, Expression, Fill } from './expression.ts';

const HAIRPINS = { louder: '<', softer: '>', end: '!' } as const;

function signText({ mark, hairpin }: DynamicSign): string {
  return `${mark ?? ''}${hairpin ? HAIRPINS[hairpin] : ''}`;
}

/** The text of dynamics: a sign for each beat up to the last one of the bar that has one. */
export function formatDynamics(dynamics: readonly DynamicSign[]): string {
  const bars: string[][] = [];
  for (const sign of dynamics) {
    while (bars.length <= sign.bar) bars.push([]);
    const bar = bars[sign.bar] as string[];
    while (bar.length < sign.beat) bar.push('.');
    bar[sign.beat] = signText(sign);
  }
  return bars.map((bar) => (bar.length === 0 ? '.' : bar.join(' '))).join(' | ');
}

/** The texts of bars as one. */
function formatTexts(texts: readonly (string | null)[]): string {
  return texts
    .map((each) => each ?? '')
    .join(' | ')
    .trim();
}

function fillToData({ bar, beat, silences }: Fill): Readonly<Record<string, unknown>> {
  const place = { bar: bar + 1, beat: beat + 1 };
  return silences === null ? place : { ...place, silences: silences.join(' + ') };
}

/** What of it makes another exercise of the same patterns, as one text; empty where nothing does. */
export function expressionName({ dynamics, fill, rests }: Expression): string {
  const played = expressionToData({
    ...(dynamics ? { dynamics } : {}),
    ...(fill ? { fill } : {}),
    ...(rests ? { rests } : {}),
  });
  const texts = Object.entries(played).map(([key, value]) => {
    const text = typeof value === 'string' ? value : Object.values(value as object).join(' ');
    return ` ${key} ${text}`;
  });
  return texts.join(';');
}

/** The keys of it, as far as anything is said. */
export function expressionToData(said: Expression): Readonly<Record<string, unknown>> {
  const { dynamics, above, below, fill, rests } = said;
  return {
    ...(dynamics ? { dynamics: formatDynamics(dynamics) } : {}),
    ...(above ? { above: formatTexts(above) } : {}),
    ...(below ? { below: formatTexts(below) } : {}),
    ...(fill ? { fill: fillToData(fill) } : {}),
    ...(rests ? { rests: rests.join(' + ') } : {}),
  };
}
