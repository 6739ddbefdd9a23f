/** Small boxes with the tempi of a lesson, to be ticked off with a pencil. */
import { CAP_HEIGHT } from '../text/fonts.ts';
import type { SheetContext } from './context.ts';
import { type Block, type Item, PENCIL } from './item.ts';
import { setLine, style } from './setting.ts';
import { printedTempi, thinned } from './tempi.ts';

const BOX = { heightMm: 3.9, gapMm: 1, strokeMm: 0.18, padMm: 1.9 } as const;
const BOX_TEXT = style('regular', 2.7);

/** A box with a tempo in it, to be ticked off. */
function tickBox({ fonts }: SheetContext, tempo: string, x: number, widthMm: number): readonly Item[] {
  const { heightMm: height, strokeMm } = BOX;
  const border = {
    x: x + strokeMm / 2,
    y: strokeMm / 2,
    width: widthMm - strokeMm,
    height: height - strokeMm,
  };
  const baseline = (height + CAP_HEIGHT * BOX_TEXT.sizeMm) / 2;
  const label = setLine(fonts, tempo, BOX_TEXT, {
    x: x + widthMm / 2,
    y: baseline,
    align: 'middle',
    colour: PENCIL,
    role: 'aside',
  });
  return [{ kind: 'rect', ...border, strokeMm, colour: PENCIL }, label];
}

/** As many of the tempi as fit a width; start and goal stay. */
export function tickBoxes(context: SheetContext, roomMm: number): Block {
  const steps = printedTempi(context.lesson).steps.map(String);
  const texts = steps.map((step) => context.fonts.widthMm(step, BOX_TEXT.weight, BOX_TEXT.sizeMm));
  const widthMm = Math.max(...texts) + BOX.padMm;
  const pitch = widthMm + BOX.gapMm;
  const shown = thinned(steps, Math.floor((roomMm + BOX.gapMm) / pitch));
  const items = shown.flatMap((step, index) => tickBox(context, step, index * pitch, widthMm));
  return {
    items,
    widthMm: Math.max(0, shown.length * pitch - BOX.gapMm),
    heightMm: shown.length === 0 ? 0 : BOX.heightMm,
  };
}
