/** What was found, as one picture: ink on paper, whatever the page looks like, since it is read elsewhere. */
import type { SoundCheckWords } from '@shedbook/words';
import type { Part } from './rows.ts';

/** Pixels. */
const SIZE = { width: 1000, margin: 40, line: 34, value: 480 } as const;
const INK = '#1b2330';
const PAPER = '#fdfdfb';

/** A line of the picture: a heading, or a name with its value. */
type Line = { readonly heading: string } | { readonly name: string; readonly value: string };

/** A text in lines that fit a width. */
function wrapped(pen: CanvasRenderingContext2D, text: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && pen.measureText(longer).width <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

function linesOf(pen: CanvasRenderingContext2D, parts: readonly Part[], words: SoundCheckWords): Line[] {
  pen.font = '24px sans-serif';
  return parts.flatMap(({ key, rows }): Line[] => [
    { heading: words.parts[key] },
    ...rows.flatMap((row) =>
      wrapped(pen, row.value, SIZE.width - SIZE.value - SIZE.margin).map((value, i) => ({
        name: i === 0 ? words.rows[row.key] : '',
        value,
      })),
    ),
  ]);
}

function draw(pen: CanvasRenderingContext2D, lines: readonly Line[]): void {
  pen.fillStyle = PAPER;
  pen.fillRect(0, 0, pen.canvas.width, pen.canvas.height);
  pen.fillStyle = INK;
  lines.forEach((line, i) => {
    const y = SIZE.margin + (i + 1) * SIZE.line;
    pen.font = 'heading' in line ? 'bold 26px sans-serif' : '24px sans-serif';
    pen.fillText('heading' in line ? line.heading : line.name, SIZE.margin, y);
    if ('value' in line) pen.fillText(line.value, SIZE.value, y);
  });
}

/** The picture as a PNG file. @throws Error where the browser draws none */
export async function pictureOf(parts: readonly Part[], words: SoundCheckWords): Promise<File> {
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('Internal error: no picture can be drawn here');
  const lines = linesOf(pen, parts, words);
  canvas.width = SIZE.width;
  canvas.height = 2 * SIZE.margin + (lines.length + 1) * SIZE.line;
  draw(pen, lines);
  const made = await new Promise<Blob | null>((resolve) => {
    canvas.toBlob(resolve, 'image/png');
  });
  if (!made) throw new Error('Internal error: the picture could not be made');
  return new File([made], 'sound.png', { type: 'image/png' });
}
