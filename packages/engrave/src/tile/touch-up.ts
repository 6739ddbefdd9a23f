/**
 * What verovio cannot be asked for, set right in its drawing.
 *
 * Conventions: its drawing has ten units to a unit of the page, 180 to a staff space; x of a glyph is its left end.
 */

/** Units of a staff space inside verovio's drawing. */
const SPACE = 180;

/** From a head to the parenthesis after it, so that the stem goes up between them; the one before it is as far off. */
const PARENTHESIS_SPACES = 0.27;

/** From a head to the accent beside it: over a stem that goes up, with air on both sides. */
const BESIDE_SPACES = 0.38;

/** Width of a notehead, in staff spaces, and how far an accent's origin is from its left end and over its foot. */
const HEAD_SPACES = 1.3;
const ACCENT_HALF_SPACES = 0.47;

const CLOSING = /(<use xlink:href="#E26B-[^"]*" transform="translate\()(-?[\d.]+)/g;

/** Moves the parenthesis after each ghost note clear of its stem. */
function clearParentheses(svg: string): string {
  return svg.replace(
    CLOSING,
    (_, before: string, x: string) => `${before}${Number(x) + PARENTHESIS_SPACES * SPACE}`,
  );
}

const BESIDE =
  /<g id="([^"]+)-accent" class="artic"><use xlink:href="#(E4A[01])(-[^"]*)" transform="translate\((-?[\d.]+), (-?[\d.]+)\)/g;

function headAt(svg: string, id: string): { readonly x: number; readonly y: number } | null {
  const from = svg.indexOf(`<g id="${id}" `);
  const match =
    from < 0
      ? null
      : /class="notehead">\s*<use [^>]*translate\((-?[\d.]+), (-?[\d.]+)\)/.exec(svg.slice(from, from + 600));
  return match && { x: Number(match[1]), y: Number(match[2]) };
}

/** Moves each accent that belongs to an inner head of a stem beside that head. */
function placeAccents(svg: string): string {
  return svg.replace(BESIDE, (whole: string, id: string, glyph: string, rest: string) => {
    const head = headAt(svg, id);
    if (!head) return whole;
    const x = head.x + (HEAD_SPACES + BESIDE_SPACES) * SPACE;
    const y = head.y + (glyph === 'E4A0' ? 1 : -1) * ACCENT_HALF_SPACES * SPACE;
    return `<g id="${id}-accent" class="artic"><use xlink:href="#${glyph}${rest}" transform="translate(${x}, ${y})`;
  });
}

const TWO_BARS = /(<g id="[^"]+" class="mRpt2">)(.*?)<path d="M(-?[\d.]+) [^>]*\/>(.*?)(<\/g>)/g;

const BAR_LINE = /class="barLine"><path d="M(-?[\d.]+) /g;

/** Moves each sign that stands for two bars from its first bar to the line between them, which it is drawn through. */
function centreOnBarLine(svg: string): string {
  return svg.replace(
    TWO_BARS,
    (whole: string, open: string, sign: string, x: string, number: string, close: string, at: number) => {
      const end = svg.indexOf('class="measure"', at);
      const bar = svg.slice(at + whole.length, end < 0 ? undefined : end);
      const lines = [...bar.matchAll(BAR_LINE)].map((match) => Number(match[1]));
      const by = Math.max(...lines) - Number(x);
      const moved = (text: string) =>
        text.replace(/translate\((-?[\d.]+),/g, (_, from: string) => `translate(${Number(from) + by},`);
      return lines.length === 0 ? whole : open + moved(sign) + moved(number) + close;
    },
  );
}

/** The drawing with its parentheses, accents and signs of two bars where they belong. */
export function touchUp(svg: string): string {
  const clear = svg.includes('#E26B-') ? clearParentheses(svg) : svg;
  const placed = clear.includes('-accent" class="artic"') ? placeAccents(clear) : clear;
  return placed.includes('class="mRpt2"') ? centreOnBarLine(placed) : placed;
}
