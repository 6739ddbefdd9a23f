/** What this package uses of libraries that ship no types. */
declare module 'verovio/wasm' {
  export default function createVerovioModule(): Promise<unknown>;
}

declare module 'verovio/esm' {
  export const LOG_OFF: number;
  export function enableLog(level: number, verovioModule: unknown): void;
  export class VerovioToolkit {
    constructor(verovioModule: unknown);
    setOptions(options: Readonly<Record<string, unknown>>): void;
    loadData(data: string): boolean;
    renderToSVG(page: number): string;
    renderToTimemap(options: Readonly<Record<string, unknown>>): unknown;
  }
}

declare module 'fontkit' {
  export interface FontkitGlyph {
    readonly advanceWidth: number;
    readonly id: number;
    readonly path: { toSVG(): string };
  }
  export interface ShapedText {
    readonly advanceWidth: number;
    readonly glyphs: readonly FontkitGlyph[];
    readonly positions: readonly {
      readonly xAdvance: number;
      readonly xOffset: number;
      readonly yOffset: number;
    }[];
  }
  export interface FontkitFont {
    readonly unitsPerEm: number;
    readonly ascent: number;
    readonly descent: number;
    readonly capHeight: number;
    readonly xHeight: number;
    readonly familyName: string;
    /** The glyphs that it has made, by their ids. */
    _glyphs: Record<number, FontkitGlyph>;
    hasGlyphForCodePoint(codePoint: number): boolean;
    layout(text: string): ShapedText;
  }
  export function create(bytes: Uint8Array): FontkitFont;
}

declare module 'pdfkit' {
  import type { FontkitFont } from 'fontkit';

  export interface OutlineItem {
    addItem(title: string): OutlineItem;
  }
  export default class PDFDocument {
    readonly outline: OutlineItem;
    constructor(options: Readonly<Record<string, unknown>>);
    readonly info: Record<string, unknown>;
    addPage(options: Readonly<Record<string, unknown>>): this;
    addContent(content: string): this;
    registerFont(name: string, font: FontkitFont): this;
    font(name: string): this;
    fontSize(size: number): this;
    fillColor(colour: string): this;
    text(text: string, x: number, y: number, options: Readonly<Record<string, unknown>>): this;
    image(source: string, x: number, y: number, options: Readonly<Record<string, unknown>>): this;
    save(): this;
    restore(): this;
    struct(type: string, options: Readonly<Record<string, unknown>>, children?: unknown): unknown;
    markContent(type: string, options?: Readonly<Record<string, unknown>>): this;
    endMarkedContent(): this;
    addStructure(element: unknown): this;
    on(event: 'data', listener: (chunk: Uint8Array) => void): this;
    on(event: 'end', listener: () => void): this;
    on(event: 'error', listener: (error: Error) => void): this;
    end(): void;
  }
}
