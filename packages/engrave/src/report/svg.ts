/** Writing SVG as text. */
import { escapeXml } from '@shedbook/core';

type Attributes = Readonly<Record<string, string | number>>;

/** Numbers with two digits after the point at most. */
function written(value: string | number): string {
  return typeof value === 'number' ? String(Math.round(value * 100) / 100) : escapeXml(value);
}

/** An element; its children are SVG already. */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const given = Object.entries(attributes).map(([key, value]) => ` ${key}="${written(value)}"`);
  const head = `<${name}${given.join('')}`;
  return children.length === 0 ? `${head}/>` : `${head}>${children.join('')}</${name}>`;
}

/** A line of text. */
export function label(text: string, x: number, y: number, attributes: Attributes = {}): string {
  return element('text', { x, y, ...attributes }, escapeXml(text));
}

/** A straight line. */
export function line(x1: number, y1: number, x2: number, y2: number, attributes: Attributes): string {
  return element('line', { x1, y1, x2, y2, ...attributes });
}

/** Words in lines of at most so many characters. */
export function wrapWords(text: string, characters: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= characters) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines;
}
