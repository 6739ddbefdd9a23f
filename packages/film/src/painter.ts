/**
 * Paints frames: what does not change is drawn once and kept; from frame to frame only the ball moves.
 *
 * Conventions: pixels from the picture's upper left corner.
 */
import { type Drawing, drawingsOf, type FrameDrawings } from './draw.ts';
import { coloursOf, type Film, frameAt } from './film.ts';
import {
  boxOfDisc,
  bytesOf,
  type Disc,
  type Picture,
  type PixelBox,
  type Pixels,
  paintDisc,
  paste,
  toPicture,
  toYuv,
  type Yuv,
} from './yuv.ts';

/** Turns an SVG document into pixels, as many as it says that it is large. */
export type Rasterise = (svg: string) => Pixels;

/** Paints the frames of a film. */
export interface Painter {
  /** Bytes of a frame: planar 4:2:0 in limited range, ITU-R BT.709. */
  readonly bytes: number;
  /**
   * Paints a frame (from 0) and gives its bytes: those of one of a few buffers, good until the frame is asked for that
   * comes after as many more as there are.
   */
  paint(frame: number): Uint8Array;
}

/** How many frames are kept at once: one that is written, one that waits, one that is painted. */
const BUFFERS = 3;
/** Pages and patches that are kept: those of a scene come again and again, those before it do not. */
const MOST_PICTURES = 160;

interface Canvas {
  readonly picture: Picture;
  /** What lies under the ball. */
  under: string;
  ball: PixelBox | null;
}

function parseColour(hex: string): Yuv {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
  return toYuv(red, green, blue);
}

/** Pictures of drawings, each made once; the oldest are forgotten. */
function gallery(rasterise: Rasterise) {
  const kept = new Map<string, Picture>();
  return ({ key, svg }: Drawing): Picture => {
    const known = kept.get(key);
    if (known) return known;
    const made = toPicture(rasterise(svg()));
    const [oldest] = kept.keys();
    if (kept.size >= MOST_PICTURES && oldest !== undefined) kept.delete(oldest);
    kept.set(key, made);
    return made;
  };
}

function blank(width: number, height: number): Picture {
  return { width, height, planes: new Uint8Array(bytesOf(width, height)) };
}

/** A painter for a film. */
export function createPainter(film: Film, rasterise: Rasterise): Painter {
  const { widthPx, heightPx, look } = film;
  const pictureOf = gallery(rasterise);
  const accent = parseColour(coloursOf(film).accent);
  const still = { picture: blank(widthPx, heightPx), under: '' };
  const canvases = Array.from(
    { length: BUFFERS },
    (): Canvas => ({ picture: blank(widthPx, heightPx), under: '', ball: null }),
  );
  const whole = { x: 0, y: 0, width: widthPx, height: heightPx };
  /** The page with its patches, made anew where any of them is another. */
  const setStill = ({ page, patches }: FrameDrawings): void => {
    const under = [page, ...patches].map(({ key }) => key).join('/');
    if (under === still.under) return;
    still.under = under;
    paste(pictureOf(page), whole, still.picture, 0, 0);
    for (const patch of patches) {
      const picture = pictureOf(patch);
      const box = { x: 0, y: 0, width: picture.width, height: picture.height };
      const [x, y] = [patch.box.x, patch.box.y].map((mm) => Math.round(mm * look.pixelsPerMm));
      paste(picture, box, still.picture, x as number, y as number);
    }
  };
  const clean = (canvas: Canvas): void => {
    if (canvas.under !== still.under) canvas.picture.planes.set(still.picture.planes);
    else if (canvas.ball) paste(still.picture, canvas.ball, canvas.picture, canvas.ball.x, canvas.ball.y);
    canvas.under = still.under;
    canvas.ball = null;
  };
  return {
    bytes: bytesOf(widthPx, heightPx),
    paint: (number) => {
      const frame = frameAt(film, number);
      setStill(drawingsOf(film, frame));
      const canvas = canvases[number % BUFFERS] as Canvas;
      clean(canvas);
      if (frame.ball) {
        const k = look.pixelsPerMm;
        const { xMm, yMm, radiusMm } = frame.ball;
        const disc: Disc = { x: xMm * k, y: yMm * k, radius: radiusMm * k };
        paintDisc(canvas.picture, disc, accent);
        canvas.ball = boxOfDisc(disc, canvas.picture);
      }
      return canvas.picture.planes;
    },
  };
}
