/** Setting text: one line at a place, or a column of lines. */
import { ASCENT, DESCENT, type Fonts, type Weight } from '../text/fonts.ts';
import { type TextStyle, wrapText } from '../text/wrap.ts';
import { type Block, INK, type TextItem, type TextRole } from './item.ts';

/** Baseline to baseline, in ems. */
export const LEADING = 1.28;

/** Where the given x stands in the text. */
export type Alignment = 'left' | 'middle' | 'right';

/** A style. */
export function style(weight: Weight, sizeMm: number): TextStyle {
  return { weight, sizeMm };
}

/** One line of text on a baseline. */
export function setLine(
  fonts: Fonts,
  text: string,
  { weight, sizeMm }: TextStyle,
  at: {
    readonly x: number;
    readonly y: number;
    readonly align?: Alignment;
    readonly colour?: string;
    readonly role?: TextRole | undefined;
  },
): TextItem {
  const runs = fonts.runs(text, weight, sizeMm);
  const widthMm = runs.reduce((sum, run) => sum + run.widthMm, 0);
  const before = at.align === 'middle' ? widthMm / 2 : at.align === 'right' ? widthMm : 0;
  const { y, colour = INK, role } = at;
  return {
    ...{ kind: 'text', x: at.x - before, y, weight, sizeMm, colour, runs, widthMm },
    ...(role ? { role } : {}),
  };
}

/** Text as a column as wide as given, its lines broken to fit. */
export function setColumn(
  fonts: Fonts,
  text: string,
  of: TextStyle,
  widthMm: number,
  options: { readonly maxLines?: number; readonly colour?: string; readonly role?: TextRole } = {},
): Block {
  const lines = wrapText(fonts, text, of, widthMm, options.maxLines);
  const items = lines.map((line, index) =>
    setLine(fonts, line, of, {
      x: 0,
      y: (ASCENT + index * LEADING) * of.sizeMm,
      ...(options.colour ? { colour: options.colour } : {}),
      role: options.role,
    }),
  );
  const heightMm = lines.length === 0 ? 0 : (ASCENT + DESCENT + (lines.length - 1) * LEADING) * of.sizeMm;
  return { widthMm, heightMm, items };
}
