/** The part of verovio's toolkit that engraving uses, and how it is loaded. */

export interface EngravingToolkit {
  setOptions(options: Readonly<Record<string, unknown>>): void;
  loadData(data: string): boolean;
  renderToSVG(page: number): string;
  renderToTimemap(options: Readonly<Record<string, unknown>>): unknown;
}
