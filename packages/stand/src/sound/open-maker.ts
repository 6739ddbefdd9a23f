/// <reference types="vite/client" />
/** Opening what sounds; all but the thread is loaded where it is needed. */
import { type KitSound, type Order, PLAYER, type Report } from './messages.ts';
import workletUrl from './player.worklet.ts?worker&url';
import type { MakerOptions, SoundMaker } from './sound-maker.ts';

/** The sound thread. @throws Error where the browser has none or does not let it begin */
export async function openThread({ context, output, onReport }: MakerOptions): Promise<SoundMaker> {
  await context.audioWorklet.addModule(workletUrl);
  const node = new AudioWorkletNode(context, PLAYER, { numberOfInputs: 0, outputChannelCount: [2] });
  node.connect(output);
  node.port.onmessage = ({ data }: MessageEvent<Report>) => onReport(data);
  const order = (each: Order, transfer: Transferable[] = []) => node.port.postMessage(each, transfer);
  return { order, takeKit: (port) => order({ kind: 'kit port', port }, [port]) };
}

/** Sounds that stand in for the kit, made at once. They are loaded where they are needed. */
export async function makeStandIns(): Promise<readonly KitSound[]> {
  const { standIns } = await import('./stand-ins.ts');
  return standIns();
}

/** The page itself, through plain buffers. It is loaded where it is needed. */
export async function openBuffers(options: MakerOptions): Promise<SoundMaker> {
  const { createBuffers } = await import('./buffers.ts');
  return createBuffers(options);
}
