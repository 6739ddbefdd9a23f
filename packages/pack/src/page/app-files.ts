/** What a pack makes of the practice page's own files. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { escapeXml, type Lesson } from '@shedbook/core';
import { strFromU8 } from 'fflate';
import { type PackFile, textFile } from '../files/file.ts';
import { policyOf } from './content-policy.ts';

/**
 * The start page under the lesson's own name; the pictures that come into sight first are asked for with it. It says
 * what it may load, since no host of a pack says it for it.
 */
export function startPage(page: PackFile, lesson: Lesson, pictures: readonly string[]): PackFile {
  const html = strFromU8(page.content);
  const ahead = pictures.map((path) => `<link rel="preload" as="image" href="./${path}" />`);
  const title = `<title>${escapeXml(lesson.title)}</title>`;
  // Systems that do not read the manifest for it, as iOS.
  const name = `<meta name="apple-mobile-web-app-title" content="${escapeXml(shortName(lesson))}" />`;
  const head = [title, name, ...ahead].join('\n    ');
  const policy = `<meta http-equiv="Content-Security-Policy" content="${policyOf(html).join('; ')}" />`;
  const named = html.replace(/<title>[^<]*<\/title>/, () => head);
  return textFile(
    page.path,
    named.replace('<head>', () => `<head>\n    ${policy}`),
  );
}

/** Pictures for home screens, which lie beside the page. */
const ICONS = [
  { src: 'mark.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
  { src: 'icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
  { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
  { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
];

/** The lesson's name as it stands under an icon. */
function shortName({ title }: Lesson): string {
  return title.slice(0, 24);
}

/** What a browser needs to put the pack among its apps. Source: W3C Web Application Manifest. */
export function manifest(lesson: Lesson): PackFile {
  const content = {
    name: lesson.title,
    short_name: shortName(lesson),
    start_url: './',
    scope: './',
    display: 'standalone',
    background_color: '#ccd4d2',
    theme_color: '#ccd4d2',
    icons: ICONS,
  };
  return textFile('manifest.webmanifest', `${JSON.stringify(content, null, 2)}\n`);
}

/** The file of the service worker of private links. */
export const LINK_WORKER = 'link.js';

/** Characters of a sum: 96 bits tell one file from whatever else a host may answer. */
const SUM_LENGTH = 24;

/**
 * What the service worker keeps, each file with the beginning of its SHA-256 in hexadecimal digits, said in front of its
 * code, so that any change of the pack is a new worker.
 */
export function serviceWorker(
  built: PackFile,
  pack: { readonly id: string; readonly version: string; readonly kept: readonly PackFile[] },
): PackFile {
  const { kept, ...names } = pack;
  const sumOf = ({ content }: PackFile) => bytesToHex(sha256(content)).slice(0, SUM_LENGTH);
  const files = Object.fromEntries(kept.map((file) => [file.path, sumOf(file)]));
  const code = strFromU8(built.content);
  return textFile(built.path, `self.SHEDBOOK_PACK=${JSON.stringify({ ...names, files })};\n${code}`);
}
