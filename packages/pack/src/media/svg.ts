/**
 * SVG documents that are pictures and nothing else: no scripts, nothing of other documents, nothing from elsewhere.
 *
 * Source: SVG 2, 2.7 (secure static mode), 15 (scripts and event attributes), 16.1 (references).
 */
import { type MediumFault, readXml, type XmlElement } from '@shedbook/core';
import { strFromU8 } from 'fflate';
import type { PixelSize } from './pixel-size.ts';

/** Elements that run something, or bring another kind of document along. */
const ACTIVE: ReadonlySet<string> = new Set([
  'script',
  'foreignObject',
  'iframe',
  'object',
  'embed',
  'handler',
]);

/** Whether a reference stays inside the document: a part of it, or a picture that stands in it. */
function staysInside(reference: string): boolean {
  return /^\s*(?:#|data:image\/(?:png|jpeg|gif)[;,])/i.test(reference);
}

/** Whether a style brings something from elsewhere. */
function isStyleInside(style: string): boolean {
  if (/@import|expression\s*\(|javascript:/i.test(style)) return false;
  return [...style.matchAll(/url\(\s*['"]?([^'")]*)/gi)].every(([, address = '']) => staysInside(address));
}

function isPlain({ name, attributes, children, text }: XmlElement): boolean {
  if (ACTIVE.has(name)) return false;
  if (name === 'style' && !isStyleInside(text)) return false;
  const isQuiet = Object.entries(attributes).every(([key, value]) => {
    if (/^on/i.test(key)) return false;
    if (key === 'href' || key === 'src') return staysInside(value);
    return isStyleInside(value);
  });
  return isQuiet && children.every(isPlain);
}

function rootOf(content: Uint8Array): XmlElement | null {
  const { root } = readXml(strFromU8(content).replace(/^\uFEFF/, ''));
  return root?.name === 'svg' ? root : null;
}

/** What is wrong with an SVG document; null where it is a picture alone. */
export function svgFault(content: Uint8Array): MediumFault | null {
  const root = rootOf(content);
  if (!root) return 'other-content';
  return isPlain(root) ? null : 'scripts';
}

/** Pixels of a length; null for one without a number or in another unit. Source: CSS Values 4, 6.2: 96 px an inch. */
function pixels(length: string | undefined): number | null {
  const [, number, unit = ''] = /^\s*([\d.]+)\s*(px|mm|cm|in|pt)?\s*$/.exec(length ?? '') ?? [];
  const per = { '': 1, px: 1, mm: 96 / 25.4, cm: 96 / 2.54, in: 96, pt: 96 / 72 }[unit];
  return number === undefined || per === undefined || Number(number) <= 0 ? null : Number(number) * per;
}

/** Size of an SVG document as it says it, else that of its view; null where it says neither. */
export function svgSize(content: Uint8Array): PixelSize | null {
  const { attributes = {} } = rootOf(content) ?? {};
  const [, , viewWidth = 0, viewHeight = 0] = (attributes['viewBox'] ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const ratio = viewWidth > 0 && viewHeight > 0 ? viewWidth / viewHeight : null;
  const [width, height] = [pixels(attributes['width']), pixels(attributes['height'])];
  if (width && height) return { widthPx: width, heightPx: height };
  if (!ratio) return null;
  if (width) return { widthPx: width, heightPx: width / ratio };
  if (height) return { widthPx: height * ratio, heightPx: height };
  return { widthPx: viewWidth, heightPx: viewHeight };
}
