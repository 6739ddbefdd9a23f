/**
 * The teacher's own pictures, sound and video on paper: a picture is printed; what sounds or moves is a code to scan where
 * its address is known; else a line says which file it is.
 *
 * Conventions: millimetres; a picture is as large as its pixels are at 150 to the inch, and no larger than its place.
 */
import { type Medium, mediumType } from '@shedbook/core';
import { readSvg } from '../svg/read-svg.ts';
import type { FlowBlock, SheetContext } from './context.ts';
import { allMoved, type Block, type Item } from './item.ts';
import type { PrintedCode, PrintedPicture } from './printed-media.ts';
import { setColumn, style } from './setting.ts';

const MM_PER_PX = 25.4 / 150;
const CODE_MM = 22;
const CODE_GAP_MM = 3;
const CAPTION_MM = 3.7;
const CAPTION_GAP_MM = 0.8;

/** What a picture takes of a page at most: beside a section, and in the column of an exercise. */
const SECTION = { widthMm: 140, heightMm: 85 } as const;
const EXERCISE_HEIGHT_MM = 45;

const GAP_MM = 3.2;
const UNDER_MM = 1.2;

/** The room that there is. */
interface Room {
  readonly widthMm: number;
  readonly heightMm: number;
}

function caption({ fonts }: SheetContext, text: string, widthMm: number): Block {
  return setColumn(fonts, text, style('italic', CAPTION_MM), widthMm, { maxLines: 6 });
}

function picture(context: SheetContext, medium: Medium, printed: PrintedPicture, room: Room): Block {
  const { widthPx, heightPx, dataUri } = printed;
  const scale = Math.min(MM_PER_PX, room.widthMm / widthPx, room.heightMm / heightPx);
  const size = { width: scale * widthPx, height: scale * heightPx };
  const alt = medium.says ?? context.words.media.picture({ file: medium.path });
  const under = caption(context, medium.says ?? '', room.widthMm);
  const captionY = size.height + CAPTION_GAP_MM;
  return {
    widthMm: room.widthMm,
    heightMm: under.heightMm === 0 ? size.height : captionY + under.heightMm,
    items: [{ kind: 'image', x: 0, y: 0, ...size, dataUri, alt }, ...allMoved(under.items, 0, captionY)],
  };
}

function code(context: SheetContext, medium: Medium, { svg }: PrintedCode, widthMm: number): Block {
  const drawing = readSvg(svg);
  const left = CODE_MM + CODE_GAP_MM;
  const kind = mediumType(medium.path)?.kind === 'video' ? 'video' : 'sound';
  const said = [medium.says, context.words.scan[kind]].flatMap((text) => text ?? []).join('\n');
  const beside = caption(context, said, widthMm - left);
  const items: readonly Item[] = [
    { kind: 'picture', x: 0, y: 0, width: CODE_MM, height: CODE_MM, drawing },
    ...allMoved(beside.items, left, Math.max(0, (CODE_MM - beside.heightMm) / 2)),
  ];
  return { widthMm, heightMm: Math.max(CODE_MM, beside.heightMm), items };
}

function name(context: SheetContext, { path, says }: Medium, widthMm: number): Block {
  const file = context.words.media[mediumType(path)?.kind ?? 'picture']({ file: path });
  return caption(context, says === null ? file : `${says} (${file})`, widthMm);
}

/** One of the teacher's own in its place. */
function mediumBlock(context: SheetContext, medium: Medium, room: Room): Block {
  const printed = context.media.get(medium.path);
  if (!printed) return name(context, medium, room.widthMm);
  if (printed.kind === 'code') return code(context, medium, printed, room.widthMm);
  return picture(context, medium, printed, room);
}

/** Those of an exercise, in its column. */
export function exerciseMedia(
  context: SheetContext,
  media: readonly Medium[] = [],
  widthMm: number,
): readonly Block[] {
  return media.map((medium) => {
    const block = mediumBlock(context, medium, { widthMm, heightMm: EXERCISE_HEIGHT_MM });
    return { ...block, heightMm: block.heightMm + UNDER_MM };
  });
}

/** Those of a lesson or a section, as blocks of the page's flow. */
export function layOutMedia(context: SheetContext, media: readonly Medium[] = []): readonly FlowBlock[] {
  const { contentWidthMm, contentHeightMm } = context;
  const room = {
    widthMm: Math.min(SECTION.widthMm, contentWidthMm),
    heightMm: Math.min(SECTION.heightMm, contentHeightMm / 3),
  };
  return media.map((medium) => {
    const { heightMm, items } = mediumBlock(context, medium, room);
    return { gapMm: GAP_MM, heightMm: heightMm + UNDER_MM, items };
  });
}
