import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import jsQrModule from 'jsqr';
import { describe, expect, it } from 'vitest';
import { createLesson, startTestServer, temporaryFolder } from '../../test/temporary.ts';

/** The package is CommonJS: its function lies under `default` in Node. */
const readCode = (jsQrModule as unknown as { default: typeof import('jsqr').default }).default;

/** Dots an inch of a plain office scanner. */
const SCAN_DPI = 150;

/** The first page of a PDF as a scanner sees it, as RGBA. Source: netpbm, PPM P6. */
function scan(pdf: Uint8Array): {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
} {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'sheet.pdf'), pdf);
  spawnSync('pdftoppm', ['-f', '1', '-l', '1', '-r', `${SCAN_DPI}`, '-singlefile', 'sheet.pdf', 'page'], {
    cwd: folder,
  });
  const bytes = readFileSync(join(folder, 'page.ppm'));
  const [head = '', width, height] =
    /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.toString('latin1', 0, 60)) ?? [];
  const pixels = bytes.subarray(head.length);
  const data = new Uint8ClampedArray(Number(width) * Number(height) * 4).fill(255);
  for (let i = 0; i * 3 < pixels.length; i += 1) data.set(pixels.subarray(3 * i, 3 * i + 3), 4 * i);
  return { data, width: Number(width), height: Number(height) };
}

async function printed(text: string): Promise<Uint8Array> {
  const server = await startTestServer();
  const { id } = await createLesson(server, text);
  const response = await fetch(new URL(`/api/lessons/${id}/sheet.pdf`, server.url));
  return new Uint8Array(await response.arrayBuffer());
}

const LESSON = 'title: First swing\nexercises: ["x.. ..x x.x ..."]\n';

describe('the code on a sheet', () => {
  it('[SE34] leads a scanner to the practice page', async () => {
    const address = 'https://tannery-drum-room.example/lessons/first-swing/';
    const { data, width, height } = scan(await printed(`${LESSON}practicePage: ${address}\n`));
    // library: jsQR 1.4
    expect(readCode(data, width, height)?.data).toBe(address);
  });

  it('[SE34] is not there where the lesson has no address', async () => {
    const { data, width, height } = scan(await printed(LESSON));
    expect(readCode(data, width, height)).toBeNull();
  });
});
