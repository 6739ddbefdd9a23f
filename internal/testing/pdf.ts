/**
 * What an outside reader finds in a PDF. Library: pdf.js, which draws pages with Skia.
 *
 * Conventions: lengths in points of 1/72 inch, pictures in pixels, pages from 0.
 */
import { getDocument, OPS, type PDFDocumentProxy, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A line of text as it stands on a page. */
export interface PdfText {
  readonly text: string;
  readonly widthPt: number;
  /** The font that sets it, by the name inside the file. */
  readonly font: string;
}

/** A font of a file. */
export interface PdfFont {
  readonly name: string;
  /** Whether the letters themselves are inside the file. */
  readonly isEmbedded: boolean;
  /** Whether only the letters in use are. Standard: ISO 32000-1, 9.6.4: six capitals and a plus sign. */
  readonly isSubset: boolean;
}

/** What a page holds. */
export interface PdfPage {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly texts: readonly PdfText[];
  readonly fonts: readonly PdfFont[];
  /** How many bitmaps are drawn. */
  readonly bitmaps: number;
}

/** What a file holds. */
export interface PdfFacts {
  readonly title: string | undefined;
  readonly author: string | undefined;
  readonly pages: readonly PdfPage[];
}

/** Pixels in rows from the top, each red, green, blue and opacity, 0 to 255. */
export interface PdfPicture {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
  readonly png: Buffer;
}

const BITMAPS: ReadonlySet<number> = new Set([
  OPS.paintImageXObject,
  OPS.paintInlineImageXObject,
  OPS.paintInlineImageXObjectGroup,
  OPS.paintImageMaskXObject,
  OPS.paintImageMaskXObjectGroup,
  OPS.paintImageXObjectRepeat,
  OPS.paintImageMaskXObjectRepeat,
]);

/** A part of a file's structure: what it is, the text that stands for it, and its parts. */
export interface PdfPart {
  readonly role: string;
  readonly alt: string | null;
  readonly parts: readonly PdfPart[];
}

interface RawNode {
  readonly role?: string;
  readonly alt?: string;
  readonly children?: readonly RawNode[];
}

function partsOf({ children = [] }: RawNode): readonly PdfPart[] {
  return children.flatMap((child) =>
    child.role === undefined ? [] : [{ role: child.role, alt: child.alt ?? null, parts: partsOf(child) }],
  );
}

/** The structure of each page, and the language of the file. */
export function readStructure(bytes: Uint8Array) {
  return withPdf(bytes, async (file) => {
    const pages = Array.from({ length: file.numPages }, (_, index) => index + 1);
    const trees = await Promise.all(pages.map(async (n) => (await file.getPage(n)).getStructTree()));
    const { info } = await file.getMetadata();
    const isMarked = (await file.getMarkInfo())?.Marked ?? false;
    const language = (info as { readonly Language?: string }).Language ?? null;
    return { language, isMarked, pages: trees.map((tree) => partsOf(tree as RawNode)) };
  });
}

async function withPdf<T>(bytes: Uint8Array, use: (file: PDFDocumentProxy) => Promise<T>): Promise<T> {
  // The reader takes the bytes for itself, hence a copy.
  const task = getDocument({ data: Uint8Array.from(bytes), verbosity: 0, fontExtraProperties: true });
  try {
    return await use(await task.promise);
  } finally {
    await task.destroy();
  }
}

/** What pdf.js keeps of a font that it has read. */
interface ReadFont {
  readonly name: string;
  readonly missingFile?: boolean;
}

async function factsOf(page: PDFPageProxy): Promise<PdfPage> {
  const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
  const { fnArray, argsArray } = await page.getOperatorList();
  const ids = fnArray.flatMap((code, i) => (code === OPS.setFont ? [argsArray[i][0] as string] : []));
  const font = (id: string) => page.commonObjs.get(id) as ReadFont;
  const { items } = await page.getTextContent();
  return {
    widthPt: right - left,
    heightPt: top - bottom,
    texts: items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [{ text: item.str, widthPt: item.width, font: font(item.fontName).name }]
        : [],
    ),
    fonts: [...new Set(ids)].map(font).map(({ name, missingFile }) => ({
      name,
      isEmbedded: missingFile !== true,
      isSubset: /^[A-Z]{6}\+/.test(name),
    })),
    bitmaps: fnArray.filter((code) => BITMAPS.has(code)).length,
  };
}

async function pagesOf(file: PDFDocumentProxy): Promise<readonly PDFPageProxy[]> {
  return Promise.all(Array.from({ length: file.numPages }, (_, index) => file.getPage(index + 1)));
}

/** Everything that is said of a PDF here. @throws what pdf.js throws when it cannot read the file */
export function readPdf(bytes: Uint8Array): Promise<PdfFacts> {
  return withPdf(bytes, async (file) => {
    const info = (await file.getMetadata()).info as { readonly Title?: string; readonly Author?: string };
    const pages = await Promise.all((await pagesOf(file)).map(factsOf));
    return { title: info.Title, author: info.Author, pages };
  });
}

/** All text of a PDF, line by line. */
export async function textOfPdf(bytes: Uint8Array): Promise<string> {
  const { pages } = await readPdf(bytes);
  return pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join('\n');
}

async function draw(file: PDFDocumentProxy, page: PDFPageProxy, scale: number): Promise<PdfPicture> {
  const viewport = page.getViewport({ scale });
  const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)];
  const { canvas, context } = (file.canvasFactory as CanvasFactory).create(width, height);
  await page.render({ canvas: null, canvasContext: context, viewport, background: '#fff' }).promise;
  const { data } = context.getImageData(0, 0, width, height);
  return { width, height, data, png: canvas.toBuffer('image/png') };
}

/** The part of pdf.js that makes drawing surfaces in Node. */
interface CanvasFactory {
  readonly create: (
    width: number,
    height: number,
  ) => {
    readonly canvas: { readonly toBuffer: (type: 'image/png') => Buffer };
    readonly context: CanvasRenderingContext2D;
  };
}

/** Every page as a picture, `pixelsOf` it wide. */
export function drawPdf(
  bytes: Uint8Array,
  pixelsOf: (widthPt: number) => number,
): Promise<readonly PdfPicture[]> {
  return withPdf(bytes, async (file) => {
    const pages = await pagesOf(file);
    return Promise.all(
      pages.map((page) => {
        const { width } = page.getViewport({ scale: 1 });
        return draw(file, page, pixelsOf(width) / width);
      }),
    );
  });
}
