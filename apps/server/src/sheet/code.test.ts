import jsQrModule from 'jsqr';
import { describe, expect, it } from 'vitest';
import { drawPdf, type PdfPicture } from '../../../../internal/testing/pdf.ts';
import { createLesson, sharedTestServer } from '../../test/temporary.ts';

/** The package is CommonJS: its function lies under `default` in Node. */
const readCode = (jsQrModule as unknown as { default: typeof import('jsqr').default }).default;

/** Dots an inch of a plain office scanner. */
const SCAN_DPI = 150;

const shared = sharedTestServer();

/** The first page of a PDF as a scanner sees it. Library: pdf.js 5.4. */
async function scan(pdf: Uint8Array): Promise<PdfPicture> {
  const [page] = await drawPdf(pdf, (widthPt) => Math.round((widthPt / 72) * SCAN_DPI));
  if (!page) throw new Error('a sheet has a page');
  return page;
}

async function printed(text: string): Promise<Uint8Array> {
  const server = shared();
  const { id } = await createLesson(server, text);
  const response = await fetch(new URL(`/api/lessons/${id}/sheet.pdf`, server.url));
  return new Uint8Array(await response.arrayBuffer());
}

const LESSON = 'title: First swing\nexercises: ["x.. ..x x.x ..."]\n';

describe('the code on a sheet', () => {
  it('[SE34] leads a scanner to the practice page', async () => {
    const address = 'https://tannery-drum-room.example/lessons/first-swing/';
    const { data, width, height } = await scan(await printed(`${LESSON}practicePage: ${address}\n`));
    // library: jsQR 1.4
    expect(readCode(data, width, height)?.data).toBe(address);
  });

  it('[SE34] is not there where the lesson has no address', async () => {
    const { data, width, height } = await scan(await printed(LESSON));
    expect(readCode(data, width, height)).toBeNull();
  });
});
