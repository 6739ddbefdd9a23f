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

/** How large a ringed head is, so that it keeps off a head a third away as every other one does. */
const RINGED_SCALE = 0.82;

/** Width of a ringed head as the font has it, in staff spaces. */
const RINGED_SPACES = 1.3;

const RINGED =
  /(<use xlink:href="#E0B3-[^"]*" transform="translate\()(-?[\d.]+), (-?[\d.]+)\) scale\(([\d.]+), [\d.]+\)/g;

const STEM = /class="stem"><path d="M(-?[\d.]+) /g;

/** Makes ringed heads no larger than others; each stays at its stem, the one on its right where it has none on its left. */
function shrinkRinged(svg: string): string {
  const stems = [...svg.matchAll(STEM)].map((match) => Number(match[1]));
  return svg.replace(RINGED, (_, before: string, x: string, y: string, size: string) => {
    const right = Number(x) + RINGED_SPACES * SPACE;
    const isLeftOfStem = stems.some((stem) => Math.abs(stem - right) < SPACE / 4);
    const by = isLeftOfStem ? (1 - RINGED_SCALE) * RINGED_SPACES * SPACE : 0;
    const scale = +(Number(size) * RINGED_SCALE).toFixed(4);
    return `${before}${Number(x) + by}, ${y}) scale(${scale}, ${scale})`;
  });
}

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

/** From the end of a stem to the middle of the sign of a buzz on it, in staff spaces: clear of the flag. */
const BUZZ_SPACES = 4.05;

const FLAGGED_BUZZ =
  /(class="stem"><path d="M-?[\d.]+ (-?[\d.]+) L-?[\d.]+ (-?[\d.]+)"[^>]*\/><use xlink:href="#E22A-[^"]*" transform="translate\(-?[\d.]+, )-?[\d.]+(?=[^>]*\/><g id="[^"]*" class="flag">)/g;

/** Sets the sign of a buzz on a stem with a flag between flag and head: verovio sets it beyond the head. */
function placeBuzzes(svg: string): string {
  return svg.replace(FLAGGED_BUZZ, (_, before: string, head: string, end: string) => {
    const towardsHead = Math.sign(Number(head) - Number(end));
    return before + (Number(end) + towardsHead * BUZZ_SPACES * SPACE);
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

/** The drawing with its ringed heads, parentheses, accents, buzzes and signs of two bars where they belong. */
export function touchUp(svg: string): string {
  const even = svg.includes('#E0B3-') ? shrinkRinged(svg) : svg;
  const clear = even.includes('#E26B-') ? clearParentheses(even) : even;
  const placed = clear.includes('-accent" class="artic"') ? placeAccents(clear) : clear;
  const buzzed = placed.includes('#E22A-') ? placeBuzzes(placed) : placed;
  return buzzed.includes('class="mRpt2"') ? centreOnBarLine(buzzed) : buzzed;
}
