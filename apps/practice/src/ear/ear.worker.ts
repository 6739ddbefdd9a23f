/**
 * The ear: listens beside everything else, so that neither sound nor page ever waits for it. Two of these run: one
 * hands over strokes, one reports on loops and takes.
 */
import { isOfTheseWeights, type KnownKit, learnKit } from '@shedbook/listen';
import { gainToDb, peakOf } from '@shedbook/signal';
import type { CapturedBlock } from '../device/capture-messages.ts';
import { Cleaner } from './cleaner.ts';
import type { EarAsked, EarOrder, EarReport, EarRole, HeardStroke } from './ear-messages.ts';
import { Listening } from './listening.ts';

/** The level is said ten times a second. */
const LEVEL_SECONDS = 0.1;
const TINY = 1e-6;

/** What is listened for now, last, and before it what still has a loop open. */
let listenings: readonly Listening[] = [];
/** What is known of the room outlives what is listened for. */
const cleaner = new Cleaner();
let role: EarRole = 'strokes';
let rateHz = 0;
let peak = 0;
let peakSince = 0;

function tell(report: EarReport): void {
  self.postMessage(report);
}

function tellStrokes(strokes: readonly HeardStroke[]): void {
  if (role === 'strokes' && strokes.length > 0) tell({ kind: 'strokes', strokes });
}

function tellLevel({ frame, samples }: CapturedBlock): void {
  if (role !== 'strokes') return;
  peak = Math.max(peak, peakOf(samples));
  if (frame - peakSince < LEVEL_SECONDS * rateHz) return;
  tell({ kind: 'level', peakDb: gainToDb(peak + TINY) });
  peak = 0;
  peakSince = frame;
}

/** Hands over what was recorded, piece by piece, so that it outlives the page. */
function tellSound(listening: Listening, isAll: boolean): void {
  const samples = listening.piece(isAll);
  if (samples) tell({ kind: 'sound', id: listening.id, samples });
}

function tellLoops(seconds: number): void {
  if (role !== 'reports') return;
  for (const listening of listenings) {
    const overs = listening.over(seconds);
    tellSound(listening, overs.length > 0);
    for (const over of overs) tell({ kind: 'loop', id: listening.id, ...over });
    for (const over of listening.barsOver(seconds)) tell({ kind: 'bar', id: listening.id, ...over });
  }
  tellTakes();
}

/** Hands over the takes whose last loop is over. */
function tellTakes(): void {
  for (const each of listenings.filter(({ isClosing, isOpen }) => isClosing && !isOpen)) {
    tellSound(each, true);
    tell({ kind: 'take', id: each.id, originSeconds: each.originSeconds, ...each.take() });
    listenings = listenings.filter((other) => other !== each);
  }
}

/** No more loops will come to what is listened for now. */
function close(): void {
  if (role === 'strokes') {
    listenings = [];
    return;
  }
  for (const each of listenings) each.isClosing = true;
  tellTakes();
}

function hear(block: CapturedBlock): void {
  const now = listenings.at(-1);
  const heard = cleaner.clean(block, rateHz);
  for (const listening of listenings) {
    const strokes = listening.block(block, heard);
    if (listening === now) tellStrokes(strokes);
  }
  tellLevel(block);
  if (rateHz > 0) tellLoops((block.frame + block.samples.length) / rateHz);
}

function ask(order: EarAsked): void {
  rateHz = order.sampleRateHz ?? rateHz;
  close();
  const { kit } = order;
  if (role === 'reports' && kit && !isOfTheseWeights(kit)) tell({ kind: 'old line check', name: kit.name });
  listenings = [
    ...listenings,
    new Listening({ ...order, only: role, beside: (seconds) => cleaner.from(seconds) }),
  ];
}

function tellOld(kits: readonly KnownKit[]): void {
  const names = kits.filter((kit) => !isOfTheseWeights(kit)).map(({ name }) => name);
  tell({ kind: 'old ones', names });
}

function receive(port: MessagePort): void {
  port.onmessage = ({ data }: MessageEvent<CapturedBlock>) => hear(data);
}

function obey(order: EarOrder): void {
  const now = listenings.at(-1);
  if (order.kind === 'role') role = order.role;
  else if (order.kind === 'ask') ask(order);
  else if (order.kind === 'blocks') receive(order.port);
  else if (order.kind === 'block') hear(order.block);
  else if (order.kind === 'time') tellLoops(order.seconds);
  else if (order.kind === 'finish') close();
  else if (order.kind === 'line check') tell({ kind: 'learnt', learnt: learnKit(order.check, order.limbs) });
  else if (order.kind === 'which are old') tellOld(order.kits);
  else if (order.kind === 'latency') for (const each of listenings) each.setLatency(order.seconds);
  else if (order.kind === 'break off') now?.breakOff(order.atSeconds);
  else if (order.kind === 'loop') now?.begin(order.loop);
  else if (now) tellStrokes([now.note(order.note)]);
}

self.onmessage = ({ data }: MessageEvent<EarOrder>) => obey(data);
